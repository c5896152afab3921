#!/usr/bin/env bash
# Does everything hold?  Sets up, builds and runs all tests as people run the program and again
# under the sanitizers, with the fuzz smokes among them; says at the end what was run.
set -euo pipefail
cd "$(dirname "$0")/.."

jobs=$(nproc)
begun=$SECONDS
failed=0
summary=()

stage() { # name of the preset; builds it and runs its tests, going on after failures
    local preset=$1 start=$SECONDS log="build/$1/test.log" built
    tools/configure.sh "$preset"
    cmake --build "build/$preset" -- --quiet
    built=$((SECONDS - start))
    start=$SECONDS
    ctest --preset "$preset" -j"$jobs" 2>&1 | tee "$log" || failed=1
    summary+=("$(printf '%-9s built in %d s; %s in %d s' "$preset" "$built" \
        "$(grep -E 'tests passed' "$log" || echo 'no test ran')" $((SECONDS - start)))")
}

tools/setup-debian.sh
stage release
stage sanitize

echo
echo "---- make test ----"
printf '%s\n' "${summary[@]}"
echo "fuzz      $(grep -c ' fuzz/.*Passed' build/sanitize/test.log || true) targets ran without a finding"
echo "all in $((SECONDS - begun)) s on $jobs cores"
if [ "$failed" -ne 0 ]; then
    echo "verdict: does not hold"
    sed -n '/^The following tests FAILED/,/^Errors/p' build/{release,sanitize}/test.log
    exit 1
fi
echo "verdict: everything holds"
