# Which language, which warnings, which floating point?  Everything compiled here links `ts_flags`.

set(CMAKE_C_STANDARD 17)
set(CMAKE_C_STANDARD_REQUIRED ON)
set(CMAKE_C_EXTENSIONS OFF)
set(CMAKE_C_VISIBILITY_PRESET hidden)
set(CMAKE_POSITION_INDEPENDENT_CODE ON)
include(CheckPIESupported)
check_pie_supported(LANGUAGES C)

if(NOT CMAKE_BUILD_TYPE)
    set(CMAKE_BUILD_TYPE Release)
endif()
# -g1 leaves line tables for profilers and traces; it changes no instruction.
set(CMAKE_C_FLAGS_RELEASE "-O2 -g1")
if(TS_SANITIZE OR TS_SANITIZE_THREADS)
    set(CMAKE_C_FLAGS_DEBUG "-O1 -g")
else()
    set(CMAKE_C_FLAGS_DEBUG "-O0 -g")
endif()

add_library(ts_flags INTERFACE)
target_compile_options(ts_flags INTERFACE
    -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wstrict-prototypes -Wmissing-prototypes -Wvla
    -Werror
    # gcc alone: to clang 14 the NAN and INFINITY of <math.h> are floats that are promoted.
    $<$<C_COMPILER_ID:GNU>:-Wdouble-promotion>
    # The same bytes on every machine: no fused multiply-add unless it is written.
    -ffp-contract=off
    # No path of the building machine inside a binary: sources are named from the root of the tree.
    "-ffile-prefix-map=${CMAKE_SOURCE_DIR}/=" "-ffile-prefix-map=${CMAKE_BINARY_DIR}=.")
# Strict C17 hides POSIX (fsync, rename) and M_PI from the headers; this shows them.
target_compile_definitions(ts_flags INTERFACE _XOPEN_SOURCE=700)

if(TS_CHECKED)
    target_compile_definitions(ts_flags INTERFACE TS_CHECKED)
endif()

if(TS_SANITIZE)
    set(TS_SANITIZERS -fsanitize=address,undefined -fno-sanitize-recover=all
        -fno-omit-frame-pointer)
    target_compile_options(ts_flags INTERFACE ${TS_SANITIZERS})
    target_compile_definitions(ts_flags INTERFACE TS_SANITIZED)
    target_link_options(ts_flags INTERFACE ${TS_SANITIZERS})
elseif(CMAKE_BUILD_TYPE STREQUAL "Release")
    # The command reads files from strangers.
    target_compile_options(ts_flags INTERFACE -fstack-protector-strong)
    target_compile_definitions(ts_flags INTERFACE _FORTIFY_SOURCE=2)
    target_link_options(ts_flags INTERFACE -Wl,-z,relro,-z,now)
endif()
if(TS_SANITIZE_THREADS)
    set(TS_SANITIZERS -fsanitize=thread -fno-omit-frame-pointer)
    target_compile_options(ts_flags INTERFACE ${TS_SANITIZERS})
    target_compile_definitions(ts_flags INTERFACE TS_SANITIZED)
    target_link_options(ts_flags INTERFACE ${TS_SANITIZERS})
endif()
if(TS_COVERAGE)
    # Threads of one process add to the same counts.
    target_compile_options(ts_flags INTERFACE --coverage -fprofile-update=atomic)
    target_link_options(ts_flags INTERFACE --coverage)
endif()
if(TS_FUZZ)
    if(NOT CMAKE_C_COMPILER_ID STREQUAL "Clang")
        message(FATAL_ERROR "TS_FUZZ needs clang, for libFuzzer is a part of it")
    endif()
    target_compile_options(ts_flags INTERFACE -fsanitize=fuzzer-no-link)
endif()
