# What does the library carry inside itself?  Starting files, and the schemas of its answers.

file(GLOB starting CONFIGURE_DEPENDS RELATIVE "${CMAKE_SOURCE_DIR}" examples/*.yaml)
file(GLOB answers CONFIGURE_DEPENDS RELATIVE "${CMAKE_SOURCE_DIR}" docs/schema/*.schema.json)
list(FILTER answers EXCLUDE REGEX "/(drive|rate-file)[.]")

function(ts_embed name)
    set(pairs "")
    foreach(path IN LISTS ARGN)
        cmake_path(GET path FILENAME file)
        list(APPEND pairs "${file}=${path}")
    endforeach()
    list(TRANSFORM ARGN PREPEND "${CMAKE_SOURCE_DIR}/" OUTPUT_VARIABLE inputs)
    ts_generate(${name}
        DEPENDS ${inputs} "${CMAKE_SOURCE_DIR}/tools/embed.py"
        COMMAND ${TS_PYTHON} tools/embed.py "${TS_GENERATED}/${name}" ${pairs})
endfunction()

ts_embed(starting_files.inc ${starting})
ts_embed(answer_schemas.inc ${answers})
ts_embed(recheck_script.inc data/recheck.py)
