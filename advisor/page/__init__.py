"""The local web page: the same answers in a browser, for this machine alone."""
