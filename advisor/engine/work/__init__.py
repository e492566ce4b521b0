"""What a seam comes to as it is built: bulk, allowance, strength, thread, cloth, kit, tests."""
