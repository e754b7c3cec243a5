"""How long things take.

``python -m tests.bench`` prints the table, ``pytest -m bench`` holds it to its bounds.
"""
