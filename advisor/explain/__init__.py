"""What the knowledge holds on what was asked: what a name stands for, and why an answer is so."""
