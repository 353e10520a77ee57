"""Puts the bench, which is no package, where its tests can import it."""

import sys
from pathlib import Path

sys.path.append(str(Path(__file__).parents[2] / "bench"))
