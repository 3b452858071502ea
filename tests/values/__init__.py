"""Tests of the floor values."""
