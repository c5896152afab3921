# What does src/base generate?  The powers of ten to 128 bits, for numbers to text and back.

ts_generate(power_of_ten.inc
    DEPENDS "${CMAKE_SOURCE_DIR}/tools/power_of_ten.py"
    COMMAND ${TS_PYTHON} "${CMAKE_SOURCE_DIR}/tools/power_of_ten.py"
        "${TS_GENERATED}/power_of_ten.inc")
