"""Whole files: written whole or not at all, and text read however it was saved.

Knows nothing of what is in them.
"""

import codecs
import os
import secrets
from contextlib import suppress


def _for_its_owner(path, flags):
    return os.open(path, flags, 0o600)


def write_whole(path, pieces):
    """Write a file whole, for its owner alone, or leave what was there before as it was.

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
        with open(part, "wb", opener=_for_its_owner) as handle:
            handle.writelines(pieces)
        os.replace(part, path)
    finally:
        with suppress(OSError):
            part.unlink()


def write_new(path, content):
    """Write a file whole where none has its name; of two writers at once the first one wins.

    Parameters
    ----------
    path : Path
        The file; its folder is there already.
    content : bytes
        What to write.

    Raises
    ------
    FileExistsError
        If there is such a file; it is left as it was.
    OSError
        If it cannot be written.
    """
    part = path.with_name(f"{path.name}.{secrets.token_hex(4)}.part")
    try:
        part.write_bytes(content)
        try:
            os.link(part, path)
        except FileExistsError:
            raise
        except OSError:  # a disk without links: not at once for a reader, but never over a file
            with open(path, "xb") as handle:
                handle.write(content)
    finally:
        with suppress(OSError):
            part.unlink()


def as_utf_8(content):
    """Return the bytes of a text as UTF-8 without a byte-order mark.

    Parameters
    ----------
    content : bytes
        A text as an editor or a spreadsheet saves it: UTF-8, or UTF-16 with its byte-order mark.

    Returns
    -------
    content : bytes
        What is neither is left as it is.

    References
    ----------
    The byte-order marks: RFC 3629, section 6, and RFC 2781, section 3.2.

    Examples
    --------
    >>> as_utf_8("90 W".encode("utf-16")), as_utf_8("90 W".encode("utf-8-sig"))
    (b'90 W', b'90 W')
    """
    if content.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        return content.decode("utf-16", "replace").encode("utf-8", "replace")
    return content.removeprefix(codecs.BOM_UTF8)
