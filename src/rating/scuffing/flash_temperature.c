/* rating/scuffing/flash_temperature.c: how hot do two flanks get where they touch? */
#include "rating/scuffing/flash_temperature.h"

#include "element/hertz.h"

#include <math.h>
#include <stdbool.h>

static const double pi = 3.14159265358979323846;

#define ISO_20 "ISO/TS 6336-20:2017, flash temperature (from memory)"

static const ts_formula X_Gamma_formula = {
    .symbol  = "X_Gamma",
    .meaning = "load sharing factor",
    .unit    = "1",
    .text    = "X_bare + r_1*X_tip1 + r_2*X_tip2",
    .source  = "ISO/TS 6336-20:2017, load sharing factor (from memory)",
};
static const ts_formula w_y_formula = {
    .symbol  = "w_y",
    .meaning = "load that the pair of teeth carries, per length of contact",
    .unit    = "N/m",
    .text    = "X_Gamma*w_n",
    .source  = ISO_20,
};
static const ts_formula b_H_formula = {
    .symbol  = "b_H",
    .meaning = "half width of the band of contact",
    .unit    = "m",
    .text    = "sqrt(8*w_y*rho_n/(pi*E_r))",
    .source  = ISO_20,
};
static const ts_formula p_H_formula = {
    .symbol  = "p_H",
    .meaning = "greatest pressure across the contact",
    .unit    = "Pa",
    .text    = "sqrt(w_y*E_r/(2*pi*rho_n))",
    .source  = "K. L. Johnson, Contact Mechanics (1985), 4.2 (from memory)",
};
static const ts_formula v_g1_formula = {
    .symbol  = "v_g1",
    .meaning = "surface speed of gear 1",
    .unit    = "m/s",
    .text    = "omega_1*rho_y1",
    .source  = ISO_20,
};
static const ts_formula v_g2_formula = {
    .symbol  = "v_g2",
    .meaning = "surface speed of gear 2",
    .unit    = "m/s",
    .text    = "omega_1*rho_y2/u",
    .source  = ISO_20,
};
static const ts_formula X_J_formula = {
    .symbol  = "X_J",
    .meaning = "approach factor",
    .unit    = "1",
    .text    = "1 + C_over/50e-6*(abs(Gamma)/(Gamma_E - Gamma_A))^3",
    .source  = "ISO/TS 6336-20:2017, approach factor (from memory)",
};
static const ts_formula theta_fl_formula = {
    .symbol  = "theta_fl",
    .meaning = "flash temperature, above the bulk",
    .unit    = TS_UNIT_DIFFERENCE,
    .text    = "1.11*mu_m*X_J*w_y*abs(v_g1 - v_g2)/((B_M1*sqrt(v_g1) + "
               "B_M2*sqrt(v_g2))*sqrt(2*b_H))",
    .source  = ISO_20,
};
static const ts_formula theta_flm_formula = {
    .symbol  = "theta_flm",
    .meaning = "flash temperature, mean over the path of contact",
    .unit    = TS_UNIT_DIFFERENCE,
    .text    = "sum(share*theta_fly)/(Gamma_E - Gamma_A)",
    .source  = "ISO/TS 6336-20:2017, bulk temperature (from memory); the mean is that of trapezia",
};

/* sqrt(2 b_H) is (32 rho_n/(pi E_r))^(1/4) w^(1/4); the surface speeds are omega_1 times the
 * squares of the roots. */
static void prepare_points(ts_flash_prepared *prepared, int driver)
{
    const ts_flank_path *path = &prepared->path;
    const double         way  = path->Gamma_E - path->Gamma_A;

    for (int i = 0; i < TS_FLANK_POINTS; i++) {
        const double root_1 = path->root_1[i], root_2 = path->root_2[i], rho_n = path->rho_n[i];
        const double Gamma = path->Gamma[i];
        const double slide = fabs(root_1 - root_2) * (root_1 + root_2) /
                             (prepared->B_M1 * root_1 + prepared->B_M2 * root_2);
        const double width    = sqrt(sqrt(32.0 * rho_n / (pi * prepared->E_r)));
        const bool   entering = driver == 1 ? Gamma < 0.0 : Gamma > 0.0;
        const double from_C   = entering ? fabs(Gamma) / way : 0.0;

        prepared->heat[i]     = slide / width;
        prepared->pressure[i] = sqrt(prepared->E_r / (2.0 * pi * rho_n));
        prepared->approach[i] = from_C * from_C * from_C;
    }
}

void ts_flash_prepare(const ts_cylindrical_pair *pair, const ts_flash_body body[2], int grade,
                      int driver, ts_flash_prepared *prepared, ts_workings *workings)
{
    prepared->pair  = pair;
    prepared->grade = grade;
    ts_flank_path_lay(pair, &prepared->path, workings);
    if (prepared->path.missing != NULL)
        return;
    ts_load_share_lay(pair, &prepared->path, grade, &prepared->share);
    prepared->E_r  = ts_reduced_modulus(body[0].E, body[0].nu, body[1].E, body[1].nu, workings);
    prepared->B_M1 = body[0].B_M;
    prepared->B_M2 = body[1].B_M;
    prepare_points(prepared, driver);
}

/* ---- one load case --------------------------------------------------------------------------- */

static void heat_points(const ts_flash_prepared *prepared, const ts_flash_load *load,
                        ts_flash *flash)
{
    const ts_load_share *share = &prepared->share;
    const double         w_n = load->w_n, r_1 = load->r_1, r_2 = load->r_2;
    const double         rub  = 1.11 * load->mu_m * sqrt(load->omega_1);
    const double         over = load->C_over / 50e-6;

    for (int i = 0; i < TS_FLANK_POINTS; i++) {
        /* The parts cancel to the last bit at most; a share below 0 would be such a bit. */
        const double X_Gamma =
            fmax(0.0, share->bare[i] + r_1 * share->tip_1[i] + r_2 * share->tip_2[i]);
        const double root = sqrt(X_Gamma * w_n);
        const double X_J  = 1.0 + over * prepared->approach[i];

        flash->X_Gamma[i]  = X_Gamma;
        flash->p_H[i]      = prepared->pressure[i] * root;
        flash->theta_fl[i] = rub * X_J * prepared->heat[i] * root * sqrt(root);
    }
}

static int hottest(const double theta[TS_FLANK_POINTS])
{
    int hot = 0;

    for (int i = 1; i < TS_FLANK_POINTS; i++)
        if (theta[i] > theta[hot])
            hot = i;
    return hot;
}

static void note_share(const ts_flash_prepared *prepared, const ts_flash_load *load,
                       const ts_flash *flash, int point, ts_workings *workings)
{
    const double X_bare = prepared->share.bare[point], r_1 = load->r_1, r_2 = load->r_2;
    const double X_tip1 = prepared->share.tip_1[point], X_tip2 = prepared->share.tip_2[point];

    ts_load_share_note(prepared->pair, &prepared->path, prepared->grade, point, workings);
    if (flash->X_Gamma[point] > 0.0)
        TS_STEP(workings, X_Gamma_formula, flash->X_Gamma[point], X_bare, r_1, X_tip1, r_2, X_tip2);
}

static double note_approach(const ts_flash_prepared *prepared, const ts_flash_load *load, int point,
                            ts_workings *workings)
{
    const double C_over = load->C_over, Gamma = prepared->path.Gamma[point];
    const double Gamma_A = prepared->path.Gamma_A, Gamma_E = prepared->path.Gamma_E;

    if (!(prepared->approach[point] > 0.0)) {
        ts_workings_row(workings, "X_J", 1.0, "1", "the teeth recede here, and do not knock");
        return 1.0;
    }
    return TS_STEP(workings, X_J_formula, 1.0 + C_over / 50e-6 * prepared->approach[point], C_over,
                   Gamma, Gamma_E, Gamma_A);
}

void ts_flash_point_note(const ts_flash_prepared *prepared, const ts_flash_load *load,
                         const ts_flash *flash, int point, ts_workings *workings)
{
    const ts_flank_path *path   = &prepared->path;
    const double         rho_y1 = path->rho_1[point], rho_y2 = path->rho_2[point], u = path->u;
    const double         rho_n = path->rho_n[point], E_r = prepared->E_r, w_n = load->w_n;
    const double X_Gamma = flash->X_Gamma[point], mu_m = load->mu_m, omega_1 = load->omega_1;
    const double B_M1 = prepared->B_M1, B_M2 = prepared->B_M2;

    ts_flank_point_note(prepared->pair, path, point, workings);
    note_share(prepared, load, flash, point, workings);
    const double X_J  = note_approach(prepared, load, point, workings);
    const double w_y  = TS_STEP(workings, w_y_formula, X_Gamma * w_n, X_Gamma, w_n);
    const double v_g1 = TS_STEP(workings, v_g1_formula, omega_1 * rho_y1, omega_1, rho_y1);
    const double v_g2 = TS_STEP(workings, v_g2_formula, omega_1 * rho_y2 / u, omega_1, rho_y2, u);
    if (!(w_y > 0.0)) /* no band of contact to divide by; the flash is 0 */
        return;
    const double b_H =
        TS_STEP(workings, b_H_formula, sqrt(8.0 * w_y * rho_n / (pi * E_r)), w_y, rho_n, E_r);
    TS_STEP(workings, p_H_formula, flash->p_H[point], w_y, E_r, rho_n);
    TS_STEP(workings, theta_fl_formula, flash->theta_fl[point], mu_m, X_J, w_y, v_g1, v_g2, B_M1,
            B_M2, b_H);
}

/* Proved like every step, and shown as one line: thirty points would bury what follows from them.
 */
static double note_mean(const ts_flash_prepared *prepared, const ts_flash *flash, double theta_flm,
                        ts_workings *workings)
{
    ts_workings *const silent = NULL;
    ts_input           inputs[2 * TS_FLANK_POINTS + 2];

    ts_workings_row(workings, "theta_flm", theta_flm, TS_UNIT_DIFFERENCE,
                    "sum(share*theta_fl)/(Gamma_E - Gamma_A) of 30 points of the path, each as the "
                    "hottest, ISO/TS 6336-20:2017, bulk temperature (from memory)");
    if (!TS_STEP_NEEDS_INPUTS(silent))
        return theta_flm;
    for (int i = 0; i < TS_FLANK_POINTS; i++) {
        inputs[2 * i]     = (ts_input){"share", prepared->path.length[i]};
        inputs[2 * i + 1] = (ts_input){"theta_fly", flash->theta_fl[i]};
    }
    inputs[2 * TS_FLANK_POINTS]     = (ts_input){"Gamma_A", prepared->path.Gamma_A};
    inputs[2 * TS_FLANK_POINTS + 1] = (ts_input){"Gamma_E", prepared->path.Gamma_E};
    return ts_step_list(silent, &theta_flm_formula, theta_flm, inputs, 2 * TS_FLANK_POINTS + 2);
}

/* Checked builds prove every point, whether it is noted or not. */
static void prove_points(const ts_flash_prepared *prepared, const ts_flash_load *load,
                         const ts_flash *flash)
{
#ifdef TS_CHECKED
    ts_workings *const silent = NULL;

    for (int i = 0; i < TS_FLANK_POINTS; i++)
        ts_flash_point_note(prepared, load, flash, i, silent);
#else
    (void)prepared;
    (void)load;
    (void)flash;
#endif
}

void ts_flash_along(const ts_flash_prepared *prepared, const ts_flash_load *load, ts_flash *flash,
                    ts_workings *workings)
{
    heat_points(prepared, load, flash);
    prove_points(prepared, load, flash);
    flash->hot = hottest(flash->theta_fl);
    flash->theta_flm =
        note_mean(prepared, flash, ts_flank_path_mean(&prepared->path, flash->theta_fl), workings);
    if (workings != NULL)
        ts_flash_point_note(prepared, load, flash, flash->hot, workings);
    flash->theta_flmax = ts_flank_path_peak(&prepared->path, flash->theta_fl, flash->hot, workings);
}
