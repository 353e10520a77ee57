"""Settings for the whole suite: property tests without a clock, the same each time where CI is set."""

import os

from hypothesis import settings

settings.register_profile("suite", deadline=None, database=None, derandomize="CI" in os.environ)
settings.load_profile("suite")
