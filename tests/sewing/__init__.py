"""Tests of the sewing order."""
