"""Finding out what a cloth is: the answer and the talk."""
