#!/usr/bin/env bash
# How much work is one check?  Counts the instructions of `towershaft check examples/large.yaml`,
# a figure that does not depend on how busy the machine is.  count_instructions.sh [drive file]
set -euo pipefail
cd "$(dirname "$0")/.."

drive=${1:-examples/large.yaml}
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
status=0
valgrind --tool=callgrind --callgrind-out-file="$place/callgrind" \
    build/release/towershaft check "$drive" >"$place/answer" 2>"$place/log" || status=$?
if [ "$status" -gt 1 ]; then # 0 holds, 1 does not hold; anything else is no measurement
    cat "$place/log" >&2
    exit "$status"
fi
count=$(sed -n 's/^summary: \([0-9]*\).*/\1/p' "$place/callgrind")
[ -n "$count" ] || { cat "$place/log" >&2; exit 3; }
echo "check $drive: $count instructions"
callgrind_annotate "$place/callgrind" 2>/dev/null |
    sed -n '/[0-9,]* (.*%)/p' | sed -n '2,9p' | cut -c1-110
