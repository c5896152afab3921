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

/* `decimals` digits after the point (0..12, cut to that), correctly rounded from the binary value,
 * ties to even, never "-0".  Returns the length written. */
#define TS_NUMBER_FIXED_ROOM 328 /* 309 digits, sign, point, twelve decimals, the zero */
size_t ts_number_fixed(char out[TS_NUMBER_FIXED_ROOM], double value, int decimals);

/* `digits` significant digits (1..17, cut to that), correctly rounded, zeros kept; an exponent
 * below 1e-4 and from 1e9 on; 0 is "0".  Returns the length written. */
size_t ts_number_significant(char out[TS_NUMBER_ROOM], double value, int digits);

/* Lays out `count` digits whose first stands for 10^exponent: plainly when plain_from <= exponent <
 * plain_to, else as "1.5e-7".  No zero at the end.  Returns the length written. */
size_t ts_number_layout(char *out, ts_text digits, int exponent, int plain_from, int plain_to);

typedef enum ts_number_fault {
    TS_NUMBER_FINE,
    TS_NUMBER_EMPTY,
    TS_NUMBER_DECIMAL_COMMA, /* "3,5": a decimal point was due           */
    TS_NUMBER_NOT_A_NUMBER,  /* letters, two points, hexadecimal, NaN   */
    TS_NUMBER_TOO_LARGE      /* overflows a double                       */
} ts_number_fault;

/* Reads the longest number at the start of `text` and says how many bytes it took;
 * with a fault, `taken` is where it was met and *value is 0.
 * Grammar: [+-]? digits [. digits]? ([eE] [+-]? digits)?  Correctly rounded; what is too small for
 * a double becomes the nearest, which may be 0.  "5.", "5..6" and "5e" are read as 5. */
ts_number_fault ts_number_parse(ts_text text, double *value, size_t *taken);

/* A decimal number, 19 significant digits of it: digits * 10^exponent, and whether digits other
 * than 0 were cut off behind them. */
typedef struct ts_decimal {
    uint64_t digits;
    int64_t  exponent;
    bool     negative;
    bool     cut;
} ts_decimal;

/* Reads the same grammar without turning it into a double; knows no TS_NUMBER_TOO_LARGE. */
ts_number_fault ts_number_parse_decimal(ts_text text, ts_decimal *decimal, size_t *taken);

#endif
