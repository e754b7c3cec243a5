"""Print the table."""

from tests.bench import scenes, searching
from tests.bench.clock import table

print(table([scene() for scene in (*scenes.ALL, *searching.ALL)]))
