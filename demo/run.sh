#!/bin/sh
# From a fresh clone to the demo documents: installs what is missing, builds winchbook and writes
# demo/out/<reel>-<document>.pdf.
#
#   sh demo/run.sh [--issue-only]       --issue-only: the program is there already
#
# DEMO_OUT names another directory for the documents, WINCHBOOK another program.
set -eu
cd "$(dirname "$0")/.."
out=${DEMO_OUT:-demo/out}
winchbook=${WINCHBOOK:-build/winchbook}

# reel, document, date of issue, more of what `winchbook issue` takes
documents="\
skerry-40 keepsake 2026-06-19
dunlin-2 keepsake 2026-06-12
sandling-tern keepsake 2026-08-28
wharfinger-5 keepsake 2026-10-09
skerry-40 collector-statement 2026-06-19
dunlin-2 collector-statement 2026-06-12
sandling-tern collector-statement 2026-08-28
wharfinger-5 collector-statement 2026-10-09
skerry-40 value-statement 2026-06-19 --sales demo/sales/sales.csv
sandling-tern value-statement 2026-08-28 --sales demo/sales/sales.csv
wharfinger-5 value-statement 2026-10-09 --sales demo/sales/sales.csv
skerry-40 intake-receipt 2026-03-03
dunlin-2 intake-receipt 2026-06-08
skerry-40 hand-back-receipt 2026-06-19
dunlin-2 hand-back-receipt 2026-06-12
skerry-40 labels 2026-03-03
skerry-40 bench-sheet 2026-06-19
sandling-tern bench-sheet 2026-08-28
skerry-40 care-card 2026-06-19
dunlin-2 care-card 2026-06-12
wharfinger-5 care-card 2026-10-09"

if [ "${1:-}" != --issue-only ]; then
  sh demo/install.sh
  if [ ! -f build/CMakeCache.txt ]; then
    echo "looking for the compiler and the libraries"
    cmake -S . -B build -G Ninja -DCMAKE_BUILD_TYPE=Release -DWINCHBOOK_TESTS=OFF >/dev/null
  fi
  cmake --build build --target winchbook -j "$(nproc)"
fi

mkdir -p "$out"
echo "$documents" | while read -r reel document date more; do
  # shellcheck disable=SC2086  # the options are meant to be split
  "$winchbook" issue "demo/reels/$reel" --document "$document" --date "$date" $more \
    -o "$out/$reel-$document.pdf"
done
