#!/usr/bin/env python3
"""The schemas, by two validators that share no code: libxml2 (xmllint) and jing (its Xerces).

Every record, template and catalogue that should be valid is accepted by both; a small record spoilt
in one place at a time is refused by both; every element and attribute is documented.
"""

import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import ROOT, Report  # noqa: E402

SCHEMAS = ROOT / "schemas"
RECORD = SCHEMAS / "record-1.xsd"
SMALL = ROOT / "tests" / "recordfile" / "records" / "small.xml"
XS = "{http://www.w3.org/2001/XMLSchema}"

# types whose values are measures: their elements name the unit
MEASURES = {
    "millimetres", "square-millimetres", "metres", "grams", "newtons", "hours", "minutes", "percent",
    "ratio", "reading", "number", "count", "whole", "pixels", "index-weight",
}  # fmt: skip

# what is wrong: (text of the small record, what replaces its first occurrence)
SPOILT = {
    "another root": (r"reel-record", "rod-record", 0),
    "an element the schema does not know": ("<model>", "<modell>x</modell><model>"),
    "an element out of order": ("<kind>multiplier</kind>\n    <brake>star</brake>",
                                "<brake>star</brake>\n    <kind>multiplier</kind>"),
    "a section missing": ("<fittings>.*</fittings>", ""),
    "a version the schema does not know": ('version="1" lang', 'version="99" lang'),
    "no language": (' lang="en-GB"', ""),
    "another namespace": ("urn:winchbook:record:1", "urn:winchbook:record:one"),
    "a kind that is none": ("<kind>multiplier</kind>", "<kind>multiplyer</kind>"),
    "an id used twice": ('person id="nell"', 'person id="ines"'),
    "an id used for two kinds of thing": ('place id="pl-foot"', 'place id="nell"'),
    "a reference to nobody": ('<holder ref="nell"/>', '<holder ref="nobody"/>'),
    "a reference to another kind of thing": ('<piece ref="pinion-old"/><place',
                                             '<piece ref="pl-foot"/><place'),
    "a donor that is not there": ('<donor ref="no-30"/>', '<donor ref="no-31"/>'),
    "a photograph that is not there": ('<cover ref="ph-after"/>', '<cover ref="ph-none"/>'),
    "a date in words": ("<taken-in>2026-03-03</taken-in>", "<taken-in>3 March 2026</taken-in>"),
    "a length in words": ("<length>98.4</length>", "<length>98.4 mm</length>"),
    "a decimal comma": ("<length>98.4</length>", "<length>98,4</length>"),
    "a weight below nothing": ("<weight>612</weight>", "<weight>-612</weight>"),
    "a weight without end": ("<weight>612</weight>", "<weight>INF</weight>"),
    "a share over 100": ("<share>85</share>", "<share>850</share>"),
    "money without a currency": ("180.00 GBP", "180.00"),
    "money in a currency in small letters": ("180.00 GBP", "180.00 gbp"),
    "a digest cut short": ("<sha256>0", "<sha256>"),
    "a count of half a piece": ("<taken-off>1<", "<taken-off>0.5<"),
    "a name that is empty": ("<name>Foot</name>", "<name></name>"),
    "a state that is none": ("<state>worn-through</state>", "<state>worn</state>"),
    "a photograph without pixels": ("<width>32</width>", "<width>0</width>"),
}  # fmt: skip


def spoil(text, row):
    old, new, *count = row
    pattern = old if ".*" in old else re.escape(old)
    spoilt, changes = re.subn(pattern, lambda _: new, text, count=count[0] if count else 1,
                              flags=re.DOTALL)  # fmt: skip
    return spoilt if changes else None


def xmllint_refuses(schema, files):
    """{file: first complaint} of the files libxml2 refuses."""
    refused = {}
    for file in files:
        result = subprocess.run(["xmllint", "--noout", "--nonet", "--schema", schema, file],
                                capture_output=True, text=True)  # fmt: skip
        if result.returncode != 0:
            refused[str(file)] = (result.stderr.strip().splitlines() or ["?"])[0]
    return refused


def jing_refuses(schema, files):
    """{file: first complaint} of the files jing refuses, in one run."""
    result = subprocess.run(["jing", schema, *files], capture_output=True, text=True)
    said = (result.stdout + result.stderr).strip()
    refused = {}
    for file in map(str, files):
        complaints = [line for line in said.splitlines() if line.startswith(f"{file}:")]
        if complaints:
            refused[file] = complaints[0]
    if result.returncode != 0 and not refused:
        refused = {str(file): said or "jing failed" for file in files}
    return refused


VALIDATORS = {"xmllint": xmllint_refuses, "jing": jing_refuses}


def documentation(node):
    return " ".join(
        (d.text or "").strip() for d in node.findall(f"{XS}annotation/{XS}documentation")
    )


def undocumented(tree):
    """Named elements and attributes that do not say what they mean, with an example and a unit.

    An attribute may leave it to its type.
    """
    faults = []
    types = {node.get("name"): node for node in tree if node.tag.endswith("Type")}
    for node in tree.iter():
        if node.tag not in {XS + "element", XS + "attribute"} or "name" not in node.attrib:
            continue
        type_name = (node.get("type") or "").split(":")[-1]
        words = documentation(node)
        if node.tag == XS + "attribute" and not words and type_name in types:
            words = documentation(types[type_name])
        what = f"{node.tag[len(XS):]} {node.get('name')}"
        if len(words) < 8:
            faults.append(f"{what}: says nothing")
        elif "Example:" not in words:
            faults.append(f"{what}: gives no example")
        elif type_name in MEASURES and "unit" not in words.lower():
            faults.append(f"{what}: names no unit")
    return faults


def schema_of(file):
    """The schema named after the file's namespace, urn:winchbook:<what>:<version>."""
    namespace = re.match(r"\{urn:winchbook:([\w-]+):(\d+)\}", ElementTree.parse(file).getroot().tag)
    return SCHEMAS / f"{namespace.group(1)}-{namespace.group(2)}.xsd" if namespace else None


def check_valid_files(report, files):
    by_schema = {}
    for file in files:
        by_schema.setdefault(schema_of(file), []).append(file)
    for schema, group in sorted(by_schema.items(), key=str):
        if schema is None or not schema.exists():
            report.check(f"{group[0].name} has a schema", [f"{f} has none" for f in group])
            continue
        for name, refuses in VALIDATORS.items():
            refused = refuses(schema, group)
            for file in group:
                complaint = refused.get(str(file))
                report.check(f"{file.relative_to(ROOT)} keeps {schema.name} ({name})",
                             [complaint] if complaint else [])  # fmt: skip


def check_spoilt_records(report):
    text = SMALL.read_text(encoding="utf-8")
    with tempfile.TemporaryDirectory() as directory:
        files = {}
        for number, (what, row) in enumerate(SPOILT.items()):
            spoilt = spoil(text, row)
            if spoilt is None:
                report.check(f"a record with {what} is refused",
                             [f"the small record no longer holds {row[0]!r}"])  # fmt: skip
                continue
            files[what] = Path(directory) / f"{number}.xml"
            files[what].write_text(spoilt, encoding="utf-8")
        refused = {n: refuses(RECORD, list(files.values())) for n, refuses in VALIDATORS.items()}
        for what, file in files.items():
            report.check(f"a record with {what} is refused",
                         [f"{n} accepts it" for n in VALIDATORS if str(file) not in refused[n]])


def main():
    report = Report()
    schemas = sorted(SCHEMAS.glob("*.xsd"))
    for schema in schemas:
        report.check(f"every element of {schema.name} is documented", undocumented(ElementTree.parse(schema).getroot()))
    bare = RECORD.read_text(encoding="utf-8").replace("Unit: grams", "Grams", 1)
    report.expect("a schema that forgets a unit is noticed",
                  len(undocumented(ElementTree.fromstring(bare.encode())))
                  > len(undocumented(ElementTree.parse(RECORD).getroot())))
    check_valid_files(report, [
        SMALL,
        *sorted(ROOT.glob("demo/reels/*/record.xml")),
        *sorted(ROOT.glob("demo/reels/*/editions.xml")),
        *sorted(ROOT.glob("report-templates/**/*.xml")),
        *sorted(ROOT.glob("shared/**/*.xml")),
    ])  # fmt: skip
    records = len(list(ROOT.glob("demo/reels/*/record.xml")))
    report.expect("both demo reels have a record", records >= 2, f"{records} found")
    check_spoilt_records(report)
    report.leave()


if __name__ == "__main__":
    main()
