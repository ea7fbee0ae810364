#!/usr/bin/env python3
"""The rooms of src/, who may know whom, and which room a library belongs to."""

import re
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import ROOT, Report  # noqa: E402

# room: the rooms whose headers it may include, besides its own and base
MAY_INCLUDE = {
    "base": set(),
    "xml": set(),
    "record": set(),
    "document": set(),
    "text": set(),
    "photo": set(),
    "picture": {"photo"},  # a program of its own: the decoders' libraries are in no other
    "words": {"xml"},
    "tabular": set(),
    "seal": set(),
    "archive": set(),
    "recordfile": {"xml", "record", "seal"},
    "knowledge": {"xml", "tabular"},
    "assess/*": {"record", "knowledge"},
    "assess/advice": {"record", "knowledge", "assess/*"},
    "assess": {"record", "knowledge", "assess/*"},
    "report": {"record", "assess", "assess/*", "document", "words", "xml"},
    "layout": {"document", "text"},
    "pdf": {"layout", "text"},
    "library": {"xml", "record", "recordfile", "knowledge", "words", "text"},
    "plain": {"document"},
    "forms": {"document", "library"},
    "json": set(),
    "answers": {
        "forms", "json", "library", "record", "recordfile", "knowledge", "assess", "assess/*", "report",
        "document", "words", "tabular", "photo", "seal",
    },
    "daybook": {
        "forms", "library", "xml", "record", "recordfile", "knowledge", "assess", "assess/*", "words",
        "photo", "seal",
    },
    "app": {
        "forms", "json", "answers", "library", "xml", "record", "recordfile", "knowledge", "assess",
        "assess/*", "report", "document", "layout", "text", "pdf", "words", "photo", "seal", "archive",
    },
    "catalogue": {"forms", "answers", "daybook", "app", "assess/*", "record"},
    "cli": {"catalogue", "document", "forms", "json", "library", "plain", "xml"},
    "": {"cli", "library"},
}

# a library's headers: the only rooms that may include them
LIBRARY_ROOMS = {
    r"CLI/|CLI\.hpp": {"cli"},
    r"hpdf": {"pdf"},
    r"hb\.h|hb-": {"text"},
    r"unicode/(calendar|coll|dcfmtsym|decimfmt|dtptngn|datefmt|dtfmtsym|gregocal|listformatter|measfmt|"
    r"measunit|measure|msgfmt|number|numfmt|numsys|plurfmt|plurrule|reldatefmt|rbnf|selfmt|simpletz|"
    r"smpdtfmt|timezone|u(cal|col|dat|listformatter|msg|num|pluralrules)\w*\.h|unirepl|ustdtptn)":
        {"words"},
    r"unicode/": {"text", "words"},
    r"libxml/": {"xml"},
    r"pugixml": {"xml", "recordfile"},
    r"jpeglib|jerror|turbojpeg|jmorecfg": {"photo", "picture"},
    r"png\.h|libheif/|webp/|tiff|lcms2|stb_|seccomp": {"picture"},
    r"qpdf/": {"archive"},
    r"nettle/": {"seal"},
    r"qrencode": {"seal", "layout"},
    r"libdeflate": {"pdf"},
    r"date/": {"base"},
    r"nlohmann/": {"json"},
}

# The shape of a file lives where it is read and written: a room, or files of one.
NAMED_IN = {
    r"\bpugi::": {"xml", "recordfile", "knowledge", "report/template.cc", "words/catalogue_file.cc"},
}
# Included by one file alone: it takes longer to compile than all the rest of its room.
INCLUDED_ONCE = {r"CLI/": "cli/read_command_line.cc", r"nlohmann/": "json/json.h"}
# Code lines of a room at most; the folders of report are counted by themselves.
MOST_LINES = 9000
MOST_LINES_OF = {"app": 2000}

INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]', re.MULTILINE)


def room_of(relative):
    """The room of a path below src: its directory, one level deep (two below assess)."""
    parts = relative.parts[:-1]
    if parts[:1] == ("assess",):
        return "/".join(parts[:2])
    return parts[0] if parts else ""


def allowed(room):
    if room in MAY_INCLUDE:
        return MAY_INCLUDE[room]
    if room.startswith("assess/"):
        return MAY_INCLUDE["assess/*"]
    return None


def faults_in(source_root):
    """Every include below `source_root` that the tables forbid, as file:line sentences."""
    faults = []
    for path in sorted(source_root.rglob("*")):
        if path.suffix not in {".h", ".cc"}:
            continue
        relative = path.relative_to(source_root)
        room = room_of(relative)
        may = allowed(room)
        if may is None:
            faults.append(f"{relative}: '{room}' is not a room of this house")
            continue
        text = path.read_text(encoding="utf-8")
        for match in INCLUDE.finditer(text):
            place = f"{relative}:{text.count(chr(10), 0, match.start()) + 1}"
            bracket, header = match.groups()
            if bracket == "<":
                for pattern, rooms in LIBRARY_ROOMS.items():
                    if re.match(pattern, header):
                        if room not in rooms:
                            faults.append(f"{place}: <{header}> belongs to {sorted(rooms)} only")
                        break
                continue
            if "/" not in header or not (source_root / header).exists():
                faults.append(f'{place}: "{header}" is not a path below src/')
                continue
            other = room_of(Path(header))
            if other in {room, "base"} or other in may:
                continue
            if other.startswith("assess/") and "assess/*" in may:
                continue
            faults.append(f"{place}: {room or 'main'} may not include {other}")
    return faults


def naming_faults(source_root):
    """Names of a library where its room's own types should stand, and includes that cost too much."""
    faults = []
    for path in sorted(source_root.rglob("*.[hc]*")):
        relative = path.relative_to(source_root)
        text = path.read_text(encoding="utf-8")
        for pattern, places in NAMED_IN.items():
            found = re.search(pattern, text)
            if found and room_of(relative) not in places and str(relative) not in places:
                line = text.count("\n", 0, found.start()) + 1
                faults.append(f"{relative}:{line}: {found.group(0)} is named in {sorted(places)} only")
        for pattern, only in INCLUDED_ONCE.items():
            if str(relative) != only and re.search(rf"#\s*include\s*<{pattern}", text):
                faults.append(f"{relative}: <{pattern}…> is included by {only} only")
    return faults


def code_lines(text):
    """Lines that are neither blank nor a comment."""
    lines = (line.strip() for line in text.splitlines())
    return sum(1 for line in lines if line and not line.startswith("//"))


def size_faults(source_root):
    """Rooms that have grown too large to be held in the head."""
    sizes = {}
    for path in sorted(source_root.rglob("*.[hc]*")):
        parts = path.relative_to(source_root).parts[:-1]
        room = "/".join(parts[:2]) if parts[:1] in {("report",), ("assess",)} else "/".join(parts[:1])
        sizes[room] = sizes.get(room, 0) + code_lines(path.read_text(encoding="utf-8"))
    return [f"{room} has {size} lines of code, at most {MOST_LINES_OF.get(room, MOST_LINES)}"
            for room, size in sorted(sizes.items()) if size > MOST_LINES_OF.get(room, MOST_LINES)]


def own_header_faults(source_root):
    """x.cc includes x.h before anything else, so that every header stands on its own."""
    faults = []
    for path in sorted(source_root.rglob("*.cc")):
        header = path.with_suffix(".h")
        if not header.exists():
            continue
        first = INCLUDE.search(path.read_text(encoding="utf-8"))
        expected = str(header.relative_to(source_root))
        if not first or first.group(2) != expected:
            faults.append(f'{path.relative_to(source_root)}: does not include "{expected}" first')
    return faults


def faults_in_small_house(files):
    return in_small_house(files, faults_in)


def in_small_house(files, check):
    """What `check` finds in a house made of `files` ({path: text}), to show that it bites."""
    with tempfile.TemporaryDirectory() as directory:
        for name, text in files.items():
            path = Path(directory) / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8")
        return check(Path(directory))


def main():
    report = Report()
    source_root = ROOT / "src"
    report.check("includes go the allowed way, libraries stay in their rooms", faults_in(source_root))
    report.check("every source file includes its own header first", own_header_faults(source_root))
    report.check("each library's names stay where its files are read and written", naming_faults(source_root))
    report.check("no room has grown too large", size_faults(source_root))

    headers = {"record/record.h": "", "answers/a.h": "", "daybook/a.h": "", "layout/page.h": "", "assess/tray/tray.h": "", "picture/read.h": ""}
    for wrong, text in {
        "record/a.cc": '#include "layout/page.h"\n',
        "assess/care/a.cc": '#include "assess/tray/tray.h"\n',
        "layout/a.cc": "#include <hpdf.h>\n",
        "app/a.cc": "#include <CLI/CLI.hpp>\n",
        "pdf/a.cc": "#include <hb.h>\n",
        "report/a.cc": "#include <unicode/msgfmt.h>\n",
        "layout/b.cc": "#include <jpeglib.h>\n",
        "daybook/a.cc": '#include "answers/a.h"\n',
        "answers/b.cc": '#include "daybook/a.h"\n',
        "knowledge/a.cc": "#include <date/date.h>\n",
        "photo/a.cc": "#include <libheif/heif.h>\n",
        "app/b.cc": '#include "picture/read.h"\n',
        "util/a.cc": "\n",
    }.items():
        report.expect(
            f"the include rule refuses {wrong} with {text.strip() or 'a room of its own'}",
            faults_in_small_house({**headers, wrong: text}),
            "it was accepted",
        )
    report.expect("a name that stands elsewhere is seen", in_small_house(
        {"daybook/a.cc": "pugi::xml_node node;\n"}, naming_faults), "it was accepted")
    report.expect("a second file that includes CLI11 is seen", in_small_house(
        {"cli/b.cc": "#include <CLI/App.hpp>\n"}, naming_faults), "it was accepted")
    report.expect("a room that has grown is seen", in_small_house(
        {"app/a.cc": "int a;\n" * 2001}, size_faults), "it was accepted")
    report.expect(
        "the include rule accepts what the table allows",
        not faults_in_small_house(
            {**headers, "app/a.cc": '#include "layout/page.h"\n#include "assess/tray/tray.h"\n'}
        ),
    )
    report.leave()


if __name__ == "__main__":
    main()
