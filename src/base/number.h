/* base/number.h: numbers to text and back, the same bytes under every locale. */
#ifndef TS_BASE_NUMBER_H
#define TS_BASE_NUMBER_H

#include "base/text.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#define TS_NUMBER_ROOM 32 /* enough for any double in shortest form, and the zero */

/* The shortest decimal text that reads back to the same double: "0.1", "1e-7", "24600", "-0".
 * Plain notation for 1e-5 <= |value| < 1e16, else an exponent.  value must be finite.
 * Returns the length written. */
size_t ts_number_print(char out[TS_NUMBER_ROOM], double value);

typedef enum ts_number_fault {
    TS_NUMBER_FINE,
    TS_NUMBER_EMPTY,
    TS_NUMBER_DECIMAL_COMMA, /* "3,5": a decimal point was due           */
    TS_NUMBER_NOT_A_NUMBER,  /* letters, two points, hexadecimal, NaN, … */
    TS_NUMBER_TOO_LARGE      /* overflows a double                       */
} ts_number_fault;

/* Reads the longest number at the start of `text` and says how many bytes it took.
 * Grammar: [+-]? digits [. digits]? ([eE] [+-]? digits)?  Correctly rounded. */
ts_number_fault ts_number_parse(ts_text text, double *value, size_t *taken);

#endif
