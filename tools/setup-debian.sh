#!/usr/bin/env bash
# Which packages are missing on this Debian 12, and how do they come here?
#
#   setup-debian.sh build    what building and running the command needs
#   setup-debian.sh          that, and what the tests and the sanitizers need
#   setup-debian.sh bench    that, and what the benchmarks need
#   setup-debian.sh fuzz     what the tests need, and AFL++
#   setup-debian.sh deb      what building the command and the Debian packages needs
#
# Installs by apt what is missing and nothing else, without a question; with all of it there it
# asks neither the network nor for rights.
set -euo pipefail

for_building=(
    build-essential         # gcc, make, binutils
    cmake ninja-build pkg-config
    python3                 # turns data/*.tsv into C
    libfyaml-dev            # reads the drive file
    liblapacke-dev libopenblas-serial-dev # eigenvalues, on one thread
    libsundials-dev         # motion in time, with events
    libcairo2-dev libpango1.0-dev libfontconfig-dev fonts-b612 # pictures
    libsqlite3-dev          # the samples of a study
    libmicrohttpd-dev libjansson-dev # the workbench; the tests read published cases with the latter
)
for_testing=(
    clang libclang-rt-14-dev llvm # sanitizers and libFuzzer, and names in their reports
    libcmocka-dev           # test runner
    libudunits2-dev         # a second opinion on unit factors
    python3-jsonschema python3-yaml libxml2-utils poppler-utils # read back what the program writes
    python3-cffi            # the binding for Python
    python3-ezdxf           # reads back the DXF that the program writes
    libocct-data-exchange-dev # STEP files, by a program of its own that is built where this is
    locales                 # one test runs under de_DE.UTF-8
    valgrind                # counts instructions
    clang-tidy cppcheck     # read the sources in `make analyse`
    strace                  # makes single calls on files fail, or be the last
    libopenmpi-dev openmpi-bin # studies on several processes
    git                     # tells a test which files belong to the tree
    chromium                # the page of the workbench is tested in it
)
# Node.js builds that page anew for a test; any that is here already will do, from 18 on.
command -v node >/dev/null && command -v npm >/dev/null || for_testing+=(nodejs npm)
for_measuring=(
    coinor-cbc    # solves the arrangement problems as mixed-integer programs, for comparison
    python3-numpy # one of the peers that speed is compared with
    python3-scipy # another, of seizures and torsional modes
)

for_fuzzing=(
    afl++ # a second engine for the fuzz targets
)
for_packages=(
    debhelper dh-python lintian
)

what=${1:-all}
case $what in
build) wanted=("${for_building[@]}") ;;
all) wanted=("${for_building[@]}" "${for_testing[@]}") ;;
deb) wanted=("${for_building[@]}" "${for_packages[@]}") ;;
fuzz) wanted=("${for_building[@]}" "${for_testing[@]}" "${for_fuzzing[@]}") ;;
bench) wanted=("${for_building[@]}" "${for_testing[@]}" "${for_measuring[@]}") ;;
*)
    echo "usage: setup-debian.sh [build|bench|fuzz|deb]" >&2
    exit 2
    ;;
esac

if ! command -v dpkg-query >/dev/null || ! command -v apt-get >/dev/null; then
    echo "setup: this is no Debian, so nothing is installed; these packages are needed by name:"
    printf '  %s\n' "${wanted[@]}"
    exit 0
fi

as_root() {
    if [ "$(id -u)" -eq 0 ]; then
        "$@"
    elif command -v sudo >/dev/null; then
        sudo "$@"
    else
        echo "setup: this needs root or sudo: $*" >&2
        exit 3
    fi
}

missing=()
for package in "${wanted[@]}"; do
    status=$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null || true)
    [ "$status" = installed ] || missing+=("$package")
done

if [ ${#missing[@]} -eq 0 ]; then
    echo "setup: all ${#wanted[@]} packages are here"
else
    echo "setup: installing ${#missing[@]} of ${#wanted[@]} packages: ${missing[*]}"
    as_root env DEBIAN_FRONTEND=noninteractive apt-get -q update
    as_root env DEBIAN_FRONTEND=noninteractive apt-get -q install -y --no-install-recommends \
        "${missing[@]}"
fi

if [ "$what" != build ] && ! locale -a 2>/dev/null | grep -qix 'de_DE\.utf-\?8'; then
    echo "setup: compiling the locale de_DE.UTF-8 (it is not made the default)"
    as_root localedef -i de_DE -f UTF-8 de_DE.UTF-8
fi
