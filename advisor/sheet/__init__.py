"""From advice to what a person or a program reads: the JSON contract, sentences, text."""
