/* catalog/gear_material.h: how strong are the teeth of a steel?  ISO 6336-5:2016, table 1.
 *
 * Shapes    A key ("carburised 9310") leads to a row of data/gear_material.tsv; its class, grade
 *           and variant lead to the lines of data/gear_strength.tsv, sigma = A*hardness + B.
 * Units     SI: Pa, kg/m3.  Hardness in Vickers, of normalised steel in Brinell.
 * Sources   Each row carries its own; none of the values was read in print (see the tables).
 */
#ifndef TS_CATALOG_GEAR_MATERIAL_H
#define TS_CATALOG_GEAR_MATERIAL_H

#include "base/text.h"
#include "base/workings.h"

#include <stdbool.h>
#include <stddef.h>

/* The standard's letters stand beside: every influence factor asks for one of these. */
typedef enum ts_gear_class {
    TS_GEAR_CASE_HARDENED,      /* Eh         carburised                                    */
    TS_GEAR_INDUCTION_HARDENED, /* IF         flame or induction, root included             */
    TS_GEAR_NITRIDED,           /* NT(nitr.)  nitriding steel                               */
    TS_GEAR_THROUGH_NITRIDED,   /* NV(nitr.)  through-hardening steel, nitrided              */
    TS_GEAR_NITROCARBURISED,    /* NV(nitrocar.)                                            */
    TS_GEAR_THROUGH_HARDENED,   /* V                                                        */
    TS_GEAR_NORMALISED,         /* St         normalised low carbon steel                   */
    TS_GEAR_CLASS_COUNT
} ts_gear_class;

const char *ts_gear_class_name(ts_gear_class class); /* "case-hardened" */
bool        ts_gear_class_named(ts_text name, ts_gear_class *class);
/* Is the flank hard enough that running in hardly changes it (Eh, IF, NT, NV)? */
bool ts_gear_class_surface_hardened(ts_gear_class class);

typedef struct ts_gear_material {
    const char *key;
    ts_gear_class class;
    const char *grade;    /* "ML", "MQ", "ME"                                     */
    const char *variant;  /* which lines of the class, "-" where there are no two */
    double      hardness; /* HV (normalised: HBW) of the flank                    */
    double      core_HRC; /* NaN: not said                                        */
    double      yield;    /* Pa    NaN: not said                                  */
    double      E, nu;    /* Pa, 1 modulus and Poisson's ratio                    */
    double      rho;      /* kg/m3 density                                        */
    const char *source;   /* of the row                                           */
    const char *basis;    /* whose least value the strengths are                  */
} ts_gear_material;

/* The key of every row, in the order of the table; NULL after the last. */
extern const char *const ts_gear_material_keys[];

size_t ts_gear_material_count(void);
/* Row number `index` < count, in the order of the table. */
ts_gear_material ts_gear_material_at(size_t index);
/* False, and *material untouched, when the table has no such key. */
bool ts_gear_material_named(ts_text key, ts_gear_material *material);
/* The key that is meant most likely, for a message; NULL when none is near. */
const char *ts_gear_material_nearest(ts_text key);

typedef struct ts_gear_strength {
    double      sigma_Hlim, sigma_Flim; /* Pa */
    double      least, most;            /* hardness for which both lines are valid           */
    bool        within;                 /* was the hardness between them?                    */
    const char *source;                 /* static: standard, table, provenance               */
} ts_gear_strength;

/* The allowable stress numbers of a class, grade and variant at a hardness (> 0).  Below the least
 * hardness the line is carried on downwards; above the most, the value at the most holds: both are
 * told by `within`.  False when the table has no such class, grade and variant, or the hardness is
 * not a positive number.  gear: TS_EITHER_GEAR, or 1 or 2 for the names in the workings. */
bool ts_gear_strength_of(const ts_gear_material *material, double hardness, int gear,
                         ts_gear_strength *strength, ts_workings *workings);
#define TS_EITHER_GEAR 0

#endif
