"""One steel by itself: a section quenched, a thin piece tempered. No part, no workshop."""
