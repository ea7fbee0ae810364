#!/usr/bin/env python3
"""What lies where: the fixed top level, paths named in the documents, no path of one machine."""

import json
import re
import subprocess
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import ROOT, Report  # noqa: E402

TOP_LEVEL = {
    "CMakeLists.txt", "README.md", "DEVELOPERS.md", "LICENSE", "src", "schemas", "report-templates",
    "tests", "demo", "shared",
}  # fmt: skip
MUST_BE_THERE = {
    "CMakeLists.txt", "README.md", "DEVELOPERS.md", "LICENSE", "src", "schemas", "report-templates",
    "tests", "demo", ".ci", ".clang-format", ".clang-tidy", ".gitignore",
}  # fmt: skip

# Paths that exist on one machine only. Spelled in pieces so that this file does not hold them.
MACHINE_PATHS = re.compile(
    r"(?<![\w.}$])/(?:" + "|".join(["wo" "rk", "tm" "p", "ro" "ot", "ho" "me"]) + r")/[\w.-]"
    r"|\.\./sha" "red\b"
)
# The units that are told where the project lies; all others compile to the same in every folder, so that
# the compiler cache answers for them.
KNOW_THE_FOLDER = {"src/cli/place.cc", "tests/support/doctest_main.cc"}
DOCUMENTS = ("README.md", "DEVELOPERS.md", "tests/FIGURES.md")
MOST_WORDS_OF_DEVELOPERS = 3200
TEXT_FILES = {
    ".cc", ".h", ".md", ".py", ".sh", ".txt", ".xml", ".xsd", ".java", ".json", ".csv", ".cmake",
    ".transcript", "",
}  # fmt: skip


def tracked_files():
    """Paths below the root that are, or could be, committed."""
    listed = subprocess.run(
        ["git", "-C", ROOT, "ls-files", "-z", "--cached", "--others", "--exclude-standard"],
        check=True, capture_output=True,
    ).stdout.decode()  # fmt: skip
    return sorted(Path(name) for name in listed.split("\0") if name and (ROOT / name).exists())


def top_level_faults(files):
    names = {path.parts[0] for path in files}
    faults = [f"'{n}' does not belong" for n in names if n not in TOP_LEVEL and n[0] != "."]
    faults += [f"'{name}' is missing" for name in MUST_BE_THERE - names]
    return sorted(faults)


def machine_path_faults(text, name):
    return [
        f"{name}:{text.count(chr(10), 0, m.start()) + 1}: '{m.group(0)}' is a path of one machine"
        for m in MACHINE_PATHS.finditer(text)
    ]


def named_path_faults(text):
    """Paths in backquotes below a directory of the top level, or links, that do not exist."""
    named = set(re.findall(r"`([\w.-]+(?:/[\w.*<>-]+)*/?)`", text))
    named |= set(re.findall(r"\]\((?!https?:|#)([^)#]+)", text))
    faults = []
    for name in sorted(named):
        first = name.split("/")[0]
        is_path = "/" in name and (first in TOP_LEVEL or first == ".ci") or name in TOP_LEVEL
        if not is_path or first == "build" or "<" in name or name.startswith("demo/out"):
            continue
        if not (any(ROOT.glob(name.rstrip("/"))) if "*" in name else (ROOT / name).exists()):
            faults.append(f"`{name}` does not exist")
    return faults


def map_faults(text):
    """Rooms of src/ that DEVELOPERS.md does not name."""
    rooms = [p.name for p in sorted((ROOT / "src").iterdir()) if p.is_dir()]
    return [f"src/{r}/ is not in the map" for r in rooms if not re.search(rf"\b{r}/", text)]


def folder_faults(commands):
    """Units, besides those that may, to whose text a compile command hands the project's folder."""
    told = {one["file"] for one in commands if re.search(rf"-D\S*{re.escape(str(ROOT))}", one["command"])}
    return [f"{unit} is told where the project lies" for unit in sorted(told)
            if unit.removeprefix(f"{ROOT}/") not in KNOW_THE_FOLDER]  # fmt: skip


def length_faults(files):
    """Files of the program longer than twice the soft limit of 400 lines."""
    faults = []
    for path in files:
        if path.parts[0] == "src" and path.suffix in {".cc", ".h"}:
            lines = (ROOT / path).read_text(encoding="utf-8").count("\n")
            if lines > 800:
                faults.append(f"{path} has {lines} lines")
    return faults


def read(name):
    path = ROOT / name
    return path.read_text(encoding="utf-8") if path.exists() else ""


def main():
    report = Report()
    files = tracked_files()
    report.check("the top level holds what it should and nothing else", top_level_faults(files))
    report.expect(
        "the top-level check refuses a stranger",
        top_level_faults([*files, Path("tools/x.py")]) != top_level_faults(files),
    )

    faults = []
    for path in files:
        if path.suffix in TEXT_FILES and not (ROOT / path).is_symlink():
            faults += machine_path_faults((ROOT / path).read_text("utf-8", "replace"), path)
    report.check("no file names a path of one machine", faults)
    report.expect(
        "the path check refuses one",
        machine_path_faults("see " + "/" + "home/someone/reels", "x"),
    )

    developers, readme = read("DEVELOPERS.md"), read("README.md")
    for name in DOCUMENTS:
        text = read(name)
        report.check(f"every path named in {name} exists",
                     named_path_faults(text) if text else [f"there is no {name}"])
    report.expect("the path check of the documents refuses a dead path",
                  named_path_faults("see `src/nowhere/at_all.h`"))
    report.check("DEVELOPERS.md names the table of the figures",
                 [] if "`tests/FIGURES.md`" in developers else ["tests/FIGURES.md is not named"])
    words = len(developers.split())
    report.check("DEVELOPERS.md is read in fifteen minutes",
                 [f"it has {words} words"] if words > MOST_WORDS_OF_DEVELOPERS else [])
    report.check("DEVELOPERS.md maps every room of src/", map_faults(developers))
    report.check("README.md holds the two commands",
                 [f"'{c}' is missing" for c in ("sh demo/run.sh", "sh tests/run.sh")
                  if c not in readme])
    commands = json.loads(read("build/compile_commands.json") or "[]")
    report.check("nothing is compiled with the project's folder in it, but what must know it",
                 folder_faults(commands) if commands else ["there are no compile commands"])
    report.expect("a unit that is told the folder is seen",
                  folder_faults([{"file": "x.cc", "command": f'c++ -DPLACE="{ROOT}" -c x.cc'}]))
    report.check("no file of the program is twice as long as it should be", length_faults(files))
    report.leave()


if __name__ == "__main__":
    main()
