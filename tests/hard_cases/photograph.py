"""Photographs for test reels: a pale disc on a darker ground, as a real JPEG file.

Baseline, one component, blocks of one level each: everything ITU-T T.81 asks of a decodable file and
nothing more. The same arguments give the same bytes.
"""

import struct


def segment(marker, payload):
    """A marker segment (T.81, B.1.1.4): its length counts itself."""
    return struct.pack(">HH", marker, len(payload) + 2) + payload


def jpeg(width, height, ground=90, disc=190):
    """The bytes of a picture of `width` x `height` pixels; `ground` and `disc` are levels of 0..255."""
    # Quantised by 8, the DC coefficient of a block of one level is that level less 128 (A.3.3, A.3.4).
    quantisers = b"\x00" + b"\x08" * 64
    # DC: the categories 0 to 11 in codes of four bits (table class 0); AC: end of block in one (class 1).
    dc = b"\x00" + bytes([0, 0, 0, 12] + [0] * 12) + bytes(range(12))
    ac = b"\x10" + bytes([1] + [0] * 15) + b"\x00"
    frame = struct.pack(">BHHB", 8, height, width, 1) + b"\x01\x11\x00"
    return (
        b"\xff\xd8"
        + segment(0xFFE0, b"JFIF\x00\x01\x01\x00\x00\x01\x00\x01\x00\x00")
        + segment(0xFFDB, quantisers)
        + segment(0xFFC0, frame)
        + segment(0xFFC4, dc)
        + segment(0xFFC4, ac)
        + segment(0xFFDA, b"\x01\x01\x00\x00\x3f\x00")
        + scan(levels(width, height, ground, disc))
        + b"\xff\xd9"
    )


def levels(width, height, ground, disc):
    """The level of each block of 8 x 8 pixels, row by row."""
    across, down = -(-width // 8), -(-height // 8)
    reach = min(across, down) * 0.36
    for y in range(down):
        for x in range(across):
            from_middle = ((x - across / 2 + 0.5) ** 2 + (y - down / 2 + 0.5) ** 2) ** 0.5
            yield disc if from_middle < reach else ground


def scan(blocks):
    """Each block as the difference of its level from the one before (F.1.2.1), bytes stuffed (B.1.1.5)."""
    bits, count, before, out = 0, 0, 128, bytearray()
    for level in blocks:
        difference, before = level - before, level
        category = abs(difference).bit_length()
        extra = difference if difference >= 0 else difference + (1 << category) - 1
        bits = (bits << (4 + category + 1)) | (category << (category + 1)) | (extra << 1)
        count += 4 + category + 1
        while count >= 8:
            count -= 8
            out.append(bits >> count & 0xFF)
        bits &= (1 << count) - 1
    if count:
        out.append(((bits << (8 - count)) | ((1 << (8 - count)) - 1)) & 0xFF)
    return bytes(out).replace(b"\xff", b"\xff\x00")
