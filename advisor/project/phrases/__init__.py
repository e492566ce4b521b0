"""How a maker's words for a cloth are read: words, weights, shares, grounds, and what they mean."""
