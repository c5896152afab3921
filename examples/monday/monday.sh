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
mkdir -p "$out"

say() { printf '\n---- %s ----\n\n' "$*"; }

say "1. Where can it go?  The lightest first, each checked by all rules, and why nothing is lighter"
"$command" arrange "$before" --add "$pump" -o "$out/free.yaml" | tee "$out/free.txt"

say "2. And if the starter-generator must keep its speed and its face?  What that costs"
"$command" arrange "$before" --add "$pump" --keep drive/hp/box/input -o "$out/kept.yaml" | tee "$out/kept.txt"

say "3. Take that one: what changed, in the order of consequence"
"$command" compare "$before" "$out/kept.yaml" | tee "$out/compare.txt"

say "4. The start path: the torque at crank through the bevels, before and after"
for file in "$before" "$out/kept.yaml"; do
    "$command" why "$file" 'drive/hp/box/bevels:T_2@crank' | sed -n '3p'
done

say "5. The whole page, and the faces before and after"
"$command" check "$out/kept.yaml" >"$out/check.txt"
"$command" draw "$before" -o "$out/before.png" --figure behind
"$command" draw "$out/kept.yaml" -o "$out/after.png" --figure behind
tail -n 3 "$out/check.txt"
say "Written into $out"
