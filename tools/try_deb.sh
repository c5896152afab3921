#!/usr/bin/env bash
# Can the packages of out/deb/ be installed, used and taken away again?  Into a folder of their own:
# nothing of this machine changes.  What they depend on must be here, for it is used from here.
set -euo pipefail
cd "$(dirname "$0")/.."

place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
root=$place/root
mkdir -p "$root/var/lib/dpkg/"{info,updates,triggers} "$root/var/log"
touch "$root/var/lib/dpkg/status" "$root/var/lib/dpkg/available"
dpkg_there() { dpkg --root="$root" --log=/dev/null --force-depends --force-not-root --force-bad-path "$@"; }

# The script of the Python package compiles for the Python of its root, and there is none in this one.
packages=() unpacked=()
for file in out/deb/*.deb; do
    case $file in
    *-dbgsym_*) ;;
    */python3-*) unpacked+=("$file") ;;
    *) packages+=("$file") ;;
    esac
done
dpkg_there --install "${packages[@]}" >"$place/log" 2>&1 || { cat "$place/log" >&2; exit 1; }
dpkg_there --unpack "${unpacked[@]}" >"$place/log" 2>&1 || { cat "$place/log" >&2; exit 1; }
packages+=("${unpacked[@]}")

lib=$(dirname "$(find "$root/usr/lib" -name 'libtowershaft.so.0')")
"$root/usr/bin/towershaft" doctor | grep -q 'Preliminary design aid'
"$root/usr/bin/towershaft" check "$root/usr/share/doc/towershaft/examples/bizjet.yaml" >"$place/answer"
grep -q 'Preliminary design aid' "$place/answer"
man --local-file "$root/usr/share/man/man1/towershaft.1.gz" >"$place/manual" 2>/dev/null
grep -q 'towershaft' "$place/manual"
bash -n "$root/usr/share/bash-completion/completions/towershaft"
cc -std=c17 -I"$root/usr/include" examples/c/margins.c -L"$lib" -ltowershaft -o "$place/margins"
LD_LIBRARY_PATH=$lib "$place/margins" examples/bizjet.yaml drive/hp/box/input/face '17 mm' |
    grep -q 'Preliminary design aid'
PYTHONPATH=$root/usr/lib/python3/dist-packages LD_LIBRARY_PATH=$lib \
    /usr/bin/python3 -B -c 'import towershaft; print(towershaft.__name__)' | grep -q towershaft

mapfile -t names < <(dpkg-query --admindir="$root/var/lib/dpkg" -W -f '${Package}\n')
dpkg_there --purge "${names[@]}" >"$place/log" 2>&1 || { cat "$place/log" >&2; exit 1; }
left=$(find "$root" -type f -not -path "$root/var/*" | head)
[ -z "$left" ] || { echo "try_deb: left behind: $left" >&2; exit 1; }
echo "try_deb: ${#packages[@]} packages installed, used and taken away; nothing is left"
