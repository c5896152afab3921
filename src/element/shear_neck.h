/* element/shear_neck.h: at which torque does a shear neck break, at least and at most?
 *
 * A ductile neck breaks between the torque at which its outside reaches the shear strength
 * (elastic) and that at which its whole section bears it (plastic).  A brittle one may break at the
 * elastic torque over the notch factor.
 *
 * Units     SI.
 * Band      ts_neck_band is guaranteed: every combination of its inputs inside their limits breaks
 *           inside of it, roundings counted.  ts_neck_sample draws from stated laws cut off at
 *           the same limits, and so never leaves the band.
 * Sources   docs/method/necks.md
 */
#ifndef TS_ELEMENT_SHEAR_NECK_H
#define TS_ELEMENT_SHEAR_NECK_H

#include "base/workings.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* Shear strength of the share `ratio` of the tensile strength; 0.6 in design values of low-alloy
 * steels. */
double ts_neck_shear_strength(double Ftu, double ratio, ts_workings *workings);

typedef struct ts_neck_torques {
    double T_el, T_pl; /* N.m  outside, whole section at the shear strength */
    double T_brittle;  /* N.m  T_el over the notch factor                   */
} ts_neck_torques;
ts_neck_torques ts_neck_torques_of(double tau_u, double d, double d_i, double K_ts,
                                   ts_workings *workings);

/* Rise of the torque of a solid neck for a rise of its diameter, first order. */
double ts_neck_diameter_share(double dd, double d, ts_workings *workings);

/* First-order scatter of a solid neck: strength and shear ratio by their coefficients of variation,
 * diameter by a tolerance of three standard deviations.  A and B: 99 % and 90 % lie above. */
typedef struct ts_neck_scatter {
    double cov, T_A, T_B, T_hi;
} ts_neck_scatter;
ts_neck_scatter ts_neck_scatter_of(double T, double cov_F, double cov_ratio, double d, double tol,
                                   ts_workings *workings);

/* A quantity between two limits. */
typedef enum ts_spread_law { TS_SPREAD_UNIFORM, TS_SPREAD_NORMAL } ts_spread_law;
typedef struct ts_spread {
    ts_spread_law law;
    double        low, high;   /* guaranteed limits                                    */
    double        mean, sigma; /* of the normal law, which is cut off at the limits    */
} ts_spread;
/* Value at the share u of the law, 0 < u < 1; NaN when the spread is none. */
double ts_spread_at(const ts_spread *spread, double u);
bool   ts_spread_is_sound(const ts_spread *spread);

typedef struct ts_shear_neck {
    ts_spread d, d_i;   /* m    diameter at the root, bore (0, 0: solid)                    */
    ts_spread Ftu;      /* Pa   tensile strength at room temperature                        */
    ts_spread ratio;    /*      shear over tensile strength                                 */
    ts_spread warmth;   /*      share of the strength that is left at temperature           */
    ts_spread yielding; /*      0: breaks at the elastic torque, 1: at the plastic one      */
    double    K_ts;     /*      notch factor of torsion; only a brittle neck feels it       */
    bool      brittle;
} ts_shear_neck;

typedef struct ts_neck_limits {
    double low, high; /* N.m */
} ts_neck_limits;

/* NaN limits when a spread is not sound, a diameter is not above the bore, or K_ts < 1. */
double         ts_neck_least(const ts_shear_neck *neck, ts_workings *workings);
double         ts_neck_most(const ts_shear_neck *neck, ts_workings *workings);
ts_neck_limits ts_neck_band(const ts_shear_neck *neck, ts_workings *workings);

/* Break torques of samples first, first + 1, ...; the same for any share of the work. */
void ts_neck_sample(const ts_shear_neck *neck, uint64_t seed, uint64_t first, size_t count,
                    double *T);

#endif
