"""Heat and metallurgy joined: steel and cooling in, hardness quenched and tempered out."""
