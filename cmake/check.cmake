# Which rules are there?  Every src/check/rule/<name>.c with its page docs/check/<name>.md; nothing
# is listed by name.

file(GLOB rule_files CONFIGURE_DEPENDS src/check/rule/*.c docs/check/*.md)
set(rules_tool "${CMAKE_SOURCE_DIR}/tools/rules_to_c.py")
ts_generate(rulebook.inc
    DEPENDS ${rule_files} "${rules_tool}"
    COMMAND ${TS_PYTHON} "${rules_tool}" "${TS_GENERATED}/rulebook.inc")
