#!/bin/sh
# All tests, from a fresh clone: installs what is missing, builds Release (build/) and with sanitizers
# (build-asan/), runs every test in both, and checks the house, the schemas and the demo documents.
# A tool that is missing is a failure. The last line is `N passed, N failed`.
#
#   sh tests/run.sh             everything
#   sh tests/run.sh STEP...     only these: build units sanitized house schemas transcripts documents
#                               judge reading copies withholding photographs pictures
#                               hard_cases format lint tidy
#
# `build` and `documents` come first, since the others use what they make; the others run beside each
# other, one a processor, and each is told when it is done. `sanitized` builds for itself.
set -u
cd "$(dirname "$0")/.." || exit 3
first="build documents"
# the longest come first, so that no processor waits at the end
others="sanitized copies hard_cases transcripts judge photographs withholding pictures schemas units lint house reading format tidy"
steps=${*:-$first $others}
logs=build/logs
jobs=$(nproc)
passed=0
failed=0
python=/usr/bin/python3
cache=${XDG_CACHE_HOME:-$HOME/.cache}
LC_ALL=C.UTF-8
export LC_ALL PYTHONDONTWRITEBYTECODE=1

ok() {
  passed=$((passed + 1))
  echo "ok   $1"
}

fail() {
  failed=$((failed + 1))
  echo "FAIL $1"
}

# check NAME COMMAND...: one check; on failure the end of what the command said
check() {
  name=$1
  shift
  if "$@" >"$logs/$step.check.log" 2>&1; then
    ok "$name"
  else
    fail "$name"
    # the lines that name a fault first, then the end of what was said
    sed 's/\x1b\[[0-9;]*m//g' "$logs/$step.check.log" >"$logs/$step.plain.log"
    { grep -E 'error[: ]|warning:' "$logs/$step.plain.log" | head -n 40; tail -n 40 "$logs/$step.plain.log"; } |
      sed 's/^/     /'
  fi
}

# suite NAME COMMAND...: a script that prints a line `ok ...` or `FAIL ...` for each of its checks
suite() {
  name=$1
  shift
  "$@" >"$logs/$step.suite.log" 2>&1
  code=$?
  good=$(grep -c '^ok ' "$logs/$step.suite.log")
  bad=$(grep -c '^FAIL ' "$logs/$step.suite.log")
  cat "$logs/$step.suite.log"
  passed=$((passed + good))
  failed=$((failed + bad))
  if [ "$bad" -eq 0 ] && { [ "$code" -ne 0 ] || [ "$good" -eq 0 ]; }; then
    fail "$name (exit code $code, $good checks)"
  fi
}

# unit_tests DIRECTORY LABEL: every doctest program below DIRECTORY/tests, counted by test case
unit_tests() {
  found=0
  for program in "$1"/tests/*_test; do
    [ -x "$program" ] || continue
    found=1
    room=$(basename "$program" _test)
    "$program" --no-colors=1 >"$logs/$step.$room.log" 2>&1
    code=$?
    counts=$(sed -n 's/^\[doctest\] test cases: *\([0-9]*\) *| *\([0-9]*\) passed *| *\([0-9]*\) failed.*/\1 \2 \3/p' "$logs/$step.$room.log")
    # shellcheck disable=SC2086
    set -- "$1" "$2" ${counts:-0 0 0}
    passed=$((passed + $4))
    failed=$((failed + $5))
    if [ "$code" -eq 0 ] && [ "$3" -gt 0 ]; then
      echo "ok   $room: $4 test cases $2"
    else
      [ "$5" -gt 0 ] || failed=$((failed + 1))
      echo "FAIL $room $2 (exit code $code, $5 of $3 test cases)"
      tail -n 80 "$logs/$step.$room.log" | sed 's/^/     /'
    fi
    set -- "$1" "$2"
  done
  [ "$found" -eq 1 ] || fail "no test programs $2"
}

configure() {
  directory=$1
  shift
  cmake -S . -B "$directory" -G Ninja -DCMAKE_BUILD_TYPE=Release -DWINCHBOOK_WERROR=ON \
    -DWINCHBOOK_TESTS=ON "$@"
}

build() {
  configure "$@" && cmake --build "$1" -j "$jobs" -- -k 0
}

# What CMakeLists.txt leaves to be told, since the library's own code is blamed, fails when it is ours.
release() {
  build build >"$logs/release.log" 2>&1
  code=$?
  cat "$logs/release.log"
  ours='^(\.\./|'"$PWD"'/)(src|tests)/[^ ]*: warning: .*\[-W(array-bounds|stringop-overflow)'
  [ "$code" -eq 0 ] && ! grep -E "$ours" "$logs/release.log"
}

step_build() {
  check "the Release build has no warnings" release
}

step_units() {
  unit_tests build "in the Release build"
}

step_sanitized() {
  # -Werror only above: the sanitizers' own code makes g++ 12 see null pointers where none are
  check "the program builds with AddressSanitizer and UndefinedBehaviorSanitizer" \
    build build-asan -DWINCHBOOK_SANITIZE=ON -DWINCHBOOK_WERROR=OFF -DCMAKE_CXX_FLAGS_RELEASE=-O1
  unit_tests build-asan "under the sanitizers"
  rm -rf build/demo-asan
  check "the demo documents are written under the sanitizers" \
    env WINCHBOOK=build-asan/winchbook DEMO_OUT=build/demo-asan sh demo/run.sh --issue-only
  check "under the sanitizers they are the same, byte for byte" each_same demo/out build/demo-asan
}

step_house() {
  suite "the include rule" $python tests/house/check_includes.py
  suite "what lies where" $python tests/house/check_tree.py
  suite "every row has its halves" $python tests/house/check_halves.py
}

step_schemas() {
  suite "schemas" $python tests/schemas/check_schemas.py
  suite "what --json prints" $python tests/schemas/check_json.py
}

step_transcripts() {
  suite "transcripts" $python tests/transcripts/check_transcripts.py build/winchbook
  suite "writers killed at random" $python tests/writing/kill_writers.py build/winchbook
  suite "a whole job through commands" $python tests/writing/check_whole_job.py build/winchbook
  suite "what is asked at a terminal" $python tests/writing/check_terminal.py build/winchbook
  suite "editions at the same moment" $python tests/writing/check_at_once.py build/winchbook
}

# issue_all DIRECTORY: the demo documents
issue_all() {
  DEMO_OUT=$1 sh demo/run.sh --issue-only
}

each_same() {
  found=1
  for document in "$1"/*.pdf; do
    [ -f "$document" ] || return 1
    cmp "$document" "$2/$(basename "$document")" || return 1
    found=0
  done
  return $found
}

all_embedded() {
  pdffonts "$1" >"$logs/$step.fonts.txt" || return 1
  cat "$logs/$step.fonts.txt"
  # after the two head lines: name, type, encoding, emb, sub, uni, object, generation
  sed 1,2d "$logs/$step.fonts.txt" | awk '
    { rows += 1; if ($(NF-4) != "yes" || $(NF-3) != "yes" || $(NF-2) != "yes") bad += 1 }
    END { exit rows == 0 || bad > 0 }'
}

step_documents() {
  rm -rf demo/out build/demo-again
  check "the demo documents are written" issue_all demo/out
  check "they are written again, elsewhere in the world" \
    env TZ=Pacific/Auckland LC_ALL=C DEMO_OUT=build/demo-again sh demo/run.sh --issue-only
  check "both times they are the same, byte for byte" each_same demo/out build/demo-again
  for document in demo/out/*.pdf; do
    name=$(basename "$document")
    check "$name has the syntax of a PDF (qpdf)" qpdf --check "$document"
    check "$name embeds a subset of every font, with Unicode" all_embedded "$document"
  done
}

step_judge() {
  suite "the judge" $python tests/judge/check_documents.py build/spoiled demo/out/*.pdf
}

step_reading() {
  suite "reading order, words and contrast" $python tests/reading/check_reading.py demo/out
  suite "what a value statement must hold" $python tests/reading/check_value_statement.py build/winchbook
  suite "another language" $python tests/reading/check_language.py build/winchbook build/language
}

step_withholding() {
  suite "what is withheld" $python tests/withholding/check_withheld.py build/winchbook build/withheld demo/out
  suite "what a person would write of it" $python tests/withholding/check_variants.py build/winchbook build/variants
}

step_photographs() {
  suite "photographs in" $python tests/photographs/check_photographs.py build/winchbook build/photographs
}

step_copies() {
  suite "what a copier leaves" $python tests/reading/check_copies.py demo/out "$cache/winchbook-copies"
}

step_hard_cases() {
  suite "the hard cases" $python tests/hard_cases/check_hard_cases.py build/winchbook build/hard_cases
}

step_pictures() {
  suite "pages as pictures" $python tests/pictures/check_pictures.py build/tests demo/out/*.pdf
}

sources() {
  git ls-files --cached --others --exclude-standard 'src/*.cc' 'src/*.h' 'tests/*.cc' 'tests/*.h'
}

step_format() {
  # shellcheck disable=SC2046
  check "clang-format has nothing to change" clang-format --dry-run -Werror $(sources)
}

step_lint() {
  suite "the linter" $python tests/lint/check_lint.py
}

tidy() {
  configure build-lint -DWINCHBOOK_PRECOMPILE=OFF && $python tests/lint/edges.py build-lint
}

step_tidy() {
  check "clang-tidy has nothing to say" tidy
}

# run_step STEP: runs it, and says all it said at once; what it counted goes to a file
run_step() {
  step=$1
  rm -f "$logs/$step.count"
  # the tests of both builds use the same names below it
  TMPDIR=$(mktemp -d)
  export TMPDIR
  {
    echo "-- $step"
    started=$(date +%s)
    "step_$step"
    times >"$logs/$step.times"
    echo "   ($(($(date +%s) - started)) s, $(processor_seconds "$logs/$step.times") s of processor)"
    echo "$passed $failed" >"$logs/$step.count"
  } >"$logs/$step.log" 2>&1
  rm -rf "$TMPDIR"
  flock "$logs/lock" cat "$logs/$step.log"
}

# processor_seconds FILE: the sum of what `times` said, user and system, of the shell and its children
processor_seconds() {
  sed 's/[ms]/ /g' "$1" | awk '{ for (i = 1; i < NF; i += 2) sum += 60 * $i + $(i + 1) } END { printf "%d", sum }'
}

if [ "${1:-}" = --step ]; then
  run_step "$2"
  exit 0
fi

sh demo/install.sh tests || exit 3
mkdir -p "$logs"
rm -f "$logs"/*.count
started=$(date +%s)
beside=""
for step in $steps; do
  case " $first " in
    *" $step "*) sh tests/run.sh --step "$step" ;;
    *) beside="$beside $step" ;;
  esac
done
# shellcheck disable=SC2086  # the list is meant to be split
[ -z "$beside" ] || printf '%s\n' $beside | xargs -n 1 -P "$jobs" sh tests/run.sh --step

for step in $steps; do
  if read -r good bad 2>/dev/null <"$logs/$step.count"; then
    passed=$((passed + good))
    failed=$((failed + bad))
    [ $((good + bad)) -gt 0 ] || fail "step $step checked nothing"
  else
    fail "step $step did not come to its end"
  fi
done
echo "   (all: $(($(date +%s) - started)) s)"
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
