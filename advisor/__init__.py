"""Advice for sewing one garment from unlike cloths."""

__version__ = "0.1.0"
