"""What readers of results expect: every miss is said at once and counted, one is enough for exit code 1."""

import subprocess
import sys

misses = []


def expect(condition, what):
    """Notes a miss; goes on, so that all are seen at once."""
    if not bool(condition):
        misses.append(what)
        print("MISSED:", what)


def output(*command):
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


def conclude(met):
    """Ends the reader, with what was looked at if nothing was missed."""
    if misses:
        sys.exit(f"{len(misses)} expectations missed")
    print("every expectation met:", met)
