# What does the workbench carry inside itself?  The page, as web/ was last built into web/built/.

file(GLOB page_files CONFIGURE_DEPENDS RELATIVE "${CMAKE_SOURCE_DIR}" web/built/*)
set(page_pairs "")
foreach(path IN LISTS page_files)
    cmake_path(GET path FILENAME file)
    list(APPEND page_pairs "/${file}=${path}")
endforeach()
# The letters of the page are those of the pictures.
foreach(font B612-Regular B612-Bold B612-Italic B612Mono-Regular)
    find_file(TS_FONT_${font} ${font}.otf REQUIRED
        PATHS /usr/share/fonts/opentype/b612 /usr/local/share/fonts/opentype/b612 NO_DEFAULT_PATH)
    list(APPEND page_pairs "/${font}.otf=${TS_FONT_${font}}")
endforeach()
list(TRANSFORM page_files PREPEND "${CMAKE_SOURCE_DIR}/" OUTPUT_VARIABLE page_inputs)
ts_generate(page_files.inc
    DEPENDS ${page_inputs} "${CMAKE_SOURCE_DIR}/tools/embed.py"
    COMMAND ${TS_PYTHON} tools/embed.py "${TS_GENERATED}/page_files.inc" ${page_pairs})
