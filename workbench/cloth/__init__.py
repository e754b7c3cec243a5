"""Pieces on cloth: lay plan, lengths to buy, cost."""
