/* quantity/marked_number.h: which number was meant when signs stand between its digits? */
#ifndef TS_QUANTITY_MARKED_NUMBER_H
#define TS_QUANTITY_MARKED_NUMBER_H

#include "base/text.h"

#include <stdbool.h>

#define TS_MARKED_MOST 40 /* bytes of a text that are looked at */

typedef struct ts_marked_number {
    size_t marks;     /* blanks, commas and other signs between its digits, before any point */
    size_t length;    /* bytes to the last digit before any point                            */
    bool   thousands; /* the signs part thousands: three digits stand behind each            */
    bool   pointed;   /* a point and decimals follow                                         */
    char   plain[TS_MARKED_MOST + 1]; /* all of the text, without those signs                */
} ts_marked_number;

/* Looks at a text that begins with a number, such as "23 500 g" or "1,234.5 kW". */
ts_marked_number ts_read_marked_number(ts_text text);

#endif
