#!/usr/bin/env python3
"""Writes the test reels of the hard cases, each a folder with its record and photographs.

    make.py DIRECTORY [CASE...]     all of them, or those named
    make.py --list                  their names, and what to look for
"""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))
from cases import CASES  # noqa: E402


def main():
    if sys.argv[1:] == ["--list"]:
        for name, function in CASES.items():
            print(f"{name}: {function.__doc__}")
        return
    directory, names = Path(sys.argv[1]), sys.argv[2:] or CASES
    for name in names:
        CASES[name]().write(directory / name)


if __name__ == "__main__":
    main()
