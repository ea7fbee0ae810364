#!/bin/sh
# Takes what the program says and draws now as right: the transcripts, the pages as pictures and the
# pages of the hard cases. Look first: `git diff tests/transcripts` shows the words, tests/pictures/
# the pages, and build/hard_cases/documents/ the hard cases.
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
/usr/bin/python3 tests/hard_cases/check_hard_cases.py --approve build/winchbook build/hard_cases
