#!/usr/bin/env bash
# What is it like to use?  Runs the main job on an invented business jet engine, from the file to
# the pictures, breaks it with one edit, and says what broke.  Everything goes into out/demo/.
set -euo pipefail
cd "$(dirname "$0")/.."

command=${TOWERSHAFT:-build/release/towershaft}
example=examples/bizjet.yaml
out=out/demo
edited=$out/edited.yaml
gear=drive/hp/box/clockwise/2
tooth=$gear/teeth

if [ ! -x "$command" ]; then
    echo "demo: $command is not there; \`make build\` makes it" >&2
    exit 3
fi
rm -rf "$out"
mkdir -p "$out"

say() {
    echo
    printf '%s\n' "$@"
}
shown() { printf '\n  $ towershaft %s\n\n' "$*"; }
indented() { sed 's/^/    /'; }

# Runs the command and takes the exit code that is due; any other one ends the demo.
run() { # exit code, words...
    local due=$1 code=0
    shift
    "$command" "$@" || code=$?
    if [ "$code" -ne "$due" ]; then
        echo "demo: towershaft $* ended with $code, where $due is due" >&2
        exit 3
    fi
}

say "---- 1. A drive is a text file ----"
echo "$example describes an invented engine of 33 kN: a box under it with seven pads,"
echo "driven by the hp spool, and a small second box with one, driven by the lp spool."
echo "This is the train of the first box, from its input outwards:"
echo
sed -n '/^      input: .*starter/,/^  lp:/p' "$example" | sed '$d' | indented

say "---- 2. One command computes and judges all of it ----"
shown "check $example"
run 0 check "$example" -o "$out/check.txt"
run 0 check "$example" --json -o "$out/check.json"
indented <"$out/check.txt"
say "Exit code 0: it holds.  The starter drives the same teeth backwards: see the column \`back\`" \
    "of the meshes.  The one finding that somebody accepted stays in sight, with its waiver."

say "---- 3. Any number opens, down to the lines of the file ----"
echo "The generator must not fall below 9600 rpm at ground idle.  Why does it turn as it does?"
shown "why $example '$gear:n@ground idle'"
run 0 why "$example" "$gear:n@ground idle" | tee "$out/why_speed.txt" | indented
say "And what sizes the bevels of the box?  Not the generator, but the start:"
shown "why $example drive/hp/box/bevels:F_t@crank"
run 0 why "$example" drive/hp/box/bevels:F_t@crank -o "$out/why_start_force.txt"
sed -n 1,8p "$out/why_start_force.txt" | indented
echo "    ... and $(($(wc -l <"$out/why_start_force.txt") - 8)) lines more in $out/why_start_force.txt"

say "---- 4. The same model draws itself ----"
for format in svg pdf png; do
    shown "draw $example -o $out/ --format $format --condition take-off"
    run 0 draw "$example" -o "$out/" --format "$format" --condition take-off | indented
done
say "The ribbons of power turn round in the start, so that picture is drawn at crank too:"
for format in svg pdf png; do
    run 0 draw "$example" -o "$out/power_crank.$format" --figure power --condition crank | indented
done

say "---- 5. And if the generator seizes? ----"
shown "effects $example generator"
run 0 effects "$example" generator | sed -n '/seized/,/^$/p' | indented
run 0 effects "$example" -o "$out/effects.txt"
echo "And in time, if a pump seizes at take-off: with its neck, and without it."
shown "seize $example 'hydraulic pump 1' --condition take-off"
run 0 seize "$example" "hydraulic pump 1" --condition take-off -o "$out/seize.txt"
sed -n '/seizes at/,/^  largest/p' "$out/seize.txt" | sed '$d' | indented

large=examples/large.yaml
echo "Swap two necks in the shop, and the gearbox loses teeth instead:"
shown "seize $large 'generator 1' --condition take-off --ramp '20 ms' --neck-of starter"
run 0 seize "$large" "generator 1" --condition take-off --ramp "20 ms" --neck-of starter -o "$out/swapped.txt"
sed -n '/seizes at/,/neck at its weakest/p' "$out/swapped.txt" | sed '$d' | indented
echo "And from rest to idle: what happens when, and what the necks let pass."
shown "start $example"
run 0 start "$example" --grid -o "$out/start.txt"
sed -n '/^Start/,/^  largest/p' "$out/start.txt" | sed '$d' | indented
sed -n '/^  necks/,/^  Energies/p' "$out/start.txt" | sed '$d' | indented
echo "Where its power turns into heat, and what oil carries the heat away:"
shown "oil $example --condition take-off"
run 0 oil "$example" --condition take-off -o "$out/oil.txt"
sed -n '/^The hp drive/,/^$/p' "$out/oil.txt" | indented

echo "For those who meet it the first time, a page whose gears turn, with a quiz:"
shown "brief $example --numbers --key -o $out/brief.html"
run 0 brief "$example" --numbers --key -o "$out/brief.html" | indented

say "---- 6. One edit, and what it breaks ----"
echo "On a copy of the file, the generator's gear gets one tooth more.  No other byte changes."
cp "$example" "$edited"
shown "set $edited $tooth 36"
run 0 set "$edited" "$tooth" 36 | indented
diff "$example" "$edited" | indented || true
shown "check $edited"
run 1 check "$edited" -o "$out/edited_check.txt"
sed -n '/^Findings/,$p' "$out/edited_check.txt" | indented
say "Exit code 1, as it should be: the drive no longer holds.  Slower by one tooth in 36, the" \
    "generator leaves its band at ground idle, and 36 teeth share a factor with the 44 of the idler," \
    "so that the same teeth would meet again and again.  Each finding says what would close it."

say "---- 7. What changed, by consequence ----"
shown "compare $example $edited"
run 0 compare "$example" "$edited" -o "$out/compare.txt"
indented <"$out/compare.txt"

say "---- Written into $out/ ----"
what() {
    case $1 in
    check.txt) echo "the page of the example" ;;
    check.json) echo "the same as JSON, each quantity with its address" ;;
    why_speed.txt) echo "why the generator turns as it does at ground idle" ;;
    why_start_force.txt) echo "why the box bevels are loaded as they are at crank" ;;
    edited.yaml) echo "the example with one tooth more" ;;
    edited_check.txt) echo "what the program says of it" ;;
    compare.txt) echo "what changed between the two" ;;
    behind.*) echo "the faces of the boxes, seen from behind" ;;
    front.*) echo "the same, seen from the front" ;;
    unrolled.*) echo "the train laid flat: face widths, front and rear pads" ;;
    teeth.*) echo "one pair of gears in mesh, with its path of contact" ;;
    root.*) echo "the critical section at the root of its teeth" ;;
    widths.*) echo "how narrow the teeth could be, and what sets each width" ;;
    mass.*) echo "what weighs how much" ;;
    modes.*) echo "how the drive swings in torsion" ;;
    selectivity.*) echo "what each neck must pass, when it breaks, and what stands behind it" ;;
    swapped.txt) echo "the same kind of seizure behind the neck of another pad" ;;
    start.txt) echo "from rest to idle, and over temperatures of air and oil" ;;
    start.*) echo "speeds and torques from rest to idle" ;;
    seize.txt) echo "a seized pump in time, with its neck and without" ;;
    oil.txt) echo "losses, heat, oil and jets at take-off" ;;
    heat.*) echo "where power turns into heat at take-off" ;;
    brief.html) echo "how the drive works, with gears that turn, questions and answers" ;;
    effects.txt) echo "what stops when any one part fails, and what may have stopped it" ;;
    margins.*) echo "what every mesh has in reserve in every condition" ;;
    power.*) echo "where the power goes at take-off" ;;
    power_crank.*) echo "where it goes at crank: inwards" ;;
    speeds.*) echo "the band of every pad against the travel of its spool" ;;
    esac
}
for path in "$out"/*; do
    printf '  %-34s %s\n' "$path" "$(what "$(basename "$path")")"
done
say "Next: open $out/behind.svg, change a tooth number in $edited, and check it again:" \
    "  $command check $edited" \
    "Or drag it about in a page of your browser, where every act can be undone:" \
    "  $command open $edited"
