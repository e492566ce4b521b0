"""A maker's project: from her words or her file to a garment that the engine can read."""
