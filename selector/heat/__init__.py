"""Heat: plain numbers in, temperatures and cooling equivalents out."""
