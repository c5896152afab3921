/* catalog/agma2003_allowable.h: which stress may a bevel gear steel bear by AGMA grade?
 * ANSI/AGMA 2003-C10: sigma_Hlim, sigma_Flim.
 *
 * The lines of data/agma2003_allowable.tsv belong to the Z_I and Y_J of the same standard and to
 * nothing else: about half of the bending numbers of AGMA 2001.
 */
#ifndef TS_CATALOG_AGMA2003_ALLOWABLE_H
#define TS_CATALOG_AGMA2003_ALLOWABLE_H

#include "base/workings.h"
#include "catalog/gear_material.h"

#include <stdbool.h>

typedef enum ts_agma2003_steel {
    TS_AGMA2003_THROUGH_HARDENED, /* grades 1 and 2, by Brinell hardness */
    TS_AGMA2003_CARBURISED,       /* grades 1, 2, 3                      */
    TS_AGMA2003_STEEL_COUNT
} ts_agma2003_steel;

typedef struct ts_agma2003_allowable {
    double sigma_Hlim, sigma_Flim; /* Pa   NaN: there is no such grade, or no hardness          */
    bool   within;                 /*      180 .. 400 HB (through-hardened)                     */
} ts_agma2003_allowable;

/* HB: Brinell hardness, read for through-hardened steel.  gear 0 or 1: whose names the workings
 * use. */
ts_agma2003_allowable ts_agma2003_allowable_of(ts_agma2003_steel steel, int grade, double HB,
                                               int gear, ts_workings *workings);

/* Of a row of the ISO table: ML, MQ, ME as grades 1, 2, 3 (common practice, no source), at most the
 * best that there is.  NaN where this standard has no numbers of its class. */
ts_agma2003_allowable ts_agma2003_allowable_of_row(const ts_gear_material *row, double HB, int gear,
                                                   ts_workings *workings);

#endif
