/* rating/iso10300/bevel_root.h: the bending stress at the root of bevel teeth, ISO 10300-3:2014,
 * method B1: a load at the tip, and factors for where it really acts.
 *
 * Units     m, Pa, rad.
 */
#ifndef TS_RATING_BEVEL_ROOT_H
#define TS_RATING_BEVEL_ROOT_H

#include "base/workings.h"

#include <stdbool.h>

/* One gear in its mean normal section. */
typedef struct ts_bevel_root_input {
    double z_vn, d_van, d_vbn; /* of the virtual gear                                             */
    double m_mn, alpha_n;
    double x_hm, x_sm, h_am, s_mn;
    double h_a0;   /* m    addendum of the cutter from the datum line: k_hfp m_mn                 */
    double rho_a0; /* m    edge radius of the cutter                                              */
    double s_pr;   /* m    protuberance left by grinding; 0: none                                 */
    bool   formed; /*      cut without generation (wheels only): straight flanks                  */
} ts_bevel_root_input;

typedef struct ts_bevel_root {
    double E, G, H;           /* m, 1, 1  of the cutter                                  */
    double theta;             /* rad  the tangent at 30 degrees to the centre line       */
    double s_Fn, rho_F;       /* m    chord and fillet radius of the critical section    */
    double alpha_an, gamma_a; /* rad  pressure angle and half tooth angle at the tip     */
    double alpha_Fan;         /* rad  load against the normal of the centre line         */
    double h_Fa;              /* m    lever                                              */
    double Y_Fa;              /* 1    tooth form factor                                  */
    double L_a, q_s;          /* 1    notch parameters                                   */
    double Y_Sa;              /* 1    stress correction factor                           */
} ts_bevel_root;

/* False, with every result NaN, when the cutter is impossible or the 30 degree tangent is not
 * found.  gear: 0 or 1. */
bool ts_bevel_root_solve(const ts_bevel_root_input *in, int gear, ts_bevel_root *root,
                         ts_workings *workings);

/* Y_eps: from the tip to where one pair carries alone, or to the middle of the zone. */
double ts_bevel_bending_overlap(double eps_valpha, double eps_vbeta, ts_workings *workings);

/* Y_BS: a slanting line of contact loads a part of the tooth. */
typedef struct ts_bevel_slant_input {
    double b_v, beta_m, beta_vb, l_bm, h_m;
} ts_bevel_slant_input;
typedef struct ts_bevel_slant {
    double b_a, l_bb;        /* m */
    double a_BS, b_BS, c_BS; /* 1 */
    double Y_BS;             /* 1 */
} ts_bevel_slant;
ts_bevel_slant ts_bevel_slant_factor(const ts_bevel_slant_input *in, ts_workings *workings);

typedef struct ts_bevel_bending_input {
    double F_mt, b_v, m_mn;
    double Y_Fa, Y_Sa, Y_eps, Y_BS, Y_LS;
} ts_bevel_bending_input;
/* sigma_F0 of one gear. */
double ts_bevel_bending_nominal(const ts_bevel_bending_input *in, int gear, ts_workings *workings);

double ts_bevel_bending_stress(double sigma_F0, const double K[4], int gear, ts_workings *workings);

#endif
