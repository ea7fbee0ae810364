#!/bin/sh
# From a fresh clone to the demo documents: installs what is missing, builds winchbook and writes
# demo/out/<reel>-<document>.pdf.
set -eu
cd "$(dirname "$0")/.."
out=${DEMO_OUT:-demo/out}

# reel, document, date of issue
documents="
  skerry-40 keepsake 2026-06-19
  dunlin-2  keepsake 2026-06-12"

sh demo/install.sh
if [ ! -f build/CMakeCache.txt ]; then
  cmake -S . -B build -G Ninja -DCMAKE_BUILD_TYPE=Release -DWINCHBOOK_TESTS=OFF >/dev/null
fi
cmake --build build --target winchbook

mkdir -p "$out"
echo "$documents" | while read -r reel document date; do
  [ -n "$reel" ] || continue
  build/winchbook issue "demo/reels/$reel" --document "$document" --date "$date" \
    -o "$out/$reel-$document.pdf"
  echo "wrote $out/$reel-$document.pdf"
done
