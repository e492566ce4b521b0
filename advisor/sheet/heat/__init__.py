"""What the heat model found, as data, as text and as a picture."""
