#!/usr/bin/env bash
# What breaks the readers in a long run?  fuzz_long.sh <seconds per target>
#
# Inputs that reach new code are gathered in out/fuzz/<name>/, what breaks a program in
# out/fuzz/<name>-crash-*; the committed corpus is read, never written.
set -euo pipefail
cd "$(dirname "$0")/.."

seconds=$1
broken=0
for program in build/sanitize/tests/fuzz/fuzz_*; do
    name=${program##*/fuzz_}
    words=()
    mkdir -p "out/fuzz/$name"
    [ ! -d "tests/fuzz/corpus/$name" ] || words+=("tests/fuzz/corpus/$name")
    [ ! -f "tests/fuzz/$name.dict" ] || words+=("-dict=tests/fuzz/$name.dict")
    echo "fuzz: $name for $seconds s"
    "$program" -max_total_time="$seconds" -rss_limit_mb=512 -timeout=10 -verbosity=0 \
        -print_final_stats=1 -artifact_prefix="out/fuzz/$name-" "out/fuzz/$name" "${words[@]}" ||
        broken=1
done
exit "$broken"
