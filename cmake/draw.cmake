# What does draw generate?  The one table of colours, pens and sizes.

ts_generate(look.inc
    DEPENDS "${CMAKE_SOURCE_DIR}/data/look.json" "${CMAKE_SOURCE_DIR}/tools/look_to_c.py"
    COMMAND ${TS_PYTHON} tools/look_to_c.py data/look.json "${TS_GENERATED}/look.inc")
