/* rating/iso10300/bevel_share.h: how unevenly is the load spread over face and teeth?
 * ISO 10300-1:2014, clause 8 (K_Hbeta, K_Fbeta) and clause 9 (K_Halpha, K_Falpha).
 */
#ifndef TS_RATING_BEVEL_SHARE_H
#define TS_RATING_BEVEL_SHARE_H

#include "base/workings.h"

#include <stdbool.h>

/* How was the contact pattern looked after?  The rows of the table of mounting factors. */
typedef enum ts_bevel_pattern {
    TS_BEVEL_PATTERN_FULL_LOAD,  /* each pair in its own housing under full load               */
    TS_BEVEL_PATTERN_LIGHT_LOAD, /* each pair under light test load                            */
    TS_BEVEL_PATTERN_SAMPLE,     /* a sample pair, estimated for full load                     */
    TS_BEVEL_PATTERN_COUNT
} ts_bevel_pattern;

/* K_Hbeta_be of the table; overhung: how many of the two gears are cantilevered, 0 .. 2. */
double ts_bevel_mounting_factor(ts_bevel_pattern pattern, int overhung, ts_workings *workings);

/* K_Hbeta of crowned gears. */
double ts_bevel_face_load(double K_Hbeta_be, double b_v, double b_veff, ts_workings *workings);

/* K_F0, 1 .. 1.15: curved teeth spread the load at the root.  1 for teeth without spiral and for a
 * cutter that is not given (r_c0 NaN): on the safe side. */
double ts_bevel_curvature_factor(double r_c0, double R_m, double beta_m, ts_workings *workings);

double ts_bevel_face_load_root(double K_Hbeta, double K_F0, ts_workings *workings);

typedef struct ts_bevel_transverse_input {
    double eps_valpha, eps_vgamma;
    double c_gamma; /* Pa   mesh stiffness at this load                          */
    double f_peff;  /* m    pitch deviation after running in                     */
    double b_v;     /* m                                                         */
    double F_mtH;   /* N    F_mt K_A K_v K_Hbeta                                 */
    double Z_LS, Y_eps;
} ts_bevel_transverse_input;

typedef struct ts_bevel_transverse {
    double K_alpha;            /* as it comes from the deviations                */
    double K_Halpha, K_Falpha; /* not below 1, nor above what one pair can carry */
} ts_bevel_transverse;

ts_bevel_transverse ts_bevel_transverse_load(const ts_bevel_transverse_input *in,
                                             ts_workings                     *workings);

#endif
