"""The subcommands of the command line: one function each, with the words that it takes.

Each imports what it needs when it runs, so that no command waits for another's libraries.
"""

from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


def said_yes():
    """Ask; anything but yes is a no, and so is nobody there to answer."""
    try:
        return input("Erase? Type yes: ").strip().lower() == "yes"
    except EOFError:
        print()
        return False
