"""How a scripted check says what it found: one line per check, `ok ...` or `FAIL ...`.

tests/run.sh counts these lines; the exit code is 1 as soon as one of them is FAIL.
"""

import os
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent


class Report:
    def __init__(self):
        self.failed = 0
        self.passed = 0

    def check(self, name, faults):
        """One line for `name`: ok when `faults` is empty, else FAIL and each fault below it."""
        faults = list(faults)
        if faults:
            self.failed += 1
            print(f"FAIL {name}")
            for fault in faults[:20]:
                print(f"     {fault}")
            if len(faults) > 20:
                print(f"     and {len(faults) - 20} more")
        else:
            self.passed += 1
            print(f"ok   {name}")
        sys.stdout.flush()

    def expect(self, name, condition, otherwise=""):
        """One line for `name`: ok when `condition` holds."""
        self.check(name, [] if condition else [otherwise or "does not hold"])

    def leave(self):
        """Ends the program with the exit code of the whole."""
        if self.passed + self.failed == 0:
            print("FAIL nothing was checked")
            sys.exit(1)
        sys.exit(1 if self.failed else 0)


def refuse_approval_in_ci():
    """Goldens are approved by a person who has looked at them, never by the build server."""
    if os.environ.get("CI"):
        sys.exit("goldens are not approved in CI")
