#!/usr/bin/env python3
"""Tells a record as the commands with which a bench would have entered it.

    as_commands.py REEL > whole_job.sh

The commands stand in the order of the work: intake, people, what is known of the reel and its
parts; then, visit by visit, findings, steps, cleaning, work, fittings, the tray, tests, advice and
hand-back. The script runs "$winchbook" and makes the folder $1; photographs lie in $2 beforehand.
An element of the record for which there is no command ends it with that element's name, so that
nothing is passed over in silence.
"""

import re
import shlex
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

NS = "{urn:winchbook:record:1}"


def local(element):
    return element.tag.removeprefix(NS)


def folded(text):
    return re.sub(r"\s+", " ", text)


def inner(element):
    """The inside of a sentence as it is typed: words, with the elements of a sentence as they are."""
    parts = [element.text or ""]
    for child in element:
        ref = f' ref="{child.get("ref")}"' if child.get("ref") else ""
        inside = inner(child)
        name = local(child)
        parts.append(f"<{name}{ref}>{inside}</{name}>" if inside else f"<{name}{ref}/>")
        parts.append(child.tail or "")
    return "".join(parts)


def sentence(element):
    return folded(inner(element)).strip()


class Once:
    """The children of an element, each of which has to be taken."""

    def __init__(self, element, where=""):
        self.element = element
        self.where = f"{where}/{local(element)}"
        self.left = list(element)

    def take(self, name):
        found = [one for one in self.left if local(one) == name]
        self.left = [one for one in self.left if local(one) != name]
        return found

    def one(self, name):
        found = self.take(name)
        return found[0] if found else None

    def text(self, name):
        one = self.one(name)
        return None if one is None else folded(one.text or "").strip()

    def lines(self, name):
        one = self.one(name)
        return None if one is None else (one.text or "")

    def words(self, name):
        one = self.one(name)
        return None if one is None else sentence(one)

    def ref(self, name):
        one = self.one(name)
        return None if one is None else one.get("ref")

    def refs(self, name):
        return [one.get("ref") for one in self.take(name)]

    def sub(self, name):
        one = self.one(name)
        return None if one is None else Once(one, self.where)

    def subs(self, name):
        return [Once(one, self.where) for one in self.take(name)]

    def done(self):
        if self.left:
            sys.exit(f"as_commands.py: no command enters {self.where}/{local(self.left[0])}")


class Script:
    def __init__(self):
        self.lines = []

    def say(self, text):
        self.lines += ["", f"# {text}"]

    def run(self, verb, *words, **options):
        line = [*verb.split(), "reel", *[word for word in words if word is not None]]
        for name, value in options.items():
            option = "--" + name.rstrip("_").replace("_", "-")
            if value is True:
                line.append(option)
            elif isinstance(value, list):
                for one in value:
                    line += [option, one]
            elif value not in (None, False, ""):
                line += [option, value]
        self.lines.append("w " + " ".join(quoted(one) for one in line))


def quoted(word):
    if word == "reel":
        return '"$reel"'
    if word.startswith("$photos/"):
        return f'"{word}"'
    return shlex.quote(word)


class Teller:
    def __init__(self, root):
        self.root = Once(root)
        self.script = Script()
        self.lang = root.get("lang")

    # What stands before the visits.

    def read(self):
        root = self.root
        self.bench = root.sub("bench")
        self.reel = root.sub("reel")
        self.people = by_id(root.sub("people"), "person")
        custody = root.sub("custody")
        self.custody = custody.left if custody else []
        self.story = root.sub("story")
        self.life = all_of(root, "life", "event")
        self.places = by_id(root.sub("places"), "place")
        self.donors = all_of(root, "donors", "donor")
        self.pieces = by_id(root.sub("pieces"), "piece")
        self.fittings = all_of(root, "fittings", "fitting")
        self.markings = all_of(root, "markings", "marking")
        self.visits = all_of(root, "visits", "visit")
        self.photos = all_of(root, "photos", "photo")
        self.value = root.sub("value")
        root.done()

    def tell(self):
        self.read()
        self.taken_in = [one.text("taken-in") for one in self.visits]
        # What the bench fitted is entered as it is fitted; all the rest is known from the first.
        self.fitted = {}
        for fitting in self.fittings:
            self.fitted.setdefault(fitting.element.find(NS + "piece").get("ref"), fitting)
        last = len(self.visits) - 1
        for number, visit in enumerate(self.visits):
            visit.id = visit.element.get("id")
            visit.day = self.taken_in[number]
            agreements = visit.subs("agreement")
            if number == 0:
                self.intake(visit)
                self.tell_people()
                self.tell_parts()
            else:
                self.intake_again(visit, agreements.pop(0) if agreements else None)
            for agreement in agreements:
                self.agree(agreement)
            if number == last:
                self.tell_donors()
                self.tell_new_parts()
                self.tell_photos()
                for id_, photos in getattr(self, "photographed_later", {}).items():
                    self.script.run("part", id_, known=True, photo=photos)
                self.tell_marks()
                self.tell_reel()
                self.tell_custody()
                self.tell_life()
                self.tell_answers(visit)
            self.tell_visit(visit, number == last)
        self.tell_value()
        return "\n".join([*HEAD, *self.script.lines]) + "\n"

    def intake(self, visit):
        run, bench, reel = self.script.run, self.bench, self.reel
        restorer = self.people[bench.refs("restorer")[0]]
        owner = self.people[visit.ref("owner")]
        maker = self.maker = reel.sub("maker")
        wishes = visit.sub("wishes")
        self.script.say(f"Drop-off, {visit.day}")
        run(
            "intake",
            lang=self.lang,
            on=visit.day,
            bench=bench.text("name"),
            bench_place=bench.text("place"),
            bench_address=bench.lines("address"),
            bench_contact=bench.text("contact"),
            restorer=restorer.text("name"),
            kind=reel.text("kind"),
            brake=reel.text("brake"),
            model=reel.text("model"),
            name=reel.text("name"),
            no_places=True,
            owner_id=owner.element.get("id"),
            owner=owner.text("name"),
            owner_short=owner.text("short-name"),
            owner_stand_in=owner.text("stand-in"),
            owner_address=owner.lines("address"),
            owner_contact=owner.text("contact"),
            owner_named_to=owner.text("named-to"),
            brought_by=visit.ref("brought-by"),
            by=visit.ref("restorer"),
            arrived=visit.words("arrived"),
            number=visit.text("number"),
            promised_by=visit.text("promised-by"),
            **self.wishes(wishes),
        )
        run(
            "person",
            restorer.element.get("id"),
            known=True,
            short=restorer.text("short-name"),
            stand_in=restorer.text("stand-in"),
            who=restorer.words("who"),
            named_to=restorer.text("named-to"),
        )
        del maker

    def wishes(self, wishes):
        if wishes is None:
            return {}
        words = wishes.one("words")
        ranking = [one.text for one in wishes.take("ranking")]
        return {
            "use": wishes.text("use"),
            "wish": None if words is None else "\n\n".join(sentence(p) for p in words),
            "rank": ",".join(ranking),
        }

    def intake_again(self, visit, agreement):
        self.script.say(f"Drop-off, {visit.day}")
        options = {} if agreement is None else self.agreed(agreement)
        options.pop("on", None)
        options["agreement_id"] = options.pop("id", None)
        options["agreement_note"] = options.pop("note", None)
        options["part_must_stay"] = options.pop("part_must_stay")
        self.script.run(
            "intake",
            again=True,
            on=visit.day,
            owner=visit.ref("owner"),
            brought_by=visit.ref("brought-by"),
            by=visit.ref("restorer"),
            arrived=visit.words("arrived"),
            number=visit.text("number"),
            promised_by=visit.text("promised-by"),
            **self.wishes(visit.sub("wishes")),
            **options,
        )

    def agreed(self, agreement):
        estimate = agreement.sub("estimate")
        sums = [] if estimate is None else [estimate.text("low"), estimate.text("high")]
        options = {
            "id": agreement.element.get("id"),
            "on": agreement.text("on"),
            "how": agreement.text("how"),
            "with_": agreement.ref("with"),
            "may_be_done": [sentence(one) for one in agreement.take("may-be-done")],
            "must_stay": [sentence(one) for one in agreement.take("must-stay")],
            "part_must_stay": agreement.refs("piece-must-stay"),
            "may_leave": agreement.refs("piece-may-leave"),
            "limit": agreement.text("cost-limit"),
            "estimate": " to ".join(one for one in sums if one),
            "note": agreement.words("note"),
        }
        agreement.done()
        return options

    def agree(self, agreement):
        options = self.agreed(agreement)
        self.script.run("agree", **options)

    def tell_people(self):
        self.script.say("Everybody whom the record names")
        for person in self.people.values():
            person.take("salt")
            if person.left and local(person.left[0]) == "who" and len(person.left) == 1:
                self.script.run(
                    "person", person.element.get("id"), known=True, who=person.words("who")
                )
            elif person.left:
                self.script.run(
                    "person",
                    person.text("name"),
                    id=person.element.get("id"),
                    short=person.text("short-name"),
                    stand_in=person.text("stand-in"),
                    who=person.words("who"),
                    address=person.lines("address"),
                    contact=person.text("contact"),
                    lived=person.text("lived"),
                    named_to=person.text("named-to"),
                )
            person.done()

    # Parts.

    def place_options(self, place):
        if place is None or not place.left:
            return {}
        options = {
            "place": place.text("name"),
            "place_id": place.element.get("id"),
            "kind": place.text("kind"),
            "assembly": place.text("assembly"),
            "quantity": place.text("quantity"),
            "weight": place.text("weight"),
            "area": place.text("exposed-area"),
            "consumable": place.text("consumable") == "yes",
            "may_be_empty": place.text("may-be-empty") == "yes",
            "spring": place.text("captive-spring") == "yes",
        }
        place.done()
        return options

    def piece_options(self, piece):
        options = {
            "id": piece.element.get("id"),
            "count": piece.text("count"),
            "role": piece.text("role"),
            "material": piece.text("material"),
            "finish": [self.finish(one) for one in piece.subs("finish")],
            "maker_name": piece.text("maker-name"),
            "supplier": piece.text("supplier"),
            "donor": piece.ref("donor"),
            "fragment_of": piece.ref("fragment-of"),
            "made": piece.text("made"),
            "note": piece.words("note"),
        }
        piece.now = piece.sub("now")
        return options

    def finish(self, layer):
        when, note = layer.text("when"), layer.words("note")
        by = layer.text("by") + (f", {when}" if when else "")
        text = f"{layer.text('what')} ({by})" + (f": {note}" if note else "")
        layer.done()
        return text

    def by_bench(self, fitting):
        return fitting.element.find(NS + "visit") is not None

    def tell_parts(self):
        self.script.say("The places of the reel, what sits there, and what came with it")
        # A place is entered with the first part that sat in it, in the order of the ledger.
        sat = {}
        for fitting in self.fittings:
            if not self.by_bench(fitting):
                sat.setdefault(fitting.element.find(NS + "place").get("ref"), []).append(fitting)
        for id_, place in self.places.items():
            fittings = sat.get(id_, [])
            if not fittings:
                options = self.place_options(place)
                name = options.pop("place")
                self.script.run("part", name, empty=True, **options)
            for fitting in fittings:
                self.tell_part_in(place, fitting)
        for id_, piece in self.pieces.items():
            if id_ not in self.fitted and piece.element.find(NS + "donor") is None:
                role = piece.element.find(NS + "role")
                # What is bought for the reel comes later.
                if role is None or piece.element.find(f"{NS}now/{NS}since") is not None:
                    options = self.piece_options(piece)
                    self.script.run("part", piece.text("name"), **options)

    def tell_part_in(self, place, fitting):
        piece = self.pieces[fitting.ref("piece")]
        place_id = fitting.ref("place")
        options = self.place_options(place) or {"place": place_id}
        by = fitting.sub("by")
        fitted_by = by.text("answer") or by.ref("person")
        removed = fitting.ref("removed-in")
        until = fitting.text("until")
        fitting.gone = None if removed else until
        self.script.run(
            "part",
            piece.text("name"),
            **self.piece_options(piece),
            **options,
            fitted_by=fitted_by,
            from_=fitting.text("from"),
        )
        fitting.done()

    def tell_donors(self):
        if self.donors:
            self.script.say("What gave parts")
        for donor in self.donors:
            self.script.run(
                "donor",
                donor.text("name"),
                id=donor.element.get("id"),
                same_maker=donor.text("same-maker") == "yes",
                note=donor.words("note"),
                on=donor.text("acquired"),
                cost=donor.text("cost"),
            )
            donor.done()

    def tell_new_parts(self):
        self.script.say("The parts that will be put in, each before it is photographed")
        for piece in self.pieces.values():
            if piece.element.find(NS + "name") in piece.left:
                self.script.run("part", piece.text("name"), **self.piece_options(piece))

    # Photographs, marks, and what the whole reel is.

    def tell_photos(self):
        self.script.say("Photographs")
        for photo in self.photos:
            photo.take("salt")
            for made in ("sha256", "width", "height"):
                photo.take(made)
            file = Path(photo.text("file")).name
            photo.ref("visit")
            self.script.run(
                "photo add",
                f"$photos/{file}",
                name=photo.element.get("id").removeprefix("ph-"),
                stage=photo.text("stage"),
                taken=photo.text("taken"),
                by=photo.ref("by"),
                part=photo.refs("piece"),
                pair_of=photo.ref("pair-of"),
                caption=photo.words("caption"),
                alt=photo.words("alternative"),
                scale=photo.text("scale"),
                rights=photo.text("rights"),
                shows=photo.refs("shows"),
                on=photo.element.findtext(NS + "taken") or None,
            )
            photo.done()

    def tell_marks(self):
        self.script.say("Marks, as they were read")
        serial = self.reel.text("serial")
        for mark in self.markings:
            mark.take("salt")
            says = mark.sub("says")
            text = mark.lines("text")
            options = {}
            if says:
                for end in ("not-before", "not-after"):
                    one = says.sub(end)
                    if one:
                        options[end.replace("-", "_")] = f"{one.text('date')} {one.text('firmness')}"
                options["because"] = says.words("because")
                options["source"] = says.text("source")
                says.done()
            self.script.run(
                "mark",
                text,
                id=mark.element.get("id"),
                part=mark.ref("piece"),
                where=mark.text("where"),
                method=mark.text("method"),
                whose=mark.text("whose"),
                state=mark.text("state"),
                legibility=mark.text("legibility"),
                person=mark.ref("person"),
                claims=mark.text("claims"),
                cut=mark.text("cut"),
                **options,
                note=mark.words("note"),
                photo=mark.refs("photo"),
                serial=text == serial,
            )
            mark.done()

    def evidence(self, answer):
        return {
            "because": answer.words("because"),
            "mark": answer.refs("marking"),
            "photo": answer.refs("photo"),
            "told_by": answer.refs("told-by"),
        }

    def tell_reel(self):
        run, reel, bench, maker = self.script.run, self.reel, self.bench, self.maker
        self.script.say("What the reel is")
        grounds = maker.sub("grounds")
        run(
            "identify",
            maker=maker.text("name"),
            maker_kind=maker.text("kind"),
            maker_place=maker.text("place"),
            still_trading=maker.text("still-trading"),
            certainty=maker.text("certainty"),
            **(self.evidence(grounds) if grounds else {}),
        )
        maker.done()
        made = reel.sub("made")
        if made:
            run(
                "identify",
                made=made.text("date"),
                certainty=made.text("certainty"),
                **self.evidence(made),
            )
            made.done()
        hand = reel.sub("hand")
        hands = [hand.text(one) for one in ("made", "found", "left")] if hand else []
        run(
            "identify",
            sold_by=reel.text("sold-by"),
            hand=", ".join(hands),
            how_converted=hand.words("how-converted") if hand else None,
            box_and_papers=reel.words("box-and-papers"),
            cover=reel.ref("cover"),
            own_interest=bench.words("own-interest"),
            terms=bench.words("terms"),
        )
        for size in reel.subs("size"):
            run("measure", size.text("what"), size.text("length") + " mm")
        capacity = reel.sub("capacity")
        if capacity:
            run(
                "measure",
                capacity=capacity.text("length") + " m",
                of_line=capacity.text("line-diameter") + " mm",
                source=capacity.text("source"),
            )
        weight = reel.text("weight")
        run("measure", weight=weight and f"{weight} g", gear_ratio=reel.text("gear-ratio"))
        for piece in self.pieces.values():
            weight = piece.text("weight")
            if weight:
                run("measure", part=piece.element.get("id"), weight=f"{weight} g")
        bench.done()
        reel.done()

    def tell_custody(self):
        self.script.say("Who had it")
        for element in self.custody:
            one = Once(element)
            self.script.run(
                "custody",
                one.ref("holder"),
                id=element.get("id"),
                held=one.text("held"),
                from_=one.text("from"),
                until=one.text("until"),
                how=one.words("how") or one.words("what"),
                source=one.text("source"),
                certainty=one.text("certainty"),
                photo=one.refs("photo"),
            )
            one.done()

    def tell_life(self):
        self.script.say("What happened to it before it came here, and its story")
        for event in self.life:
            what = event.one("what")
            self.script.run(
                "story",
                "\n\n".join(sentence(p) for p in what),
                event=event.text("kind"),
                id=event.element.get("id"),
                title=event.text("title"),
                as_told=event.text("date-as-told"),
                date=event.text("date"),
                by=event.ref("by"),
                part=event.refs("piece"),
                source=event.text("source"),
                certainty=event.text("certainty"),
                keep_because=event.words("keep-because"),
                must_stay=event.refs("must-stay"),
                photo=event.refs("photo"),
            )
            event.done()
        story = self.story
        if story:
            approved = story.text("approved-on")
            self.script.run(
                "story",
                "\n\n".join(sentence(p) for p in story.take("p")),
                title=story.text("title"),
                answer=story.words("answer"),
                told_by=story.ref("told-by"),
                approved=approved is not None,
                on=approved,
            )
            story.done()

    def tell_answers(self, visit):
        self.script.say("Whose each part is, and why")
        for id_, piece in self.pieces.items():
            for question in ("made-by", "of-this-reel", "pattern"):
                answer = piece.sub(question)
                if answer is None:
                    continue
                phrase = PHRASES[question, answer.text("answer")]
                certainty = answer.text("certainty")
                self.script.run(
                    "grade",
                    id_,
                    set=f"{phrase}, {certainty}" if certainty else phrase,
                    by=answer.ref("judged-by"),
                    on=answer.text("judged-on"),
                    **self.evidence(answer),
                )
                answer.done()
            piece.done()

    # One visit.

    def tell_visit(self, visit, is_last):
        findings = visit.sub("findings")
        tray = visit.sub("tray")
        lines = [self.tray_line(one) for one in tray.subs("line")] if tray else []
        found_on = findings.text("found-on") or visit.day
        left_on = findings.text("left-on") or found_on
        self.examined_by = findings.ref("by")
        pieces = findings.subs("piece-finding")
        places = findings.subs("place-finding")
        tests = findings.subs("test")
        for one in pieces:
            one.id = one.ref("piece")
        self.script.say("As found")
        self.gone_before(visit)
        self.tell_states(pieces, "found", found_on)
        self.tell_places(places, "found", found_on)
        self.tell_tests(tests, "before")
        self.tell_advice(visit)
        self.script.say("Taken apart")
        stripped = self.tell_steps(visit, found_on)
        self.tell_off(lines, stripped, found_on)
        self.script.say("Cleaned")
        self.tell_cleaning(visit, found_on)
        self.script.say("Put in")
        self.tell_fittings(visit)
        self.tell_bags(lines, visit, found_on)
        self.script.say("Worked on, put back, and proved")
        self.tell_work(visit)
        if any(line["refitted"] for line in lines):
            self.script.run("tray", refit_all=True, on=left_on)
        self.tell_states(pieces, "left", left_on)
        self.tell_places(places, "left", left_on)
        self.tell_tests(tests, "after")
        self.tell_faults(findings, left_on)
        self.tell_looks(findings)
        self.tell_drag(visit, left_on)
        note = findings.words("note")
        if note:
            self.script.run("grade", findings_note=note, on=left_on)
        findings.done()
        self.tell_handback(visit)
        if is_last:
            self.tell_now()
        visit.done()

    def gone_before(self, visit):
        """Parts that went before the reel came: their fitting ended, by nobody's hand here."""
        if visit is not self.visits[-1]:
            return
        for fitting in self.fittings:
            gone = getattr(fitting, "gone", None)
            if gone:
                piece = self.pieces[fitting.element.find(NS + "piece").get("ref")]
                self.script.run(
                    "part", piece.element.get("id"), known=True, until=gone, **self.now_of(piece)
                )

    def now_of(self, piece):
        now = piece.now
        options = {
            "now": now.text("kind"),
            "label": now.text("bag"),
            "since": now.text("since"),
            "now_note": now.words("note"),
        }
        now.ref("leave")
        now.done()
        return options

    def tell_states(self, pieces, moment, day):
        alike = {}
        for finding in pieces:
            state = finding.sub(moment)
            if state is None:
                continue
            phrases = [state.text("presence").replace("-", " ")]
            for surface in state.subs("surface"):
                phrases.append(f"{surface.text('state').replace('-', ' ')} {surface.text('share')}")
            for element, word in (("corroded", "corroded"), ("appearance-defects", "defects")):
                share = state.text(element)
                if share:
                    phrases.append(f"{word} {share}")
            key = (", ".join(phrases), state.words("note"), tuple(state.refs("photo")))
            alike.setdefault(key, []).append(finding.id)
            state.done()
        for (phrases, note, photos), ids in alike.items():
            self.script.run(
                "grade",
                *ids,
                set=phrases,
                left=moment == "left",
                by=self.examined_by,
                note=note,
                photo=list(photos),
                on=day,
            )

    def tell_places(self, places, moment, day):
        for finding in places:
            filled = finding.text(moment)
            if filled:
                self.script.run(
                    "grade",
                    place=finding.element.find(NS + "place").get("ref"),
                    set={"yes": "filled"}.get(filled, filled.replace("-", " ")),
                    left=moment == "left",
                    note=finding.words("note") if moment == "left" else None,
                    on=day,
                )

    def tell_tests(self, tests, half):
        for test in tests:
            result = test.sub(half)
            unit = test.element.find(NS + "unit")
            unit = None if unit is None else unit.text
            low, high = result.text("reading"), result.text("reading-high")
            words = result.text("words")
            outcome = result.text("outcome")
            reading = None
            if low:
                reading = low + (f" to {high}" if high else "") + (f" {unit}" if unit else "")
            limit = result.text("load-limit")
            options = {
                half: reading or words,
                "words": words if reading else None,
                "unit": None if reading else unit,
                "not_safe": outcome == "not-safe-to-test",
                "not_tested": outcome == "not-tested",
                "left": half == "after" and outcome != "done",
                "load_limit": limit and f"{limit} N",
                "verdict": result.text("verdict"),
                "on": result.text("on"),
                "note": test.words("note") if half == "after" else None,
            }
            self.script.run("test", test.element.find(NS + "what").text, **options)
            result.done()

    def tell_advice(self, visit):
        advice = visit.sub("advice")
        if advice is None:
            return
        chosen_on = advice.text("chosen-on") or visit.day
        costs = []
        for cost in advice.subs("course-cost"):
            low, high = cost.text("low"), cost.text("high")
            sums = " to ".join(one for one in (low, high) if one)
            costs.append(f"{cost.text('course')}: {sums}: {cost.words('effect') or ''}")
            cost.done()
        self.script.run(
            "advise",
            set=advice.text("advised"),
            because=advice.words("because"),
            cost=costs,
            on=chosen_on,
        )
        self.script.run(
            "advise",
            decide=advice.text("chosen"),
            decided_by=advice.ref("chosen-by"),
            why=advice.words("chosen-because"),
            on=chosen_on,
        )
        advice.done()

    def caution(self, parent):
        caution = parent.sub("caution")
        if caution is None:
            return None
        text = f"{caution.text('label')}: {caution.words('words')}"
        caution.done()
        return text

    def way_back(self, parent):
        way = parent.sub("way-back")
        if way is None:
            return None
        text = f"{way.text('degree')}: {way.words('words')}"
        way.done()
        return text

    def tray_line(self, line):
        counts = (
            "taken-off found-loose refitted bagged to-owner kept-by-bench lost scrapped".split()
        )
        told = {name: int(line.text(name) or 0) for name in counts}
        told["piece"] = line.ref("piece")
        line.done()
        return told

    def tell_steps(self, visit, day):
        strip_down = visit.sub("strip-down")
        if strip_down is None:
            return []
        loose = {
            line.find(NS + "piece").get("ref")
            for line in visit.element.iterfind(f"{NS}tray/{NS}line")
            if line.find(NS + "found-loose") is not None
        }
        done = []
        for step in strip_down.subs("step"):
            pieces = step.refs("piece")
            self.script.run(
                "strip",
                step.words("what"),
                off=[one for one in pieces if one not in loose],
                found=[one for one in pieces if one in loose],
                orientation=step.words("orientation"),
                tool=step.text("tool"),
                spring=step.text("spring-loose") == "yes",
                caution=self.caution(step),
                photo=step.refs("photo"),
                on=day,
            )
            step.done()
            done += pieces
        return done

    def tell_off(self, lines, stripped, day):
        """What came off or lay loose without a step of its own."""
        for line in lines:
            if line["piece"] not in stripped:
                self.script.run(
                    "tray",
                    off=[line["piece"]] if line["taken-off"] else [],
                    found_loose=[line["piece"]] if line["found-loose"] else [],
                    on=day,
                )

    def tell_cleaning(self, visit, day):
        for cleaning in visit.subs("cleaning"):
            self.script.run(
                "clean",
                *cleaning.refs("piece"),
                method=cleaning.text("method"),
                material=cleaning.text("material"),
                minutes=cleaning.text("minutes"),
                what=cleaning.words("what"),
                against_warning=cleaning.words("against-warning"),
                caution=self.caution(cleaning),
                way_back=self.way_back(cleaning),
                loss=cleaning.words("loss"),
                on=cleaning.text("on") or day,
            )
            cleaning.done()

    def tell_fittings(self, visit):
        for fitting in self.fittings:
            here = fitting.element.find(NS + "visit")
            if here is None or here.get("ref") != visit.id:
                continue
            id_ = fitting.ref("piece")
            piece = self.pieces[id_]
            known = piece.element.find(NS + "name") not in piece.left
            place = self.places[fitting.ref("place")]
            old = fitting.ref("instead-of")
            seat = fitting.sub("seat")
            options = {} if known else self.piece_options(piece)
            made = options.pop("made", None)
            options.pop("finish", None)
            options.pop("role", None)
            options.pop("fragment_of", None)
            fitting.ref("visit")
            fitting.ref("removed-in")
            fitting.text("until")
            fitting.one("by")
            self.script.run(
                "fit",
                id_ if known else piece.text("name"),
                known=known,
                place=place.element.get("id"),
                instead_of=old,
                label=self.bag_of(old, visit),
                **options,
                made=made is not None and not known,
                why=fitting.words("why"),
                adaptation=fitting.words("adaptation"),
                reel_altered=fitting.text("reel-altered") == "yes",
                bore=seat.text("bore") if seat else None,
                outside=seat.text("outside") if seat else None,
                depth=seat.text("depth") if seat else None,
                seat_note=seat.words("note") if seat else None,
                way_back=self.way_back(fitting),
                photo=self.later(id_, visit, fitting.refs("photo")),
                old_photo=fitting.refs("old-photo"),
                on=fitting.text("from"),
            )
            fitting.done()

    def later(self, id_, visit, photos):
        """A photograph that is taken in a later visit cannot be told with the fitting."""
        if visit is self.visits[-1]:
            return photos
        self.photographed_later = {**getattr(self, "photographed_later", {}), id_: photos}
        return []

    def bag_of(self, id_, visit):
        if id_ is None:
            return None
        return self.pieces[id_].element.findtext(f"{NS}now/{NS}bag")

    def tell_bags(self, lines, visit, day):
        """What goes elsewhere than back, and was not replaced."""
        replaced = {
            fitting.element.find(NS + "instead-of").get("ref")
            for fitting in self.fittings
            if fitting.element.find(NS + "instead-of") is not None
            and fitting.element.find(NS + "visit").get("ref") == visit.id
        }
        for line in lines:
            id_ = line["piece"]
            if id_ in replaced:
                continue
            since = self.pieces[id_].element.findtext(f"{NS}now/{NS}since") or day
            for count, option in (
                ("bagged", "bag"),
                ("to-owner", "to_owner"),
                ("kept-by-bench", "keep"),
                ("lost", "lost"),
                ("scrapped", "scrap"),
            ):
                if line[count]:
                    self.script.run(
                        "tray",
                        label=self.bag_of(id_, visit) if option == "bag" else None,
                        on=max(since, day),
                        **{option: [id_]},
                    )

    def tell_work(self, visit):
        for work in visit.subs("work"):
            first, _, last = (work.text("on") or visit.day).partition("/")
            self.script.run(
                "work",
                work.words("what"),
                part=work.refs("piece"),
                by=work.ref("by"),
                on=first,
                until=last,
                hours=work.text("hours"),
                parts_cost=work.text("parts-cost"),
                way_back=self.way_back(work),
                caution=self.caution(work),
            )
            work.done()

    def tell_faults(self, findings, day):
        for fault in findings.subs("fault"):
            self.script.run(
                "grade",
                fault.ref("piece"),
                fault=fault.text("kind"),
                fault_name=fault.text("name"),
                size=fault.text("size"),
                found_severity=fault.text("found"),
                left_severity=fault.text("left"),
                what=fault.words("what"),
                stays_because=fault.words("why-it-stays"),
                photo=fault.refs("photo"),
                on=day,
            )
            fault.done()
        for flag in findings.subs("flag"):
            self.script.run(
                "grade",
                *flag.refs("piece"),
                flag=flag.text("kind"),
                flag_name=flag.text("name"),
                what=flag.words("what"),
                on=day,
            )
            flag.done()

    def tell_looks(self, findings):
        """What was looked for and not found; that something was found, the entries say."""
        verbs = {
            "marks": ("mark", {"none": True}),
            "serial": ("mark", {"none": True, "serial": True}),
            "faults": ("grade", {"fault": "none"}),
            "hazards": ("grade", {"flag": "none"}),
            "photographs": ("photo add", {"none": True}),
            "life": ("story", {"event": "none"}),
            "loose-parts": ("tray", {"found_loose": ["none"]}),
        }
        for look in findings.subs("looked-for"):
            what, found = look.text("what"), look.text("found")
            if found == "none":
                verb, options = verbs[what]
                self.script.run(verb, **options, by=look.ref("by"), on=look.text("on"))
            look.done()

    def tell_drag(self, visit, day):
        drag = visit.sub("drag")
        if drag is None:
            return
        washers = []
        for washer in drag.subs("washer"):
            measures = [washer.text(one) for one in ("inside", "outside", "thickness")]
            washers.append(
                f"{washer.ref('piece')}: {washer.text('keyed')} "
                + " ".join(one for one in measures if one)
            )
            washer.done()

        def in_unit(name, unit):
            text = drag.text(name)
            return text and f"{text} {unit}"

        self.script.run(
            "measure",
            washer=washers,
            **{"greased" if drag.text("greased") == "yes" else "dry": True},
            setting=in_unit("setting", "N"),
            spool_full=in_unit("spool-full", "mm"),
            spool_empty=in_unit("spool-empty", "mm"),
            line_strength=in_unit("line-strength", "N"),
            on=day,
        )
        drag.done()

    def tell_handback(self, visit):
        back = visit.sub("hand-back")
        self.script.say("Hand-back")
        care = visit.sub("care")
        options = {}
        if care:
            low, high = care.text("drag-low"), care.text("drag-high")
            options = {
                "drag": low and f"{low} to {high} N" if high else low and f"{low} N",
                "line": care.text("line"),
                "fish": [sentence(one) for one in care.take("fish")],
                "keep": [sentence(one) for one in care.take("keep")],
                "caution": [
                    f"{one.text('label')}: {one.words('words')}" for one in care.subs("caution")
                ],
            }
            care.done()
        self.script.run(
            "handback",
            on=back.text("on"),
            to=back.ref("to"),
            bag=[one.text for one in back.take("bag")],
            note=back.words("note"),
            not_put_right=[sentence(one) for one in visit.take("not-put-right")],
            **options,
            next_service=visit.text("next-service"),
            review_by=visit.text("review-by"),
            summary=visit.words("summary"),
        )
        back.done()

    def tell_value(self):
        value = self.value
        if value is None:
            return
        self.script.say("What such reels were sold for")
        self.script.run(
            "sales for",
            purpose=value.text("purpose"),
            effective=value.text("effective"),
            basis=value.text("basis"),
            currency=value.text("currency"),
            note=value.words("note"),
        )
        for sale in value.subs("sale"):
            sale.text("used")
            self.script.run(
                "sales add",
                id=sale.element.get("id"),
                date=sale.text("on"),
                price=sale.text("price"),
                included=sale.text("included"),
                kind=sale.text("kind"),
                with_premium=sale.text("with-premium") == "yes",
                state=sale.text("state"),
                originality=sale.text("originality"),
                box=sale.text("box") == "yes",
                source=sale.text("source"),
                not_used=sale.words("excluded-because"),
            )
            sale.done()
        value.done()

    def tell_now(self):
        """Where things are that no other command told of, or since when."""
        for id_, piece in self.pieces.items():
            now = piece.now
            if now.element.findtext(NS + "kind") != "fitted" and now.left:
                self.script.run("part", id_, known=True, **self.now_of(piece))


def all_of(root, section, name):
    one = root.sub(section)
    return one.subs(name) if one else []


def by_id(section, name):
    return {one.element.get("id"): one for one in section.subs(name)}


PHRASES = {
    ("made-by", "this-maker"): "the maker's",
    ("made-by", "another"): "another maker's",
    ("made-by", "bench"): "bench made",
    ("made-by", "owner"): "owner made",
    ("made-by", "not-determined"): "maker not known",
    ("of-this-reel", "yes"): "original",
    ("of-this-reel", "no"): "not original",
    ("of-this-reel", "not-determined"): "originality not known",
    ("pattern", "right"): "right pattern",
    ("pattern", "running-change"): "running change",
    ("pattern", "service-spare"): "service spare",
    ("pattern", "wrong"): "wrong pattern",
    ("pattern", "not-determined"): "pattern not known",
}

HEAD = """\
#!/bin/sh
# A whole job, from drop-off to hand-back, through commands alone.
#
#   whole_job.sh WINCHBOOK REEL PHOTOS
#
# Makes the folder REEL with its record; the photographs as the camera left them lie in PHOTOS. Written
# by as_commands.py from the heirloom of the demo; check_whole_job.py compares the two.
set -u
winchbook=$1
reel=$2
photos=$3
today=2026-06-30

w() {
  if ! "$winchbook" "$@" --today "$today" >"$reel.log" 2>&1; then
    echo "refused: winchbook $*" >&2
    cat "$reel.log" >&2
    exit 1
  fi
}""".splitlines()


if __name__ == "__main__":
    path = Path(sys.argv[1])
    path = path / "record.xml" if path.is_dir() else path
    sys.stdout.write(Teller(ET.parse(path).getroot()).tell())
