"""Print the table."""

from tests.bench.clock import table
from tests.bench.scenes import ALL

print(table([scene() for scene in ALL]))
