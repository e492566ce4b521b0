"""Pure calculations of the trade, one module each: no rules, no files, no printing."""
