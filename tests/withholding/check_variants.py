#!/usr/bin/env python3
"""What a person would write of somebody who is withheld never reaches a stranger in silence.

    check_variants.py WINCHBOOK SCRATCH

Made-up people stand in a record, withheld from strangers. Variants of their names, addresses and
contacts are made by rule (plurals, genitives, compounds, accents taken off, streets without their
number, numbers grouped otherwise), and each is written into a text of the record: into every kind
of text that the schema has and the demo's records hold, in turn. Then the statement is issued for a
stranger. It must be refused (exit 1), or asked about by a warning that quotes it, or the finished
file must not hold it, by tools that are not ours: pdftotext, and every string, stream and attached
file as qpdf tells them, and exiftool. The other half: none of two hundred records with clean
sentences is refused.
"""

import itertools
import os
import re
import shutil
import subprocess
import sys
import unicodedata
import xml.etree.ElementTree as ET
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import ROOT, Report  # noqa: E402

NS = "{urn:winchbook:record:1}"
XS = "{http://www.w3.org/2001/XMLSchema}"
DATE = "2026-10-19"
# text types of the schema, and what never goes to a stranger as it stands
TEXTS = {"r:text", "r:words", "r:prose", "r:line", "r:note"}
# who made it and who mends it is for everybody: what stands there is asked about, and looked for nowhere
OPEN = {("maker", "place"), ("maker", "name"), ("bench", "place"), ("bench", "name"), ("bench", "address"),
        ("reel", "model"), ("reel", "sold-by")}  # fmt: skip
HELD_BACK = {"name", "short-name", "address", "contact", "who", "story", "stand-in", "salt"}

PEOPLE = [
    ("Ada Quillfeather", "Ada", "12 Gannet Road, Tolland Quay, TQ4 7ZB", "+44 1539 720 456"),
    ("Seán O'Dwyer", "Seán", "Lobster Cottage, 3 Saltpan Lane, Marlhaven", "sodwyer@gannetmail.example"),
    ("Jürgen Böhmsdorfer", "Jürgen", "Lindenweg 5, 44871 Hinterau", "0049 2331 55 66 77"),
    ("Wilhelmina Starbeck", "Mina", "7 Cordwain Row, Ellershaw", "www.starbeckhouse.example"),
    ("Tamsin Polglaze", "Tam", "The Old Netloft, Zawn Street, Porthenys PZ9 4XW", "@polglazetam"),
    ("Ingrid Ødegård", "Ingrid", "Skolevik 22, 5999 Ytterøy", "+47 55 98 76 54"),
]


def bare(text):
    text = text.replace("ø", "o").replace("Ø", "O")
    return "".join(c for c in unicodedata.normalize("NFD", text) if not unicodedata.combining(c))


def variants_of(person):
    """What somebody would write; each a text that tells who it was."""
    name, short, address, contact = person
    first, last = name.split()[0], name.split()[-1]
    for word in (last, short):
        yield from (word, f"{word}s", f"{word}'s", f"{word}’s", f"{word}s’", word.lower(), word.upper(), bare(word))
    plain = last.replace("'", "")
    yield from (f"{plain}es", f"{plain}en", f"{plain}-Reel", f"{plain}Box", f"{first[0]}. {last}", f"{last}, {first}",
                f"the {plain}s", plain, plain.lower(), f"{plain[:5]}-{plain[5:]}", f"{plain[:4]}\u00ad{plain[4:]}",
                f"{plain[:5]}<emphasis>{plain[5:]}</emphasis>")
    for part in address.split(", "):
        words = part.split()
        if len(words) > 1 or len(part) > 7:
            yield part
            yield part.lower()
        street = " ".join(w for w in words if not any(c.isdigit() for c in w))
        if len(street.split()) > 1:
            yield street
            yield street.replace("Road", "Rd").replace("Lane", "Ln").replace("Street", "St.")
    for code in re.findall(r"[A-Z]{2}\d \d[A-Z]{2}", address):
        yield from (code, code.replace(" ", ""), code.lower())
    digits = re.sub(r"\D", "", contact)
    if len(digits) > 7 and "@" not in contact:
        local = "0" + digits[2 if contact.startswith("+") else 4 :]
        yield from (contact, digits, f"{local[:5]} {local[5:]}", f"{local[:4]}/{local[4:]}", "-".join(re.findall("..?", local)),
                    f"({local[:5]}) {local[5:]}", ".".join(re.findall("...?", local)))
    elif "@" in contact:
        yield from (contact, contact.upper(), contact.lstrip("@").split("@")[0])
    else:
        yield from (contact, contact.removeprefix("www."), f"https://{contact.removeprefix('www.')}/reels")


# ---- where it is written -----------------------------------------------------------------------


def text_elements():
    """Names of the elements that hold words, from the schema."""
    root = ET.parse(ROOT / "schemas/record-1.xsd").getroot()
    names = {e.get("name") for e in root.iter(f"{XS}element") if e.get("type") in TEXTS and e.get("name")}
    return names - HELD_BACK


def places(record):
    """(element, offset behind its words) for the first of each kind under each parent."""
    names = text_elements()
    found = {}
    for match in re.finditer(r"<([a-z-]+)>([^<>]*[^<>\s][^<>]*)</\1>", record):
        if match.group(1) not in names or match.group(1) == "file":
            continue
        parent = re.findall(r"<([a-z-]+)(?: [^<>]*)?>(?![^<]*</\1>)", record[max(0, match.start() - 400) : match.start()])
        key = (parent[-1] if parent else "", match.group(1))
        found.setdefault(key, match.end(2))
    return found


def with_people(record):
    """The record with the made-up people, none of whom a stranger may see."""
    people = ""
    for number, (name, short, address, contact) in enumerate(PEOPLE):
        people += (f'<person id="secret-{number}"><name>{name}</name><short-name>{short}</short-name>'
                   f"<stand-in>somebody</stand-in><address>{address}</address><contact>{contact}</contact>"
                   f"<named-to>owner</named-to><salt>{number:032x}</salt></person>")  # fmt: skip
    return record.replace("</people>", people + "</people>", 1)


# ---- what came of it -----------------------------------------------------------------------------


def run(*command):
    return subprocess.run(command, capture_output=True, check=True).stdout


def everything_in(pdf, scratch):
    """All that can be read in a finished file."""
    parts = [run("pdftotext", "-layout", pdf, "-"), run("pdftotext", "-raw", pdf, "-"), run("exiftool", pdf),
             run("qpdf", "--json", "--json-key=qpdf", pdf)]  # fmt: skip
    attached = scratch / f"{pdf.stem}.xml"
    run("pdfdetach", "-save", "1", "-o", attached, pdf)
    parts.append(attached.read_bytes())
    text = "\n".join(part.decode("utf-8", "replace") for part in parts)
    return unicodedata.normalize("NFKC", text.replace("\u00ad", ""))


def shown(variant):
    """A variant as it is read: without elements and signs that do not show."""
    return unicodedata.normalize("NFKC", re.sub(r"<[^>]*>|\u00ad", "", variant))


class Bench:
    def __init__(self, winchbook, scratch, reel):
        self.winchbook, self.scratch, self.reel = winchbook, scratch, ROOT / "demo/reels" / reel
        self.record = with_people((self.reel / "record.xml").read_text())
        # An element of the same name may hold a word of a closed list: what the schema refuses is no text.
        self.places = {key: at for number, (key, at) in enumerate(sorted(places(self.record).items()))
                       if key not in OPEN and "[schema]" not in self.issue(2000 + number, at, " indeed")[0].stderr}  # fmt: skip

    def issue(self, number, at, words):
        folder = self.scratch / f"{self.reel.name}-{number}"
        folder.mkdir()
        shutil.copytree(self.reel / "photos", folder / "photos", copy_function=os.link)
        (folder / "record.xml").write_text(self.record[:at] + words + self.record[at:])
        pdf = self.scratch / f"{self.reel.name}-{number}.pdf"
        done = subprocess.run([self.winchbook, "issue", folder, "--document", "collector-statement", "--for", "stranger",
                               "--date", DATE, "-o", pdf], capture_output=True, text=True)  # fmt: skip
        shutil.rmtree(folder)
        return done, pdf

    def leak(self, number, key, variant):
        """Empty when nothing leaks."""
        done, pdf = self.issue(number, self.places[key], f" by {variant} it was")
        said = unicodedata.normalize("NFKC", done.stderr.replace("\u00ad", ""))
        if done.returncode == 1 and "withheld-survives" in said:
            return ""
        if "<" in variant and "[schema]" in done.stderr:  # no element may stand there
            return ""
        if done.returncode != 0:
            return f"{variant!r} in {key}: exit {done.returncode}: {done.stderr[:300]}"
        held = everything_in(pdf, self.scratch)
        pdf.unlink()
        words = shown(variant)
        if not re.search(r"(?<!\w)" + re.escape(words) + r"(?!\w)", held) or "may tell what is withheld" in said:
            return ""
        return f"{variant!r} in {key} leaked in silence"


CLEAN = [
    "It runs true and the click is crisp.", "A drop of oil on each bearing, no more.", "Seen at a fair in a box of lures.",
    "The spool was rewound with soft backing.", "Two screws are of a later pattern.", "Bought with a landing net and two casts.",
    "The foot was filed by somebody long ago.", "Nothing rattles, and the handle turns freely.", "Its rim has a bruise of 3 mm.",
    "Numbers 4417 and 1539 are stamped inside.", "It came in a tin with a quill float and feathers.", "A road, a quay and a lane.",
]  # fmt: skip


def main():
    winchbook, scratch = Path(sys.argv[1]).resolve(), Path(sys.argv[2])
    shutil.rmtree(scratch, ignore_errors=True)
    scratch.mkdir(parents=True)
    report = Report()
    benches = [Bench(winchbook, scratch, reel) for reel in ("dunlin-2", "wharfinger-5")]
    variants = [v for person in PEOPLE for v in dict.fromkeys(variants_of(person))]
    jobs = []
    for number, variant in enumerate(itertools.islice(itertools.cycle(variants), 520)):
        bench = benches[number % 8 == 0]
        keys = sorted(bench.places)
        jobs.append((bench, number, keys[number % len(keys)], variant))
    with ThreadPoolExecutor(2) as pool:
        leaks = [leak for leak in pool.map(lambda job: job[0].leak(*job[1:]), jobs) if leak]
        report.check(f"none of {len(jobs)} variants of {len(variants)} kinds leaks, in "
                     f"{sum(len(b.places) for b in benches)} kinds of text", leaks)  # fmt: skip
        open_name = benches[0].record.replace("<model>", "<model>Starbeck ", 1)
        at = open_name.find("</people>")
        benches[0].record = open_name
        done, _ = benches[0].issue(3000, at, "")
        report.expect("a withheld name in the model's is asked about",
                      done.returncode == 0 and '"starbeck"' in done.stderr, done.stderr[:400])
        benches[0].record = benches[0].record.replace("<model>Starbeck ", "<model>", 1)
        clean = [(bench, 1000 + n, sorted(bench.places)[n % len(bench.places)], CLEAN[n % len(CLEAN)])
                 for n in range(200) for bench in [benches[n % 8 == 0]]]  # fmt: skip

        def refused(job):
            bench, number, key, words = job
            done, _ = bench.issue(number, bench.places[key], f" {words}")
            return "" if done.returncode == 0 else f"{words!r} in {key}: {done.stderr[:300]}"

        report.check("none of 200 clean records is refused", [r for r in pool.map(refused, clean) if r])
    report.leave()


main()
