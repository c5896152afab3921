#!/usr/bin/env bash
# Does the same source give the same bytes?  Builds what is committed twice, in folders of different
# names and lengths, at another hour, in another zone and language, without a compiler cache, and
# compares every program and library.  Leaves nothing behind.  Exit 1 where two differ.
set -euo pipefail
cd "$(dirname "$0")/.."

place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
version=$(sed -n 's/^project(towershaft VERSION \([0-9.]*\).*/\1/p' CMakeLists.txt)
programs=(towershaft towershaft-ranks.so towershaft-step "libtowershaft.so.$version")

build() { # folder, zone, language, jobs
    mkdir -p "$1"
    git archive HEAD | tar -x -C "$1"
    env -u CMAKE_C_COMPILER_LAUNCHER -u CMAKE_CXX_COMPILER_LAUNCHER CCACHE_DISABLE=1 TZ="$2" LC_ALL="$3" \
        bash -c 'cd "$1" && cmake --preset release -DTS_TESTS=OFF >/dev/null &&
            cmake --build build/release -j "$2" --target towershaft towershaft_shared >/dev/null' - "$1" "$4"
}

build "$place/one" UTC C.UTF-8 1
build "$place/another-of-a-longer-name" Pacific/Auckland de_DE.UTF-8 "$(nproc)"
same=0
for program in "${programs[@]}"; do
    one=$place/one/build/release/$program
    other="$place/another-of-a-longer-name/build/release/$program"
    [ -e "$one" ] || { echo "same_bytes: $program is not built here"; continue; }
    if cmp "$one" "$other"; then
        echo "same_bytes: $program: $(sha256sum <"$one" | cut -c1-16), twice"
    else
        same=1
    fi
done
exit $same
