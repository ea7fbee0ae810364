#!/usr/bin/env python3
"""The linter reads what changed, never takes a finding for clean, and finds with its plugin what it finds without."""

import json
import os
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent / "support"))
from report import ROOT, Report  # noqa: E402

CLEAN_HEADER = "#pragma once\n\nint twice(int number);\n"
CLEAN_UNIT = '#include "room/twice.h"\n\nint twice(int number) {\n  return 2 * number;\n}\n'
FINDING = "inline int WrongCase() {\n  return 3;\n}\n"


class Tree:
    """A project of one unit and one header, and what the linter says of it."""

    def __init__(self, folder, record):
        self.folder, self.record = folder, record
        self.unit, self.header = folder / "src/room/twice.cc", folder / "src/room/twice.h"
        self.unit.parent.mkdir(parents=True)
        (folder / "build").mkdir()
        shutil.copyfile(ROOT / ".clang-tidy", folder / ".clang-tidy")
        self.header.write_text(CLEAN_HEADER)
        self.unit.write_text(CLEAN_UNIT)
        self.compiled_with("-std=c++20")

    def compiled_with(self, flags):
        command = f"c++ -I{self.folder}/src {flags} -c {self.unit}"
        (self.folder / "build/compile_commands.json").write_text(json.dumps(
            [{"directory": str(self.folder / "build"), "file": str(self.unit), "command": command}]))  # fmt: skip

    def lint(self):
        """(whether it was clean, how many units clang-tidy read, what was said)"""
        calls = self.folder / "calls"
        calls.write_text("")
        tools = self.folder / "tools"
        tools.mkdir(exist_ok=True)
        counting = tools / "clang-tidy"
        real = shutil.which("clang-tidy")
        counting.write_text(f'#!/bin/sh\n[ "$1" = --version ] || echo >>{calls}\nexec {real} "$@"\n')
        counting.chmod(0o755)
        told = subprocess.run(
            [sys.executable, HERE / "edges.py", "--root", self.folder, self.folder / "build"],
            capture_output=True, text=True,
            env={**os.environ, "PATH": f"{tools}:{os.environ['PATH']}", "WINCHBOOK_LINT_RECORD": str(self.record)},
        )  # fmt: skip
        return told.returncode == 0, calls.read_text().count("\n"), told.stdout + told.stderr


def findings(folder, *more):
    """Each finding in the spoiled file, as place and sentence."""
    said = subprocess.run(
        ["clang-tidy", "--quiet", *more, "--extra-arg=-w", folder / "src/spoiled.cc", "--", "-std=c++20"],
        capture_output=True, text=True,
    )  # fmt: skip
    return sorted(set(re.findall(r"/(spoiled\.\w+:\d+:\d+: (?:error|warning): .*)", said.stdout)))


def check_reading(report, parent):
    def expect(name, tree, clean, read):
        was_clean, was_read, said = tree.lint()
        report.check(name, [] if (was_clean, was_read) == (clean, read) else [
            f"clean: {was_clean}, units read: {was_read}", said.strip()[-600:]])  # fmt: skip

    record = parent / "record"
    tree = Tree(parent / "one", record)
    expect("a unit that nobody has read is read", tree, True, 1)
    expect("what did not change is not read again", tree, True, 0)
    expect("nor in another folder", Tree(parent / "other", record), True, 0)
    tree.header.write_text(CLEAN_HEADER + "// And a remark.\n")
    expect("a changed header makes its unit be read again", tree, True, 1)
    tree.header.write_text(CLEAN_HEADER + "\n" + FINDING)
    expect("a finding in a header fails", tree, False, 1)
    expect("a finding is read and fails again", tree, False, 1)
    spoiled = Tree(parent / "spoiled", record)
    spoiled.header.write_text(CLEAN_HEADER + "\n" + FINDING)
    expect("a finding was not recorded as clean", spoiled, False, 1)
    tree.header.write_text(CLEAN_HEADER)
    tree.unit.write_text(CLEAN_UNIT.replace("twice.h", "nowhere.h"))
    expect("what does not compile is not clean", tree, False, 1)
    tree.unit.write_text(CLEAN_UNIT)
    tree.compiled_with("-std=c++17")
    expect("other flags make a unit be read again", tree, True, 1)
    rules = tree.folder / ".clang-tidy"
    rules.write_text(rules.read_text().replace("NamespaceCase,         value: lower_case",
                                               "NamespaceCase,         value: CamelCase"))  # fmt: skip
    expect("other rules make a unit be read again", tree, True, 1)
    return tree.folder / "build/ours_only.so"


def check_plugin(report, parent, plugin):
    folder = parent / "faults"
    (folder / "src").mkdir(parents=True)
    shutil.copyfile(ROOT / ".clang-tidy", folder / ".clang-tidy")
    for name in ("spoiled.cc", "spoiled.h"):
        shutil.copyfile(HERE / name, folder / "src" / name)
    whole, ours = findings(folder), findings(folder, f"--load={plugin}")
    report.expect("clang-tidy finds faults of many kinds", len(whole) > 40, f"{len(whole)} found")
    report.check("walking our own declarations only finds the same", set(whole) ^ set(ours))


def main():
    report = Report()
    with tempfile.TemporaryDirectory() as directory:
        parent = Path(directory).resolve()
        check_plugin(report, parent, check_reading(report, parent))
    report.leave()


if __name__ == "__main__":
    main()
