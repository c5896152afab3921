/* element/bevel_pair.h: pitch cones of two bevel gears whose axes meet, ISO 23509:2016.
 *
 * Units     m, rad.
 * Range     Any shaft angle at which both pitch cones are external (delta_1, delta_2 < pi/2).
 */
#ifndef TS_ELEMENT_BEVEL_PAIR_H
#define TS_ELEMENT_BEVEL_PAIR_H

#include "base/workings.h"

typedef struct ts_bevel_pair_input {
    int    z_1, z_2; /*      teeth, 1 .. 1000000                              */
    double m_et;     /* m    outer transverse module, 1e-9 .. 1000            */
    double Sigma;    /* rad  shaft angle, 1e-6 <= Sigma < pi                  */
    double alpha_n;  /* rad  normal pressure angle, 0.01 .. 1.5               */
    double beta_m;   /* rad  mean spiral angle without its hand, 0 .. 1.5     */
    double b;        /* m    face width, >= 0                                 */
} ts_bevel_pair_input;

typedef enum ts_bevel_fault {
    TS_BEVEL_FINE,
    TS_BEVEL_OUT_OF_RANGE, /* an input is outside the range stated above                       */
    TS_BEVEL_NO_CONE,      /* at this shaft angle and ratio one pitch cone is a plane or a ring */
    TS_BEVEL_TOO_WIDE      /* the face would reach the apex                                    */
} ts_bevel_fault;

typedef struct ts_bevel_pair {
    ts_bevel_pair_input in;

    double u;                /* 1    z_2/z_1                                                */
    double delta_1, delta_2; /* rad  pitch angles                                           */
    double d_e1, d_e2;       /* m    outer pitch diameters                                  */
    double R_e, R_m;         /* m    outer and mean cone distance                           */
    double d_m1, d_m2;       /* m    mean pitch diameters: the tooth force acts there       */
    double m_mt, m_mn;       /* m    mean transverse and mean normal module                 */
    double z_v1, z_v2;       /* 1    teeth of the virtual cylindrical gears (in the normal
                                     section: element/bevel_virtual.h)                       */
    double b_over_R_e;       /* 1    face width to outer cone distance                      */
} ts_bevel_pair;

/* Solves the cones.  Unless it returns TS_BEVEL_FINE every result is NaN. */
ts_bevel_fault ts_bevel_pair_solve(const ts_bevel_pair_input *in, ts_bevel_pair *pair,
                                   ts_workings *workings);

/* Steps of the above by themselves, for sizes that are known before the tooth numbers are.
 * Sigma     rad, shaft angle;  u: speed of gear 1 over speed of gear 2
 * d_e       m, outer pitch diameter;  b: m, face width;  delta: rad, pitch angle of the same gear
 */
double ts_bevel_pitch_angle_1(double Sigma, double u, ts_workings *workings);
double ts_bevel_mean_diameter_1(double d_e1, double b, double delta_1, ts_workings *workings);
double ts_bevel_mean_diameter_2(double d_e2, double b, double delta_2, ts_workings *workings);

/* m: the widest face of usual practice, 0.3 of the outer cone distance and 10 outer modules,
 * whichever is less. */
double ts_bevel_face_most(const ts_bevel_pair *pair);

/* One sentence without a full stop. */
const char *ts_bevel_fault_says(ts_bevel_fault fault);

#endif
