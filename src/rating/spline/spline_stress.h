/* rating/spline/spline_stress.h: how hard are the teeth, the shaft and the sleeve of an involute
 * spline worked?  After D. W. Dudley, as in Machinery's Handbook.
 *
 * Units     SI; T in N.m, n rad/s.
 * Sources   Root and pitch-line shear and the factor tables read; compression and bursting from
 *           memory (bank, spl-dudley-stress).
 */
#ifndef TS_RATING_SPLINE_STRESS_H
#define TS_RATING_SPLINE_STRESS_H

#include "base/workings.h"

#include <stdbool.h>

typedef struct ts_spline_load {
    double T;        /* N.m                                               */
    double N, D;     /* teeth, pitch diameter                             */
    double D_re;     /* m   minor diameter of the external spline         */
    double D_h;      /* m   bore of the shaft, 0: solid                   */
    double L_e;      /* m   effective length                              */
    double t, h;     /* m   tooth thickness at the pitch line, depth of contact */
    double K_a, K_m; /* application, misalignment                         */
    double K_f, K_w; /* fatigue by torque cycles, wear by revolutions     */
} ts_spline_load;

double ts_spline_root_shear(const ts_spline_load *load, ts_workings *workings);
double ts_spline_pitch_shear(const ts_spline_load *load, ts_workings *workings);
/* Half of the teeth of a fixed spline seat themselves, those of a flexible one rub and wear. */
double ts_spline_pressure_flexible(const ts_spline_load *load, ts_workings *workings);
double ts_spline_pressure_fixed(const ts_spline_load *load, ts_workings *workings);

/* The sleeve: wall t_w from the major diameter D_ri to the outside D_oi. */
typedef struct ts_spline_sleeve {
    double D_ri, D_oi;
    double t_w;     /* m                     */
    double alpha_D; /* rad                   */
    double Y;       /* tooth form, 1.5       */
    double rho;     /* kg/m3                 */
    double n;       /* rad/s                 */
} ts_spline_sleeve;
typedef struct ts_spline_bursting {
    double S_1, S_2, S_3, S_t; /* Pa  wedging, spin, bending of the teeth, all together */
} ts_spline_bursting;
/* S_2 is the hoop stress of a spinning ring, exact; the handbook's 1.656 is that of steel. */
ts_spline_bursting ts_spline_burst(const ts_spline_load *load, const ts_spline_sleeve *sleeve,
                                   ts_workings *workings);

/* The tables, straight on logarithmic scales between the printed columns; the ends hold. */
double ts_spline_fatigue_factor(double torque_cycles, bool reversed, ts_workings *workings);
double ts_spline_wear_factor(double revolutions, ts_workings *workings);
/* L_e m, slope of the misalignment (1). */
double ts_spline_misalignment_factor(double L_e, double slope, ts_workings *workings);

typedef enum ts_spline_source { /* of power: turbine or electric motor; and what is driven */
                                TS_SPLINE_UNIFORM,     /* generator, fan            */
                                TS_SPLINE_LIGHT_SHOCK, /* oscillating pump          */
                                TS_SPLINE_INTERMITTENT,
                                TS_SPLINE_HEAVY_SHOCK
} ts_spline_source;
double ts_spline_application_factor(ts_spline_source source, ts_workings *workings);

/* Way of rubbing of a misaligned spline in one turn, m, and worn depth over L turns by Archard's
 * law, k in 1/Pa: an indication. */
double ts_spline_slide(double D, double slope, ts_workings *workings);
double ts_spline_wear_depth(double k, double pressure, double slide, double turns,
                            ts_workings *workings);

#endif
