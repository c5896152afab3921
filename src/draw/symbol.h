/* draw/symbol.h: the shapes of the states of a finding; blackness falls from refuse to pass. */
#ifndef TS_DRAW_SYMBOL_H
#define TS_DRAW_SYMBOL_H

#include "draw/canvas.h"

typedef enum ts_symbol {
    TS_SYMBOL_REFUSE,
    TS_SYMBOL_WARN,
    TS_SYMBOL_NOTE,
    TS_SYMBOL_WAIVED,
    TS_SYMBOL_NOTCOMP,
    TS_SYMBOL_PASS
} ts_symbol;

ts_symbol   ts_symbol_of(const ts_finding *finding);
const char *ts_symbol_word(ts_symbol symbol);
/* Draws the symbol in a square of `size` px whose upper left corner is at `at`. */
void ts_draw_symbol(ts_canvas *canvas, ts_symbol symbol, ts_point at, double size);

#endif
