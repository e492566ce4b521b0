"""Changes of a project file that the maker asks for, on the command line or on the page."""
