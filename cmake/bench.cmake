# What is measured?  bench/measure_<name>.c, linked with the library that people run.

file(GLOB bench_sources CONFIGURE_DEPENDS bench/*.c)
if(bench_sources AND NOT TS_SANITIZE)
    set(groups "")
    foreach(source IN LISTS bench_sources)
        cmake_path(GET source STEM stem)
        if(stem MATCHES "^measure_")
            string(APPEND groups "BENCH_GROUP(${stem})\n")
        endif()
    endforeach()
    file(CONFIGURE OUTPUT "${TS_GENERATED}/bench_groups.inc" CONTENT "${groups}" @ONLY)
    # Invented arrangement problems are those of the tests.
    add_executable(towershaft-bench ${bench_sources}
        tests/arrange/random_problem.c tests/arrange/closed_model.c)
    target_include_directories(towershaft-bench PRIVATE src include bench tests "${TS_GENERATED}")
    target_link_libraries(towershaft-bench PRIVATE ts_flags towershaft_internal ${TS_LIBRARIES})

    # What bench/peer/compare.py sets beside the same chain in Python and NumPy.
    add_executable(towershaft-rate-batch bench/peer/rate_batch.c)
    target_include_directories(towershaft-rate-batch PRIVATE src include)
    target_link_libraries(towershaft-rate-batch PRIVATE ts_flags towershaft_internal
        ${TS_LIBRARIES})

    # A seizure to the last bit, for another integrator to be set beside.
    add_executable(towershaft-train-runs bench/peer/train_runs.c)
    target_include_directories(towershaft-train-runs PRIVATE src include)
    target_link_libraries(towershaft-train-runs PRIVATE ts_flags towershaft_internal
        ${TS_LIBRARIES})
endif()
