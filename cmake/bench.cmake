# What is measured?  bench/*.c, linked with the library that people run.

file(GLOB bench_sources CONFIGURE_DEPENDS bench/*.c)
if(bench_sources AND NOT TS_SANITIZE)
    add_executable(towershaft-bench ${bench_sources})
    target_include_directories(towershaft-bench PRIVATE src include bench "${TS_GENERATED}")
    target_link_libraries(towershaft-bench PRIVATE ts_flags towershaft_internal)
endif()
