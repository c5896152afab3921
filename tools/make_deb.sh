#!/usr/bin/env bash
# Builds the Debian packages of what is committed, into out/deb/, and lets lintian look at them.
set -euo pipefail
cd "$(dirname "$0")/.."

version=$(sed -n 's/^project(towershaft VERSION \([0-9.]*\).*/\1/p' CMakeLists.txt)
place=out/deb
rm -rf "$place"
mkdir -p "$place/towershaft-$version"
git archive HEAD | tar -x -C "$place/towershaft-$version"
mv "$place/towershaft-$version/packaging/debian" "$place/towershaft-$version/debian"
(cd "$place/towershaft-$version" && DEB_BUILD_OPTIONS=nocheck dpkg-buildpackage -us -uc -b)
lintian --fail-on error,warning "$place"/*.changes
ls -l "$place"/*.deb
tools/try_deb.sh
