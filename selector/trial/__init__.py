"""The trial before the part: the smallest test on coupons that settles what is uncertain."""
