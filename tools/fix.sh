#!/usr/bin/env bash
# Is every source laid out alike?  Formats each tracked C file in place.
set -euo pipefail
cd "$(dirname "$0")/.."

if ! command -v clang-format >/dev/null; then
    echo "fix: clang-format is missing (apt-get install clang-format)" >&2
    exit 3
fi
git ls-files '*.c' '*.h' | xargs -r -d '\n' clang-format -i
git diff --stat -- '*.c' '*.h'
