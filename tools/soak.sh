#!/usr/bin/env bash
# What holds that takes too long for `make test`?  soak.sh [seconds a fuzz target] [part ...]
#
# Parts: properties, writing, study, hosts, same-bytes, valgrind, analysis, threads, fuzz; all unless named.
# Every part runs even when one before it failed.  A line for each, in place of its last one, goes to
# out/soak.md, which is committed as docs/soak.md when all of them ran.  TIMES=20: so many times the
# cases of `make test` where cases are made at random.
set -uo pipefail
cd "$(dirname "$0")/.." || exit

seconds=${1:-600}
shift || true
all='properties writing study hosts same-bytes valgrind analysis threads fuzz'
wanted=" ${*:-$all} "
unknown() {
    echo "soak: $1 is none of: seconds, and behind them $all"
    exit 2
}
[[ $seconds =~ ^[0-9]+$ ]] || unknown "$seconds"
for name in $wanted; do
    [[ " $all " == *" $name "* ]] || unknown "$name"
done
jobs=$(nproc)
times=${TIMES:-20}
failed=0
mkdir -p out
record=out/soak.md
[ -e "$record" ] || {
    printf '# The last soak\n\n`make soak` on %s cores (%s); a line for the last run of each part.\n\n' \
        "$jobs" "$(uname -sm)"
    printf '| what | at | seconds | end | said |\n|---|---|---|---|---|\n'
} >"$record"

part() { # its name, what it is, then the words of a command; its last line is kept
    local name=$1 what=$2 begun=$SECONDS end=holds
    shift 2
    [[ $wanted == *" $name "* ]] || return 0
    "$@" >"out/soak-$name.log" 2>&1
    case $? in
    0) ;;
    77) end='not run' ;;
    *) end='DOES NOT HOLD' && failed=1 ;;
    esac
    { grep -vF "| $name: " "$record"
        printf '| %s: %s | %s, %s | %s | %s | %s |\n' "$name" "$what" "$(git rev-parse --short HEAD)" \
            "$(date -u +%F)" $((SECONDS - begun)) "$end" \
            "$(grep -vE '^ *$' "out/soak-$name.log" |
                grep -E 'tests passed|clean|sources,|kills|executions|seen|twice|needed' | tail -1 | tr '|' ' ')"
    } >"$record.new" && mv "$record.new" "$record"
    tail -1 "$record"
    [ "$end" != 'DOES NOT HOLD' ] || tail -60 "out/soak-$name.log" | cut -c1-300
}

part properties "properties, faults and server under the sanitizers, $times times the cases" \
    env TS_SOAK="$times" ctest --preset sanitize -j"$jobs" -L 'property|fault|serve' --timeout 7200
part writing 'each call on each written file fails, or is the last before a kill; 500 kills at any moment; 200 kills of the server amid editing' \
    env TS_SOAK="$times" ctest --preset release -j"$jobs" --timeout 7200 \
    -R 'fault/(write_failures|kill_sweep|study_faults)|serve/(disk_faults|sudden_end)'
part study 'a study killed 500 times, half of them amid its samples' \
    env TS_SOAK=50 /usr/bin/python3 -B tests/apps/test_study.py \
    Study.test_a_kill_at_any_instant_loses_no_finished_sample_and_none_comes_twice
part hosts 'a study on 64 ranks of 8 hosts, and again while a host falls' tools/ranks_on_hosts.sh
part same-bytes 'two builds in two folders, byte for byte' tools/same_bytes.sh
part valgrind 'over thirty commands' tools/valgrind.sh
part analysis 'gcc -fanalyzer, clang-tidy, cppcheck' /usr/bin/python3 tools/analyse.py --jobs "$jobs"
part threads 'under the thread sanitizer' make --no-print-directory tsan
part fuzz "every target for $seconds s" tools/fuzz_long.sh "$seconds"
echo
cat "$record"
exit "$failed"
