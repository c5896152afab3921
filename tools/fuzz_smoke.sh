#!/usr/bin/env bash
# How long does a reader stand strangers?  fuzz_smoke.sh <program> <name> <seconds>
#
# Runs on a copy of tests/fuzz/corpus/<name>, so that the tree is not written.  What breaks the
# program is printed in base64 and kept under the build folder's out/.
set -euo pipefail

program=$1 name=$2 seconds=$3
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
mkdir "$place/corpus"
if [ -d "tests/fuzz/corpus/$name" ]; then
    cp -r "tests/fuzz/corpus/$name/." "$place/corpus/"
fi
words=()
if [ -f "tests/fuzz/$name.dict" ]; then
    words=("-dict=tests/fuzz/$name.dict")
fi
kept="${TS_BUILD:-build/sanitize}/fuzz"
mkdir -p "$kept"
# The sanitizer keeps freed memory in quarantine, 256 MB of it unless told: half of the limit below.
export ASAN_OPTIONS="${ASAN_OPTIONS:+$ASAN_OPTIONS:}quarantine_size_mb=16"
# One seed: a test meets the same inputs today and tomorrow; `make fuzz` looks for others.
"$program" -seed=1 -max_total_time="$seconds" -rss_limit_mb=512 -timeout=10 -print_final_stats=1 \
    -artifact_prefix="$kept/$name-" "${words[@]}" "$place/corpus"
