/* rating/shaft/distortion_energy.h: does a shaft hold by distortion energy and a mean-stress line?
 * The second opinion beside DIN 743.
 *
 * Units     SI.  Moments in N.m: a reversing, m steady; M bending, T torsion.
 * Source    R. Budynas, K. Nisbett, Shigley's Mechanical Engineering Design, chapters 6 and 7.
 */
#ifndef TS_RATING_DISTORTION_ENERGY_H
#define TS_RATING_DISTORTION_ENERGY_H

#include "base/workings.h"

typedef enum ts_mean_line {
    TS_MEAN_GOODMAN,
    TS_MEAN_GERBER,
    TS_MEAN_ELLIPTIC,
    TS_MEAN_SODERBERG,
    TS_MEAN_LINE_COUNT
} ts_mean_line;

typedef struct ts_shaft_moments {
    double M_a, M_m, T_a, T_m; /* N.m */
    double K_f, K_fs;          /* fatigue notch factors of bending and torsion, >= 1 */
} ts_shaft_moments;

typedef struct ts_shaft_strength {
    double S_e, S_ut, S_y; /* Pa   endurance limit of the part, ultimate, yield */
} ts_shaft_strength;

/* Equivalent reversing and steady moments (twice the bending moment of equal stress), N.m. */
typedef struct ts_shaft_equivalent {
    double A, B;
} ts_shaft_equivalent;
ts_shaft_equivalent ts_shaft_equivalent_of(const ts_shaft_moments *moments, ts_workings *workings);

/* Diameter of a solid shaft for safety n_f, m; safety of the diameter d. */
double ts_shaft_diameter(ts_mean_line line, ts_shaft_equivalent equivalent,
                         const ts_shaft_strength *strength, double n_f, ts_workings *workings);
double ts_shaft_safety(ts_mean_line line, ts_shaft_equivalent equivalent,
                       const ts_shaft_strength *strength, double d, ts_workings *workings);

/* Greatest stress of the first cycle, Pa (moments with their notch factors, as the book does). */
double ts_shaft_first_cycle(const ts_shaft_moments *moments, double d, ts_workings *workings);

/* k_a of machined and cold-drawn surfaces, k_b of rotating round bars from 2.79 to 254 mm, and S_e
 * = k_a k_b S_ut/2, S_ut at most 1400 MPa in the half. */
double ts_surface_factor(double S_ut, ts_workings *workings);
double ts_size_factor(double d, ts_workings *workings);
double ts_endurance_limit(double S_ut, double k_a, double k_b, ts_workings *workings);

/* Torque that shears like bending and torsion together (old code of the ASME): K_b, K_t shock. */
double ts_equivalent_torque(double K_b, double M, double K_t, double T, ts_workings *workings);

#endif
