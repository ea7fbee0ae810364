"""A test reel put together part by part and written as a record with its photographs."""

import hashlib
from xml.sax.saxutils import escape

from photograph import jpeg

ORDINARY = ["Foot", "Handle-side plate", "Tail-side plate", "Spool", "Main gear", "Pinion", "Star",
            "Handle arm", "Knob", "Bridge", "Click tongue", "Gear cap"]  # fmt: skip
KINDS = ["foot", "handle-plate", "tail-plate", "spool", "main-gear", "pinion", "star", "handle-arm",
         "knob", "bridge", "click-tongue", "gear-cap"]  # fmt: skip


def tag(name, *content, **attributes):
    """An element; strings beginning with "<" are elements already, others are escaped."""
    inner = "".join(c if c.startswith("<") else escape(c) for c in content if c)
    written = "".join(f' {key}="{value}"' for key, value in attributes.items())
    return f"<{name}{written}>{inner}</{name}>" if inner else f"<{name}{written}/>"


def ref(name, to):
    return tag(name, ref=to)


def judged(name, answer, certainty="certain", because=""):
    sure = tag("certainty", certainty) if answer != "not-determined" else ""
    return tag(name, tag("answer", answer), sure, tag("because", because) if because else "")


def digest_of(text):
    return hashlib.sha256(text.encode()).hexdigest()


class Reel:
    """Sections of a record as lists of elements; `write` puts them in the schema's order."""

    def __init__(self, name="The Landing Reel"):
        self.name = name
        self.model = "Tarn No. 6"
        self.bench = "The Lantern Bench"
        self.bench_place = "Carrick Sound"
        self.maker = ("Harroway Reel Works", "Port Ellery")
        self.made = "1946/1949"
        self.box_and_papers = ""
        self.cover = ""
        self.language = "en-GB"
        self.people, self.custody, self.story, self.life = [], [], [], []
        self.places, self.donors, self.pieces, self.fittings = [], [], [], []
        self.markings, self.photos, self.files = [], [], {}
        self.story_title = self.story_answer = self.arrived = self.summary = self.note = ""
        self.piece_findings, self.place_findings = [], []
        self.faults, self.tests, self.flags = [], [], []
        self.steps, self.cleaning, self.work, self.tray, self.bags = [], [], [], [], []
        self.wishes, self.must_stay, self.not_put_right = [], [], []
        self.advice = self.care = ""
        self.handed_back = True
        self.person("ines", "Ines Thornbury", "the restorer", named_to="anyone")
        self.person("nell", "Nell Merrow", "the owner", short="Nell")

    # ---- people ------------------------------------------------------------------------------

    def person(self, key, name, stand_in, short="", named_to="owner", who=""):
        salt = "" if named_to == "anyone" else tag("salt", digest_of(key)[:32])
        self.people.append(tag(
            "person", tag("name", name), tag("short-name", short) if short else "",
            tag("stand-in", stand_in), tag("who", who) if who else "", tag("named-to", named_to),
            salt, id=key))  # fmt: skip

    def held(self, holder, since, until="", how="given", source="the family’s word"):
        number = len(self.custody) + 1
        self.custody.append(tag(
            "held-by", tag("held", "both"), ref("holder", holder), tag("from", since),
            tag("until", until) if until else "", tag("how", how), tag("source", source),
            tag("certainty", "likely"), id=f"cu-{number}"))  # fmt: skip

    def event(self, title, *paragraphs, date="1962", keep_because=""):
        number = len(self.life) + 1
        self.life.append(tag(
            "event", tag("kind", "repair"), tag("title", title), tag("date", date),
            tag("what", *(tag("p", p) for p in paragraphs)), tag("source", "told by the owner"),
            tag("certainty", "likely"),
            tag("keep-because", keep_because) if keep_because else "", id=f"le-{number}"))  # fmt: skip

    def tell(self, *paragraphs, notes=()):
        """Paragraphs of the story, each with the margin note of the same number, if there is one."""
        notes = list(notes) + [""] * (len(paragraphs) - len(notes))
        for words, note in zip(paragraphs, notes):
            self.story.append(tag("p", words, tag("note", note) if note else ""))

    # ---- parts -------------------------------------------------------------------------------

    def place(self, name, kind="other", assembly=""):
        key = f"pl-{len(self.places) + 1}"
        self.places.append(tag(
            "place", tag("name", name), tag("kind", kind),
            tag("assembly", assembly) if assembly else "", id=key))  # fmt: skip
        return key

    def piece(self, name, made_by="this-maker", original="yes", pattern="right", now="fitted",
              donor="", bag="", because=""):  # fmt: skip
        key = f"pc-{len(self.pieces) + 1}"
        finish = tag("finish", tag("what", "nickel plate"), tag("by", "maker"))
        self.pieces.append(tag(
            "piece", tag("name", name), tag("material", "brass"), finish,
            judged("made-by", made_by, because=because), judged("of-this-reel", original),
            judged("pattern", pattern), ref("donor", donor) if donor else "",
            tag("now", tag("kind", now), tag("bag", bag) if bag else ""), id=key))  # fmt: skip
        return key

    def fit(self, piece, place, *facts, by="maker", until=""):
        """`facts` stand after <by>, in the schema's order."""
        answer = tag("person", ref=by[1:]) if by.startswith("@") else tag("answer", by)
        key = f"fi-{len(self.fittings) + 1}"
        since = tag("from", "2026-05-14") if by == "bench" else ""
        self.fittings.append(tag(
            "fitting", ref("piece", piece), ref("place", place), since,
            tag("until", until) if until else "", tag("by", answer), *facts, id=key))  # fmt: skip
        return key

    def look(self, piece, found="untouched", left="cleaned"):
        """A finding of the piece; "" for a moment at which it was not in the reel."""
        def state(word):
            return tag("presence", "fitted") + tag("surface", tag("state", word), tag("share", "100"))

        self.piece_findings.append(tag(
            "piece-finding", ref("piece", piece), tag("found", state(found)) if found else "",
            tag("left", state(left)) if left else ""))  # fmt: skip

    def part(self, name, kind="other", assembly="", state="original", left="cleaned"):
        """A place, what sits in it and how it was found, in one of a few histories."""
        place = self.place(name, kind, assembly)
        if state == "missing":
            self.place_findings.append(tag(
                "place-finding", ref("place", place), tag("found", "empty"), tag("left", "empty")))
            return place
        answers = {
            "original": ("this-maker", "yes", "right"),
            "same-maker": ("this-maker", "no", "right"),
            "life": ("owner", "no", "wrong"),
            "another": ("another", "no", "wrong"),
            "not-determined": ("not-determined", "not-determined", "not-determined"),
        }[state]
        piece = self.piece(name, *answers)
        self.fit(piece, place, by="maker" if state == "original" else "not-known")
        self.look(piece, left=left)
        return piece

    def ordinary_parts(self):
        """A dozen parts: enough that the record is no small job."""
        return [self.part(name, kind) for name, kind in zip(ORDINARY, KINDS)]

    def replaced(self, name, kind="other", assembly="", why="Worn through.", adapted="", donor="",
                 photo="", old_photo="", way_back="Fully: the old one drops straight in."):  # fmt: skip
        """A part the bench replaced; the old one went back in a bag."""
        place = self.place(name, kind, assembly)
        bag = f"bag {len(self.bags) + 1}"
        old = self.piece(name, now="bagged", bag=bag)
        new = self.piece(name, "this-maker" if donor else "bench", "no", donor=donor)
        self.bags.append(bag)
        self.fit(old, place, ref("removed-in", "v-1"), until="2026-05-14")
        self.fit(new, place, ref("visit", "v-1"), tag("why", why),
                 tag("adaptation", adapted) if adapted else "",
                 tag("way-back", tag("degree", "100"), tag("words", way_back)),
                 ref("instead-of", old), ref("photo", photo) if photo else "",
                 ref("old-photo", old_photo) if old_photo else "", by="bench")  # fmt: skip
        self.look(old, found="worn-through", left="")
        self.look(new, found="", left="untouched")
        self.tray.append(tag("line", ref("piece", old), tag("taken-off", "1"), tag("bagged", "1")))
        return new

    def donor(self, name="a broken Tarn No. 5"):
        key = f"do-{len(self.donors) + 1}"
        self.donors.append(tag("donor", tag("name", name), tag("same-maker", "yes"), id=key))
        return key

    def mark(self, piece, text, where="underside", because="", says=True, withheld=False):
        number = len(self.markings) + 1
        bounds = "" if not says else tag(
            "says", tag("not-before", tag("date", str(1930 + number % 16)), tag("firmness", "hard")),
            tag("not-after", tag("date", str(1949 + number % 20)), tag("firmness", "soft")),
            tag("because", because or "The stamp was in use between these years."))  # fmt: skip
        self.markings.append(tag(
            "marking", ref("piece", piece), tag("where", where) if where else "",
            tag("text", tag("withheld", digest_of(text)) if withheld else text),
            tag("method", "stamped"), tag("whose", "maker"), tag("state", "as-struck"),
            tag("legibility", "clear"), bounds, id=f"mk-{number}"))  # fmt: skip

    # ---- the visit ---------------------------------------------------------------------------

    def fault(self, name, piece="", what="Seen under the glass.", stays="It does no harm."):
        self.faults.append(tag(
            "fault", ref("piece", piece) if piece else "", tag("kind", "crack"), tag("name", name),
            tag("found", "weakening"), tag("left", "blemish"), tag("what", what),
            tag("why-it-stays", stays), id=f"fa-{len(self.faults) + 1}"))  # fmt: skip

    def try_out(self, what, before="slips", after="holds"):
        def result(words, verdict, on):
            return (tag("outcome", "done") + tag("words", words) + tag("verdict", verdict)
                    + tag("on", on))  # fmt: skip

        self.tests.append(tag(
            "test", tag("what", what), tag("before", result(before, "in-part", "2026-03-06")),
            tag("after", result(after, "as-made", "2026-06-12"))))  # fmt: skip

    def step(self, what, label="", caution="", photo=""):
        warning = tag("caution", tag("label", label), tag("words", caution)) if caution else ""
        self.steps.append(tag("step", tag("what", what), warning, ref("photo", photo) if photo else "",
                              id=f"st-{len(self.steps) + 1}"))  # fmt: skip

    def cleaned(self, what, label="", caution="", pieces=()):
        warning = tag("caution", tag("label", label), tag("words", caution)) if caution else ""
        self.cleaning.append(tag(
            "cleaning", *(ref("piece", p) for p in pieces), tag("material", "brass"),
            tag("method", "damp cloth, dried at once"), tag("what", what), warning))  # fmt: skip

    def worked(self, what):
        self.work.append(tag("work", tag("what", what), ref("by", "ines"), tag("on", "2026-06-10")))

    def cared(self, *counsels, label="Springs", caution=""):
        warning = tag("caution", tag("label", label), tag("words", caution)) if caution else ""
        self.care = tag("care", tag("line", "0.35 mm, as much as was on it"),
                        *(tag("fish", c) for c in counsels), warning)  # fmt: skip

    # ---- photographs -------------------------------------------------------------------------

    def photo(self, stage="as-left", width=1000, height=750, caption="On the bench.", pair_of="",
              alternative="A reel on a bench.", withheld=False):  # fmt: skip
        number = len(self.photos) + 1
        key = f"ph-{number}"
        data = jpeg(width, height, ground=60 + number % 60, disc=150 + number)
        if withheld:
            what = tag("withheld", hashlib.sha256(data).hexdigest())
        else:
            file = f"photos/{key}.jpg"
            self.files[file] = data
            what = (tag("file", file) + tag("sha256", hashlib.sha256(data).hexdigest())
                    + tag("width", str(width)) + tag("height", str(height)))  # fmt: skip
        self.photos.append(tag(
            "photo", what, tag("taken", "2026-03-06"), ref("by", "ines"), tag("stage", stage),
            ref("visit", "v-1"), ref("pair-of", pair_of) if pair_of else "",
            tag("caption", caption), tag("alternative", alternative), id=key))  # fmt: skip
        return key

    def pair(self, caption="Tail side.", **size):
        found = self.photo("as-found", caption=caption, **size)
        self.photo("as-left", caption=caption, pair_of=found, **size)

    # ---- the file ----------------------------------------------------------------------------

    def _reel(self):
        maker, place = self.maker
        made = "" if not self.made else tag(
            "made", tag("date", self.made), tag("certainty", "likely"))
        return tag(
            "reel", tag("name", self.name), tag("model", self.model), tag("kind", "multiplier"),
            tag("brake", "star"),
            tag("maker", tag("kind", "made-by"), tag("name", maker),
                tag("place", place) if place else "", tag("certainty", "certain")),
            tag("size", tag("what", "plate diameter"), tag("length", "98.4")), tag("weight", "612"),
            made, tag("box-and-papers", self.box_and_papers) if self.box_and_papers else "",
            ref("cover", self.cover) if self.cover else "")  # fmt: skip

    def _story(self):
        if not self.story:
            return ""
        return tag(
            "story", tag("title", self.story_title) if self.story_title else "",
            tag("answer", self.story_answer) if self.story_answer else "", *self.story,
            ref("told-by", "nell"), tag("approved-on", "2026-06-12"))  # fmt: skip

    def _visit(self):
        findings = tag(
            "findings", tag("found-on", "2026-03-06"), tag("left-on", "2026-06-12"),
            ref("by", "ines"), *self.piece_findings, *self.place_findings, *self.faults, *self.tests,
            *self.flags, tag("note", self.note) if self.note else "")  # fmt: skip
        wishes = tag("wishes", tag("use", "fish-and-show"),
                     tag("words", *(tag("p", w) for w in self.wishes)) if self.wishes else "")
        agreement = tag("agreement", tag("on", "2026-03-03"), tag("how", "in person"),
                        ref("with", "nell"), *(tag("must-stay", w) for w in self.must_stay),
                        id="ag-1")  # fmt: skip
        back = "" if not self.handed_back else tag(
            "hand-back", tag("on", "2026-06-19"), ref("to", "nell"),
            *(tag("bag", bag) for bag in self.bags))  # fmt: skip
        return tag(
            "visit", tag("taken-in", "2026-03-03"), ref("brought-by", "nell"), ref("restorer", "ines"),
            tag("arrived", self.arrived) if self.arrived else "", wishes, agreement, findings,
            tag("strip-down", *self.steps) if self.steps else "", *self.cleaning, *self.work,
            tag("tray", *self.tray) if self.tray else "", self.advice,
            *(tag("not-put-right", w) for w in self.not_put_right), self.care, back,
            tag("summary", self.summary) if self.summary else "", id="v-1")  # fmt: skip

    def record(self):
        sections = [
            tag("bench", tag("name", self.bench), tag("place", self.bench_place), ref("restorer", "ines")),
            self._reel(), tag("people", *self.people),
            tag("custody", *self.custody) if self.custody else "", self._story(),
            tag("life", *self.life) if self.life else "", tag("places", *self.places),
            tag("donors", *self.donors) if self.donors else "", tag("pieces", *self.pieces),
            tag("fittings", *self.fittings),
            tag("markings", *self.markings) if self.markings else "",
            tag("visits", self._visit()), tag("photos", *self.photos) if self.photos else "",
        ]  # fmt: skip
        return (
            '<?xml version="1.0" encoding="UTF-8"?>\n'
            f'<reel-record xmlns="urn:winchbook:record:1" version="1" lang="{self.language}">\n'
            + "\n".join(filter(None, sections)) + "\n</reel-record>\n"
        )  # fmt: skip

    def write(self, folder):
        (folder / "photos").mkdir(parents=True, exist_ok=True)
        (folder / "record.xml").write_text(self.record(), encoding="utf-8")
        for name, data in self.files.items():
            (folder / name).write_bytes(data)
