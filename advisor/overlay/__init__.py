"""The maker's own knowledge, laid over what is shipped."""
