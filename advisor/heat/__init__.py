"""The iron over layers: the model, the stacks of a garment, glue, and what comes of them."""
