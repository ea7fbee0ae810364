"""The prose of a record, and which of its sentences a document lacks."""

import re
import xml.etree.ElementTree as ElementTree

RECORD = "{urn:winchbook:record:1}"

# where a keepsake's prose stands in the record: the last steps of its path
PROSE = [
    "story/p",
    "event/what/p",
    "event/keep-because",
    "hand-back/not-put-right",
]

# and a collector statement's: what is wrong, what to beware of, what was done; of the last visit
STATEMENT = ["fault/what", "fault/why-it-stays", "flag/what", "not-put-right", "work/what"]

# and the receipts': what the owner and the bench sign
INTAKE = ["arrived", "wishes/words/p", "bench/terms"]
HAND_BACK = ["not-put-right", "care/caution/words", "hand-back/note"]

# what the bench sheet and the care card must hold
BENCH_SHEET = ["strip-down/step/what", "strip-down/step/orientation", "strip-down/step/caution/words"]
CARE_CARD = ["care/fish", "care/keep", "care/caution/words"]

# what a value statement must say of the bench itself
VALUE = ["bench/own-interest"]

# what stands for a photograph named in a sentence: its number, with or without a word before it
NUMBER = "\u0001"


def local(tag):
    return tag.rsplit("}", 1)[-1]


def words_of(element, names):
    """The words of an element as printed: people and pieces by the sentence's own words or their name."""
    parts = [element.text or ""]
    for kid in element:
        if local(kid.tag) in {"person", "piece"}:
            inner = "".join(kid.itertext()).strip()
            parts.append(inner or names.get(kid.get("ref"), ""))
        elif local(kid.tag) == "photo":
            parts.append(NUMBER)
        elif local(kid.tag) != "note":
            parts.append("".join(kid.itertext()))
        parts.append(kid.tail or "")
    return re.sub(r"\s+", " ", "".join(parts)).strip()


def prose_of(record, paths=None, fittings=True):
    """Every sentence of the record's prose that a keepsake must print, or what `paths` name; with why and how
    each part was fitted."""
    root = ElementTree.parse(record).getroot()
    names = {}
    for element in root.iter():
        name = element.find(f"{RECORD}name")
        if element.get("id") and name is not None:
            names[element.get("id")] = (name.text or "").strip()
    sentences = []
    if paths is not None:
        for earlier in root.findall(f"{RECORD}visits/{RECORD}visit")[:-1]:
            root.find(f"{RECORD}visits").remove(earlier)
    for path in PROSE if paths is None else paths:
        steps = "/".join(RECORD + step for step in path.split("/"))
        for element in root.iterfind(f".//{steps}"):
            sentences += split(words_of(element, names))
            for note in element.iterfind(f"{RECORD}note"):
                sentences += split(words_of(note, names))
    for fitting in root.iterfind(f".//{RECORD}fitting") if fittings else []:
        # what an earlier visit fitted and a later one took out is told by what came after it
        if fitting.find(f"{RECORD}removed-in") is None:
            for step in ("why", "adaptation"):
                for element in fitting.iterfind(RECORD + step):
                    sentences += split(words_of(element, names))
    return sentences


def labelled(record):
    """What labels must print: every piece that lies in a bag, and how each step of the last visit begins."""
    root = ElementTree.parse(record).getroot()
    names = {e.get("id"): words_of(e.find(f"{RECORD}name"), {}) for e in root.iter() if e.find(f"{RECORD}name") is not None}
    bagged = [names[piece.get("id")] for piece in root.iter(f"{RECORD}piece")
              if piece.findtext(f"{RECORD}now/{RECORD}kind") == "bagged"]  # fmt: skip
    visit = root.findall(f"{RECORD}visits/{RECORD}visit")[-1]
    steps = [words_of(what, names) for what in visit.iterfind(f".//{RECORD}step/{RECORD}what")]
    return bagged + [" ".join(step.split()[:4]) for step in steps]


def split(text):
    return [s for s in re.split(r"(?<=[.!?])\s+(?=[“‘\"(]?[A-Z0-9])", text) if len(s) > 3]


def squeezed(text):
    """Without any white space: how a word is broken or a large initial stands apart is lost."""
    return re.sub(r"\s+", "", text)


def spaced(text):
    """With each run of white space as one space: a space missing between two words is seen."""
    return re.sub(r"\s+", " ", text).strip()


def pattern_of(sentence):
    """A sentence as a pattern; quotation marks and apostrophes as typed or as set."""
    pattern = re.escape(sentence)
    pattern = re.sub(r"\\?['‘’]", "['‘’]", pattern)
    pattern = re.sub(r'\\?["“”]', "[\"“”]", pattern)
    pattern = pattern.replace(r"\ ", "[ \u00a0\u202f]")
    return pattern.replace(re.escape(NUMBER), r"\D{0,12}\d+")


def found_over_a_break(words, pages, form):
    """Whether a sentence begins near the end of one page and goes on near the start of the next."""
    for at in range(1, len(words)):
        head = re.compile(pattern_of(form(" ".join(words[:at]))))
        tail = re.compile(pattern_of(form(" ".join(words[at:]))))
        for page, following in zip(pages, pages[1:]):
            if head.search(page) and tail.search(following):
                return True
    return False


def missing_sentences(sentences, pages, form=squeezed):
    """The sentences that stand on no page, nor over the break between two.

    `pages` are texts, or lists of texts that say the same in different ways.
    """
    ways = [[page] if isinstance(page, str) else page for page in pages]
    readings = [[form(text) for text in texts] for texts in zip(*ways)]
    missing = []
    for sentence in sentences:
        pattern = re.compile(pattern_of(form(sentence)))
        if any(pattern.search(page) for reading in readings for page in reading):
            continue
        if not any(found_over_a_break(sentence.split(), reading, form) for reading in readings):
            missing.append(f"'{sentence}'")
    return missing if sentences else ["the record holds no prose"]
