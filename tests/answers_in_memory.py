"""Keeps the answers of tests and tested notebooks in memory, never in a learner's log.

pytest loads it by name (`-p` in pyproject.toml) before it collects anything, whether it was asked
for lessons, for helpers or for tests.
"""

import os

os.environ["CANDLE_WORKSHOP_ANSWERS"] = "memory"
