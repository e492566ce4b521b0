"""An answer on one screen: what can go wrong, what to set, what to try; drawn at any width."""
