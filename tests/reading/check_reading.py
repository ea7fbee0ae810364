#!/usr/bin/env python3
"""What a reader of the demo documents gets who cannot see them, or who prints them in grey.

    check_reading.py DIRECTORY      the documents <reel>-<document>.pdf

From outside the program: structure by ISO 32000-1 §14.7 and §14.8 and ISO 14289-1 §7, contrast by
WCAG 2.1 §1.4.3, the words by pdftotext.
"""

import hashlib
import io
import re
import subprocess
import sys
from collections import Counter
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import ROOT, Report  # noqa: E402
from sentences import BENCH_SHEET, CARE_CARD, HAND_BACK, INTAKE, STATEMENT, VALUE, labelled, missing_sentences, prose_of, spaced  # noqa: E402
from tagged_pdf import Element, TaggedPdf  # noqa: E402

SMALLEST_TYPE = 7.25
LEAST_CONTRAST = 4.5
BLOCKS = {"P", "H1", "H2", "H3", "Figure", "TR", "LI", "Note", "Caption"}


# ---- structure -----------------------------------------------------------------------------


def untagged_faults(pdf):
    """Content that is neither in the tree nor marked as furniture (ISO 14289-1 §7.1)."""
    return [f"page {page.number}: {what}" for page in pdf.pages for what in page.untagged]


def content_faults(pdf):
    """Marked content the tree does not hold exactly once, or that it names in vain."""
    held = Counter(pdf.tree.content())
    drawn = {(p.number, r.mcid) for p in pdf.pages for r in [*p.runs, *p.images] if r.mcid is not None}
    faults = [f"page {page}: content {mcid} is held {held[(page, mcid)]} times"
              for page, mcid in sorted(drawn) if held[(page, mcid)] != 1]  # fmt: skip
    return faults + [f"page {p}: content {m} is named twice" for (p, m), n in held.items() if n > 1]


def heading_faults(pdf):
    """Headings must begin with H1, skip no level, and be the bookmarks in the same order."""
    faults, level = [], 0
    headings = [e for e in pdf.tree.walk() if re.fullmatch(r"H[1-6]", e.type)]
    for heading in headings:
        depth = int(heading.type[1])
        if depth > level + 1:
            faults.append(f"{heading.type} '{pdf.text(heading)}' follows level {level}")
        level = depth
    texts = [squeeze(pdf.text(heading)) for heading in headings]
    at = 0
    for title in pdf.outline():
        try:
            at = texts.index(squeeze(title), at) + 1
        except ValueError:
            faults.append(f"bookmark '{title}' is no heading, or is out of order")
    if not headings or not pdf.outline():
        faults.append("there are no headings or no bookmarks")
    return faults


def first_place(pdf, element):
    """(page, y, x) of what an element shows first, or None."""
    for page, mcid in element.content():
        for run in [*pdf.pages[page - 1].runs, *pdf.pages[page - 1].images]:
            if run.mcid == mcid:
                return page, run.y, run.x
    return None


def order_faults(pdf, columns=False):
    """Blocks of the reading column and of full width must be read from top to bottom, page by page.
    With columns the next one, to the right of the last block, may begin at the top again."""
    faults, last, last_x = [], (1, 1e9), 0
    for element in pdf.tree.walk():
        if element.type not in BLOCKS - {"Figure", "Note"}:
            continue
        place = first_place(pdf, element)
        if place is None:
            continue
        page, y, x = place
        in_main = x > pdf.main_left - 1 or element.type == "TR"
        if page < last[0] and in_main:
            faults.append(f"page {page}, after page {last[0]}: '{pdf.text(element)[:50]}'")
        elif in_main and page == last[0] and y > last[1] + 12 and not (columns and x > last_x + 60):
            faults.append(f"page {page}: '{pdf.text(element)[:50]}' is read too late")
        if in_main:
            last, last_x = (page, y), x
    return faults


def list_faults(pdf):
    """L holds LI, LI holds Lbl and LBody (ISO 32000-1 §14.8.4.3.3)."""
    faults = []
    for element in pdf.tree.walk():
        kids = [kid.type if isinstance(kid, Element) else "content" for kid in element.kids]
        if element.type == "L" and (not kids or set(kids) - {"LI", "Caption"}):
            faults.append(f"a list holds {sorted(set(kids))}")
        if element.type == "LI" and kids not in (["Lbl", "LBody"], ["LBody"]):
            faults.append(f"a list item holds {kids}")
    return faults


def figure_faults(pdf, may_have_none=False):
    """Every picture stands in a Figure with words for it and its box (ISO 14289-1 §7.3)."""
    faults = []
    held = set()
    for figure in (e for e in pdf.tree.walk() if e.type == "Figure"):
        words = pdf.alternative(figure) or ""
        if len(words) < 10 or re.search(r"\.(jpe?g|png)$", words):
            faults.append(f"alternative text '{words}'")
        if pdf.attribute(figure, "BBox") is None:
            faults.append(f"no box: '{words[:50]}'")
        held |= set(figure.content())
    for page in pdf.pages:
        for image in page.images:
            if not image.artifact and (page.number, image.mcid) not in held:
                faults.append(f"page {page.number}: a picture outside any Figure")
    if not held and not may_have_none:
        faults.append("there are no pictures")
    return faults


def cells(row):
    return [kid for kid in row.kids if isinstance(kid, Element) and kid.type in {"TH", "TD"}]


def table_faults(pdf):
    """Rows of equal width, header cells with a scope, and a head repeated on each later page."""
    faults = []
    for table in (e for e in pdf.tree.walk() if e.type == "Table"):
        rows = [e for e in table.walk() if e.type == "TR"]
        spans = [sum(int(pdf.attribute(c, "ColSpan") or 1) for c in cells(row)) for row in rows]
        name = pdf.text(rows[0])[:40] if rows else "?"
        if len(set(spans)) != 1:
            faults.append(f"'{name}': rows of {sorted(set(spans))} columns")
        heads = [c for row in rows for c in cells(row) if c.type == "TH"]
        if not heads or any(pdf.attribute(c, "Scope") is None for c in heads):
            faults.append(f"'{name}': no header cells, or one without scope")
        faults += repeated_head_faults(pdf, table, rows[0], name)
    return faults


def repeated_head_faults(pdf, table, head, name):
    pages = sorted({page for page, _ in table.content()})
    words = squeeze(pdf.text(head))
    faults = []
    for number in pages[1:]:
        furniture = squeeze("".join(r.text for r in pdf.pages[number - 1].runs if r.artifact))
        if words not in furniture:
            faults.append(f"'{name}': its head is not repeated on page {number}")
    return faults


def tables_over_pages(pdf):
    """How many tables are split over pages, each still one Table."""
    return sum(
        len({page for page, _ in e.content()}) > 1 for e in pdf.tree.walk() if e.type == "Table"
    )


def note_faults(pdf):
    """Notes carry ids that are unique (ISO 14289-1 §7.9)."""
    ids = [pdf.string(e.attributes.get("/ID")) for e in pdf.tree.walk() if e.type == "Note"]
    faults = ["a note has no id"] * ids.count(None)
    return faults + [f"id '{i}' is used {n} times" for i, n in Counter(ids).items() if n > 1 and i]


def link_faults(pdf):
    """A Link holds its annotation, which says in words where it leads (ISO 14289-1 §7.18)."""
    faults = []
    for link in (e for e in pdf.tree.walk() if e.type == "Link"):
        places = [kid[1] for kid in link.kids if not isinstance(kid, Element) and kid[0] == "OBJR"]
        if not places:
            faults.append(f"'{pdf.text(link)}' has no place to click")
        for place in places:
            if not pdf.string(pdf.get(place).get("/Contents")):
                faults.append(f"'{pdf.text(link)}' does not say where it leads")
    return faults


def name_faults(pdf):
    """The file says its title and its language."""
    faults = []
    if not re.fullmatch(r"[a-z]{2,3}(-[A-Z]{2})?", pdf.string(pdf.catalog.get("/Lang")) or ""):
        faults.append(f"language '{pdf.string(pdf.catalog.get('/Lang'))}'")
    information = pdf.get(pdf.trailer.get("/Info")) or {}
    if len(pdf.string(information.get("/Title")) or "") < 5:
        faults.append(f"title '{pdf.string(information.get('/Title'))}'")
    return faults


# ---- print -----------------------------------------------------------------------------------


def linear(value):
    """WCAG 2.1, relative luminance: the linear value of one sRGB channel of 0..1."""
    return value / 12.92 if value <= 0.03928 else ((value + 0.055) / 1.055) ** 2.4


def grey(colour):
    """The grey a monochrome printer makes of an sRGB colour: luma of ITU-R BT.601."""
    red, green, blue = colour
    return 0.299 * red + 0.587 * green + 0.114 * blue


def contrast(one, other):
    """WCAG 2.1, contrast ratio of two greys of 0..1."""
    high, low = sorted((linear(one), linear(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def contrast_faults(pdf):
    """Text that would not stand out 4.5 : 1 from its ground when printed in grey."""
    faults = set()
    for page in pdf.pages:
        for run in page.runs:
            if run.text.strip():
                ratio = contrast(grey(run.colour), grey(run.ground))
                if ratio < LEAST_CONTRAST:
                    faults.add(f"page {page.number}: {ratio:.2f} : 1 for '{run.text[:40]}'")
    return sorted(faults)


def size_faults(pdf):
    faults = set()
    for page in pdf.pages:
        for run in page.runs:
            if run.text.strip() and run.size < SMALLEST_TYPE - 0.001:
                faults.add(f"page {page.number}: {run.size:.2f} points for '{run.text[:40]}'")
    return sorted(faults)


def edge_faults(pdf):
    """Nothing may be set outside the paper, nor nearer than 18 points to its edge."""
    faults = []
    for page in pdf.pages:
        for run in page.runs:
            if not (18 <= run.x <= page.width - 18 and 18 <= run.y <= page.height - 18):
                faults.append(f"page {page.number}: '{run.text[:40]}' at {run.x:.0f}, {run.y:.0f}")
    return faults


# ---- words -----------------------------------------------------------------------------------


def squeeze(text):
    return re.sub(r"\s+", "", text)


def pages_as_text(pdf):
    """The words of each page as pdftotext finds them: column by column, and as they were drawn."""
    pages = []
    for page in pdf.pages:
        here = ["-f", str(page.number), "-l", str(page.number), pdf.path, "-"]
        pages.append([
            subprocess.run(["pdftotext", *way, *here], check=True, capture_output=True).stdout.decode()
            for way in ([], ["-raw"])
        ])  # fmt: skip
    return pages


def letter_faults(pages):
    """Characters that stand for nothing: replacement characters, private use, unmapped glyphs."""
    return [f"page {n}: U+{ord(c):04X}" for n, texts in enumerate(pages, 1)
            for c in sorted(set(texts[0])) if c == "\ufffd" or "\ue000" <= c <= "\uf8ff"]  # fmt: skip


def spoken(pdf):
    """The words of each page as the structure tree has them, in reading order."""
    pages = {page.number: [] for page in pdf.pages}
    for element in pdf.tree.walk():
        if element.type in (BLOCKS | {"TH", "TD", "LBody"}) - {"TR"}:
            place = first_place(pdf, element)
            if place:
                pages[place[0]].append(pdf.text(element))
    return [" ".join(parts) for _, parts in sorted(pages.items())]


def issued_on(name):
    """The day that demo/run.sh issues a document for."""
    reel = reel_of(name)
    document = name[len(reel) + 1 :]
    lines = (ROOT / "demo" / "run.sh").read_text(encoding="utf-8")
    return re.search(rf"^{re.escape(reel)} {document} (\d{{4}}-\d\d-\d\d)", lines, re.M).group(1), document


def code_faults(pdf, name):
    """The short code at the foot of a page that prints no fingerprint: 55 bits of SHA-256 over fingerprint,
    document, edition and date in Crockford's base 32; how it is checked is printed in every keepsake."""
    day, document = issued_on(name)
    fingerprint = hashlib.sha256(pdf.attachments()["record.xml"]).hexdigest()
    digest = hashlib.sha256(f"{fingerprint}\n{document}\n1\n{day}\n".encode()).digest()
    bits = int.from_bytes(digest, "big") >> (256 - 55)
    code = "".join("0123456789ABCDEFGHJKMNPQRSTVWXYZ"[bits >> 5 * (10 - i) & 31] for i in range(11))
    return [f"page {page.number}: the code is not {code}…" for page in pdf.pages
            if code not in squeeze("".join(run.text for run in page.runs))]  # fmt: skip


def attachment_faults(pdf, record, withheld, code_only=None):
    found = pdf.attachments()
    if "record.xml" not in found:
        return ["record.xml is not attached"]
    if (found["record.xml"] != record.read_bytes()) != withheld:
        return ["record.xml is attached as it is on the bench" if withheld
                else "record.xml is not attached as it is on the bench"]  # fmt: skip
    if code_only:
        return code_faults(pdf, code_only)
    fingerprint = hashlib.sha256(found["record.xml"]).hexdigest()
    last = squeeze("".join(run.text for page in pdf.pages for run in page.runs)).lower()
    return [] if fingerprint in last else [f"the fingerprint {fingerprint[:16]}… is not printed"]


def reel_of(name):
    """The reel of a document's file name: the folder whose name it begins with."""
    return next(one.name for one in (ROOT / "demo/reels").iterdir() if name.startswith(one.name))


def check_document(report, file):
    reel = reel_of(file.name)
    record = ROOT / "demo" / "reels" / reel / "record.xml"
    pdf = TaggedPdf(file)
    pdf.main_left = min((r.x for p in pdf.pages for r in p.runs), default=0) + 161
    name = file.stem
    # a document for strangers carries the record as they may see it, and is set in columns
    for_strangers = name.endswith(("collector-statement", "labels", "bench-sheet", "care-card"))
    # what is signed at the counter or cut up prints the code of its record, not the fingerprint
    code_only = name if name.endswith(("receipt", "labels", "care-card")) else None
    for what, faults in {
        "everything is tagged or furniture": untagged_faults(pdf),
        "the tree holds each content once": content_faults(pdf),
        "headings step down and are the bookmarks": heading_faults(pdf),
        "blocks are read from top to bottom": order_faults(pdf, columns=for_strangers),
        "lists hold items with label and body": list_faults(pdf),
        "pictures have words and a box": figure_faults(pdf, may_have_none=name.endswith(("receipt", "care-card"))),
        "tables have even rows, scopes and repeated heads": table_faults(pdf),
        "notes have ids of their own": note_faults(pdf),
        "links say where they lead": link_faults(pdf),
        "the file says its title and language": name_faults(pdf),
        "text stands out 4.5 : 1 in grey": contrast_faults(pdf),
        "no type is smaller than 7.25 points": size_faults(pdf),
        "nothing is set off the paper": edge_faults(pdf),
        "the record travels along, its fingerprint printed": attachment_faults(pdf, record, for_strangers, code_only),
    }.items():
        report.check(f"{name}: {what}", faults)
    text = pages_as_text(pdf)
    if name.endswith("labels"):
        prose = labelled(io.BytesIO(pdf.attachments()["record.xml"]))
    elif name.endswith("receipt"):
        prose = prose_of(record, INTAKE if name.endswith("intake-receipt") else HAND_BACK, fittings=False)
    elif name.endswith(("bench-sheet", "care-card")):
        wanted = BENCH_SHEET if name.endswith("bench-sheet") else CARE_CARD
        prose = prose_of(io.BytesIO(pdf.attachments()["record.xml"]), wanted, fittings=False)
    elif for_strangers:
        prose = prose_of(io.BytesIO(pdf.attachments()["record.xml"]), STATEMENT)
    elif name.endswith("value-statement"):
        prose = prose_of(record, VALUE, fittings=False)
    else:
        prose = prose_of(record)
    report.expect(f"{name}: there are sentences to look for", prose)
    report.check(f"{name}: every character means something", letter_faults(text))
    report.check(f"{name}: every sentence is there (pdftotext)", missing_sentences(prose, text))
    report.check(f"{name}: every sentence is read aloud", missing_sentences(prose, spoken(pdf), spaced))
    report.expect(f"{name}: a sentence the record does not hold is missed",
                  missing_sentences(["The eel was returned to the quartermaster."], text))
    return pdf


def check_the_checks(report):
    """Figures from outside, so that the arithmetic above is itself checked."""
    # WCAG 2.1 understanding 1.4.3: #767676 on white is 4.54 : 1, #777777 only 4.48 : 1
    report.expect("#767676 on white is enough", round(contrast(0x76 / 255, 1), 2) == 4.54)
    report.expect("#777777 on white is not enough", round(contrast(0x77 / 255, 1), 2) == 4.48)
    report.expect("black on white is 21 : 1", round(contrast(0, 1), 6) == 21)


def main():
    report = Report()
    check_the_checks(report)
    split = 0
    for file in sorted(Path(sys.argv[1]).glob("*.pdf")):
        split += tables_over_pages(check_document(report, file))
    report.expect("a table split over pages is still one Table", split > 0, "no table is split")
    report.leave()


if __name__ == "__main__":
    main()
