# What does src/quantity generate beside its tables?  The factors of the units, evaluated exactly.

ts_generate(unit_table.inc
    DEPENDS "${CMAKE_SOURCE_DIR}/data/unit.tsv" "${CMAKE_SOURCE_DIR}/tools/unit_to_c.py"
        "${CMAKE_SOURCE_DIR}/tools/table_to_c.py"
    COMMAND ${TS_PYTHON} "${CMAKE_SOURCE_DIR}/tools/unit_to_c.py" "data/unit.tsv"
        "${TS_GENERATED}/unit_table.inc")
