# Which words may a drive file use for its steels, metals, undercuts and oils?  The first column of a table, as a
# list of keys.
set(keys_tool "${CMAKE_SOURCE_DIR}/tools/keys_to_c.py")
ts_generate(gear_material_key.inc
    DEPENDS "${CMAKE_SOURCE_DIR}/data/gear_material.tsv" "${keys_tool}"
        "${CMAKE_SOURCE_DIR}/tools/table_to_c.py"
    COMMAND ${TS_PYTHON} "${keys_tool}" data/gear_material.tsv
        "${TS_GENERATED}/gear_material_key.inc")
ts_generate(metal_key.inc
    DEPENDS "${CMAKE_SOURCE_DIR}/data/metal.tsv" "${keys_tool}"
        "${CMAKE_SOURCE_DIR}/tools/table_to_c.py"
    COMMAND ${TS_PYTHON} "${keys_tool}" data/metal.tsv "${TS_GENERATED}/metal_key.inc")
ts_generate(shaft_undercut_key.inc
    DEPENDS "${CMAKE_SOURCE_DIR}/data/shaft_undercut.tsv" "${keys_tool}"
        "${CMAKE_SOURCE_DIR}/tools/table_to_c.py"
    COMMAND ${TS_PYTHON} "${keys_tool}" data/shaft_undercut.tsv
        "${TS_GENERATED}/shaft_undercut_key.inc")
ts_generate(oil_key.inc
    DEPENDS "${CMAKE_SOURCE_DIR}/data/oil.tsv" "${keys_tool}"
        "${CMAKE_SOURCE_DIR}/tools/table_to_c.py"
    COMMAND ${TS_PYTHON} "${keys_tool}" data/oil.tsv
        "${TS_GENERATED}/oil_key.inc")
