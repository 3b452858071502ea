"""Ventilation of battery spaces: an example of a plugin."""
