#!/usr/bin/env bash
# A working day, first part: the airframer asks for a second hydraulic pump.
#
#   examples/monday/monday.sh [FOLDER]      answers and pictures go there; out/monday without it
#
# The engine is the invented trainer of examples/trainer.yaml.
set -euo pipefail
cd "$(dirname "$0")/../.."
command=${TOWERSHAFT:-build/release/towershaft}
out=${1:-out/monday}
before=examples/trainer.yaml
pump=examples/monday/second_pump.yaml
input=drive/hp/box/input
mkdir -p "$out"

say() { printf '\n---- %s ----\n\n' "$*"; }
lightest() { sed -n 's/^The lightest, /    /p' "$1"; }
number() { "$command" why "$1" "$2" | sed -n '/^[A-Za-z_0-9]* = /p'; }

say "1. Where can it go?  The lightest first, each checked by all rules, and why nothing is lighter"
"$command" arrange "$before" --add "$pump" -o "$out/free.yaml" | tee "$out/free.txt"

say "2. The starter-generator must keep its speed and its face.  What does that cost, what does less wrap
     cost, what if loads or bands are off, and why not elsewhere?"
"$command" arrange "$before" --add "$pump" --keep "$input" -o "$out/kept.yaml" \
    --front 3 --loads '10 %' --bands '50 rpm' --picture "$out/candidates.png" \
    --why-not 'hydraulic pump 2 with fuel pump' --why-not 'fuel pump with breather' |
    tee "$out/kept.txt" | sed -n '/^The lightest/,/^Why nothing/p;/^What less/,/^Assumptions/p' |
    grep -v '^Assumptions\|^Why nothing'
printf 'What keeping it costs: the lightest weighs%s with it kept, and%s without.\n' \
    "$(lightest "$out/kept.txt")" "$(lightest "$out/free.txt")" | tr -s ' '

say "3. The proof on file: what was searched, and whether other code agrees that it is true of the drive"
"$command" arrange "$before" --add "$pump" --keep "$input" --json >"$out/certificate.json"
"$command" arrange "$before" --add "$pump" --verify "$out/certificate.json"

say "4. Take that one: what changed, in the order of consequence"
"$command" compare "$before" "$out/kept.yaml" | tee "$out/compare.txt"

say "5. The start path: unchanged, for the starter-generator stays on the input; at crank the bevels bear what
     it gives less what others take there, before and after"
sed -n 's/^ *- \(the start by\)/\1/p' "$out/kept.txt" | head -n 1
for file in "$before" "$out/kept.yaml"; do number "$file" 'drive/hp/box/bevels:T_2@crank'; done

say "6. The heat that the meshes give to the oil at take-off, before and after"
for file in "$before" "$out/kept.yaml"; do number "$file" 'spools/hp:P_lost@take-off'; done

say "7. The neck of the new pump: as the vendor offers it at first, and as it is tuned"
"$command" set "$out/kept.yaml" 'accessories/hydraulic pump 2/neck/breaks' '330..420 N.m' -o "$out/offered.yaml"
"$command" check "$out/offered.yaml" >"$out/offered.txt" || true
grep -A 2 'hydraulic pump 2.*neck\|G2-neck-below-upstream' "$out/offered.txt" | head -n 6
"$command" check "$out/kept.yaml" | grep -A 10 '^Selectivity'
"$command" draw "$out/kept.yaml" -o "$out/selectivity.png" --figure selectivity

say "8. Keep the decision with its reason: it stands in the drive, and on its page, from now on"
{
    cat "$out/kept.yaml"
    printf '  - {says: "%s", at: accessories, source: "%s", date: 2026-03-02}\n' \
        "hydraulic pump 2 back to back with the first: lightest with the starter-generator kept" \
        "certificate.json of this Monday"
} >"$out/decided.yaml"
"$command" check "$out/decided.yaml" >"$out/check.txt"
grep -A 1 'stated: hydraulic pump 2' "$out/check.txt"

say "9. What the maker of the new pump gets: the sheet of its pad, in both systems of units"
"$command" sheet "$out/decided.yaml" 'hydraulic pump 2' | tee "$out/sheet.txt" |
    sed -n '/^Interface/,/^Body/p' | grep -v '^Body'
"$command" sheet "$out/decided.yaml" 'hydraulic pump 2' -o "$out/sheet.pdf"
echo "And the maker of the first pump, whose sheet was issued with revision B: what changed bears a bar"
"$command" sheet "$out/decided.yaml" 'hydraulic pump' --against "$before" | tee "$out/changed.txt" |
    sed -n '/Against revision/p;/  |  /p' | head -n 12

say "10. The whole drive on paper, and the faces before and after"
"$command" report "$out/decided.yaml" -o "$out/decided.pdf"
"$command" draw "$before" -o "$out/before.png" --figure behind
"$command" draw "$out/decided.yaml" -o "$out/after.png" --figure behind
tail -n 3 "$out/check.txt"
say "Written into $out"
