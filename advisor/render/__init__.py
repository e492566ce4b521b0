"""The answer as text, HTML and pictures."""
