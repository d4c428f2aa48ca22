"""What goes to the bench and to the customer: sheets made of an option's own record."""
