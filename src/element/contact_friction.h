/* element/contact_friction.h: how strongly do two flanks rub?  Mean coefficients of friction of
 * ISO/TS 6336-20, -21 and -22.
 *
 * Units     SI: w_Bt N/m, v m/s, rho_redC and Ra m, eta Pa.s.
 * Ranges    Measured between 1 and 50 m/s at 150 N/mm and more; -21 holds its speed and load within
 *           these limits.
 */
#ifndef TS_ELEMENT_CONTACT_FRICTION_H
#define TS_ELEMENT_CONTACT_FRICTION_H

#include "base/workings.h"

/* X_L of a kind of oil. */
typedef enum ts_lubricant {
    TS_LUBRICANT_MINERAL,
    TS_LUBRICANT_PAO,       /* polyalphaolefin                                              */
    TS_LUBRICANT_PAG,       /* polyglycol that water does not dissolve                      */
    TS_LUBRICANT_PAG_WATER, /* polyglycol that water dissolves                              */
    TS_LUBRICANT_TRACTION,
    TS_LUBRICANT_PHOSPHATE, /* phosphate ester                                              */
    TS_LUBRICANT_POLYOL,    /* polyol ester of turbine oils: the standard has none          */
    TS_LUBRICANT_COUNT
} ts_lubricant;
double      ts_lubricant_friction(ts_lubricant lubricant); /* X_L                    */
const char *ts_lubricant_name(ts_lubricant lubricant);     /* "mineral oil"          */
const char *ts_lubricant_source(ts_lubricant lubricant);

/* What the friction of one load case rests on. */
typedef struct ts_friction_input {
    double w_Bt;       /* N/m   specific load with all K factors                          */
    double v_SigmaC;   /* m/s   sum of the surface speeds at the pitch point              */
    double rho_redC;   /* m     reduced radius there, normal to the flanks                 */
    double eta_oil;    /* Pa.s  at the oil temperature                                     */
    double Ra_1, Ra_2; /* m                                                               */
    double X_L;        /* 1                                                               */
} ts_friction_input;

/* mu_m of the flash temperature, ISO/TS 6336-20. */
double ts_friction_flash(const ts_friction_input *in, ts_workings *workings);

/* mu_mC of the integral temperature and of micropitting, ISO/TS 6336-21 and -22.  Workings call the
 * load w_Btmu here, for -21 does not let it fall below a limit. */
double ts_friction_integral(const ts_friction_input *in, ts_workings *workings);

/* K_Bgamma: helical gears of large total contact ratio rub more than their load says. */
double ts_helical_load_factor(double eps_gamma, ts_workings *workings);

/* v_SigmaC from the pitch line velocity (at the reference circle), and rho_redC of a pair. */
double ts_sum_of_speeds(double v, double alpha_wt, double alpha_t, ts_workings *workings);
double ts_pitch_point_radius(double a_w, double u, double alpha_wt, double beta_b,
                             ts_workings *workings);

/* B_M of one body: how readily it takes up heat, from conductivity lambda (W/(m.K)), density rho
 * (kg/m3) and specific heat c_M (J/(kg.K)).  gear: 1 or 2. */
double ts_thermal_contact(double lambda, double rho, double c_M, int gear, ts_workings *workings);

#endif
