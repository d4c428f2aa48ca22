"""A part at a torch: its heatings, the quench of each, hardness along and across."""
