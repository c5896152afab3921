# What do tests link?  Always a library that keeps its assertions and proves its formulas; in the
# release preset that is a second set of objects, for the command there keeps neither.

if(TS_CHECKED)
    add_library(towershaft_checked ALIAS towershaft_internal)
else()
    ts_objects_of(ts_checked)
    target_compile_options(ts_checked PRIVATE -O1)
    target_compile_definitions(ts_checked PRIVATE TS_CHECKED)
    ts_static_of(towershaft_checked ts_checked)
    target_compile_definitions(towershaft_checked INTERFACE TS_CHECKED)
endif()
