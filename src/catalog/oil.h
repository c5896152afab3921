/* catalog/oil.h: what are the oils of a public specification like?  data/oil.tsv
 *
 * Shapes    Cells that a drive file may give itself are kept as one would write them there
 *           ("27 cSt"), for they are its defaults.
 * Caution   What usual oils of the specification have; the sheet of the oil that is bought goes
 *           before.
 */
#ifndef TS_CATALOG_OIL_H
#define TS_CATALOG_OIL_H

#include "base/text.h"

#include <stdbool.h>
#include <stddef.h>

typedef struct ts_oil_row {
    const char *key;          /* "MIL-PRF-23699"                                          */
    const char *kind;         /* "polyol ester": a kind of element/contact_friction.h     */
    const char *nu_40;        /* "27 cSt"        kinematic viscosity at 40 degrees Celsius */
    const char *nu_100;       /* "5.1 cSt"       at 100                                    */
    const char *rho_15;       /* "1000 kg/m3"    density at 15                             */
    const char *c_100;        /* "2000 J/(kg.K)" heat capacity near 100                    */
    const char *theta_S;      /* "220 degC"      mean scuffing temperature, case-hardened   */
    const char *source;       /* of the viscosities and the density                        */
    const char *limit_source; /* of theta_S                                                */
} ts_oil_row;

/* The key of every row, in the order of the table; NULL after the last. */
extern const char *const ts_oil_keys[];

size_t ts_oil_count(void);
/* Row number `index` < count, in the order of the table. */
const ts_oil_row *ts_oil_at(size_t index);
/* NULL: the table has no such key. */
const ts_oil_row *ts_oil_named(ts_text key);

#endif
