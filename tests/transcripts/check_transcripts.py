#!/usr/bin/env python3
"""Runs the commands of the transcripts and compares what they say, word for word.

    check_transcripts.py [--approve] WINCHBOOK [TRANSCRIPT...]

A transcript is a text file beside this one, `<name>.transcript`:

    # a remark
    $ winchbook check demo/reels/dunlin-2
    out| what stands on stdout
    err| what stands on stderr
    exit 0

Each file runs in a fresh directory holding a copy of demo/reels, one command after the other, in a
shell that stops at nothing. An entry of a day (--on) is made as if today were at the end of 2029,
unless its command says --today. $WINCHBOOK_TESTS names the directory tests/. What is printed of the
fresh directory's own path reads `<here>`, of the project's directory `<project>`.
With --approve the outputs are replaced by what is said now.
"""

import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import ROOT, Report, refuse_approval_in_ci  # noqa: E402

HERE = Path(__file__).resolve().parent
OUTPUT = ("out|", "err|", "exit ")
TODAY = " --today 2029-12-31"
SHELL = f'''winchbook() {{
  case " $* " in *" --today "*) ;; *" --on "*) set -- "$@"{TODAY} ;; esac
  command winchbook "$@"
}}
'''


def environment(winchbook):
    return {
        "PATH": f"{winchbook.parent}:/usr/local/bin:/usr/bin:/bin",
        "LC_ALL": "C.UTF-8",
        "TZ": "UTC",
        "COLUMNS": "100",
        "NO_COLOR": "1",
        "WINCHBOOK_TESTS": str(ROOT / "tests"),
        "ASAN_OPTIONS": os.environ.get("ASAN_OPTIONS", ""),
    }


def marked(prefix, text, names):
    for path, name in names.items():
        text = text.replace(path, name)
    lines = text.split("\n")
    if lines[-1] == "":
        lines.pop()
    else:
        lines[-1] += "<no newline>"
    return [f"{prefix} {line}".rstrip() for line in lines]


def say(command, directory, winchbook):
    """What `command` says, as the lines of a transcript."""
    result = subprocess.run(
        ["sh", "-c", SHELL + command], cwd=directory, env=environment(winchbook), stdin=subprocess.DEVNULL,
        capture_output=True, timeout=120,
    )  # fmt: skip
    names = {str(directory): "<here>", str(ROOT): "<project>", TODAY: ""}
    return [
        *marked("out|", result.stdout.decode("utf-8", "replace"), names),
        *marked("err|", result.stderr.decode("utf-8", "replace"), names),
        f"exit {result.returncode}",
    ]


def read(transcript):
    """[(line as written, expected output lines)]; remarks and blank lines expect nothing (None)."""
    entries = []
    for line in transcript.read_text(encoding="utf-8").splitlines():
        if line.startswith(OUTPUT):
            entries[-1][1].append(line.rstrip())
        else:
            entries.append((line, [] if line.startswith("$ ") else None))
    return entries


def fresh_directory(parent):
    directory = Path(parent) / "bench"
    (directory / "demo").mkdir(parents=True)
    shutil.copytree(ROOT / "demo" / "reels", directory / "demo" / "reels")
    return directory


def run(transcript, winchbook):
    """[(line, expected, said)] for every entry of the transcript."""
    with tempfile.TemporaryDirectory() as parent:
        directory = fresh_directory(parent)
        return [
            (line, expected, None if expected is None else say(line[2:], directory, winchbook))
            for line, expected in read(transcript)
        ]


def difference(expected, said):
    import difflib

    return list(difflib.unified_diff(expected, said, "expected", "said", lineterm="", n=1))


def main():
    arguments = sys.argv[1:]
    approving = arguments[:1] == ["--approve"]
    if approving:
        refuse_approval_in_ci()
        arguments = arguments[1:]
    winchbook = Path(arguments[0]).resolve()
    transcripts = [Path(a) for a in arguments[1:]] or sorted(HERE.glob("*.transcript"))
    report = Report()
    for transcript in transcripts:
        entries = run(transcript, winchbook)
        if approving:
            lines = [part for line, _, said in entries for part in [line, *(said or [])]]
            transcript.write_text("\n".join(lines) + "\n", encoding="utf-8")
            print(f"approved {transcript.name}")
            continue
        for line, expected, said in entries:
            if expected is not None:
                report.check(f"{transcript.stem}: {line[2:]}", difference(expected, said))
    if not approving:
        report.leave()


if __name__ == "__main__":
    main()
