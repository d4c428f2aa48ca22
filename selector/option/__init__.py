"""One treatment simulated: hardness of each zone, cracking, movement, skin, cost, temper."""
