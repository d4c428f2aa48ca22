"""What the loads ask: strength, contact, wear, cold, stiffness."""
