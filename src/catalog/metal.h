/* catalog/metal.h: how stiff, heavy and strong is a metal of shafts, necks, bearings and casings?
 * data/metal.tsv
 *
 * Units     SI; cte in 1/K.  NaN: the source does not say.
 * Caution   Values of mixed pedigree, each with its basis: order checks, never design allowables.
 */
#ifndef TS_CATALOG_METAL_H
#define TS_CATALOG_METAL_H

#include "base/text.h"

#include <stdbool.h>
#include <stddef.h>

typedef struct ts_metal {
    const char *key;           /* "9310 core"                           */
    double      E, G;          /* Pa   as the source prints them        */
    double      nu, rho, cte;  /* 1, kg/m3, 1/K                         */
    double      Ftu, Fty, Fsu; /* Pa   tension, yield, transverse shear */
    const char *basis;         /* "typical", "design minimum"           */
    const char *source;
} ts_metal;

/* The keys in the order of the rows, NULL at the end. */
extern const char *const ts_metal_keys[];

size_t      ts_metal_count(void);
ts_metal    ts_metal_at(size_t index);
bool        ts_metal_named(ts_text key, ts_metal *metal); /* false: no such key */
const char *ts_metal_nearest(ts_text key);                /* for a message, or NULL */

/* As stiff and as heavy as steels are, which no light metal is. */
bool ts_metal_is_steel(const ts_metal *metal);

/* E/(2(1 + nu)). */
double ts_shear_modulus(double E, double nu);

#endif
