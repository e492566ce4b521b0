"""One answer to a garment: everything that is told, before it is printed."""
