/* oil/mesh_loss.h: how much power does a mesh turn into heat?  ISO/TR 14179-2 and, beside it,
 * Anderson and Loewenthal (NASA TP-1622 and later).
 *
 * Units     SI; the formulas turn into the units of their source by themselves.
 * Shapes    What depends on the teeth alone is prepared once (ts_loss_mesh).
 * Ranges    H_v holds for 1 <= eps_alpha <= 2; beyond, it is an estimate.
 * Sources   docs/method/oil.md.
 */
#ifndef TS_OIL_MESH_LOSS_H
#define TS_OIL_MESH_LOSS_H

#include "base/workings.h"

/* Two gears, or the virtual cylindrical gears of two bevels; gear 1 is the mesh's driver. */
typedef struct ts_loss_mesh {
    double z_1, u;       /* u = z_2/z_1 >= some small number above 0                          */
    double beta_b;       /* rad  base helix angle                                             */
    double alpha_wt;     /* rad                                                               */
    double eps_1, eps_2; /* 1    tip contact ratios: recess of gear 1, of gear 2              */
    double g_alpha;      /* m    path of contact                                              */
    double r_b1, r_b2;   /* m    base radii, by which torque becomes the normal force         */
    double r_w1;         /* m    working pitch radius                                         */
    double b;            /* m    common face width                                            */
    double rho_redC;     /* m    reduced radius of curvature at the pitch point               */
    double Ra;           /* m    mean roughness of both flanks                                */
    double X_L;          /* 1    lubricant factor                                             */
} ts_loss_mesh;

/* Tip contact ratio of one gear, from its tip, base and working pitch diameters and its base pitch.
 * gear: 1 or 2. */
double ts_tip_contact_ratio(double d_a, double d_b, double alpha_wt, double p_bt, int gear,
                            ts_workings *workings);
/* H_v, the share of the power that would be lost at a friction of 1. */
double ts_tooth_loss_factor(const ts_loss_mesh *mesh, ts_workings *workings);

/* v_SigmaC and rho_redC of ISO/TR 14179-2. */
double ts_loss_sum_of_speeds(double v_t, double alpha_wt, ts_workings *workings);
double ts_loss_radius(double d_1, double u, double alpha_wt, double beta_b, ts_workings *workings);

/* mu_mz, without limits of load or speed. */
typedef struct ts_loss_friction {
    double w_Bt;     /* N/m   normal load in the transverse section over the face              */
    double v_SigmaC; /* m/s   */
    double rho_redC; /* m     */
    double eta_oil;  /* Pa.s  */
    double Ra;       /* m     */
    double X_L;
} ts_loss_friction;
double ts_mesh_friction(const ts_loss_friction *in, ts_workings *workings);

/* Both held within what the friction was measured at: 150 N/mm at least, 50 m/s at most. */
ts_loss_friction ts_mesh_friction_within(const ts_loss_friction *in, ts_workings *workings);

/* P_VZP of the power P_a. */
double ts_mesh_loss_power(double P_a, double mu_mz, double H_v, ts_workings *workings);

/* ---- Anderson and Loewenthal ----------------------------------------------------------------- */

/* f of Benedict and Kelley: w N/m, eta_oil Pa.s, V_s and V_T m/s.  NaN unless all are
 * above 0 and the argument of its logarithm above 1, where the law ends. */
double ts_sliding_friction(double w, double eta_oil, double V_s, double V_T, ts_workings *workings);
/* Means of sliding and of rolling speed over the path of contact. */
double ts_mean_sliding(double omega_1, double u, double g_alpha, ts_workings *workings);
double ts_mean_rolling(double omega_1, double u, double g_alpha, double r_w1, double alpha_wt,
                       ts_workings *workings);
/* P_S = f F_bt V_s. */
double ts_sliding_power(double f, double F_bt, double V_s, ts_workings *workings);
/* h and P_R: what drawing the oil into the contact takes. */
double ts_rolling_film(double V_T, double eta_oil, double w, double rho_redC,
                       ts_workings *workings);
double ts_rolling_power(double h, double V_T, double b, ts_workings *workings);

#endif
