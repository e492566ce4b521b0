"""Claims that meet: value sets, conditions, who speaks, collecting, combining, conflicts."""
