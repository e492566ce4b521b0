"""Text in and out: YAML with places, what a form finds wrong, files written whole."""
