"""The order of work, as data and in words."""
