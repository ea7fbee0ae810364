#!/usr/bin/env python3
"""Write each photograph's SHA-256, width and height into the records that name it.

Usage: demo/photographs/fingerprint.py [RECORD.xml ...]; without a record, all of the demo's.
Only those three elements change, at their places; a photograph that is not there ends it with exit code 3.
"""
import hashlib
import pathlib
import re
import sys

PHOTO = re.compile(r'<file>([^<]+)</file>\s*<sha256>[0-9a-f]{64}</sha256>\s*<width>\d+</width>\s*<height>\d+</height>')


def size(jpeg):
    """(width, height) in pixels, from the frame header of a JPEG file's bytes (ITU-T T.81, B.2.2)."""
    at = 2
    while jpeg[at] == 0xFF:
        marker, length = jpeg[at + 1], int.from_bytes(jpeg[at + 2:at + 4], 'big')
        if 0xC0 <= marker <= 0xCF and marker not in (0xC4, 0xC8, 0xCC):
            return int.from_bytes(jpeg[at + 7:at + 9], 'big'), int.from_bytes(jpeg[at + 5:at + 7], 'big')
        at += 2 + length
    raise ValueError('no frame header')


def fingerprinted(record):
    """The record's text with the facts of every photograph as they are on disk."""
    def facts(found):
        data = (record.parent / found[1]).read_bytes()
        width, height = size(data)
        old = found[0]
        for tag, value in (('sha256', hashlib.sha256(data).hexdigest()), ('width', width), ('height', height)):
            old = re.sub(f'<{tag}>[^<]*</{tag}>', f'<{tag}>{value}</{tag}>', old)
        return old
    return PHOTO.sub(facts, record.read_text(encoding='utf-8'))


def main():
    here = pathlib.Path(__file__).resolve().parent
    records = [pathlib.Path(name) for name in sys.argv[1:]] or sorted((here.parent / 'reels').glob('*/record.xml'))
    for record in records:
        try:
            text = fingerprinted(record)
        except (OSError, ValueError, IndexError) as fault:
            print(f'{record}: a photograph cannot be read: {fault}', file=sys.stderr)
            return 3
        if text != record.read_text(encoding='utf-8'):
            record.write_text(text, encoding='utf-8')
            print(f'{record}: brought up to date')
    return 0


if __name__ == '__main__':
    sys.exit(main())
