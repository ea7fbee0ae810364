#!/usr/bin/env python3
"""No word of a page stands in the program: with a catalogue whose every message is in made-up letters,
and records told in other letters, no English is left.

    check_language.py WINCHBOOK DIRECTORY

Every message of shared/words/en-GB.xml is written anew with Greek letters where English ones stood
(shared/words/x-es.xml of a copy of the data), and what the bench wrote in the demo records with
Cyrillic ones. Then whatever is Latin on a page comes from the program's own code, from the data
files, or from a word of a list that the record holds; only the last two are let through.
"""

import html
import os
import re
import shutil
import subprocess
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import ROOT, Report  # noqa: E402

GREEK = str.maketrans("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ",
                      "αβγδεζηθικλμνξοπρστυφχψωάέΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩΆΈ")
CYRILLIC = str.maketrans("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ",
                         "абцдефгхийклмнопярстувшжызАБЦДЕФГХИЙКЛМНОПЯРСТУВШЖЫЗ")
# An initial is sought by itself; the letter that stands alone in "don’t" must not be one.
CYRILLIC[ord("t")] = "тъ"
LATIN = re.compile(r"[A-Za-z][a-z]{2,}")
HEXADECIMAL = re.compile(r"^[a-f]+$")

# Data that the bench may write itself, and whose words are told as they stand there.
DATA = ["parts", "care", "drag", "makers", "marks", "prices", "advice"]
# What ICU's root locale writes by itself: "20 min".
ICU_UNITS = {"min"}
# Units of force, in every language the same.
UNITS = {"kgf", "lbf"}
DOCUMENTS = ["keepsake", "collector-statement", "value-statement", "intake-receipt", "hand-back-receipt",
             "bench-sheet", "care-card", "labels"]

# What is asked of every reel, and without one.
ANSWERS = [["value", "--as-of", "2026-06-19"], ["advise", "--as-of", "2026-06-19"], ["tray"], ["grade"], ["date"]]
WITHOUT_RECORD = [
    ["line", "--holds", "200 m", "--of", "0.30 mm", "--diameter", "0.20 mm", "--length", "100 m",
     "--backing", "0.3 mm", "--spool-full", "45 mm", "--spool-empty", "25 mm", "--gear", "4:1"],
    ["drag", "--outer", "1 in", "--inner", "3/8 in", "--faces", "3", "--material", "leather",
     "--pressure", "30 psi", "--spool-full", "50 mm", "--spool-empty", "10 mm", "--line", "20 N"],
    ["lookup", "care", "hard rubber hot water"],
    ["seat", "--bore", "24 mm", "--sleeve", "7 mm", "--depth", "5 mm", "--post", "8 mm", "--spacer", "3 mm",
     "--stack", "steel gear 1 mm, leather free 1 mm, steel sleeve 1 mm"],
]


def marked(pattern):
    """A MessageFormat pattern with its own letters in Greek; names, kinds and selectors stay."""

    def message(at, out):
        while at < len(pattern) and pattern[at] != "}":
            if pattern[at] == "{":
                at = argument(at + 1, out)
            else:
                out.append(pattern[at].translate(GREEK))
                at += 1
        return at

    def argument(at, out):
        """{name}, {name, kind} or {name, kind, selector {message} …}: from behind the brace."""
        out.append("{")
        while pattern[at] != "}":
            out.append(pattern[at])
            at += 1
            if out[-1] == "{":
                at = message(at, out)
                out.append("}")
                at += 1
        out.append("}")
        return at + 1

    out = []
    message(0, out)
    return "".join(out)


def marked_catalogue(source):
    text = source.read_text(encoding="utf-8")

    def one(match):
        key, words = match.groups()
        if key.startswith("date.pattern"):
            return match.group(0)
        return f'<m key="{key}">{html.escape(marked(html.unescape(words)), quote=False)}</m>'

    text = re.sub(r'<m key="([^"]+)"(?: needs="[^"]*")?>(.*?)</m>', one, text, flags=re.DOTALL)
    return text.replace('language="en-GB"', 'language="x-es"')


def told_otherwise(record):
    """The record in Cyrillic letters: texts that are more than a word of a list, a date or a number."""
    text = record.read_text(encoding="utf-8").replace('lang="en-GB"', 'lang="x-es"', 1)
    text = re.sub(r"<!--.*?-->", "", text, flags=re.DOTALL)
    word = re.compile(r"^[a-z0-9-]*$|^[\d.:/~?%XTZ+-]*$|^[\d.]+ [A-Z]{3}$|^[A-Z]{3}$|^[0-9a-f]{64}$|^[\w/.-]+\.(jpg|jpeg|png)$")

    def one(match):
        inside = match.group(1)
        # What is stamped on the reel is in no language.
        stamped = text[:match.start() + 1].endswith("<text>")
        return match.group(0) if stamped or word.match(inside.strip()) else f">{translated(inside)}<"

    def translated(inside):
        return "".join(part if part.startswith("&") else part.translate(CYRILLIC)
                       for part in re.split(r"(&[a-z]+;)", inside))

    return re.sub(r">([^<>]*)<", one, text)


def words_of_data():
    words = set()
    for folder in DATA:
        for path in sorted((ROOT / "shared" / folder).rglob("*.xml")):
            for node in ET.parse(path).iter():
                for text in [node.text or "", node.tail or "", *node.attrib.values()]:
                    words.update(LATIN.findall(text))
    return words | {word.capitalize() for word in words}


def words_of_lists(record):
    """Materials and the like: lower-case words that the record holds as a whole text."""
    words = set()
    for text in re.findall(r">\s*([a-z][a-z-]*)\s*<", record) + re.findall("<text>([^<]*)<", record):
        words.update(LATIN.findall(text))
    return words | {word.capitalize() for word in words}


def text_of(pdf):
    done = subprocess.run(["pdftotext", "-layout", pdf, "-"], capture_output=True, text=True, check=True)
    return done.stdout


def left_in(text, allowed):
    """The Latin words of a text that nothing allows, each with the first line it stands on."""
    left = {}
    for line in text.splitlines():
        for word in LATIN.findall(line):
            if word not in allowed and not HEXADECIMAL.match(word):
                left.setdefault(word, line.strip())
    return [f"{word}: {line}" for word, line in sorted(left.items())]


def answer_faults(command, environment, allowed):
    """What is left in an answer on the terminal, or why there is none."""
    done = subprocess.run(command, capture_output=True, text=True, env=environment, check=False)
    if done.returncode != 0:
        return [done.stderr.strip()]
    return left_in(done.stdout, allowed) or ([] if done.stdout.strip() else ["it says nothing"])


def main():
    report = Report()
    winchbook, directory = Path(sys.argv[1]).resolve(), Path(sys.argv[2])
    shutil.rmtree(directory, ignore_errors=True)
    data = directory / "data"
    data.mkdir(parents=True)
    for name in ["schemas", "report-templates"]:
        os.symlink(ROOT / name, data / name)
    (data / "shared" / "words").mkdir(parents=True)
    for path in (ROOT / "shared").iterdir():
        if path.name != "words":
            os.symlink(path, data / "shared" / path.name)
    catalogue = marked_catalogue(ROOT / "shared" / "words" / "en-GB.xml")
    (data / "shared" / "words" / "x-es.xml").write_text(catalogue, encoding="utf-8")
    greek = {word: word.translate(GREEK) for word in ["piece", "pieces", "of"]}
    report.expect(
        "the marking leaves no English in a message, and its names as they are",
        marked("{n, plural, one {# piece} other {# pieces}} of {name}")
        == "{n, plural, one {# %(piece)s} other {# %(pieces)s}} %(of)s {name}" % greek)
    known = words_of_data()
    environment = dict(os.environ, WINCHBOOK_DATA=str(data))
    for reel in sorted((ROOT / "demo" / "reels").iterdir()):
        folder = directory / reel.name
        folder.mkdir()
        record = told_otherwise(reel / "record.xml")
        (folder / "record.xml").write_text(record, encoding="utf-8")
        shutil.copytree(reel / "photos", folder / "photos", copy_function=os.link)
        allowed = known | ICU_UNITS | words_of_lists(record)
        for document in DOCUMENTS:
            pdf = folder / f"{document}.pdf"
            done = subprocess.run(
                [winchbook, "issue", folder, "--document", document, "--date", "2026-12-01", "-o", pdf,
                 "--unaccounted", "ЖЖЖ"],
                capture_output=True, text=True, env=environment, check=False)
            if done.returncode != 0 and "not-handed-back" in done.stderr:
                continue
            faults = left_in(text_of(pdf), allowed) if done.returncode == 0 else [done.stderr.strip()]
            report.check(f"{reel.name}, {document}: no English but the data's own", faults)
        for answer in ANSWERS:
            report.check(f"{reel.name}, {answer[0]}: no English but the data's own",
                         answer_faults([winchbook, answer[0], folder, *answer[1:]], environment, allowed))
    # An answer about no record is told in British English: here its file is the marked one.
    british = data / "shared" / "words" / "en-GB.xml"
    british.write_text(catalogue.replace('language="x-es"', 'language="en-GB"'), encoding="utf-8")
    for answer in WITHOUT_RECORD:
        report.check(f"{answer[0]} without a record: no English but the data's own",
                     answer_faults([winchbook, *answer], environment, known | UNITS))
    places = set(LATIN.findall(str(directory))) | set(LATIN.findall(" ".join(os.listdir(directory))))
    report.check("shelf: no English but the folders' names",
                 answer_faults([winchbook, "shelf", directory, "--fitted", "ш"], environment, places)
                 + answer_faults([winchbook, "shelf", directory], environment, places))
    report.expect("a word that stays English is missed", left_in("αβ stays", set()) == ["stays: αβ stays"])
    report.leave()


if __name__ == "__main__":
    main()
