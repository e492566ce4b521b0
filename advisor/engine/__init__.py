"""The engine: claims about a garment, how they meet, where they clash, and what cures a clash."""
