"""The command line: `python -m helpers SUBCOMMAND`. What each does is in `helpers.commands`."""

import argparse
import os
import sys

from helpers.commands import learner, plan, printed, room, upkeep
from helpers.exercises.refusals import Unusable, plain


def command_line():
    """Return the parser of the command line, and the names of its subcommands."""
    from helpers.exercises.wording import CAUTION, COMMAND, STAMP

    caution = f"Caution. Mains voltage can kill. {CAUTION} {STAMP}"
    parser = argparse.ArgumentParser(
        prog=COMMAND, description="Opens the lessons and marks a room.", epilog=caution
    )
    commands = parser.add_subparsers(required=True, metavar="SUBCOMMAND")

    def subcommand(name, run):
        said = run.__doc__
        short = said.split(".")[0] + "."
        one = commands.add_parser(name, help=short, description=said, epilog=caution)
        one.set_defaults(run=run)
        return one

    for each in (learner, room, printed, plan, upkeep):
        each.add_to(subcommand)
    return parser, tuple(commands.choices)


def main(words=None):
    """Run one subcommand; return the exit code. Who stops reading, as `head` does, ends it."""
    try:
        try:
            return run(words)
        finally:
            sys.stdout.flush()
    except BrokenPipeError:
        # Python flushes once more as it ends, and would complain there.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 141  # as a shell counts it, like the 130 of Ctrl-C


def run(words):
    words = sys.argv[1:] if words is None else words
    parser, names = command_line()
    if not words or (not words[0].startswith("-") and words[0] not in names):
        read = f'"{plain(words[0])}" is no SUBCOMMAND' if words else "no SUBCOMMAND was given"
        parser.error(f"{read}. There are: {', '.join(names)}. Add --help to see what each does.")
    arguments = parser.parse_args(words)
    try:
        arguments.run(arguments)
    except Unusable as error:
        print(error, file=sys.stderr)
        return 2
    except KeyboardInterrupt:
        print("Stopped.", file=sys.stderr)
        return 130
    return 0


if __name__ == "__main__":
    sys.exit(main())
