"""What all tests in a browser need: a browser."""

import os

import lab
import pytest


@pytest.fixture(scope="session")
def browser_found():
    if lab.find_browser():
        return
    said = "no Chromium was found; install it (for example: apt-get install chromium)"
    if os.environ.get("CI"):
        pytest.fail(said)
    pytest.skip(said)
