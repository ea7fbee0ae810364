#!/usr/bin/env python3
"""Reads every unit with clang-tidy: a build edge a unit, run again when something it depends on changed.

    edges.py [--root DIRECTORY] BUILD

BUILD is configured, without precompiled headers; nothing in it needs to be compiled. For each unit of
its compile_commands.json that lies below src/ or tests/ an edge is written into BUILD/lint.ninja, and
ninja runs them: the unit, the project's headers it includes, .clang-tidy, the command and the tools are
what an edge depends on. What was found clean is also told from the record (see read_unit.py), so that a
fresh clone reads only what nobody has read before.
"""

import argparse
import hashlib
import json
import os
import shutil
import subprocess
import sys
import time
from pathlib import Path

HERE = Path(__file__).resolve().parent
PLUGIN_SOURCE = HERE / "ours_only.cc"
READ = HERE / "read_unit.py"
# What is told of a library's headers depends on them: the packages they come from.
PACKAGES = ["lib*-dev", "doctest-dev", "nlohmann-json3-dev", "nettle-dev", "zlib1g-dev", "clang-tidy-*"]
KEPT_DAYS = 90

HEAD = """\
builddir = {build}/clean
rule plugin
  command = {launcher}c++ -std=c++17 -O1 -fPIC -fno-rtti -isystem {llvm}/include -c $in -o $out.o && c++ -shared $out.o -o $out
rule read
  command = {python} {read} {root} {build} {record} {common} $command_digest $in $out
  description = Reading $in
  depfile = $out.d
  deps = gcc
build {plugin}: plugin {source}
"""


def record_folder():
    """Where it is kept what was found clean."""
    cache = os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache"
    return Path(os.environ.get("WINCHBOOK_LINT_RECORD") or Path(cache) / "winchbook-lint")


def said_by(*command):
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


def digest_of(*parts):
    return hashlib.sha256("\0".join(parts).encode()).hexdigest()[:32]


def common_digest():
    """Of the tools and libraries that every unit is read with."""
    installed = subprocess.run(
        ["dpkg-query", "-W", "-f", "${db:Status-Status} ${Package} ${Version}\n", *PACKAGES],
        capture_output=True, text=True,
    ).stdout  # fmt: skip
    present = sorted(line for line in installed.splitlines() if line.startswith("installed "))
    return digest_of(said_by("clang-tidy", "--version"), PLUGIN_SOURCE.read_text(), READ.read_text(), *present)


def edge(command, root, plugin):
    unit = Path(command["file"])
    flags = digest_of(command["command"].replace(str(root), "."))
    clean = Path("clean") / f"{unit.relative_to(root)}"
    return f"build {clean}: read {unit} | {root}/.clang-tidy {plugin}\n  command_digest = {flags}\n"


def is_ours(command, root):
    return any(Path(command["file"]).is_relative_to(root / top) for top in ("src", "tests"))


def forget_old(record):
    for kept in record.iterdir():
        if time.time() - kept.stat().st_mtime > KEPT_DAYS * 86400:
            kept.unlink()


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--root", type=Path, default=HERE.parent.parent)
    parser.add_argument("build", type=Path)
    arguments = parser.parse_args()
    root, build = arguments.root.resolve(), arguments.build.resolve()
    record = record_folder().resolve()
    record.mkdir(parents=True, exist_ok=True)
    forget_old(record)
    commands = json.loads((build / "compile_commands.json").read_text())
    plugin = build / "ours_only.so"
    edges = [edge(one, root, plugin) for one in commands if is_ours(one, root)]
    if not edges:
        sys.exit("edges.py: there is no unit to read")
    head = HEAD.format(
        launcher="ccache " if shutil.which("ccache") else "", llvm="/usr/lib/llvm-14", python=sys.executable,
        read=READ, root=root, build=build, record=record, common=common_digest(), plugin=plugin,
        source=PLUGIN_SOURCE,
    )  # fmt: skip
    (build / "lint.ninja").write_text(head + "".join(sorted(set(edges))))
    os.execlp("ninja", "ninja", "-C", str(build), "-f", "lint.ninja", "-k", "0", "-j", str(os.cpu_count()))


if __name__ == "__main__":
    main()
