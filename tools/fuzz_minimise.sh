#!/usr/bin/env bash
# Which inputs reach all that a campaign reached?  fuzz_minimise.sh [name ...]
#
# Takes the committed corpus of each target and what `make fuzz` gathered in out/fuzz/, keeps as few
# inputs as reach the same code (the smallest first), and puts them into tests/fuzz/corpus/<name>/,
# named by their sums.  Seeds that a person wrote and named stay.  At most KEPT (96) kilobytes a target.
set -euo pipefail
cd "$(dirname "$0")/.."

kept=$((${KEPT:-96} * 1024))
names=("$@")
if [ ${#names[@]} -eq 0 ]; then
    for source in tests/fuzz/fuzz_*.c; do
        name=${source##*/fuzz_}
        names+=("${name%.c}")
    done
fi
for name in "${names[@]}"; do
    [ -d "out/fuzz/$name" ] || continue
    place=$(mktemp -d)
    mkdir "$place/new"
    cp "tests/fuzz/corpus/$name/"* "$place/new/" # what is there already counts as reached
    before=$(find "$place/new" -type f | wc -l)
    build/sanitize/tests/fuzz/"fuzz_$name" -merge=1 -rss_limit_mb=1024 -timeout=20 "$place/new" \
        "out/fuzz/$name" >"$place/log" 2>&1 || { tail -5 "$place/log"; exit 1; }
    size=0 added=0
    while read -r bytes path; do
        [ ! -e "tests/fuzz/corpus/$name/${path##*/}" ] || continue
        size=$((size + bytes))
        [ "$size" -le "$kept" ] || break
        cp "$path" "tests/fuzz/corpus/$name/"
        added=$((added + 1))
    done < <(find "$place/new" -type f -printf '%s %p\n' | sort -n)
    echo "$name: $added of $(($(find "$place/new" -type f | wc -l) - before)) new inputs added"
    rm -rf "$place"
done
