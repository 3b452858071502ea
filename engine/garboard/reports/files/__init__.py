"""A trail as files of other forms: tables, text with marks, results for other programs.

Each is a pure function of the trail and the units; the same input gives the same bytes.
"""
