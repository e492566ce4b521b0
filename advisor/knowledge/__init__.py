"""The knowledge base: its forms, how it is read and checked, and what it is compiled to."""
