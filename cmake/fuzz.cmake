# What is thrown at the readers?  Every tests/fuzz/fuzz_<name>.c becomes a libFuzzer program, and a
# short run of it a test.  The committed corpus is copied first, so that the tree is not written.

file(GLOB fuzz_sources CONFIGURE_DEPENDS RELATIVE "${CMAKE_SOURCE_DIR}/tests/fuzz"
    tests/fuzz/fuzz_*.c)
foreach(source IN LISTS fuzz_sources)
    cmake_path(GET source STEM stem)
    string(REGEX REPLACE "^fuzz_" "" name "${stem}")
    add_executable(${stem} tests/fuzz/${source})
    target_include_directories(${stem} PRIVATE src include tests "${TS_GENERATED}"
        "${CMAKE_BINARY_DIR}/view")
    target_compile_definitions(${stem} PRIVATE _GNU_SOURCE)
    target_compile_options(${stem} PRIVATE -fsanitize=fuzzer)
    target_link_options(${stem} PRIVATE -fsanitize=fuzzer)
    # The guard, bodies and the journal are those of the workbench's server.
    target_link_libraries(${stem} PRIVATE ts_flags ts_serve towershaft_checked PkgConfig::JANSSON)
    list(APPEND fuzz_targets ${stem})
    set_target_properties(${stem} PROPERTIES
        RUNTIME_OUTPUT_DIRECTORY "${CMAKE_BINARY_DIR}/tests/fuzz")
    math(EXPR limit "${TS_FUZZ_SECONDS} + 120")
    add_test(NAME fuzz/${name}
        COMMAND bash "${CMAKE_SOURCE_DIR}/tools/fuzz_smoke.sh" $<TARGET_FILE:${stem}> ${name}
            ${TS_FUZZ_SECONDS})
    set_tests_properties(fuzz/${name} PROPERTIES
        WORKING_DIRECTORY "${CMAKE_SOURCE_DIR}" LABELS fuzz TIMEOUT ${limit} COST 1000
        ENVIRONMENT "${test_environment}")
endforeach()
add_custom_target(fuzz_targets DEPENDS ${fuzz_targets})
