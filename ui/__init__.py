"""The page: a form, a ranked table, the reasons and one chart, on this machine only."""
