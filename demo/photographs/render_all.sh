#!/bin/sh
# Render every demo photograph that is not there yet. Delete a picture to have it made anew.
# Usage: demo/photographs/render_all.sh [--draft]
set -eu
here=$(cd "$(dirname "$0")" && pwd)
reels=$here/../reels
# the table in settings.py is the one list of shots, in order
sed -n "s/^    '\([a-z-]*\)': ('[a-z-]*', '[a-z]*', '\([a-z0-9-]*\)', .*/\1 \2/p" "$here/settings.py" |
while read -r shot reel; do
  out=$reels/$reel/photos/$shot.jpg
  if [ -e "$out" ]; then
    continue
  fi
  mkdir -p "${out%/*}"
  echo "rendering $shot"
  blender -b --python-exit-code 1 -P "$here/scene.py" -- --shot "$shot" -o "$out" "$@" </dev/null >/dev/null
done
