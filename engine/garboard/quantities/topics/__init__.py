"""The built-in quantities, one topic per file."""
