"""The pages of a document as the program lays them out (`--dump pages`) and as a reader of the file
finds them (pdftotext), and what must hold of any page.
"""

import hashlib
import html
import re
import subprocess
from dataclasses import dataclass, field

# Left, top, right and foot of the frame, in points
FRAMES = {"a4": (62, 84, 533, 744), "letter": (70.5, 78, 541.5, 693)}
STAND_FIRST = 13.0  # its size, and no other's
INITIAL = 65  # only the initial's box is higher


@dataclass
class Text:
    x: float
    y: float
    tag: str
    size: float
    words: str


@dataclass
class Page:
    lines: list = field(default_factory=list)  # as dumped
    texts: list = field(default_factory=list)
    images: list = field(default_factory=list)  # (x, y, width, height)

    def digest(self):
        """Of everything that is drawn; numbers that only count pages and elements are left out."""
        counted = "\n".join(re.sub(r"^(\w+) \d+ |(?<=[A-Za-z\d]):\d+(?= )", r"\1 ", line)
                            for line in self.lines)  # fmt: skip
        return hashlib.sha256(counted.encode()).hexdigest()[:12]

    def told(self):
        """What is read aloud, from the top."""
        return sorted((t for t in self.texts if t.tag != "artifact"), key=lambda t: (t.y, t.x))

    def summary(self):
        """One line that tells this page from another."""
        told = self.told()
        if not told:
            return f"{self.digest()}  no words, {len(self.images)} pictures"
        rows = len({(round(t.y), t.x > 200) for t in told})
        return (f"{self.digest()}  {rows} rows to {told[-1].y:.0f}, {len(self.images)} pictures: "
                f"“{told[0].words[:30].strip()}” … “{told[-1].words[-30:].strip()}”")  # fmt: skip


TEXT = re.compile(r'text \d+ (\S+) (\S+) (\S+) \d+ (\S+) #\w+ (?:tracking=\S+ )?"((?:[^"\\]|\\.)*)"')
IMAGE = re.compile(r"image \d+ (\S+) (\S+) (\S+) (\S+) ")


def read_pages(dump):
    pages = []
    for line in dump.splitlines():
        kind = line.split(" ", 1)[0]
        if kind == "page":
            pages.append(Page())
        elif kind in {"text", "path", "image", "link"}:
            pages[-1].lines.append(line)
        if match := TEXT.match(line):
            x, y, tag, size, words = match.groups()
            pages[-1].texts.append(Text(float(x), float(y), tag.split(":")[0], float(size), words))
        elif match := IMAGE.match(line):
            pages[-1].images.append(tuple(map(float, match.groups())))
    return pages


@dataclass
class Word:
    left: float
    top: float
    right: float
    foot: float
    letters: str


def read_words(pdf):
    """The words of each page with their boxes, by pdftotext."""
    told = subprocess.run(["pdftotext", "-bbox", pdf, "-"], check=True, capture_output=True)
    pages = []
    for line in told.stdout.decode().splitlines():
        if "<page " in line:
            pages.append([])
        elif match := re.search(r'xMin="(.+?)" yMin="(.+?)" xMax="(.+?)" yMax="(.+?)">(.*)</word>', line):
            box = [float(value) for value in match.groups()[:4]]
            pages[-1].append(Word(*box, html.unescape(match.group(5))))
    return pages


# ---- what must hold ---------------------------------------------------------------------------


def outside_faults(pages, paper):
    """Words that leave the frame; the folio stands under it, with the line that a caution defers by."""
    left, top, right, foot = FRAMES[paper]
    faults = []
    for number, words in enumerate(pages, 1):
        for word in words:
            middle = (word.top + word.foot) / 2
            across = left - 0.6 <= word.left and word.right <= right + 0.6
            if not across or middle < top - 8 or (foot + 3 < middle < foot + 18) or middle > foot + 45:
                faults.append(f"page {number}: “{word.letters[:30]}” at {word.left:.0f}, {middle:.0f}")
    return faults


def meeting_faults(pages):
    """Words that stand on each other. A line's box is as high as its face; the story's initial stands
    among its lines."""
    faults = []
    for number, words in enumerate(pages, 1):
        words = sorted((w for w in words if w.foot - w.top < INITIAL), key=lambda word: word.top)
        for i, one in enumerate(words):
            for other in words[i + 1 :]:
                if other.top >= one.foot:
                    break
                level = min(one.foot, other.foot) - max(one.top, other.top)
                across = min(one.right, other.right) - max(one.left, other.left)
                least = min(one.foot - one.top, other.foot - other.top)
                if across > 0.8 and level > least * 0.55:
                    faults.append(f"page {number}: “{one.letters[:20]}” meets “{other.letters[:20]}”")
    return faults


def covered_faults(pages, words):
    """Words that stand on a picture."""
    faults = []
    for number, (page, found) in enumerate(zip(pages, words), 1):
        for x, y, width, height in page.images:
            for word in found:
                across, down = (word.left + word.right) / 2, (word.top + word.foot) / 2
                if x < across < x + width and y < down < y + height:
                    faults.append(f"page {number}: “{word.letters[:20]}” on a picture")
    return faults


def picture_faults(pages, paper):
    """Pictures that leave the frame, or stand on each other."""
    left, top, right, foot = FRAMES[paper]
    faults = []
    for number, page in enumerate(pages, 1):
        for i, (x, y, width, height) in enumerate(page.images):
            if x < left - 0.1 or x + width > right + 0.1 or y < top - 0.1 or y + height > foot + 0.1:
                faults.append(f"page {number}: a picture from {x:.0f}, {y:.0f} leaves the frame")
            for a, b, wide, high in page.images[i + 1 :]:
                if x < a + wide - 0.1 and a < x + width - 0.1 and y < b + high - 0.1 and b < y + height - 0.1:
                    faults.append(f"page {number}: two pictures stand on each other")
    return faults


def is_heading(text):
    return re.fullmatch(r"H[1-6]", text.tag) is not None


def lonely_faults(pages):
    """Pages that hold nothing, and headings at the foot of a page whose text stands overleaf."""
    faults = []
    for number, page in enumerate(pages, 1):
        told = page.told()
        if not told and not page.images:
            faults.append(f"page {number} is empty")
        last = number == len(pages)
        goes_on = not last and any("CONTINUED" in t.words.upper() for t in pages[number].texts
                                   if t.tag == "artifact")  # fmt: skip
        words = [t for t in told if not is_heading(t) and t.size != STAND_FIRST]
        picture = max((y for _, y, _, _ in page.images), default=0)
        for text in told:
            if not is_heading(text) or picture > text.y or not (goes_on or last):
                continue
            # under it in the reading column or in its own; of an entry in the margin, beside it
            least = text.y + 1 if text.x > 200 else text.y - 30
            if not any(t.y > least and (t.x > 200 or abs(t.x - text.x) < 40) for t in words):
                faults.append(f"page {number}: “{text.words.strip()}” stands alone")
    return faults


def table_faults(words):
    """Tables with a head and no rows, in what `--dump words` prints."""
    lines = words.splitlines()
    depth = [len(line) - len(line.lstrip()) for line in lines]
    faults = []
    for i, line in enumerate(lines):
        if not re.match(r"\s*table\b", line):
            continue
        inside = []
        for j in range(i + 1, len(lines)):
            if depth[j] <= depth[i]:
                break
            inside.append(lines[j].strip())
        if not any(one.startswith("row") for one in inside):
            faults.append(f"a table has no rows: {inside[:2]}")
    return faults
