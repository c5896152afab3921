/* model/syntax_fault.h: where and why could the YAML parser not go on? */
#ifndef TS_MODEL_SYNTAX_FAULT_H
#define TS_MODEL_SYNTAX_FAULT_H

#include "base/diagnostic.h"

/* Diagnoses, in this program's words, what libfyaml called `message` at line and column (from 1).
 * `opened` is the place of the innermost open bracket, with line 0 when there is none. */
typedef struct ts_open_bracket {
    uint32_t line, column;
    bool     curly;
} ts_open_bracket;

void ts_diagnose_syntax(ts_diagnostics *list, const char *message, ts_open_bracket opened,
                        uint32_t line, uint32_t column);

#endif
