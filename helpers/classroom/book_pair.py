"""The two files of the mark book: always of one run, whatever fails or is killed while they change.

Knows files and their names; must never know what stands in them.
"""

import os
from contextlib import suppress
from datetime import datetime

from helpers.exercises.refusals import MAKE_ROOM, plain, refused

ENDINGS = (".csv", ".html")
BOOK, READY, PART = "mark-book", "mark-book.new", "mark-book.part"


class BookPair:
    """mark-book.csv and mark-book.html in a folder.

    Parameters
    ----------
    out : Path
        The folder; it is there already.

    Notes
    -----
    Both files are written and brought to the disk under names of their own, the table first. Only
    when both are ready is the pair before renamed by its date, and the new one named as the mark
    book, again the table first. So a run that was stopped is told by what it left: with both files
    ready, or the page ready and no page in its place, it is finished; else it is cleared, the page
    first.
    """

    def __init__(self, out):
        self.table, self.page = self.paths = [out / f"{BOOK}{end}" for end in ENDINGS]
        self._ready = [out / f"{READY}{end}" for end in ENDINGS]
        self._parts = [out / f"{PART}{end}" for end in ENDINGS]

    def recover(self):
        """Finish or clear what a run that was stopped has left behind.

        Raises
        ------
        Unusable
            If that is not possible.
        """
        with refused(
            f"What an earlier run left in {self._where} could not be put right", MAKE_ROOM
        ):
            table_ready, page_ready = (path.exists() for path in self._ready)
            named = self.table.exists() and not self.page.exists()
            if page_ready and (table_ready or named):
                self._change_over()
            self._clear()

    def kept_names(self):
        """Return the names under which what lies there will be kept, by its name; {} for nothing.

        They follow from the date of the table, or of the page where there is no table.
        """
        there = [path for path in self.paths if path.exists()]
        if not there:
            return {}
        written = datetime.fromtimestamp(there[0].stat().st_mtime)
        name, more = f"{BOOK}_{written:%Y-%m-%d_%H-%M-%S}", ""
        while True:
            kept = {path: path.with_name(f"{name}{more}{path.suffix}") for path in there}
            if not any(path.exists() for path in kept.values()):
                return kept
            more = f"-{int(more[1:] or 1) + 1}"

    def write(self, table, page):
        """Write a new pair, keeping the one before under its date; or leave that as it was.

        Parameters
        ----------
        table, page : iterable of str
            What to write.

        Raises
        ------
        Unusable
            If that is not possible.
        """
        before = [path.exists() for path in self.paths]
        with refused(f"The mark book in {self._where} could not be written", MAKE_ROOM):
            try:
                for pieces, part, ready in zip(
                    (table, page), self._parts, self._ready, strict=True
                ):
                    _write_synced(part, pieces)
                    os.replace(part, ready)
                written = self._ready[0].stat().st_mtime_ns
                os.utime(self._ready[1], ns=(written, written))  # so they are kept by one name
                self._change_over()
            except BaseException:
                if before == [path.exists() for path in self.paths]:
                    with suppress(OSError):
                        self._clear()
                raise

    @property
    def _where(self):
        return plain(str(self.table.parent), 300)

    def _change_over(self):
        """Rename the pair before by its date, and what is ready to the names of the mark book."""
        pairs = [pair for pair in zip(self._ready, self.paths, strict=True) if pair[0].exists()]
        kept = self.kept_names()
        before = [(path, kept[path]) for _, path in pairs if path in kept]
        done = []
        try:
            for path, to in (*before, *pairs):
                os.rename(path, to)
                done.append((path, to))
            _sync(self.table.parent)
        except BaseException:  # all of them get their old names back
            for path, to in reversed(done):
                with suppress(OSError):
                    os.rename(to, path)
            raise

    def _clear(self):
        for path in reversed([*self._parts, *self._ready]):
            path.unlink(missing_ok=True)


def _write_synced(path, pieces):
    with open(path, "wb") as handle:
        handle.writelines(piece.encode("utf-8") for piece in pieces)
        handle.flush()
        os.fsync(handle.fileno())


def _sync(folder):
    """Bring the names in a folder to the disk, where the system has a way to do so."""
    if os.name == "nt":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
