#!/usr/bin/env python3
"""A whole job, drop-off to hand-back, through commands alone, beside the heirloom of the demo.

    check_whole_job.py WINCHBOOK

Runs whole_job.sh in an empty folder, and then asks
  - whether the record it built means what the demo's record means, element by element;
  - whether `check` finds it in order, and every document can be issued from it;
  - whether the program reads both alike: the words of each document, and what `grade`, `date` and
    `tray` say.

What may differ between the two records, and why:
  - salts are secrets drawn at random, and with them what the seal prints;
  - ids to which nothing refers (custody, fittings, faults, steps), which nobody prints;
  - the names of the photographs' files; and that the demo's are as a camera left them, so that the job
    prints them without the camera's data and keeps them as its originals, by the same fingerprint;
  - the order of people, pieces, fittings, marks, findings and tray lines, which follows the work;
  - an element that says what its absence says, too (a count of 1, "no" to a question);
  - the day of a single entry, which the demo writes where it is not that of the whole;
  - a name in a sentence of somebody who is named to anyone: pointed at or plain, it is printed alike.
"""

import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ET
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import ROOT, Report  # noqa: E402

DEMO = ROOT / "demo/reels/skerry-40"
DATE = "2026-06-19"
NS = "{urn:winchbook:record:1}"

UNREFERRED = {"held-by", "gap", "fitting", "fault", "step"}
# what bears the day of its entry
OF_ONE_DAY = {
    "found", "left", "place-finding", "fault", "flag", "step", "cleaning", "line", "advice", "drag",
    "care",
}  # fmt: skip
ANY_ORDER = {"people", "donors", "pieces", "fittings", "markings", "findings", "tray"}
DEFAULTS = {
    "quantity": "1", "count": "1", "role": "part", "consumable": "no", "may-be-empty": "no",
    "captive-spring": "no", "spring-loose": "no", "reel-altered": "no", "used": "yes",
    "with-premium": "no", "box": "no", "same-maker": "no", "held": "both", "named-to": "owner",
}  # fmt: skip
# document: options of issue
DOCUMENTS = {
    "keepsake": [],
    "collector-statement": ["--for", "insurer"],
    "value-statement": ["--for", "owner"],
    "intake-receipt": [],
    "hand-back-receipt": [],
    "bench-sheet": [],
    "care-card": [],
    "labels": [],
}


def local(element):
    return element.tag.removeprefix(NS)


def folded(text):
    return re.sub(r"[ \t\r]*\n[ \t\r]*|[ \t]+", " ", text or "")


class Meaning:
    """What a record says, as nested tuples that can be compared."""

    def __init__(self, root):
        self.to_anyone = {
            person.get("id")
            for person in root.iterfind(f"{NS}people/{NS}person")
            if person.findtext(f"{NS}named-to") == "anyone"
        }
        self.tree = self.of(root)

    def of(self, element):
        name = local(element)
        if name == "photo" and element.find(f"{NS}original") is not None:
            element.find(f"{NS}sha256").text = element.findtext(f"{NS}original/{NS}sha256")
            element.remove(element.find(f"{NS}original"))
        id_ = None if name in UNREFERRED else element.get("id")
        ref = element.get("ref")
        words, children = [folded(element.text)], []
        for child in element:
            if local(child) == "person" and child.get("ref") in self.to_anyone and child.text:
                words[-1] += child.text
            elif name == "photo" and local(child) == "file":
                pass
            elif local(child) in ("on", "left-on") and name in OF_ONE_DAY:
                pass
            elif local(child) != "salt" and (child.text or "") != DEFAULTS.get(local(child)):
                children.append(self.of(child))
                words.append("")
            words[-1] += folded(child.tail)
        if not "".join(words).strip():
            words = []
        if name in ANY_ORDER:
            children.sort(key=repr)
        lines = [one.strip() if len(words) == 1 else one for one in words]
        if lines:
            lines[0], lines[-1] = lines[0].lstrip(), lines[-1].rstrip()
        return (name, id_, ref, tuple(lines), tuple(children))


def differences(one, other, where="", most=12):
    """The first places in which two meanings differ, each in a line."""
    found = []
    name = one[0] if not one[1] else f"{one[0]}[{one[1]}]"
    here = f"{where}/{name}"
    for what, first, second in zip(("name", "id", "ref", "words"), one, other):
        if first != second:
            found.append(f"{here}: {what} {first!r} here, {second!r} in the demo")
    ours, theirs = list(one[4]), list(other[4])
    if one[0] in ANY_ORDER:
        common = set(ours) & set(theirs)
        ours = [child for child in ours if child not in common]
        theirs = [child for child in theirs if child not in common]
    for first, second in zip(ours, theirs):
        if first != second:
            found += differences(first, second, here, most)
    for left, told in ((ours[len(theirs):], "only here"), (theirs[len(ours):], "only in the demo")):
        found += [f"{here}: {told}: {repr(child)[:160]}" for child in left]
    return found[:most]


def said(winchbook, *arguments):
    return subprocess.run([winchbook, *map(str, arguments)], capture_output=True, text=True,
                          check=False, cwd=ROOT)  # fmt: skip


def failure(ran):
    return [] if ran.returncode == 0 else [f"exit code {ran.returncode}: {ran.stderr}"]


def without_secrets(text):
    """Without what depends on the salts: fingerprints, roots and codes."""
    text = re.sub(r"\b[0-9a-f]{64}\b", "DIGEST", text)
    text = re.sub(r"\b[0-9A-HJKMNP-TV-Z]{4}([ -])[0-9A-HJKMNP-TV-Z]{4}\1[0-9A-HJKMNP-TV-Z*~$=U]{4}\b",
                  "CODE", text)  # fmt: skip
    return re.sub(r"(?mi)^.*(SHA-256|fingerprint|square code).*\n", "", text)


def without_unreferred(text):
    """JSON without the ids that nobody prints, and with its lines in one order."""
    text = re.sub(r'"(fitting|id|fault|event)": "(fi|fa|le|cu|st)-[^"]*"', r'"\1": "…"', text)
    return "\n".join(sorted(line.strip().rstrip(",") for line in text.splitlines()))


def in_any_order(line):
    """A line with the things it lists in one order: they stand as the record has them."""
    lead, colon, listed = line.rpartition(": ")
    return lead + colon, sorted(re.split(", | and ", listed.rstrip(".")))


def different_lines(one, other):
    ours, theirs = one.splitlines(), other.splitlines()
    different = [(a, b) for a, b in zip(ours, theirs) if in_any_order(a) != in_any_order(b)]
    return [f"{a!r} here, {b!r} in the demo" for a, b in different][:6] + (
        [] if len(ours) == len(theirs) else [f"{len(ours)} lines here, {len(theirs)} in the demo"]
    )


def check_reading(report, winchbook, reel):
    for command in (["grade", "--json"], ["date"], ["tray"]):
        ours = said(winchbook, command[0], reel, *command[1:])
        theirs = said(winchbook, command[0], DEMO, *command[1:])
        report.check(f"winchbook {command[0]} says the same of both",
                     different_lines(without_unreferred(ours.stdout),
                                     without_unreferred(theirs.stdout))
                     + failure(ours) + failure(theirs))
    for document, options in DOCUMENTS.items():
        asked = ["--document", document, "--date", DATE, *options, "--dump", "words"]
        ours, theirs = said(winchbook, "issue", reel, *asked), said(winchbook, "issue", DEMO, *asked)
        wrong = different_lines(without_secrets(ours.stdout), without_secrets(theirs.stdout))
        report.check(f"the {document} reads the same", wrong + failure(ours) + failure(theirs))
        if ours.returncode == 0:
            pdf = reel.parent / f"{document}.pdf"
            made = said(winchbook, "issue", reel, *asked[:-2], "-o", pdf)
            report.expect(f"the {document} is issued", made.returncode == 0 and pdf.exists(),
                          made.stderr)


def main():
    winchbook = str(Path(sys.argv[1]).resolve())
    report = Report()
    with tempfile.TemporaryDirectory() as parent:
        reel = Path(parent) / "reel"
        ran = subprocess.run(
            ["sh", str(ROOT / "tests/writing/whole_job.sh"), winchbook, str(reel),
             str(DEMO / "photos")],
            capture_output=True, text=True, check=False, cwd=ROOT)  # fmt: skip
        report.expect("every command of the job is obeyed", ran.returncode == 0, ran.stderr[:2000])
        if (reel / "record.xml").exists():
            ours = Meaning(ET.parse(reel / "record.xml").getroot()).tree
            theirs = Meaning(ET.parse(DEMO / "record.xml").getroot()).tree
            report.check("the record means what the demo's means", differences(ours, theirs))
            looked = said(winchbook, "check", reel)
            report.expect("check finds it in order", looked.returncode == 0 and not looked.stderr,
                          looked.stderr)
            check_reading(report, winchbook, reel)
    report.leave()


if __name__ == "__main__":
    main()
