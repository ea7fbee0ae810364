#!/usr/bin/env python3
"""Reads one unit with clang-tidy, unless exactly this was found clean before.

    read_unit.py ROOT BUILD RECORD COMMON COMMAND UNIT CLEAN

A digest is taken of all that the answer depends on: COMMON (the tools) and COMMAND (the flags) as
digests, the unit, every project header it includes, itself or through others, and .clang-tidy. Paths are
those below ROOT, so that the digest is the same in every folder. Where RECORD holds a file of that name,
the unit is clean. Else clang-tidy reads it, and only an answer without a finding makes that file. CLEAN
is written for ninja when the unit is clean, beside CLEAN.d with what it depends on.
"""

import hashlib
import re
import subprocess
import sys
from pathlib import Path

INCLUDE = re.compile(rb'^[ \t]*#[ \t]*include[ \t]*"([^"]+)"', re.MULTILINE)
FINDING = re.compile(r"\b(warning|error): ")


def read_files(unit, root):
    """{path: bytes} of the unit and all project headers it includes, whether or not under an #if."""
    read, waiting = {}, [unit]
    while waiting:
        path = waiting.pop()
        if path in read:
            continue
        read[path] = path.read_bytes()
        for name in INCLUDE.findall(read[path]):
            places = [folder / name.decode() for folder in (path.parent, root / "src", root / "tests")]
            waiting += [place.resolve() for place in places if place.is_file()][:1]
    return read


def digest_of(read, root, *others):
    whole = hashlib.sha256("\0".join(others).encode())
    for path in sorted(read):
        whole.update(f"\0{path.relative_to(root)}\0{len(read[path])}\0".encode())
        whole.update(read[path])
    return whole.hexdigest()[:32]


def findings(unit, build):
    """What clang-tidy finds in the unit; nothing when it is clean."""
    # -w: the warnings that count are those of the compiler that builds the program
    said = subprocess.run(
        ["clang-tidy", "--quiet", f"--load={build / 'ours_only.so'}", "-p", build, "--extra-arg=-w", unit],
        capture_output=True, text=True,
    )  # fmt: skip
    if said.returncode == 0 and not FINDING.search(said.stdout):
        return ""
    return said.stdout + said.stderr + f"clang-tidy: exit code {said.returncode}\n"


def main():
    root, build, record = map(Path, sys.argv[1:4])
    common, command = sys.argv[4:6]
    unit, clean = Path(sys.argv[6]), Path(sys.argv[7])
    rules = root / ".clang-tidy"

    def state():
        return read_files(unit, root) | {rules: rules.read_bytes()}

    before = state()
    kept = record / digest_of(before, root, common, command)
    if not kept.exists():
        found = findings(unit, build)
        if found:
            sys.exit(found)
        if state() != before:
            sys.exit(f"{unit} or what it includes changed while it was read")
    kept.touch()
    clean.touch()
    Path(f"{clean}.d").write_text(f"{clean}: {' '.join(str(path) for path in sorted(before))}\n")


if __name__ == "__main__":
    main()
