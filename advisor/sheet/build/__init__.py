"""Seams as they are built, cloth and thread to buy, and what is needed at hand."""
