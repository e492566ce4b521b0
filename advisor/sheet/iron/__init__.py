"""What every layer bears and the iron that suits them all."""
