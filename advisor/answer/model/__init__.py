"""The answer as frozen types: what every view prints and what `--json` writes."""
