#!/usr/bin/env bash
# Where are the pictures?  show_pictures.sh <folder>: opens them, or says where they lie.
set -euo pipefail

pictures=()
while IFS= read -r file; do pictures+=("$file"); done < <(find "$1" -name '*.svg' | sort)
if [ ${#pictures[@]} -eq 0 ]; then
    echo "there is no picture in $1" >&2
    exit 1
fi
if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ] && command -v xdg-open >/dev/null; then
    for file in "${pictures[@]}"; do xdg-open "$file"; done
else
    echo "no desktop here; the pictures are"
    printf '  %s\n' "${pictures[@]}"
fi
