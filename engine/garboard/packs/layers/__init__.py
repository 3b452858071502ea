"""Packs that build on others: found, merged, changed, weighed, resolved to one."""
