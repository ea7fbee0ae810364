#!/usr/bin/env python3
"""Makes a reel's folder with one thing wrong in it, for the transcripts.

    make.py CASE FOLDER

The folder holds the small record of tests/recordfile/ and two photographs of tests/photo/, changed as the
case says. `make.py good FOLDER` changes nothing; `make.py list` names the cases.
"""

import hashlib
import shutil
import sys
from pathlib import Path

TESTS = Path(__file__).resolve().parent.parent
NAMESPACE = "urn:winchbook:record:1"
NO_DIGEST = "0" * 64


def good(folder):
    """A record in order with its photographs."""
    (folder / "photos").mkdir(parents=True)
    text = (TESTS / "recordfile" / "records" / "small.xml").read_text(encoding="utf-8")
    for name, source in (("before", "plain"), ("after", "progressive")):
        photograph = (TESTS / "photo" / "files" / f"{source}.jpg").read_bytes()
        (folder / "photos" / f"{name}.jpg").write_bytes(photograph)
        digest = hashlib.sha256(photograph).hexdigest()
        text = text.replace(NO_DIGEST, digest, 1)
    (folder / "record.xml").write_text(text, encoding="utf-8")


def change(folder, old, new):
    record = folder / "record.xml"
    text = record.read_text(encoding="utf-8")
    if old not in text:
        sys.exit(f"the small record no longer holds {old}")
    record.write_text(text.replace(old, new, 1), encoding="utf-8")


def write(folder, content):
    (folder / "record.xml").write_bytes(content)


def photograph(folder):
    return folder / "photos" / "before.jpg"


def no_record(folder):
    (folder / "record.xml").unlink()


def not_xml(folder):
    write(folder, b"%PDF-1.7\n")


def empty(folder):
    write(folder, b"")


def cut_short(folder):
    write(folder, (folder / "record.xml").read_bytes()[:4012])


def wrong_root(folder):
    write(folder, f'<?xml version="1.0"?>\n<rod-record xmlns="{NAMESPACE}"/>\n'.encode())


def newer_version(folder):
    change(folder, 'version="1" lang', 'version="2" lang')


def doctype(folder):
    change(folder, "<reel-record", "<!DOCTYPE reel-record>\n<reel-record")


def entities(folder):
    """Each entity ten times the one before: a thousand million letters, if anybody followed them."""
    levels = "".join(f'<!ENTITY e{n} "{f"&e{n - 1};" * 10}">' for n in range(1, 10))
    change(folder, "<reel-record", f'<!DOCTYPE r [<!ENTITY e0 "xxxxxxxxxx">{levels}]>\n<reel-record')
    change(folder, "<name>Foot</name>", "<name>&e9;</name>")


def outside_entity(folder):
    change(folder, "<reel-record", '<!DOCTYPE r [<!ENTITY f SYSTEM "file:///etc/hostname">]>\n<reel-record')


def unknown_entity(folder):
    change(folder, "a biscuit tin", "a bis&shy;cuit tin")


def deep(folder):
    write(folder, b"<a>" * 100_000 + b"</a>" * 100_000)


def text_of_200_mb(folder):
    with open(folder / "record.xml", "wb") as record:
        record.write(b"<a>")
        for _ in range(200):
            record.write(b"x" * 1_000_000)
        record.write(b"</a>")


def text_of_20_mb(folder):
    change(folder, "a biscuit tin", "x" * 20_000_000)


def latin_1(folder):
    record = folder / "record.xml"
    text = record.read_text(encoding="utf-8").replace("a biscuit tin", "a caf\u00e9")
    record.write_bytes(text.encode("latin-1"))


def latin_1_told(folder):
    latin_1(folder)
    record = folder / "record.xml"
    record.write_bytes(record.read_bytes().replace(b'encoding="UTF-8"', b'encoding="ISO-8859-1"'))


def utf_16(folder):
    record = folder / "record.xml"
    record.write_bytes(record.read_text(encoding="utf-8").encode("utf-16"))


def photograph_missing(folder):
    photograph(folder).unlink()


def photograph_outside(folder):
    change(folder, "photos/before.jpg", "../elsewhere.jpg")


def photograph_absolute(folder):
    change(folder, "photos/before.jpg", "/etc/hostname")


def photograph_link(folder):
    outside = folder.parent / "elsewhere.jpg"
    shutil.move(photograph(folder), outside)
    photograph(folder).symlink_to(outside.resolve())


def photograph_png(folder):
    shutil.copy(TESTS / "photo" / "files" / "picture.png", photograph(folder))


def photograph_truncated(folder):
    photograph(folder).write_bytes(photograph(folder).read_bytes()[:-200])


def photograph_empty(folder):
    photograph(folder).write_bytes(b"")


def photograph_60000_wide(folder):
    """The size stands five bytes behind the start-of-frame marker: height, then width."""
    data = bytearray(photograph(folder).read_bytes())
    frame = data.index(b"\xff\xc0")
    data[frame + 7 : frame + 9] = (60_000).to_bytes(2, "big")
    photograph(folder).write_bytes(data)


def photograph_changed(folder):
    data = bytearray(photograph(folder).read_bytes())
    photograph(folder).write_bytes(data + b"\n")


def photograph_other_size(folder):
    change(folder, "<width>32</width>", "<width>1600</width>")


def photograph_other_picture(folder):
    shutil.copy(TESTS / "photo" / "files" / "grey.jpg", photograph(folder))


def many_faults(folder):
    rows = "".join(f'<place id="p{n}"><name>P</name><kind>Post {n}</kind></place>' for n in range(130))
    change(folder, "<places>", f"<places>{rows}")


def folder_instead(folder):
    (folder / "record.xml").unlink()
    (folder / "record.xml").mkdir()


CASES = {
    function.__name__.replace("_", "-"): function
    for function in (
        good, no_record, not_xml, empty, cut_short, wrong_root, newer_version, doctype, entities,
        outside_entity, unknown_entity, deep, text_of_200_mb, text_of_20_mb, latin_1, latin_1_told, utf_16,
        photograph_missing, photograph_outside, photograph_absolute, photograph_link, photograph_png,
        photograph_truncated, photograph_empty, photograph_60000_wide, photograph_changed,
        photograph_other_size, photograph_other_picture, many_faults, folder_instead,
    )
}  # fmt: skip


def main():
    if sys.argv[1:] == ["list"]:
        print("\n".join(CASES))
        return
    case, folder = sys.argv[1], Path(sys.argv[2])
    good(folder)
    if case != "good":
        CASES[case](folder)


if __name__ == "__main__":
    main()
