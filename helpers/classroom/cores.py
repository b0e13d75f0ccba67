"""The same work for each of many: in order, and on all cores where there are enough of them.

Knows no learner and no marks.
"""

import os
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context, parent_process
from threading import Thread

FEWEST = 100  # pieces of work for each process: starting one takes about a second
AT_ONCE = 10  # pieces that go to a process together

_do = None


def each(make, given, work, many):
    """Yield what comes of each piece of work.

    Parameters
    ----------
    make : callable
        From `given` to what does one piece; of a module, and `given` can be sent to a process.
    given : tuple
    work : iterable of tuple
        The arguments of each piece.
    many : int
        How many pieces there are about [-].

    Returns
    -------
    done : iterator
        In the order of the work.

    Notes
    -----
    Processes are started afresh on every system: a notebook has threads, which a copy of its
    process would not survive.
    """
    processes = min(os.cpu_count() or 1, many // FEWEST)
    if processes < 2:
        do = make(*given)
        yield from (do(*one) for one in work)
        return
    starts = {"mp_context": get_context("spawn"), "initializer": _begin}
    with ProcessPoolExecutor(processes, **starts, initargs=(make, given)) as pool:
        yield from pool.map(_done, work, chunksize=AT_ONCE)


def _begin(make, given):
    global _do
    Thread(target=_end_with_the_parent, daemon=True).start()
    _do = make(*given)


def _end_with_the_parent():
    """A process whose parent was killed would wait for work for ever."""
    parent_process().join()
    os._exit(1)


def _done(one):
    return _do(*one)
