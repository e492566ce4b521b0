"""The working sheet on paper and on the screen."""
