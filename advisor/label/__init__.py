"""The label of what is sold: content and care."""
