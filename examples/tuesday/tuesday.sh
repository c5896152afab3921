#!/usr/bin/env bash
# A working day, second part: the design review.  From crank to take-off, and a pump seizes.
#
#   examples/tuesday/tuesday.sh [FOLDER]      answers and pictures go there; out/tuesday without it
#
# The engine is the invented large one of examples/large.yaml; the seizure is shown on all four.
set -euo pipefail
cd "$(dirname "$0")/../.."
command=${TOWERSHAFT:-build/release/towershaft}
out=${1:-out/tuesday}
drive=examples/large.yaml
mkdir -p "$out"

say() { printf '\n---- %s ----\n\n' "$*"; }
# The sentences of an answer, without its title, table and assumptions.
told() { awk '/largest torques/ { over = 1 } seen && !over; /^$/ { seen = 1 }'; }

say "1. From crank over light-off, the starter's cut-out and idle to take-off"
"$command" start "$drive" --to take-off -o "$out/start.txt"
told <"$out/start.txt"
"$command" draw "$drive" --figure start --condition take-off -o "$out/start.png"

say "2. The loads that come suddenly and must be borne: which neck comes nearest to breaking?"
# Ends with exit code 1 where a neck at its weakest breaks, which the answer then says.
jolted() {
    local code=0 name answer
    name=$(tr -cs 'a-z0-9' _ <<<"$*")
    answer=$out/jolt_${name%_}.txt
    "$command" jolt "$drive" "$@" --condition take-off -o "$answer" || code=$?
    [ "$code" -le 1 ]
    told <"$answer"
}
jolted slam
jolted chop
jolted chop --ramp '10 ms'
jolted step 'hydraulic pump 1'
jolted short 'generator 1'

say "3. At take-off the hydraulic pump seizes: its neck breaks, and everything else goes on"
for engine in trainer bizjet medium large; do
    pump='hydraulic pump 1'
    [ "$engine" != trainer ] || pump='hydraulic pump'
    "$command" seize "examples/$engine.yaml" "$pump" --condition take-off \
        -o "$out/seize_$engine.txt"
    printf '%s:\n' "$engine"
    told <"$out/seize_$engine.txt"
done

say "4. What every part then bears upstream, with the neck and without it"
sed -n '/largest torques/,/^$/p' "$out/seize_large.txt"

"$command" draw "$drive" --figure seizure --at 'hydraulic pump 1' --condition take-off \
    -o "$out/seizure.png"

say "5. What it does to the engine, by the topology alone"
"$command" effects "$drive" 'hydraulic pump 1' -o "$out/effects.txt"
sed -n '/seize/,/^$/p' "$out/effects.txt" | awk 'NR <= 12'

say "6. A generator brakes to a stop in 20 ms, with its own neck"
"$command" seize "$drive" 'generator 1' --condition take-off --ramp '20 ms' | told

say "7. ... and with the starter's neck in its place: the gearbox loses teeth instead"
"$command" seize "$drive" 'generator 1' --condition take-off --ramp '20 ms' --neck-of starter \
    -o "$out/swapped.txt"
told <"$out/swapped.txt"

say "8. The necks against what they must pass and what stands behind them"
"$command" draw "$drive" --figure selectivity -o "$out/selectivity.png"
ls "$out"
