#!/usr/bin/env bash
# What breaks the readers in a long run?  fuzz_long.sh <seconds per target> [name ...]
#
# Runs each target of build/sanitize (libFuzzer; of build/afl under AFL++ when ENGINE=afl), or those that
# are named.  Inputs that reach new code are gathered in out/fuzz/<name>/, what breaks a program in
# out/fuzz/<name>-crash-*; the committed corpus is read, never written.  At the end a table of
# executions stands in out/fuzz/record.md.  A target stops at its first break, which one input that takes
# PATIENCE (60) seconds is; 0 seconds runs none.
set -euo pipefail
cd "$(dirname "$0")/.."

seconds=$1
shift
engine=${ENGINE:-libfuzzer}
place=build/sanitize
[ "$engine" = libfuzzer ] || place=build/afl
names=("$@")
if [ ${#names[@]} -eq 0 ]; then
    for source in tests/fuzz/fuzz_*.c; do
        name=${source##*/fuzz_}
        names+=("${name%.c}")
    done
fi
mkdir -p out/fuzz
record=out/fuzz/record.md
[ -e "$record" ] || printf '| target | engine | seconds | executions | inputs kept | broke |\n|---|---|---|---|---|---|\n' >"$record"
broken=0

by_libfuzzer() { # name
    local words=() log="out/fuzz/$1.log" broke=no
    [ ! -d "tests/fuzz/corpus/$1" ] || words+=("tests/fuzz/corpus/$1")
    [ ! -f "tests/fuzz/$1.dict" ] || words+=("-dict=tests/fuzz/$1.dict")
    # The sanitizer keeps freed memory in quarantine, 256 MB of it unless told: half of the limit.
    ASAN_OPTIONS="${ASAN_OPTIONS:+$ASAN_OPTIONS:}quarantine_size_mb=16" \
        "$place/tests/fuzz/fuzz_$1" -max_total_time="$seconds" -rss_limit_mb=512 -timeout="${PATIENCE:-60}" \
        -verbosity=1 -print_final_stats=1 -artifact_prefix="out/fuzz/$1-" "out/fuzz/$1" \
        "${words[@]}" >"$log" 2>&1 || broke=yes
    printf '| %s | libFuzzer | %s | %s | %s | %s |\n' "$1" "$seconds" \
        "$(sed -n 's/^stat::number_of_executed_units: *//p' "$log")" \
        "$(find "out/fuzz/$1" -type f | wc -l)" "$broke" | tee -a "$record"
    [ "$broke" = no ] || { broken=1 && tail -40 "$log"; }
}

by_afl() { # name
    local from="tests/fuzz/corpus/$1" to="out/fuzz/afl-$1" words=() broke=no
    [ ! -f "tests/fuzz/$1.dict" ] || words+=(-x "tests/fuzz/$1.dict")
    AFL_NO_UI=1 AFL_SKIP_CPUFREQ=1 AFL_I_DONT_CARE_ABOUT_MISSING_CRASHES=1 AFL_NO_AFFINITY=1 \
        afl-fuzz -V "$seconds" -m none -t 20000 -i "$from" -o "$to" "${words[@]}" \
        -- "$place/tests/fuzz/fuzz_$1" >"out/fuzz/afl-$1.log" 2>&1 || broke=yes
    local stats="$to/default/fuzzer_stats"
    grep -q '^saved_crashes *: 0$' "$stats" || broke=yes
    printf '| %s | AFL++ | %s | %s | %s | %s |\n' "$1" "$seconds" \
        "$(sed -n 's/^execs_done *: //p' "$stats")" \
        "$(find "$to/default/queue" -type f | wc -l)" "$broke" | tee -a "$record"
    [ "$broke" = no ] || broken=1
}

before=$(wc -l <"$record")
for name in "${names[@]}"; do
    mkdir -p "out/fuzz/$name"
    [ "$seconds" -gt 0 ] || continue
    "by_$engine" "$name"
done
tail -n +$((before + 1)) "$record" |
    awk -F'|' '{ sum += $5 } END { printf "%.0f executions of %d targets\n", sum, NR }'
exit "$broken"
