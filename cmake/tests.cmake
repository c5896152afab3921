# What is a test?  Every tests/**/test_*.c, test_*.py and test_*.sh, found by name.
#
# A test may say how it wants to be run, in a comment of its own:
#   ctest: release-only    not under the sanitizers (it measures time, or it reads the tree only)
#   ctest: threads         it uses threads: `make tsan` runs it under the thread sanitizer
#   ctest: threads-only    and nothing else does
#   ctest: alone           nothing else runs beside it
#   ctest: timeout=600     seconds, where 900 are too few
#   ctest: cost=40         seconds that it takes about: long ones begin first, so that no core waits
# and a C test which library it needs beside cmocka and jansson:
#   link: udunits2
# Tests run in the source root and find there: TOWERSHAFT (the command), TS_SOURCE, TS_BUILD.

set(test_environment
    "TS_SOURCE=${CMAKE_SOURCE_DIR}" "TS_BUILD=${CMAKE_BINARY_DIR}"
    "ASAN_OPTIONS=detect_leaks=1:halt_on_error=1:detect_stack_use_after_return=1"
    "TSAN_OPTIONS=halt_on_error=1:suppressions=${CMAKE_SOURCE_DIR}/tests/support/races_of_others.txt"
    "UBSAN_OPTIONS=halt_on_error=1:print_stacktrace=1"
    "LSAN_OPTIONS=suppressions=${CMAKE_SOURCE_DIR}/tests/support/leaks_of_others.txt:print_suppressions=0")
if(TARGET towershaft)
    list(APPEND test_environment "TOWERSHAFT=$<TARGET_FILE:towershaft>")
endif()

# What a test compiles with, and what helpers of tests compile with.
add_library(ts_test_flags INTERFACE)
target_include_directories(ts_test_flags INTERFACE src include tests "${TS_GENERATED}")
target_link_libraries(ts_test_flags INTERFACE
    ts_flags towershaft_checked ${TS_LIBRARIES} PkgConfig::CMOCKA PkgConfig::JANSSON)
target_compile_options(ts_test_flags INTERFACE -O1 -g)

# tests/support and tests/second serve every test.
file(GLOB support_sources CONFIGURE_DEPENDS tests/support/*.c tests/second/*.c)
add_library(ts_test_support STATIC ${support_sources})
target_link_libraries(ts_test_support PUBLIC ts_test_flags)

# ts_add_test(<folder/name> <source, relative to tests/> <command...>): does what the test says of
# itself.
function(ts_add_test test source)
    set(path "${CMAKE_SOURCE_DIR}/tests/${source}")
    set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS "${path}")
    file(STRINGS "${path}" wishes REGEX "^[ /*#]*ctest: ")
    if((TS_SANITIZE AND wishes MATCHES "release-only") OR
       (TS_SANITIZE_THREADS AND NOT wishes MATCHES "threads") OR
       (NOT TS_SANITIZE_THREADS AND wishes MATCHES "threads-only"))
        return()
    endif()
    add_test(NAME ${test} COMMAND ${ARGN})
    string(REGEX MATCH "^[^/]+" label "${source}")
    set_tests_properties(${test} PROPERTIES
        WORKING_DIRECTORY "${CMAKE_SOURCE_DIR}" LABELS ${label} TIMEOUT 900
        ENVIRONMENT "${test_environment}")
    if(wishes MATCHES "threads")
        set_property(TEST ${test} APPEND PROPERTY LABELS threads)
    endif()
    if(wishes MATCHES "alone")
        set_tests_properties(${test} PROPERTIES RUN_SERIAL TRUE)
    endif()
    if(wishes MATCHES "timeout=([0-9]+)")
        set_tests_properties(${test} PROPERTIES TIMEOUT ${CMAKE_MATCH_1})
    endif()
    if(wishes MATCHES "cost=([0-9]+)")
        set_tests_properties(${test} PROPERTIES COST ${CMAKE_MATCH_1})
    endif()
endfunction()

# Sources beside the tests of a folder that are no tests themselves are linked into each of them;
# a file that is called <folder>_main.c is a program and is left out.
function(ts_folder_helpers folder out)
    string(MAKE_C_IDENTIFIER "${folder}" id)
    if(NOT TARGET ts_helpers_${id})
        file(GLOB helpers CONFIGURE_DEPENDS tests/${folder}/*.c)
        list(FILTER helpers EXCLUDE REGEX "/(test_[^/]*|[a-z]+_main)[.]c$")
        if(helpers)
            add_library(ts_helpers_${id} STATIC ${helpers})
            target_link_libraries(ts_helpers_${id} PUBLIC ts_test_support)
        endif()
    endif()
    if(TARGET ts_helpers_${id})
        set(${out} ts_helpers_${id} PARENT_SCOPE)
    else()
        set(${out} ts_test_support PARENT_SCOPE)
    endif()
endfunction()

file(GLOB_RECURSE c_tests CONFIGURE_DEPENDS RELATIVE "${CMAKE_SOURCE_DIR}/tests" tests/test_*.c)
foreach(source IN LISTS c_tests)
    cmake_path(GET source PARENT_PATH folder)
    cmake_path(GET source STEM stem)
    string(REGEX REPLACE "^test_" "" name "${stem}")
    string(MAKE_C_IDENTIFIER "test_${folder}_${name}" target)
    ts_folder_helpers(${folder} helpers)
    add_executable(${target} tests/${source})
    target_link_libraries(${target} PRIVATE ${helpers})
    file(STRINGS "${CMAKE_SOURCE_DIR}/tests/${source}" links REGEX "^[ /*]*link: ")
    if(links MATCHES "link: ([a-z0-9]+)")
        target_link_libraries(${target} PRIVATE ${CMAKE_MATCH_1})
    endif()
    set_target_properties(${target} PROPERTIES
        OUTPUT_NAME ${stem} RUNTIME_OUTPUT_DIRECTORY "${CMAKE_BINARY_DIR}/tests/${folder}")
    ts_add_test(${folder}/${name} ${source} ${target})
endforeach()

file(GLOB_RECURSE script_tests CONFIGURE_DEPENDS RELATIVE "${CMAKE_SOURCE_DIR}/tests"
    tests/test_*.py tests/test_*.sh)
foreach(source IN LISTS script_tests)
    cmake_path(GET source PARENT_PATH folder)
    cmake_path(GET source STEM stem)
    string(REGEX REPLACE "^test_" "" name "${stem}")
    if(source MATCHES "[.]py$")
        set(interpreter ${TS_PYTHON})
    else()
        set(interpreter bash)
    endif()
    set(test ${folder}/${name})
    if(TEST ${test})
        set(test ${folder}/${name}.script)
    endif()
    ts_add_test(${test} ${source} ${interpreter} "${CMAKE_SOURCE_DIR}/tests/${source}")
endforeach()

# The bank runner: everything in tests/bank that is no test.
file(GLOB bank_sources CONFIGURE_DEPENDS tests/bank/*.c)
list(FILTER bank_sources EXCLUDE REGEX "/test_[^/]*[.]c$")
if(bank_sources)
    add_executable(towershaft-bank ${bank_sources})
    target_link_libraries(towershaft-bank PRIVATE ts_test_support)
endif()

# The runner of proven arrangement problems, with what its tests share.
if(EXISTS "${CMAKE_SOURCE_DIR}/tests/arrange/arrange_main.c")
    ts_folder_helpers(arrange arrange_helpers)
    add_executable(towershaft-bank-arrange tests/arrange/arrange_main.c)
    target_link_libraries(towershaft-bank-arrange PRIVATE ${arrange_helpers})
endif()

# The commands inside a test, every request of memory coming by it (tests/fault/test_every_taking.c).
if(TARGET test_fault_every_taking AND TARGET towershaft)
    target_sources(test_fault_every_taking PRIVATE
        "$<FILTER:$<TARGET_OBJECTS:towershaft>,EXCLUDE,/main[.]c[.]o$>")
    target_include_directories(test_fault_every_taking PRIVATE "${CMAKE_BINARY_DIR}/view")
    target_link_libraries(test_fault_every_taking PRIVATE ts_serve PkgConfig::SQLITE ${CMAKE_DL_LIBS})
    target_link_options(test_fault_every_taking PRIVATE
        LINKER:--wrap=ts_arena_take,--wrap=ts_arena_copy
        LINKER:--wrap=malloc,--wrap=calloc,--wrap=realloc)
endif()
