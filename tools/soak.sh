#!/usr/bin/env bash
# What holds that takes too long for `make test`?  soak.sh [seconds a fuzz target]
#
# Every part runs even when one before it failed.  A line for each goes to out/soak.md, which is
# committed as docs/soak.md when all of it ran.
set -uo pipefail
cd "$(dirname "$0")/.."

seconds=${1:-600}
jobs=$(nproc)
failed=0
mkdir -p out
record=out/soak.md
{
    printf '# The last soak\n\n`make soak` at %s, %s, on %s cores (%s).\n\n' \
        "$(git rev-parse --short HEAD)" "$(date -u +%F)" "$jobs" "$(uname -sm)"
    printf '| what | seconds | end | said |\n|---|---|---|---|\n'
} >"$record"

part() { # what, then the words of a command; its last line is kept
    local what=$1 begun=$SECONDS end=holds
    shift
    "$@" >out/soak.log 2>&1 || { end='DOES NOT HOLD' && failed=1; }
    printf '| %s | %s | %s | %s |\n' "$what" $((SECONDS - begun)) "$end" \
        "$(grep -vE '^ *$' out/soak.log | grep -E 'tests passed|clean|sources,|kills|executions|seen|twice' |
            tail -1 | tr '|' ' ')" | tee -a "$record"
    [ "$end" = holds ] || tail -60 out/soak.log
}

part 'properties, faults and server under the sanitizers, 20 times the cases' \
    env TS_SOAK=20 ctest --preset sanitize -j"$jobs" -L 'property|fault|serve' --timeout 7200
part 'each call on each written file fails, or is the last before a kill; 500 kills at any moment; kills of a study and of the server' \
    env TS_SOAK=20 ctest --preset release -j"$jobs" --timeout 7200 \
    -R 'fault/(write_failures|kill_sweep|study_faults)|serve/(disk_faults|sudden_end)|apps/study'
part 'a study killed 500 times, half of them amid its samples' \
    env TS_SOAK=50 /usr/bin/python3 -B tests/apps/test_study.py \
    Study.test_a_kill_at_any_instant_loses_no_finished_sample_and_none_comes_twice
part 'two builds in two folders, byte for byte' tools/same_bytes.sh
part 'valgrind over thirty commands' tools/valgrind.sh
part 'static analysis' /usr/bin/python3 tools/analyse.py --jobs "$jobs"
part 'threads under the thread sanitizer' make --no-print-directory tsan
part "every fuzz target for $seconds s" tools/fuzz_long.sh "$seconds"
echo
cat "$record"
exit "$failed"
