"""The handling sheet for the terminal, for paper and for the browser."""
