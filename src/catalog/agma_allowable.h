/* catalog/agma_allowable.h: which stress may a gear steel bear by AGMA grade?  ANSI/AGMA 2101-D04,
 * clause 16: sigma_HP, sigma_FP.
 *
 * Shapes    Treatment, variant and grade lead to the lines of data/agma_allowable.tsv, which are
 *           those of the inch edition (2001-D04), exactly converted.
 * Units     Pa.  Hardness: of the flank in HRC (hard flanks) or HBW (through-hardened), of the core
 *           in HBW.
 */
#ifndef TS_CATALOG_AGMA_ALLOWABLE_H
#define TS_CATALOG_AGMA_ALLOWABLE_H

#include "base/text.h"
#include "base/workings.h"
#include "catalog/gear_material.h"

#include <stdbool.h>

typedef enum ts_agma_treatment {
    TS_AGMA_THROUGH_HARDENED,
    TS_AGMA_INDUCTION_TYPE_A, /* flame or induction hardened, the root too                       */
    TS_AGMA_INDUCTION_TYPE_B, /* the hardened zone ends on the flank                             */
    TS_AGMA_CARBURISED,
    TS_AGMA_NITRIDED_THROUGH_HARDENED, /* 4140, 4340                                            */
    TS_AGMA_NITRIDED_NITRALLOY,        /* nitriding steel with aluminium                         */
    TS_AGMA_NITRIDED_CHROME,           /* nitriding steel of 2.5 % chrome without aluminium      */
    TS_AGMA_TREATMENT_COUNT
} ts_agma_treatment;

const char *ts_agma_treatment_name(ts_agma_treatment treatment); /* "carburised" */

typedef struct ts_agma_steel {
    ts_agma_treatment treatment;
    int               grade; /* 1, 2, 3                                                          */
    double            flank; /* HBW of through-hardened steel, else HRC                          */
    double            core;  /* HBW, read for nitrided steels                                    */
} ts_agma_steel;

typedef struct ts_agma_allowable {
    double sigma_HP, sigma_FP; /* Pa   sigma_FP NaN: the standard has no line of this grade, or
                                  the core's hardness, which it asks for, is not known           */
    bool within; /*      was the hardness inside both lines' range?  Below the least a line is
                         carried on downwards, above the most its value there holds             */
    const char *source; /*  static: standard, tables, provenance                                  */
} ts_agma_allowable;

/* gear: TS_EITHER_GEAR, or 1 or 2 for the names in the workings.  False when the treatment has no
 * such grade for contact, or the flank's hardness is not a positive number. */
bool ts_agma_allowable_of(const ts_agma_steel *steel, int gear, ts_agma_allowable *allowable,
                          ts_workings *workings);

/* The AGMA steel that a row of the ISO table stands for: ML, MQ, ME as grades 1, 2, 3 (common
 * practice, no source), at most the best grade the treatment has; hardness from HV by ASTM E140.
 * Nitriding steels are taken as Nitralloy, whose numbers are lower.  False where AGMA has no lines
 * for the class (nitrocarburised), or the hardness cannot be told in its scale. */
bool ts_agma_steel_of(const ts_gear_material *material, double hardness, ts_agma_steel *steel);

/* Both at once.  False where one of them is. */
bool ts_agma_allowable_of_row(const ts_gear_material *material, double hardness, int gear,
                              ts_agma_allowable *allowable, ts_workings *workings);

/* Hardness of a nitrided flank in HR15N; ASTM E140, table 1 (from memory), 40 to 68 HRC, NaN
 * outside. */
double ts_superficial_hardness(double HRC);

#endif
