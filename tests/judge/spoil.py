#!/usr/bin/env python3
"""Makes documents that the judge must refuse, and one that it must still accept.

    spoil.py PDF DIRECTORY

DIRECTORY/accepted.pdf is PDF rewritten with readable objects and nothing else changed;
DIRECTORY/refused/<why>.pdf each have one thing damaged, without changing any length.
"""

import subprocess
import sys
from pathlib import Path

# why: (what is written, what replaces it)
DAMAGE = {
    "pictures-without-alternative-text": (b"/Alt ", b"/Alx "),
    "attachment-without-relationship": (b"/AFRelationship ", b"/AFRelationshiq "),
    "no-language": (b"/Lang ", b"/Lanq "),
    "title-not-shown": (b"/DisplayDocTitle true", b"/DisplayDocTitlx true"),
    "another-part-of-pdf-ua": (b"<pdfuaid:part>1<", b"<pdfuaid:part>7<"),
    "not-marked": (b"/Marked true", b"/Markex true"),
    "no-output-intent": (b"/OutputIntents ", b"/OutputIntentx "),
    "header-cells-without-scope": (b"/Scope ", b"/Scopx "),
    "fonts-without-unicode": (b"/ToUnicode ", b"/ToUnicodx "),
}


def main():
    document, directory = map(Path, sys.argv[1:3])
    refused = directory / "refused"
    refused.mkdir(parents=True, exist_ok=True)
    accepted = directory / "accepted.pdf"
    subprocess.run(
        ["qpdf", "--qdf", "--object-streams=disable", "--newline-before-endstream",
         "--stream-data=preserve", document, accepted],
        check=True,
    )  # fmt: skip
    good = accepted.read_bytes()
    for why, (old, new) in DAMAGE.items():
        assert len(old) == len(new)
        if old not in good:
            sys.exit(f"{document} holds no {old.decode()!r} to damage")
        (refused / f"{why}.pdf").write_bytes(good.replace(old, new))


if __name__ == "__main__":
    main()
