#!/usr/bin/env bash
# How is a preset configured?  configure.sh <preset> [more arguments to cmake]
#
# Speaks only when something is wrong.  Without the packages of the tests (a machine on which only
# `make build` or `make demo` ran) the release preset is configured without tests, and says so.
set -euo pipefail
cd "$(dirname "$0")/.."

preset=$1
shift
if ! pkg-config --exists cmocka jansson; then
    echo "configure: without tests, for cmocka and jansson are not installed (make setup)"
    set -- "$@" -DTS_TESTS=OFF
fi
mkdir -p "build/$preset"
if ! cmake --preset "$preset" "$@" >"build/$preset/configure.log" 2>&1; then
    cat "build/$preset/configure.log" >&2
    exit 1
fi
