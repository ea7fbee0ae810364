#!/usr/bin/env python3
"""Photographs into a record, from outside: pixels, colours, what is left out, and what is refused.

    check_photographs.py WINCHBOOK SCRATCH

The eight orientations are compared with ImageMagick's -auto-orient and with the colours of four
corners, colours with Little CMS's own transicc (within 3 of 255: a JPEG at quality 90 loses up to 2
in a flat square, rounding 1), digests with Python's hashlib. Every refusal must be one sentence with
a cure, and leave the record and its folder as they were.
"""

import hashlib
import os
import random
import re
import shutil
import signal
import subprocess
import sys
import threading
import time
from pathlib import Path

from PIL import Image

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
sys.path.insert(0, str(Path(__file__).resolve().parent))
import camera_files as camera  # noqa: E402
from report import ROOT, Report  # noqa: E402

ON = ("--on", "2026-06-01", "--today", "2026-06-01")
FOUND = ("--stage", "found", "--caption", "A test.")
COLOURS = [(200, 30, 90), (30, 160, 60), (120, 130, 240), (128, 128, 128), (240, 200, 20), (10, 20, 30)]
COLOUR_TOLERANCE = 3


class Bench:
    """The program, the small record whose reel is still at the bench, and a camera's folder."""

    def __init__(self, winchbook, scratch):
        self.winchbook = winchbook
        self.picture = winchbook.parent / "winchbook-picture"
        self.scratch = scratch
        self.reel = scratch / "reel"
        self.camera = scratch / "camera"
        self.fresh()

    def fresh(self):
        for folder in (self.reel, self.camera):
            shutil.rmtree(folder, ignore_errors=True)
            folder.mkdir(parents=True)
        text = (ROOT / "tests/recordfile/records/small.xml").read_text(encoding="utf-8")
        begin, end = text.index("      <hand-back>"), text.index("</visit>")
        (self.reel / "record.xml").write_text(text[:begin] + "    " + text[end:], encoding="utf-8")

    def say(self, *words, winchbook=None):
        return subprocess.run(
            [str(winchbook or self.winchbook), *map(str, words)], stdin=subprocess.DEVNULL,
            capture_output=True, text=True, timeout=300, check=False,
        )  # fmt: skip

    def add(self, *files, more=FOUND, winchbook=None):
        return self.say("photo", "add", self.reel, *files, *more, *ON, winchbook=winchbook)

    def record(self):
        return (self.reel / "record.xml").read_text(encoding="utf-8")

    def inside(self):
        """Every file of the reel's folder with its digest, but for history and lock."""
        return {
            str(path.relative_to(self.reel)): hashlib.sha256(path.read_bytes()).hexdigest()
            for path in sorted(self.reel.rglob("*"))
            if path.is_file() and ".history" not in path.parts and path.name != ".lock"
        }

    def printed(self, name):
        return Image.open(self.reel / "photos" / f"{name}.jpg").convert("RGB")

    def answer(self, data):
        """What the picture program alone makes of some bytes."""
        return subprocess.run([str(self.picture)], input=data, capture_output=True, timeout=300,
                              check=False)  # fmt: skip


def near(found, expected, tolerance):
    return all(abs(a - b) <= tolerance for a, b in zip(found, expected))


# ---- upright --------------------------------------------------------------------------------------


def corner_faults(picture, expected):
    width, height = picture.size
    places = [(0.25, 0.25), (0.75, 0.25), (0.75, 0.75), (0.25, 0.75)]
    found = [picture.getpixel((int(width * x), int(height * y))) for x, y in places]
    return [f"corner {number}: {a}, expected {b}" for number, (a, b) in enumerate(zip(found, expected))
            if not near(a, b, 6)]  # fmt: skip


def orientation_faults(bench, ending):
    faults = []
    for number in range(1, 9):
        file = bench.camera / f"turn-{ending}-{number}.{ending}"
        camera.four_corners(120, 80).save(file, **({"quality": 95} if ending in ("jpg", "webp") else {}))
        camera.tell(file, f"-Orientation#={number}")
        said = bench.add(file)
        if said.returncode:
            faults.append(f"{file.name}: {said.stderr.strip()}")
            continue
        ours = bench.printed(file.stem)
        other = bench.camera / "upright.png"
        # ImageMagick does not read the orientation of a PNG or WebP; it is told there
        turn = {} if ending in ("jpg", "tif") else {"told": number}
        names = ["", "TopLeft", "TopRight", "BottomRight", "BottomLeft", "LeftTop", "RightTop",
                 "RightBottom", "LeftBottom"]  # fmt: skip
        told = ["-orient", names[turn["told"]]] if turn else []
        camera.run("convert", file, *told, "-auto-orient", "-strip", other)
        theirs = Image.open(other).convert("RGB")
        if ours.size != theirs.size:
            faults.append(f"{file.name}: {ours.size}, ImageMagick {theirs.size}")
            continue
        width, height = theirs.size
        expected = [theirs.getpixel((int(width * x), int(height * y)))
                    for x, y in [(0.25, 0.25), (0.75, 0.25), (0.75, 0.75), (0.25, 0.75)]]  # fmt: skip
        faults += [f"{file.name}: {fault}" for fault in corner_faults(ours, expected)]
    return faults


def check_orientation(report, bench):
    for ending in ("jpg", "tif", "png", "webp"):
        report.check(f"all eight orientations stand upright, from .{ending}",
                     orientation_faults(bench, ending))
    # By hand, without another program: stored on its side (6), so turned a quarter clockwise
    file = bench.camera / "by-hand.jpg"
    camera.four_corners(124, 80).save(file, quality=95)
    camera.tell(file, "-Orientation#=6")
    bench.add(file)
    corners = camera.CORNERS
    report.check("orientation 6 is a quarter turn clockwise, by its corners",
                 corner_faults(bench.printed("by-hand"), [corners[3], corners[0], corners[1], corners[2]]))
    # HEIC is turned by its own boxes; Exif must not turn it again
    turned = bench.camera / "phone.jpg"
    camera.four_corners(160, 96).save(turned, quality=95)
    heic = bench.camera / "phone.heic"
    camera.run("heif-enc", "-q", "90", turned, "-o", heic)
    camera.tell(heic, "-Orientation#=6")
    said = bench.add(heic)
    report.check("a HEIC's Exif does not turn it once more",
                 corner_faults(bench.printed("phone"), corners) if said.returncode == 0 else [said.stderr])


# ---- colours --------------------------------------------------------------------------------------


def by_transicc(profile, colours):
    """What Little CMS's own calculator makes of colours, held within sRGB."""
    lines = "".join(f"{r} {g} {b}\n" for r, g, b in colours)
    said = camera.run("transicc", "-i", profile, "-o", "*sRGB", "-t1", "-b", "-n", input=lines.encode())
    rows = [list(map(float, row.split())) for row in said.stdout.decode().splitlines()[: len(colours)]]
    return [tuple(min(255, max(0, round(v))) for v in row) for row in rows]


def colour_faults(found, expected):
    return [f"{a}, expected {b}" for a, b in zip(found, expected) if not near(a, b, COLOUR_TOLERANCE)]


def check_colours(report, bench):
    for name, data in {"display-p3": camera.DISPLAY_P3, "adobe-rgb": camera.ADOBE_RGB}.items():
        profile = bench.scratch / f"{name}.icc"
        profile.write_bytes(data)
        expected = by_transicc(profile, COLOURS)
        moved = max(abs(a - b) for pair in zip(expected, COLOURS) for a, b in zip(*pair))
        report.expect(f"{name} is far enough from sRGB to tell", moved > 3 * COLOUR_TOLERANCE, f"{moved}")
        for ending in ("jpg", "png", "tif", "webp"):
            more = {"jpg": {"quality": 98, "subsampling": 0}, "webp": {"lossless": True}}.get(ending, {})
            file = bench.camera / f"{name}-{ending}.{ending}"
            camera.patches(COLOURS).save(file, icc_profile=data, **more)
            said = bench.add(file)
            faults = [said.stderr] if said.returncode else colour_faults(
                camera.middles(bench.printed(file.stem), len(COLOURS)), expected)
            report.check(f"{name} in .{ending} comes out as transicc reckons", faults)
    # a HEIC with a profile, by way of a PNG that has one
    file = bench.camera / "wide.heic"
    source = bench.camera / "wide.png"
    camera.patches(COLOURS, 64).save(source, icc_profile=camera.DISPLAY_P3)
    camera.run("heif-enc", "-q", "100", "-p", "chroma=444", source, "-o", file)
    said = bench.add(file)
    expected = by_transicc(bench.scratch / "display-p3.icc", COLOURS)
    found = camera.middles(bench.printed("wide"), len(COLOURS), 64) if said.returncode == 0 else []
    # HEVC loses as much again
    report.check("Display P3 in a HEIC comes out as transicc reckons", [said.stderr] if not found else [
        f"{a}, expected {b}" for a, b in zip(found, expected) if not near(a, b, 2 * COLOUR_TOLERANCE)])
    # DCF's option file: Adobe RGB without a profile
    file = bench.camera / "_dsc0001.jpg"
    camera.patches(COLOURS).save(file, quality=98, subsampling=0)
    camera.tell(file, "-InteropIndex=R03 - DCF option file (Adobe RGB)", "-ColorSpace#=65535")
    said = bench.add(file)
    expected = by_transicc(bench.scratch / "adobe-rgb.icc", COLOURS)
    report.check("a camera's Adobe RGB without a profile comes out as transicc reckons",
                 [said.stderr] if said.returncode else
                 colour_faults(camera.middles(bench.printed("dsc0001"), len(COLOURS)), expected))


# ---- as it is -------------------------------------------------------------------------------------


def exif_left(file):
    groups = camera.run("exiftool", "-G1", "-a", "-s", file).stdout.decode()
    plain = re.compile(r"^\[(File|System|ExifTool|JFIF|Composite)\]")
    return [line for line in groups.splitlines() if not plain.match(line)]


def check_lossless(report, bench):
    bench.fresh()
    file = bench.camera / "IMG_0042.JPG"
    file.write_bytes(camera.jpeg_bytes(camera.four_corners(641, 479), subsampling=1, progressive=True))
    camera.tell_everything(file)
    data = file.read_bytes() + b"\0\0\0\x18ftypmp42" + camera.SECRETS[0].encode() * 50
    file.write_bytes(data)
    report.expect("the camera's file says where it was taken",
                  all(secret.encode() in data for secret in camera.SECRETS) and b"Exif" in data)
    said = bench.add(file)
    report.expect("one line says what was done", said.stdout ==
                  "photograph ph-img-0042: 641 × 479, without the camera's data, else as it is; as-found\n",
                  said.stdout + said.stderr)  # fmt: skip
    printed = (bench.reel / "photos/img-0042.jpg").read_bytes()
    same = Image.open(file).convert("RGB").tobytes() == bench.printed("img-0042").tobytes()
    report.expect("every sample is as the camera wrote it", same)
    report.expect("the JPEG is baseline", b"\xff\xc0" in printed[:700] and b"\xff\xc2" not in printed[:700])
    report.check("nothing it said is left", exif_left(bench.reel / "photos/img-0042.jpg") +
                 [s for s in [*camera.SECRETS, "GPS", "Exif", "ftyp"] if s.encode() in printed])
    original = bench.reel / "originals/img-0042.jpg"
    report.expect("the camera's file is kept to the last byte", original.read_bytes() == data)
    text = bench.record()
    report.expect("the record has both digests and the day", all(part in text for part in [
        hashlib.sha256(printed).hexdigest(), hashlib.sha256(data).hexdigest(),
        "<taken>2026-03-06</taken>", "<width>641</width>", "<height>479</height>"]), text[-900:])

    bare = bench.camera / "bare.jpg"
    bare.write_bytes(printed)
    bench.fresh()
    bench.camera.mkdir(exist_ok=True)
    bare.write_bytes(printed)
    said = bench.add(bare)
    report.expect("a JPEG that says nothing keeps its bytes and is its own original",
                  (bench.reel / "photos/bare.jpg").read_bytes() == printed
                  and not (bench.reel / "originals").exists() and "<original>" not in bench.record(), said.stderr)


def check_sizes_and_kinds(report, bench):
    bench.fresh()
    for name, size, expected in [("wide", (4000, 3000), (1963, 1472)), ("tall", (3000, 4000), (1172, 1563))]:
        file = bench.camera / f"{name}.jpg"
        camera.four_corners(*size).save(file, quality=90)
        said = bench.add(file)
        found = bench.printed(name).size if said.returncode == 0 else said.stderr
        report.expect(f"{size[0]} × {size[1]} is kept at {expected[0]} × {expected[1]}", found == expected, f"{found}")
    corners = camera.CORNERS
    deep = bench.camera / "deep.png"
    plain = bench.camera / "plain.png"
    camera.four_corners(120, 80).save(plain)
    camera.run("convert", plain, "-depth", "16", f"PNG48:{deep}")
    alpha = bench.camera / "clear.png"
    picture = camera.four_corners(120, 80).convert("RGBA")
    picture.paste((0, 0, 0, 0), (0, 0, 60, 40))
    picture.save(alpha)
    palette = bench.camera / "palette.png"
    camera.four_corners(120, 80).quantize(8).save(palette)
    bilevel = bench.camera / "fax.tif"
    camera.four_corners(120, 80).convert("1").save(bilevel, compression="group4")
    white = [(255, 255, 255), *corners[1:]]
    for file, expected in [(deep, corners), (alpha, white), (palette, corners)]:
        said = bench.add(file)
        report.check(f"{file.name} comes in with its colours",
                     corner_faults(bench.printed(file.stem), expected) if said.returncode == 0 else [said.stderr])
    for file in [bench.camera / "grey.jpg", bench.camera / "grey16.png", bench.camera / "lzw.tif"]:
        grey = camera.four_corners(120, 80).convert("L")
        if file.suffix == ".png":
            grey = grey.convert("I").point(lambda v: v * 257).convert("I;16")
        grey.save(file, **({"compression": "tiff_lzw"} if file.suffix == ".tif" else {}))
        said = bench.add(file)
        expected = camera.four_corners(120, 80).convert("L").convert("RGB")
        at = [expected.getpixel((x, y)) for x, y in [(30, 20), (90, 20), (90, 60), (30, 60)]]
        report.check(f"{file.name} stays grey",
                     corner_faults(bench.printed(file.stem), at) if said.returncode == 0 else [said.stderr])
    report.expect("a fax comes in", bench.add(bilevel).returncode == 0)
    heic = bench.camera / "phone.heic"
    camera.run("heif-enc", "-q", "95", plain, "-o", heic)
    camera.tell(heic, *camera.GPS_TAGS, "-DateTimeOriginal=2026:04:01 09:00:00")
    said = bench.add(heic)
    report.check("a HEIC comes in with its colours and its day",
                 [said.stderr] if said.returncode else corner_faults(bench.printed("phone"), corners)
                 + ([] if "<taken>2026-04-01</taken>" in bench.record() else ["no day"]))
    report.check("nothing is left of where it was taken", exif_left(bench.reel / "photos/phone.jpg"))
    said = bench.say("check", bench.reel)
    complaints = [line for line in said.stderr.splitlines() if re.search(r"photos/(?!before|after)", line) and "error" in line]
    report.check("check finds every photograph as the record says", complaints)


# ---- refused --------------------------------------------------------------------------------------


def hostile_files(bench):
    """[(file, rule expected)]"""
    folder = bench.camera
    good = camera.jpeg_bytes(camera.four_corners(400, 300))
    camera.four_corners(400, 300).save(folder / "good.png")
    camera.run("heif-enc", folder / "good.png", "-o", folder / "good.heic")
    heic = (folder / "good.heic").read_bytes()
    camera.four_corners(400, 300).save(folder / "good.webp", quality=90)
    webp = (folder / "good.webp").read_bytes()
    camera.four_corners(400, 300).save(folder / "good.tif", compression="tiff_lzw")
    whole_tiff = (folder / "good.tif").read_bytes()
    made = {
        "empty.jpg": (b"", "photo-empty"),
        "text.jpg": (b"This is a list of screws, not a picture.\n", "photo-kind"),
        "page.pdf.jpg": (b"%PDF-1.7\n", "photo-kind"),
        "film.jpg": (b"\0\0\0\x18ftypisom" + b"\0" * 500, "photo-kind"),
        "cut.jpg": (good[: len(good) // 2], "photo-truncated"),
        "cut-head.jpg": (good[:30], "photo-truncated"),
        "cut.png": ((folder / "good.png").read_bytes()[:-300], "photo-truncated"),
        "cut.webp": (webp[: len(webp) // 2], "photo-truncated"),
        "cut.heic": (heic[: len(heic) // 2], "photo-"),
        "cut.tif": (whole_tiff[:1000], "photo-truncated"),
        "boxes.heic": (heic[:60] + bytes(200) + heic[260:], "photo-damaged"),
        "box-length.heic": (heic.replace(b"iloc", b"ilXc"), "photo-damaged"),
        "absurd.png": (camera.png_of_absurd_size(), "photo-large"),
        "bomb.png": (camera.png_with_bomb(), None),
        "absurd.tif": (camera.tiff(60_000, 60_000), "photo-large"),
        "beyond.tif": (camera.tiff(2_000_000_000, 2_000_000_000), "photo-"),
        "wide.tif": (camera.tiff(30000, 6000), "photo-"),
        "moving.webp": (camera.moving_webp(), "photo-kind"),
    }
    for name, (data, rule) in made.items():
        (folder / name).write_bytes(data)
        yield folder / name, rule
    ink = folder / "ink.jpg"
    camera.four_corners(400, 300).convert("CMYK").save(ink)
    yield ink, "photo-colour"
    ink = folder / "ink.tif"
    camera.four_corners(40, 30).convert("CMYK").save(ink)
    yield ink, "photo-colour"
    video = folder / "MVI_0001.MP4"
    with video.open("wb") as out:
        out.truncate(2 << 30)
    yield video, "photo-large"
    (folder / "folder.jpg").mkdir()
    yield folder / "folder.jpg", "file-read"
    os.mkfifo(folder / "pipe.jpg")
    yield folder / "pipe.jpg", "file-read"
    (folder / "dangling.jpg").symlink_to(folder / "nowhere.jpg")
    yield folder / "dangling.jpg", "file-read"


def is_one_sentence(said, rule):
    """An error with its rule, and a cure; nothing else."""
    lines = said.stderr.splitlines()
    return (len(lines) == 2 and ": error: " in lines[0] and f"[{rule}" in lines[0]
            and lines[1].startswith("  hint: ") and len(lines[1]) > 12)  # fmt: skip


def check_refusals(report, bench):
    bench.fresh()
    before = bench.inside()
    for file, rule in hostile_files(bench):
        said = bench.add(file)
        if rule is None:  # harmless once what is in it is left alone
            report.expect(f"{file.name} comes in without what hides in it, or is refused",
                          said.returncode in (0, 1) and "fell over" not in said.stderr, said.stderr)
            shutil.rmtree(bench.reel / "photos", ignore_errors=True)
            shutil.rmtree(bench.reel / "originals", ignore_errors=True)
            if said.returncode == 0:
                bench.say("undo", bench.reel)
            continue
        expected = 3 if rule.startswith("file-") else 1
        report.expect(f"{file.name} is refused in one sentence",
                      said.returncode == expected and is_one_sentence(said, rule),
                      f"exit {said.returncode}: {said.stderr}")
    report.check("the record and its folder are as they were",
                 [] if bench.inside() == before else [str(sorted(bench.inside()))])
    # one bad photograph among good ones: nothing comes in
    good = bench.camera / "good.webp"
    said = bench.add(good, bench.camera / "cut.jpg")
    report.expect("with one bad photograph nothing comes in",
                  said.returncode == 1 and bench.inside() == before, said.stderr)
    for name, more in {"a part nobody has": ("--part", "no-such-part"), "a stage": ("--stage", "sometime")}.items():
        said = bench.add(good, more=(*FOUND[2:], *(() if "--stage" in more else FOUND[:2]), *more))
        report.expect(f"after {name} that is not there no file is left",
                      said.returncode == 2 and bench.inside() == before, f"{said.returncode} {said.stderr}")
    said = bench.add(good, more=(*FOUND, "--dry-run"))
    report.expect("a dry run writes nothing", said.returncode == 0 and bench.inside() == before
                  and "+     <photo id=\"ph-good\">" in said.stdout, said.stdout + said.stderr)


def check_mutations(report, bench):
    """Bytes changed at random: the picture program must answer, one way or the other."""
    chance = random.Random(1948)
    folder = bench.camera
    faults, refused, tried = [], 0, 0
    pictures = {"good.png": None, "good.heic": None, "good.webp": None, "good.tif": None}
    pictures = {name: (folder / name).read_bytes() for name in pictures}
    pictures["good.jpg"] = camera.jpeg_bytes(camera.four_corners(200, 150), exif=b"Exif\0\0II*\0\x08\0\0\0")
    for name, whole in sorted(pictures.items()):
        for _ in range(60):
            data = bytearray(whole)
            for _ in range(chance.choice([1, 3, 20])):
                data[chance.randrange(min(len(data), chance.choice([64, 600, len(data)])))] = chance.randrange(256)
            if chance.random() < 0.2:
                del data[chance.randrange(len(data)) :]
            said = bench.answer(bytes(data))
            tried += 1
            refused += said.returncode == 1
            lines = said.stderr.decode("utf-8", "replace")
            if said.returncode not in (0, 1) or (said.returncode == 1) != lines.startswith("refused photo-"):
                faults.append(f"{name}: exit {said.returncode}: {lines[:200]}")
    report.check(f"{tried} files with bytes changed at random are read or refused", faults)
    report.expect("both happen", 20 < refused < tried - 20, f"{refused} of {tried} refused")


def check_program(report, bench):
    """What the picture program may do, and what happens when it is not itself."""
    # its limits, while it waits for a file
    waiting = subprocess.Popen([str(bench.picture)], stdin=subprocess.PIPE, stdout=subprocess.PIPE,
                               stderr=subprocess.PIPE)  # fmt: skip
    time.sleep(0.3)
    limits = Path(f"/proc/{waiting.pid}/limits").read_text()
    waiting.communicate(b"")
    watched = "address" in os.environ.get("ASAN_OPTIONS", "") or b"__asan" in bench.picture.read_bytes()
    wanted = [] if watched else [r"Max address space +2147483648", r"Max cpu time +40 "]
    report.check("it limits itself before it reads", [w for w in [*wanted, "Max core file size +0"] if not re.search(w, limits)])
    libraries = subprocess.run(["ldd", str(bench.winchbook)], capture_output=True, text=True, check=True).stdout
    report.check("winchbook itself links no decoder but JPEG's",
                 [name for name in ("libheif", "libwebp", "libtiff", "liblcms2") if name in libraries])
    # winchbook with another program beside it
    elsewhere = bench.scratch / "program"
    shutil.rmtree(elsewhere, ignore_errors=True)
    elsewhere.mkdir()
    shutil.copy(bench.winchbook, elsewhere / "winchbook")
    os.environ["WINCHBOOK_DATA"] = str(ROOT)
    bench.fresh()
    good = bench.camera / "good.jpg"
    good.write_bytes(camera.jpeg_bytes(camera.four_corners(200, 150)))
    before = bench.inside()
    for name, script, rule, code in [
        ("is not there", None, "file-picture-program", 3),
        ("falls over", "kill -SEGV $$", "photo-limits", 1),
        ("is out of its time", "kill -XCPU $$", "photo-limits", 1),
        ("never stops talking", "exec yes", "photo-limits", 1),
        ("talks nonsense", "echo nonsense >&2", "photo-limits", 1),
    ]:
        other = elsewhere / "winchbook-picture"
        if script is not None:
            other.write_text(f"#!/bin/sh\n{script}\n")
            other.chmod(0o755)
        said = bench.add(good, winchbook=elsewhere / "winchbook")
        report.expect(f"when the picture program {name}, one sentence says so",
                      said.returncode == code and is_one_sentence(said, rule) and bench.inside() == before,
                      f"exit {said.returncode}: {said.stderr}")


# ---- in the record --------------------------------------------------------------------------------


def check_record(report, bench):
    bench.fresh()
    one, two = bench.camera / "IMG_1.jpg", bench.camera / "card" / "IMG_1.jpg"
    two.parent.mkdir()
    camera.four_corners(60, 40).save(one, quality=90)
    camera.four_corners(80, 40).save(two, quality=90)
    camera.tell_everything(one)
    untouched = bench.record()
    said = bench.add(one)
    said = bench.add(two)
    report.expect("of two photographs with one name the second gets a number, and that is told",
                  said.returncode == 0 and "kept as img-1-2 [photo-name]" in said.stderr
                  and (bench.reel / "photos/img-1-2.jpg").exists(), said.stderr)
    said = bench.add(one)
    report.expect("the same photograph does not come in twice",
                  said.returncode == 1 and is_one_sentence(said, "photo-twice"), said.stderr)
    files = bench.inside()
    bench.say("undo", bench.reel)
    bench.say("undo", bench.reel)  # the undo of the undo
    report.expect("undo of an undo brings it back with its files", bench.inside() == files)
    bench.say("undo", bench.reel, "--change", "1")
    report.expect("undo leaves no trace in the record", bench.record() == untouched)
    said = bench.add(one)
    report.expect("a photograph that was undone comes in again under its name",
                  said.returncode == 0 and "ph-img-1:" in said.stdout and "[photo-name]" not in said.stderr, said.stderr)
    camera.tell(two, "-DateTimeOriginal=2031:01:01 00:00:00")
    said = bench.add(two)
    report.expect("a camera's clock that runs ahead is not believed",
                  "[photo-clock]" in said.stderr and "2031" not in bench.record(), said.stderr)

    left = bench.camera / "left.jpg"
    camera.four_corners(90, 40).save(left, quality=90)
    bench.add(left, more=("--stage", "left", "--caption", "The same."))
    said = bench.say("photo", "pair", bench.reel, "ph-img-1", "ph-left")
    report.expect("two photographs become a pair", said.returncode == 0
                  and '<pair-of ref="ph-img-1"/>' in bench.record(), said.stderr)
    again = bench.say("photo", "pair", bench.reel, "ph-img-1", "ph-left")
    wrong = bench.say("photo", "pair", bench.reel, "ph-left", "ph-img-1")
    other = bench.say("photo", "pair", bench.reel, "ph-img-1-2", "ph-left")
    report.expect("a pair is one once, the right way round, and of two",
                  "nothing to change" in again.stdout and is_one_sentence(wrong, "pair-stage")
                  and is_one_sentence(other, "pair-stage"), again.stdout + wrong.stderr + other.stderr)


def check_killed(report, bench):
    """Ended at random moments (SIGKILL): whatever the record names is there, whole."""
    bench.fresh()
    chance = random.Random(1948)
    faults, named, killed = [], 0, 0
    whole = bench.camera / "whole.png"
    camera.four_corners(280, 200).save(whole)
    started = time.monotonic()
    bench.add(whole)
    longest = 1.6 * (time.monotonic() - started)  # by this machine, now
    for number in range(40):
        file = bench.camera / f"kill-{number}.png"
        camera.four_corners(300 + number, 200).save(file)
        adding = subprocess.Popen(
            [str(bench.winchbook), "photo", "add", str(bench.reel), str(file), *FOUND, *ON],
            stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
        )  # fmt: skip
        time.sleep(chance.random() * longest)
        killed += adding.poll() is None
        adding.kill()
        adding.wait()
        files = bench.inside()
        text = bench.record()
        for path, digest in re.findall(r"<file>((?:photos|originals)/kill[^<]*)</file>\s*<sha256>(\w+)<", text):
            named += 1
            if files.get(path) != digest:
                faults.append(f"round {number}: {path} is not as the record says")
    report.check("after forty adds killed at random every file the record names is there, whole", faults)
    report.expect("some were killed and some came in", killed > 5 and named > 5, f"{killed} killed, {named} named")
    last = bench.camera / "last.png"
    camera.four_corners(290, 200).save(last)
    said = bench.add(last)
    report.expect("after that the next one comes in", said.returncode == 0 and "ph-last:" in said.stdout, said.stderr)


def check_watch(report, bench):
    bench.fresh()
    stepless = re.sub(r"(?s) *<strip-down>.*</strip-down>\n", "", bench.record())
    (bench.reel / "record.xml").write_text(stepless, encoding="utf-8")
    folder = bench.camera / "DCIM"
    folder.mkdir()
    camera.four_corners(60, 40).save(folder / "IMG_0001.JPG", quality=90)
    said = bench.say("photo", "watch", bench.reel, folder, "--once", *ON)
    text = bench.record()
    report.expect("before any step a picture shows the reel as found", said.returncode == 0
                  and "1 photograph taken in" in said.stdout and "As it came to the bench." in text, said.stdout + said.stderr)
    said = bench.say("strip", bench.reel, "Lift the spool out.", *ON)
    camera.four_corners(64, 40).save(folder / "IMG_0002.JPG", quality=90)
    whole = camera.jpeg_bytes(camera.four_corners(800, 600), quality=98)
    growing = folder / "IMG_0003.JPG"

    def grow():
        with growing.open("wb") as out:
            for begin in range(0, len(whole), len(whole) // 5 + 1):
                out.write(whole[begin : begin + len(whole) // 5 + 1])
                out.flush()
                time.sleep(0.5)

    writer = threading.Thread(target=grow)
    writer.start()
    (folder / "MVI_0004.MP4").write_bytes(b"film")
    (folder / "link.jpg").symlink_to(growing)
    (folder / "text.jpg").write_text("no picture")
    said = bench.say("photo", "watch", bench.reel, folder, "--once", *ON)
    writer.join()
    text = bench.record()
    step = text[text.index("<strip-down>") : text.index("</strip-down>")]
    report.expect("each new picture goes into the step entered last, when it is complete",
                  "2 photographs taken in" in said.stdout and 'ref="ph-img-0002"' in step and 'ref="ph-img-0003"' in step
                  and (bench.reel / "photos/img-0003.jpg").read_bytes() == whole, said.stdout + said.stderr)
    report.expect("a film, a link and a text are told and passed over", said.returncode == 1
                  and said.stderr.count("[photo-passed-over]") == 2 and "[photo-kind]" in said.stderr, said.stderr)
    (folder / "text.jpg").unlink()
    said = bench.say("photo", "watch", bench.reel, folder, "--once", *ON)
    report.expect("what is in the record is not taken again",
                  said.returncode == 0 and "0 photographs taken in" in said.stdout, said.stdout + said.stderr)

    watching = subprocess.Popen(
        [str(bench.winchbook), "photo", "watch", str(bench.reel), str(folder), *ON],
        stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True,
    )  # fmt: skip
    time.sleep(1.5)
    # a record that is wrong for a while stands in the way once, and no picture is lost by it
    good_record = bench.record()
    (bench.reel / "record.xml").write_text(good_record.replace("</reel-record>", ""), encoding="utf-8")
    camera.four_corners(70, 40).save(folder / "IMG_0009.JPG", quality=90)
    time.sleep(4)
    (bench.reel / "record.xml").write_text(good_record, encoding="utf-8")
    for _ in range(40):
        if "ph-img-0009" in bench.record():
            break
        time.sleep(0.25)
    watching.send_signal(signal.SIGINT)
    out, err = watching.communicate(timeout=20)
    report.expect("a watch takes what comes, also after the record was wrong for a while, and ends cleanly",
                  watching.returncode == 1 and err.count(": error: ") == 1 and "ph-img-0009" in out and "1 photograph taken in" in out, f"{watching.returncode} {out} {err}")


def main():
    winchbook = Path(sys.argv[1]).resolve()
    scratch = Path(sys.argv[2]).resolve()
    shutil.rmtree(scratch, ignore_errors=True)
    scratch.mkdir(parents=True)
    report = Report()
    bench = Bench(winchbook, scratch)
    check_orientation(report, bench)
    check_colours(report, bench)
    check_lossless(report, bench)
    check_sizes_and_kinds(report, bench)
    check_refusals(report, bench)
    check_mutations(report, bench)
    check_program(report, bench)
    check_record(report, bench)
    check_killed(report, bench)
    check_watch(report, bench)
    shutil.rmtree(scratch, ignore_errors=True)
    report.leave()


if __name__ == "__main__":
    main()
