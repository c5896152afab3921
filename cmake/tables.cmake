# How do tables become C?  data/<name>.tsv turns into generated/<name>.inc, which a source includes
# as `#include "<name>.inc"` between the braces of an array.

set(TS_GENERATED "${CMAKE_BINARY_DIR}/generated")
file(MAKE_DIRECTORY "${TS_GENERATED}")
# Debian's own interpreter first: another python3 earlier on PATH lacks Debian's modules.
find_program(TS_PYTHON NAMES python3 PATHS /usr/bin NO_DEFAULT_PATH)
if(NOT TS_PYTHON)
    find_program(TS_PYTHON NAMES python3 REQUIRED)
endif()

# ts_generate(<file> DEPENDS <inputs...> COMMAND <command...>)
# Makes generated/<file> by a command that writes it (use ${TS_GENERATED}/<file> in the command).
function(ts_generate file)
    cmake_parse_arguments(PARSE_ARGV 1 generate "" "" "DEPENDS;COMMAND")
    add_custom_command(
        OUTPUT "${TS_GENERATED}/${file}"
        COMMAND ${generate_COMMAND}
        DEPENDS ${generate_DEPENDS}
        WORKING_DIRECTORY "${CMAKE_SOURCE_DIR}"
        COMMENT "Generating ${file}"
        VERBATIM)
    set_property(GLOBAL APPEND PROPERTY TS_GENERATED_FILES "${TS_GENERATED}/${file}")
endfunction()

# ts_table(<name>): data/<name>.tsv -> generated/<name>.inc
function(ts_table name)
    set(table "${CMAKE_SOURCE_DIR}/data/${name}.tsv")
    set(tool "${CMAKE_SOURCE_DIR}/tools/table_to_c.py")
    ts_generate(${name}.inc
        DEPENDS "${table}" "${tool}"
        COMMAND ${TS_PYTHON} "${tool}" "data/${name}.tsv" "${TS_GENERATED}/${name}.inc")
endfunction()

# Called once, after the last ts_generate.
function(ts_finish_generated)
    get_property(files GLOBAL PROPERTY TS_GENERATED_FILES)
    add_custom_target(ts_generated DEPENDS ${files})
endfunction()
