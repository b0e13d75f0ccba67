"""Writes a file whole or not at all. Knows nothing of what is in it."""

import os
import secrets
from contextlib import suppress


def write_whole(path, pieces):
    """Write a file whole, or leave what was there before as it was.

    Parameters
    ----------
    path : Path
        The file; its folder is there already.
    pieces : iterable of bytes
        What to write.

    Raises
    ------
    OSError
        If it cannot be written; no half-written file is left beside it.
    """
    part = path.with_name(f"{path.name}.{secrets.token_hex(4)}.part")
    try:
        with open(part, "wb") as handle:
            handle.writelines(pieces)
        os.replace(part, path)
    finally:
        with suppress(OSError):
            part.unlink()
