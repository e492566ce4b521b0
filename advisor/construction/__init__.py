"""What is built: bulk, fullness, allowances, strength, thread and cloth to buy."""
