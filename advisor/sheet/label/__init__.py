"""The label of a garment that is sold: from the judgement to data, and to a page of text."""
