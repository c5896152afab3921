#!/usr/bin/env bash
# How much work is it?  Counts instructions, a figure that does not depend on how busy the machine is.
#
#   count_instructions.sh            every line of bench/instructions.tsv; 1 when one takes more than it may
#   count_instructions.sh WORDS...   of that command, with what takes most of them
set -euo pipefail
cd "$(dirname "$0")/.."

place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT

count() { # words of the command
    local status=0
    valgrind --tool=callgrind --callgrind-out-file="$place/callgrind" \
        build/release/towershaft "$@" >"$place/answer" 2>"$place/log" </dev/null || status=$?
    if [ "$status" -gt 1 ]; then # 0 holds, 1 does not hold; anything else is no measurement
        cat "$place/log" >&2
        exit "$status"
    fi
    sed -n 's/^summary: \([0-9]*\).*/\1/p' "$place/callgrind"
}

if [ $# -gt 0 ]; then
    echo "$*: $(count "$@") instructions"
    callgrind_annotate "$place/callgrind" 2>/dev/null |
        sed -n '/[0-9,]* (.*%)/p' | sed -n '2,9p' | cut -c1-110
    exit 0
fi
beyond=0
while IFS=$'\t' read -r name most words; do
    case $name in '#'*) continue ;; esac
    read -ra command <<<"$words"
    counted=$(count "${command[@]}")
    [ -n "$counted" ] || { cat "$place/log" >&2; exit 3; }
    kept=within
    if [ $((counted / 1000)) -gt $((most * 1000)) ]; then
        kept=EXCEEDS
        beyond=1
    fi
    printf '%-24s %8d M  %-8s %8d M  %s\n' "$name" $((counted / 1000000)) "$kept" "$most" "$words"
done <bench/instructions.tsv
exit $beyond
