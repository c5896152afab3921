/* catalog/bearing_size.h: how large are standard rolling bearings, and what is inside of a generic
 * one?  data/bearing_size.tsv (ISO 15 boundary dimensions), data/bearing_inside.tsv (assumptions).
 *
 * Units     m, rad.
 */
#ifndef TS_CATALOG_BEARING_SIZE_H
#define TS_CATALOG_BEARING_SIZE_H

#include "base/text.h"

#include <stdbool.h>
#include <stddef.h>

typedef enum ts_bearing_form {
    TS_BEARING_DEEP_GROOVE,
    TS_BEARING_ANGULAR_CONTACT,
    TS_BEARING_CYLINDRICAL_ROLLER,
    TS_BEARING_FORM_COUNT
} ts_bearing_form;
const char *ts_bearing_form_name(ts_bearing_form form); /* "deep groove" */
bool        ts_bearing_form_named(ts_text name, ts_bearing_form *form);

typedef struct ts_bearing_size {
    const char *series;  /* ISO 15 dimension series: "02" */
    double      d, D, B; /* m   bore, outside, width      */
} ts_bearing_size;

size_t          ts_bearing_size_count(void);
ts_bearing_size ts_bearing_size_at(size_t index); /* index < count, in the order of the table */
/* The size of that series and bore (to a micrometre); false, and *size untouched, without one. */
bool ts_bearing_size_of(ts_text series, double d, ts_bearing_size *size);
/* The least bore of that series that is at least `bore` (m, to a nanometre); as above. */
bool ts_bearing_size_from(const char *series, double bore, ts_bearing_size *size);

typedef struct ts_bearing_inside {
    int    Z;        /* rolling elements in a row                                   */
    double D_w;      /* m   their diameter                                          */
    double L_we;     /* m   effective length of rollers, NaN for balls              */
    double D_pw;     /* m   pitch diameter                                          */
    double f_i, f_e; /* 1   groove radii over the ball diameter, NaN for rollers    */
} ts_bearing_inside;

/* The assumed inside of a generic bearing; false where the table has no line for the form in that
 * series. */
bool ts_bearing_inside_of(ts_bearing_form form, const ts_bearing_size *size,
                          ts_bearing_inside *inside);

#endif
