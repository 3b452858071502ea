"""The parts of the page as plain data for its templates."""
