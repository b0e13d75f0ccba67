"""When to act on a press of a key or a button: after everything before it has arrived."""

import asyncio

SETTLING_SECONDS = 0.1


def on_enter(box, action):
    """Do something when Enter is pressed in a box to type in."""
    box.on_msg(lambda _, told, buffers: told.get("event") == "submit" and action())


def soon(action, seconds=SETTLING_SECONDS):
    """Do something a moment later, when a kernel is running; at once where none is.

    Return the handle that can still cancel it, or None if it is done.

    A press of Enter or of a button can overtake the last change of a list or a box on the way
    from the page; a wrong answer must never be marked for that.
    """
    try:
        loop = asyncio.get_running_loop()
    except RuntimeError:
        action()
        return None
    return loop.call_later(seconds, action)
