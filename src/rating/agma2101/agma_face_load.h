/* rating/agma2101/agma_face_load.h: how unevenly does the load lie over the face width?
 * ANSI/AGMA 2101-D04, clause 15, the empirical method: K_H (K_m, C_mf of the inch edition).
 *
 * The method presumes gears between bearings, b/d_w1 <= 2, b <= 1.02 m, and contact over the whole
 * face under load.  Where the deflection of the shafts is computed, its factor is better.
 */
#ifndef TS_RATING_AGMA_FACE_LOAD_H
#define TS_RATING_AGMA_FACE_LOAD_H

#include "base/text.h"
#include "base/workings.h"

#include <stdbool.h>

/* How well a box holds its shafts: a row of data/agma_alignment.tsv. */
typedef enum ts_agma_box {
    TS_AGMA_BOX_OPEN,
    TS_AGMA_BOX_COMMERCIAL,
    TS_AGMA_BOX_PRECISION,
    TS_AGMA_BOX_EXTRA_PRECISION,
    TS_AGMA_BOX_COUNT
} ts_agma_box;
const char *ts_agma_box_name(ts_agma_box box); /* "extra precision" */
bool        ts_agma_box_named(ts_text name, ts_agma_box *box);

/* K_Hma = A + B b + C b^2 */
typedef struct ts_agma_alignment {
    double A; /* 1    */
    double B; /* 1/m  */
    double C; /* 1/m2 */
} ts_agma_alignment;
ts_agma_alignment ts_agma_alignment_of(ts_agma_box box);

typedef struct ts_agma_mounting {
    ts_agma_alignment alignment;
    double offset;         /* 1    pinion's distance from midspan over the span, S_1/S          */
    bool   lead_corrected; /*      crowned, or relieved at the ends, or lead matched to load    */
    bool   adjusted;       /*      adjusted at assembly, or lapped: K_He = 0.8                  */
} ts_agma_mounting;

typedef struct ts_agma_face_load {
    double K_Hmc; /* lead correction factor, 0.8 or 1                 */
    double K_Hpf; /* pinion proportion factor                         */
    double K_Hpm; /* pinion proportion modifier, 1 or 1.1             */
    double K_Hma; /* mesh alignment factor                            */
    double K_He;  /* mesh alignment correction factor, 0.8 or 1       */
    double K_H;
} ts_agma_face_load;

/* b, d_w: face width and operating pitch diameter of the pinion, m, > 0. */
ts_agma_face_load ts_agma_face_load_of(double b, double d_w, const ts_agma_mounting *mounting,
                                       ts_workings *workings);

/* K_Hpf alone. */
double ts_agma_pinion_proportion(double b, double d_w, ts_workings *workings);

#endif
