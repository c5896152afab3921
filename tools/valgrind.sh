#!/usr/bin/env bash
# Does valgrind see a read of what nobody wrote, a leak, or a file left open, in what people run?
#
# A representative set of commands, each once, of the release build; prints a line for each and ends with
# 1 when one of them had an error or a leak that is not that of a library of others
# (tests/support/valgrind.supp).
set -euo pipefail
cd "$(dirname "$0")/.."

command=${TOWERSHAFT:-build/release/towershaft}
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
cp examples/trainer.yaml examples/bizjet.yaml "$place/"
cp -r examples/studies examples/rate* "$place/" 2>/dev/null || true
drive=$place/trainer.yaml
printf '%s\n' 'towershaft study: 1' 'title: a short one' 'drive: trainer.yaml' 'samples: 6' 'vary:' \
    '  - {at: accessories/fuel pump/mass, law: uniform, least: 4 kg, most: 5 kg}' 'watch:' \
    '  - {margin: E1-tooth-bending}' >"$place/study.yaml"
printf 'towershaft: 1\nengine: {\n' >"$place/broken.yaml"
failed=0 count=0

under() { # the exit codes that are right, then the words of the command
    local right=$1 code=0 begun=$SECONDS
    shift
    valgrind --quiet --error-exitcode=99 --leak-check=full --show-leak-kinds=definite,indirect \
        --errors-for-leak-kinds=definite,indirect --suppressions=tests/support/valgrind.supp \
        --log-file="$place/log" "$command" "$@" >"$place/out" 2>&1 || code=$?
    count=$((count + 1))
    if [[ " $right " != *" $code "* ]]; then
        failed=1
        echo "valgrind: towershaft $1: exit code $code"
        head -30 "$place/log"
    else
        echo "valgrind: towershaft ${*//$place\//}: clean, $((SECONDS - begun)) s"
    fi
}

under "0 1" check "$drive" --all
under "0 1" check "$place/bizjet.yaml" --json
under "2" check "$place/broken.yaml"
under "2" check "$place/nothing.yaml"
under "0" why "$drive" drive/hp/box/clockwise/1
under "2" why "$drive" drive/hq/box
under "0" set "$drive" revision next
under "2" set "$drive" drive/hp/nothing 3
under "0 1" compare "$drive" "$place/bizjet.yaml"
under "0" draw "$drive" -o "$place/a.svg"
under "0" draw "$drive" -o "$place/a.pdf" --figure teeth
under "0" draw "$drive" -o "$place/a.png" --figure modes
under "0" draw "$drive" -o "$place/a.dxf" --figure pads
under "0" draw "$drive" -o "$place/a.glb"
under "0" report "$drive" -o "$place/r.html"
under "0" report "$drive" -o "$place/r.xlsx"
under "0" sheet "$drive" "fuel pump" -o "$place/s.pdf"
under "0 1" effects "$drive"
under "0 1" size "$drive"
under "0 1 2" necks "$drive" --samples 2000
under "0 1" twist "$drive"
under "0 1" whirl "$drive"
under "0 1" oil "$drive"
under "0 1" start "$drive"
under "0 1" start "$drive" --to take-off
under "0 1" warm "$drive"
under "0 1" jolt "$drive" slam
under "0 1 2" necks "$drive" --samples 1000 --seizures
for figure in play jolt swing; do
    under "0 1" draw "$drive" --figure "$figure" -o "$place/$figure.svg"
done
under "0 1" seize "$drive" "fuel pump"
under "0 1" study "$place/study.yaml" -o "$place/o.sqlite"
under "0" ratio 2.5
under "0" brief "$drive" -o "$place/b.html"
under "0" rules
under "0" doctor
echo "valgrind: $count commands, $([ "$failed" -eq 0 ] && echo 'all clean' || echo 'NOT all clean')"
exit "$failed"
