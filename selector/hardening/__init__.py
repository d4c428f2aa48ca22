"""Heat and metallurgy joined: steel and cooling in, hardness as quenched and as tempered out."""
