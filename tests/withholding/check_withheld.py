#!/usr/bin/env python3
"""Nothing that is withheld from a reader may be left anywhere in that reader's file.

    check_withheld.py WINCHBOOK SCRATCH DIRECTORY

DIRECTORY holds the demo documents <reel>-<document>.pdf; those whose template has another reader
than the owner are looked through, and so are a keepsake and a statement for an insurer and for a
stranger of every demo reel, written to SCRATCH. What must not be there is read from the full record by Python's
own XML reader; where it is looked for: every string of the decompressed file as qpdf tells it
(alternative text, bookmarks, titles), the XMP packet, the text of the pages (pdftotext), the attached
record (pdfdetach), and the pictures' own bytes. The digests and the root of their tree are reckoned
again with hashlib after FIPS 180-4 and RFC 6962 section 2.1. The owner's keepsake must hold the names:
a search that finds nothing there could find nothing anywhere.
"""

import hashlib
import itertools
import json
import re
import shutil
import subprocess
import sys
import unicodedata
import xml.etree.ElementTree as ET
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import ROOT, Report  # noqa: E402

R = "{urn:winchbook:record:1}"
T = "{urn:winchbook:template:1}"
DOCUMENTS = ("keepsake", "collector-statement")
RAW = "decompressed file"
LEAST_IN_RAW = 6  # letters: shorter words come about in pictures and fonts
SEEN = {"owner": {"anyone", "insurer", "owner"}, "insurer": {"anyone", "insurer"}, "stranger": {"anyone"}}
DATE = "2026-06-19"


def spaced(text):
    return " ".join((text or "").split())


def lines(text):
    return "\n".join(line for line in (spaced(one) for one in (text or "").split("\n")) if line)


def own_text(element):
    return (element.text or "") + "".join(child.tail or "" for child in element)


# ---- what must not be there -----------------------------------------------------------------


class Withheld:
    """What a reader may not see of a record: names to look for, and the salted texts."""

    def __init__(self, path, reader):
        self.folder = path.parent
        root = ET.parse(path).getroot()
        seen = SEEN[reader]
        self.names = set()     # whole names, short names, addresses: in any file of the reader's
        self.secrets = set()   # salts, photographs' fingerprints and paths
        self.salted = []       # (salt, text)
        self.photographs = []  # paths of the pictures that may not be drawn
        self.gone = []         # elements left out with a photograph
        people = {p.get("id"): p for p in root.iter(f"{R}person") if p.get("id")}
        self.hidden = {i for i, p in people.items() if p.findtext(f"{R}named-to") not in seen}
        seen_names = [p.findtext(f"{R}name") for i, p in people.items() if i not in self.hidden]
        self.seen_anyway = {word for name in seen_names for word in spaced(name).split()}
        for i in self.hidden:
            self.person(people[i])
        marks = {}
        for mark in root.iter(f"{R}marking"):
            if mark.get("id") and self.hides_mark(mark, reader):
                marks.update({p.get("ref"): mark for p in mark.findall(f"{R}photo")})
                self.mark(mark, people)
        for photo in root.iter(f"{R}photo"):
            shown = [s.get("ref") for s in photo.findall(f"{R}shows") if s.get("ref") in self.hidden]
            if photo.get("id") and (shown or photo.get("id") in marks):
                salts = [photo, *(people[i] for i in shown), *filter(None, [marks.get(photo.get("id"))])]
                self.photo(photo, next(s.findtext(f"{R}salt") for s in salts if s.findtext(f"{R}salt")))
        self.mentions(root, people)

    def mentions(self, root, people):
        """Those in sentences that stay: not in the story, in who somebody was, in a withheld caption."""
        gone = [*root.iter(f"{R}story"), *self.gone, *(w for i in self.hidden for w in people[i].iter(f"{R}who"))]
        gone = {id(mention) for one in gone for mention in one.iter(f"{R}person")}
        for mention in root.iter(f"{R}person"):
            text = spaced(own_text(mention))
            if mention.get("ref") in self.hidden and text and id(mention) not in gone:
                self.salted.append((people[mention.get("ref")].findtext(f"{R}salt"), text))

    def person(self, person):
        salt = person.findtext(f"{R}salt")
        for name in ("name", "short-name", "address", "contact"):
            text = spaced(person.findtext(f"{R}{name}"))
            if text:
                self.salted.append((salt, text))
                if name != "contact":
                    self.names.add(text)
        words = spaced(person.findtext(f"{R}name")).split()
        self.names.update(word for word in words if len(word) > 3 and word not in self.seen_anyway)
        self.secrets.add(salt)

    def hides_mark(self, mark, reader):
        person = mark.find(f"{R}person")
        if person is not None:
            return person.get("ref") in self.hidden
        return mark.findtext(f"{R}whose") == "owner" and reader != "owner"

    def mark(self, mark, people):
        person = mark.find(f"{R}person")
        salt = mark.findtext(f"{R}salt") or people[person.get("ref")].findtext(f"{R}salt")
        text = lines(mark.findtext(f"{R}text"))
        self.salted.append((salt, text))
        self.secrets.add(salt)
        self.names.add(spaced(text))

    def photo(self, photo, salt):
        self.photographs.append(photo.findtext(f"{R}file"))
        self.secrets.update({photo.findtext(f"{R}sha256"), photo.findtext(f"{R}file"), salt})
        self.salted.append((salt, photo.findtext(f"{R}sha256")))
        self.gone.extend([*photo.iter(f"{R}caption"), *photo.iter(f"{R}alternative")])


# ---- what a reader gets ------------------------------------------------------------------------


def run(*command):
    return subprocess.run(command, capture_output=True, check=True).stdout


def strings_of(value, found):
    if isinstance(value, dict):
        for one in value.values():
            strings_of(one, found)
    elif isinstance(value, list):
        for one in value:
            strings_of(one, found)
    elif isinstance(value, str) and value.startswith("u:"):
        found.append(value[2:])


class Received:
    """Everything that can be read out of a PDF, by tools that are not ours."""

    def __init__(self, pdf, scratch):
        self.bytes = pdf.read_bytes()
        told = []
        strings_of(json.loads(run("qpdf", "--json", "--json-key=qpdf", str(pdf))), told)
        plain = run("qpdf", "--qdf", "--object-streams=disable", "--stream-data=uncompress", str(pdf), "-")
        record = scratch / "attached.xml"
        run("pdfdetach", "-save", "1", "-o", str(record), str(pdf))
        self.record = record.read_bytes()
        self.parts = {
            "strings (alternative text, bookmarks, titles)": "\n".join(told),
            "text of the pages": run("pdftotext", "-layout", str(pdf), "-").decode(),
            "text of the pages in reading order": run("pdftotext", "-raw", str(pdf), "-").decode(),
            "XMP packet": "\n".join(re.findall(r"(?s)<x:xmpmeta.*?</x:xmpmeta>", plain.decode("latin-1"))),
            "attached record": self.record.decode(),
            RAW: plain.decode("latin-1"),
        }
        self.parts = {name: unicodedata.normalize("NFKC", part.replace("\u00ad", ""))
                      for name, part in self.parts.items()}  # fmt: skip

    def places_of(self, text):
        """Where a text's words stand one behind the other, whatever is between them, in any case."""
        words = map(re.escape, re.findall(r"\w+", unicodedata.normalize("NFKC", text)))
        pattern = re.compile(r"(?<!\w)" + r"\W+".join(words) + r"(?!\w)", re.IGNORECASE)
        return [name for name, part in self.parts.items() if pattern.search(part)
                and (name != RAW or len(text) >= LEAST_IN_RAW)]  # fmt: skip


def is_drawn(withheld, file, received):
    """Pictures stand in a PDF as they are: their middle tells them."""
    picture = (withheld.folder / file).read_bytes()
    return picture[len(picture) // 2 :][:200] in received.bytes


def survivors(withheld, received):
    for name in sorted(withheld.names):
        yield from (f"{name!r} stands in the {place}" for place in received.places_of(name))
    for secret in sorted(s for s in withheld.secrets if s):
        yield from (f"{secret!r} stands in the {place}" for place, text in received.parts.items() if secret in text)
    for file in withheld.photographs:
        if is_drawn(withheld, file, received):
            yield f"the picture {file} is in the file"


# ---- what binds it --------------------------------------------------------------------------------


def merkle(leaves):
    """RFC 6962 section 2.1."""
    if not leaves:
        return hashlib.sha256(b"").digest()
    if len(leaves) == 1:
        return hashlib.sha256(b"\0" + leaves[0]).digest()
    half = 1
    while half * 2 < len(leaves):
        half *= 2
    return hashlib.sha256(b"\1" + merkle(leaves[:half]) + merkle(leaves[half:])).digest()


def has_a_seal(what):
    """Whether the template of a document named so ends with a seal; cards and labels bear the code alone."""
    for template in (ROOT / "report-templates").glob("*.xml"):
        if what.endswith(template.stem):
            return '<section id="seal' in template.read_text(encoding="utf-8")
    return True


def binding_faults(withheld, received, sealed):
    digests = re.findall(rb"<withheld>([0-9a-f]{64})</withheld>", received.record)
    known = {hashlib.sha256((salt + text).encode()).hexdigest() for salt, text in withheld.salted if salt}
    for digest in digests:
        if digest.decode() not in known:
            yield f"{digest.decode()} is the digest of nothing that is withheld"
    missing = known - {digest.decode() for digest in digests}
    if missing:
        yield f"{len(missing)} withheld texts have no digest in the attached record"
    if not sealed:
        return
    printed = re.sub(r"\s", "", received.parts["text of the pages in reading order"])
    for what, value in (("root", merkle(digests).hex()), ("fingerprint", hashlib.sha256(received.record).hexdigest())):
        if value not in printed:
            yield f"the {what} {value} is not printed"


# ---- the demo ---------------------------------------------------------------------------------------


def reader_of(document):
    template = ROOT / "report-templates" / f"{document}.xml"
    return ET.parse(template).getroot().get("reader", "owner")


def look_through(report, withheld, pdf, scratch, what):
    received = Received(pdf, scratch)
    report.check(f"{what}: nothing withheld survives", survivors(withheld, received))
    if withheld.salted:
        report.check(f"{what}: every digest and their root can be reckoned again",
                     binding_faults(withheld, received, has_a_seal(what)))  # fmt: skip


def check_reel(report, winchbook, scratch, reel):
    record = reel / "record.xml"
    for document, reader in itertools.product(DOCUMENTS, ("stranger", "insurer")):
        pdf = scratch / f"{reel.name}-{document}-{reader}.pdf"
        done = subprocess.run([winchbook, "issue", reel, "--document", document, "--for", reader, "--date", DATE,
                               "-o", pdf], capture_output=True, text=True)  # fmt: skip
        if done.returncode != 0:
            report.check(f"{reel.name}: {document} for the {reader}", [done.stderr])
            continue
        look_through(report, Withheld(record, reader), pdf, scratch, pdf.stem)
    owner = scratch / f"{reel.name}-keepsake-owner.pdf"
    subprocess.run([winchbook, "issue", reel, "--date", DATE, "-o", owner], capture_output=True, check=True)
    withheld, received = Withheld(record, "stranger"), Received(owner, scratch)
    lost = [name for name in withheld.names if not received.places_of(name)]
    lost += [secret for secret in withheld.secrets if secret and secret.encode() not in received.record]
    lost += [file for file in withheld.photographs if not is_drawn(withheld, file, received)]
    report.check(f"{reel.name}: the same search finds every name in the owner's keepsake", lost)


# ---- a name left somewhere -------------------------------------------------------------------------

# What is changed in the heirloom's record, and whether the stranger's edition must be refused.
LEFT = [
    ("in a life's note", "He oiled it\n", "Tobias oiled it\n", "Tobias"),
    ("in small letters", "He oiled it\n", "so merrow oiled it\n", "merrow"),
    ("in a caption", "<caption>Tail side", "<caption>Nell’s tail side", "Nell"),
    ("in the reel's name", "<name>The Ferry Skerry</name>", "<name>The Merrow Skerry</name>", "Merrow"),
    ("in a source", "Her will; copy seen", "Will of Augusta Merrow; copy seen", "Augusta Merrow"),
    ("over two lines", "Her will; copy seen", "Will of Augusta\n  Merrow; copy seen", "Augusta Merrow"),
    ("with an accent sign between", "Her will; copy seen", "Will of Mer&#xAD;row; copy seen", "Mer\u00adrow"),
    ("as an address", "Her will; copy seen", "Seen at 2, Ferry Row; copy seen", "2, Ferry Row"),
    ("in a namespace", '<reel-record xmlns=', '<reel-record xmlns:n="urn:nell" xmlns=', "nell"),
    ("in a comment", "<people>", "<!-- Nell Merrow rang --><people>", None),
    ("in the story, which stays with the family", "it fell. She", "it fell. Miss Merrow", None),
    ("in a foreign note", "</people>", '<n:note xmlns:n="urn:x">Nell Merrow</n:note></people>', None),
]  # fmt: skip


def check_left(report, winchbook, scratch):
    source = ROOT / "demo/reels/skerry-40"
    for where, before, after, word in LEFT:
        reel = scratch / "left"
        shutil.rmtree(reel, ignore_errors=True)
        shutil.copytree(source, reel)
        record = reel / "record.xml"
        text = record.read_text()
        faults = [] if before in text else [f"the record has no {before!r}"]
        record.write_text(text.replace(before, after, 1))
        pdf = scratch / "left.pdf"
        pdf.unlink(missing_ok=True)
        done = subprocess.run([winchbook, "issue", reel, "--for", "stranger", "--date", DATE, "-o", pdf],
                              capture_output=True, text=True)  # fmt: skip
        if word is None:
            if done.returncode != 0:
                faults.append(done.stderr)
            else:
                faults += survivors(Withheld(record, "stranger"), Received(pdf, scratch))
        elif done.returncode != 1 or f'"{word}" is withheld from a stranger' not in done.stderr:
            faults.append(f"exit {done.returncode}: {done.stderr}")
        elif pdf.exists():
            faults.append("a file was written all the same")
        elif f"record.xml:{text[: text.find(before)].count(chr(10)) + 1}:" not in done.stderr:
            faults.append(f"the place is not told: {done.stderr}")
        report.check(f"a name left {where}: {'left out' if word is None else 'refused'}", faults)


def main():
    winchbook, scratch, out = Path(sys.argv[1]).resolve(), Path(sys.argv[2]), Path(sys.argv[3])
    scratch.mkdir(parents=True, exist_ok=True)
    report = Report()
    for reel in sorted((ROOT / "demo/reels").iterdir()):
        check_reel(report, winchbook, scratch, reel)
        for pdf in sorted(out.glob(f"{reel.name}-*.pdf")):
            reader = reader_of(pdf.stem.removeprefix(f"{reel.name}-"))
            if reader != "owner":
                look_through(report, Withheld(reel / "record.xml", reader), pdf, scratch, pdf.stem)
    check_left(report, winchbook, scratch)
    report.leave()


main()
