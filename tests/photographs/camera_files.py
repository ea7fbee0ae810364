"""Files as telephones, cameras and scanners write them, and as nobody should: made with Pillow,
ImageMagick, ExifTool and heif-enc, so that what reads them here is not what wrote them.
"""

import io
import struct
import subprocess
import zlib

from PIL import Image

CORNERS = [(230, 30, 40), (40, 200, 60), (40, 60, 220), (230, 210, 40)]  # clockwise from top left
SECRETS = ["Harbour Street 3", "Camera of Nell", "Lobster Quay"]
GPS_TAGS = ["-GPSLatitude=50.1234", "-GPSLatitudeRef=N", "-GPSLongitude=5.4321", "-GPSLongitudeRef=W"]


def run(*command, **more):
    return subprocess.run([str(part) for part in command], capture_output=True, check=True, **more)


def four_corners(width, height):
    """A picture each of whose quarters has a colour of its own."""
    picture = Image.new("RGB", (width, height))
    half = (width // 2, height // 2)
    boxes = [(0, 0), (half[0], 0), half, (0, half[1])]
    for colour, (x, y) in zip(CORNERS, boxes):
        picture.paste(colour, (x, y, x + width - half[0], y + height - half[1]))
    return picture


def patches(colours, size=48):
    """Flat squares beside each other, so that a JPEG's own loss is small in their middles."""
    picture = Image.new("RGB", (size * len(colours), size))
    for number, colour in enumerate(colours):
        picture.paste(colour, (number * size, 0, number * size + size, size))
    return picture


def middles(picture, count, size=48):
    return [picture.getpixel((number * size + size // 2, size // 2)) for number in range(count)]


def tell(file, *tags):
    """Writes Exif and other data into a file."""
    run("exiftool", "-q", "-q", "-m", "-overwrite_original", *tags, file)


def tell_everything(file):
    """What a telephone says besides: where, whose, with what, when."""
    tell(file, *GPS_TAGS, f"-Artist={SECRETS[1]}", f"-ImageDescription={SECRETS[0]}",
         f"-XMP-dc:Title={SECRETS[2]}", f"-IPTC:Caption-Abstract={SECRETS[0]}",
         f"-Comment={SECRETS[2]}", "-DateTimeOriginal=2026:03:06 14:02:11")  # fmt: skip


# ---- colour profiles (ICC.1:2010), from published colorants adapted to D50 ------------------------


def fixed(number):
    return struct.pack(">i", round(number * 65536))


def curve(*numbers):
    """A parametric curve (ICC.1, 10.18): gamma alone, or sRGB's five numbers."""
    kind = {1: 0, 5: 3}[len(numbers)]
    return b"para\0\0\0\0" + struct.pack(">HH", kind, 0) + b"".join(map(fixed, numbers))


SRGB_CURVE = curve(2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045)  # IEC 61966-2-1


def profile(red, green, blue, tone):
    def words(text):
        return (b"mluc\0\0\0\0" + struct.pack(">II", 1, 12) + b"enUS"
                + struct.pack(">II", len(text) * 2, 28) + text.encode("utf-16-be"))  # fmt: skip

    def xyz(values):
        return b"XYZ \0\0\0\0" + b"".join(map(fixed, values))

    white = (0.96420, 1, 0.82491)
    tags = [(b"desc", words("a test")), (b"cprt", words("none")), (b"wtpt", xyz(white)),
            (b"rXYZ", xyz(red)), (b"gXYZ", xyz(green)), (b"bXYZ", xyz(blue)),
            (b"rTRC", tone), (b"gTRC", tone), (b"bTRC", tone)]  # fmt: skip
    table, body, begin = b"", b"", 128 + 4 + 12 * len(tags)
    for name, data in tags:
        data += b"\0" * (-len(data) % 4)
        table += name + struct.pack(">II", begin + len(body), len(data))
        body += data
    head = bytearray(128)
    head[0:4] = struct.pack(">I", begin + len(body))
    head[8:12] = b"\x04\x30\0\0"
    head[12:24] = b"mntrRGB XYZ "
    head[24:36] = struct.pack(">6H", 2026, 1, 1, 0, 0, 0)
    head[36:40] = b"acsp"
    head[68:80] = b"".join(map(fixed, white))
    return bytes(head) + struct.pack(">I", len(tags)) + table + body


# Display P3 as the ICC publishes it (registry of three-component encodings)
DISPLAY_P3 = profile((0.51512, 0.24120, -0.00105), (0.29198, 0.69225, 0.04189),
                     (0.15710, 0.06657, 0.78407), SRGB_CURVE)  # fmt: skip
# Adobe RGB (1998) Color Image Encoding, version 2005-05, annex A; gamma 563/256
ADOBE_RGB = profile((0.60974, 0.31111, 0.01947), (0.20528, 0.62567, 0.06087),
                    (0.14919, 0.06322, 0.74457), curve(563 / 256))  # fmt: skip


# ---- files that nobody should write ---------------------------------------------------------------


def png_chunk(name, data):
    return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))


def png(width, height, depth, colour, *chunks):
    head = struct.pack(">IIBBBBB", width, height, depth, colour, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + png_chunk(b"IHDR", head) + b"".join(chunks) + png_chunk(b"IEND", b"")


def png_of_absurd_size():
    """A few hundred bytes that say they are 60000 × 60000 pixels."""
    return png(60000, 60000, 8, 2, png_chunk(b"IDAT", zlib.compress(b"\0" * 100000)))


def png_with_bomb():
    """A colour profile that unpacks to 200 million bytes."""
    bomb = zlib.compress(b"\0" * 200_000_000, 9)
    rows = zlib.compress((b"\0" + b"\x80" * 3) * 1)
    return png(1, 1, 8, 2, png_chunk(b"iCCP", b"bomb\0\0" + bomb), png_chunk(b"IDAT", rows))


def tiff(width, height, *, strip=b"\0\0\0", bits=8):
    """An RGB TIFF of one strip, whatever its bytes can hold."""
    entries = [(256, 4, 1, width), (257, 4, 1, height), (258, 3, 1, bits), (259, 3, 1, 1),
               (262, 3, 1, 2), (273, 4, 1, 8), (277, 3, 1, 3), (278, 4, 1, height),
               (279, 4, 1, len(strip))]  # fmt: skip
    directory = 8 + len(strip) + len(strip) % 2
    data = b"II*\0" + struct.pack("<I", directory) + strip.ljust(directory - 8, b"\0")
    data += struct.pack("<H", len(entries))
    for tag, kind, count, value in entries:
        data += struct.pack("<HHI", tag, kind, count) + struct.pack("<I", value)
    return data + b"\0\0\0\0"


def jpeg_bytes(picture, **more):
    out = io.BytesIO()
    picture.save(out, "JPEG", **{"quality": 95, **more})
    return out.getvalue()


def moving_webp():
    out = io.BytesIO()
    frames = [four_corners(40, 30).rotate(90 * turn) for turn in range(3)]
    frames[0].save(out, "WEBP", save_all=True, append_images=frames[1:], duration=100)
    return out.getvalue()
