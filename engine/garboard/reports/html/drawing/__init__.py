"""Drawings as SVG text: the diagram and the bars."""
