"""Narrowing down what an unknown cloth is made of."""
