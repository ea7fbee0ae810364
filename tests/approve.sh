#!/bin/sh
# Takes what the program says and draws now as right: the transcripts and the pages as pictures.
# Look first: `git diff tests/transcripts` shows the words, and tests/pictures/ the pages.
set -eu
cd "$(dirname "$0")/.."
if [ -n "${CI:-}" ]; then
  echo "approve.sh: nothing is approved in CI" >&2
  exit 2
fi
cmake --build build
rm -rf demo/out
sh demo/run.sh --issue-only
/usr/bin/python3 tests/transcripts/check_transcripts.py --approve build/winchbook
/usr/bin/python3 tests/pictures/check_pictures.py --approve build/tests demo/out/*.pdf
