"""The whole decision over a garment, and the remedies of what clashes."""
