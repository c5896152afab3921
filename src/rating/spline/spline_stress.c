/* rating/spline/spline_stress.c: how hard are the teeth, the shaft and the sleeve of an involute
 * spline worked? */
#include "rating/spline/spline_stress.h"

#include <math.h>

#define DUDLEY(what) "Machinery's Handbook, involute splines (after D. W. Dudley 1957), " what

static const double pi = 3.14159265358979323846;

static const ts_formula root_formula = {
    .symbol  = "S_s",
    .meaning = "shear stress under the roots of the shaft",
    .unit    = "Pa",
    .text    = "16*T*D_re*K_a/(pi*(D_re^4 - D_h^4)*K_f)",
    .source  = DUDLEY("(1), (2)"),
};
static const ts_formula pitch_formula = {
    .symbol  = "S_sp",
    .meaning = "shear stress at the pitch line of the teeth",
    .unit    = "Pa",
    .text    = "4*T*K_a*K_m/(D*N*L_e*t*K_f)",
    .source  = DUDLEY("half of the teeth loaded"),
};
static const ts_formula flexible_formula = {
    .symbol  = "S_c",
    .meaning = "pressure on the flanks of a flexible spline",
    .unit    = "Pa",
    .text    = "2*T*K_m*K_a/(D*N*L_e*h*K_w)",
    .source  = DUDLEY("compression (from memory)"),
};
static const ts_formula fixed_formula = {
    .symbol  = "S_c",
    .meaning = "pressure on the flanks of a fixed spline",
    .unit    = "Pa",
    .text    = "2*T*K_m*K_a/(9*D*N*L_e*h*K_f)",
    .source  = DUDLEY("compression (from memory)"),
};
static const ts_formula S_1_formula = {
    .symbol  = "S_1",
    .meaning = "hoop stress of the wedging flanks",
    .unit    = "Pa",
    .text    = "T*tan(alpha_D)/(pi*D*t_w*L_e)",
    .source  = DUDLEY("bursting (from memory)"),
};
static const ts_formula S_2_formula = {
    .symbol  = "S_2",
    .meaning = "hoop stress of the spinning sleeve, at its inside",
    .unit    = "Pa",
    .text    = "rho*n^2/4*((3 + nu)*(D_oi/2)^2 + (1 - nu)*(D_ri/2)^2)",
    .source  = "derived: spinning ring; S. Timoshenko, Theory of Elasticity, article 32",
};
static const ts_formula S_3_formula = {
    .symbol  = "S_3",
    .meaning = "tension by the bending of the teeth",
    .unit    = "Pa",
    .text    = "4*T/(D^2*L_e*Y)",
    .source  = DUDLEY("bursting (from memory)"),
};
static const ts_formula S_t_formula = {
    .symbol  = "S_t",
    .meaning = "bursting stress",
    .unit    = "Pa",
    .text    = "(K_a*K_m*(S_1 + S_3) + S_2)/K_f",
    .source  = DUDLEY("bursting (from memory)"),
};
static const ts_formula slide_formula = {
    .symbol  = "slide",
    .meaning = "way of rubbing in one turn",
    .unit    = "m",
    .text    = "2*D*slope",
    .source  = "derived: a tooth goes to and fro along the other by D times the tilt, each turn",
};
static const ts_formula wear_formula = {
    .symbol  = "h_w",
    .meaning = "worn depth",
    .unit    = "m",
    .text    = "k*pressure*slide*turns",
    .source  = "J. F. Archard, J. Applied Physics 24 (1953), 981",
};

static bool is_loaded(const ts_spline_load *l)
{
    return l->T >= 0.0 && l->N > 0.0 && l->D > 0.0 && l->D_re > l->D_h && l->D_h >= 0.0 &&
           l->L_e > 0.0 && l->t > 0.0 && l->h > 0.0 && l->K_a > 0.0 && l->K_m > 0.0 &&
           l->K_f > 0.0 && l->K_w > 0.0;
}

double ts_spline_root_shear(const ts_spline_load *load, ts_workings *workings)
{
    const double T = load->T, D_re = load->D_re, D_h = load->D_h, K_a = load->K_a, K_f = load->K_f;

    if (!is_loaded(load))
        return NAN;
    const double ring = D_re * D_re * D_re * D_re - D_h * D_h * D_h * D_h;

    return TS_STEP(workings, root_formula, 16.0 * T * D_re * K_a / (pi * ring * K_f), T, D_re, K_a,
                   D_h, K_f);
}

double ts_spline_pitch_shear(const ts_spline_load *load, ts_workings *workings)
{
    const double T = load->T, D = load->D, N = load->N, L_e = load->L_e, t = load->t;
    const double K_a = load->K_a, K_m = load->K_m, K_f = load->K_f;

    if (!is_loaded(load))
        return NAN;
    return TS_STEP(workings, pitch_formula, 4.0 * T * K_a * K_m / (D * N * L_e * t * K_f), T, K_a,
                   K_m, D, N, L_e, t, K_f);
}

double ts_spline_pressure_flexible(const ts_spline_load *load, ts_workings *workings)
{
    const double T = load->T, D = load->D, N = load->N, L_e = load->L_e, h = load->h;
    const double K_a = load->K_a, K_m = load->K_m, K_w = load->K_w;

    if (!is_loaded(load))
        return NAN;
    return TS_STEP(workings, flexible_formula, 2.0 * T * K_m * K_a / (D * N * L_e * h * K_w), T,
                   K_m, K_a, D, N, L_e, h, K_w);
}

double ts_spline_pressure_fixed(const ts_spline_load *load, ts_workings *workings)
{
    const double T = load->T, D = load->D, N = load->N, L_e = load->L_e, h = load->h;
    const double K_a = load->K_a, K_m = load->K_m, K_f = load->K_f;

    if (!is_loaded(load))
        return NAN;
    return TS_STEP(workings, fixed_formula, 2.0 * T * K_m * K_a / (9.0 * D * N * L_e * h * K_f), T,
                   K_m, K_a, D, N, L_e, h, K_f);
}

ts_spline_bursting ts_spline_burst(const ts_spline_load *load, const ts_spline_sleeve *sleeve,
                                   ts_workings *workings)
{
    const double T = load->T, D = load->D, L_e = load->L_e, nu = 0.3;
    const double K_a = load->K_a, K_m = load->K_m, K_f = load->K_f;
    const double alpha_D = sleeve->alpha_D, t_w = sleeve->t_w, Y = sleeve->Y, rho = sleeve->rho;
    const double D_oi = sleeve->D_oi, D_ri = sleeve->D_ri, n = sleeve->n;

    if (!(is_loaded(load) && t_w > 0.0 && Y > 0.0 && D_oi > D_ri && D_ri > 0.0 && rho >= 0.0 &&
          alpha_D > 0.0 && alpha_D < 1.5) ||
        isnan(n))
        return (ts_spline_bursting){NAN, NAN, NAN, NAN};
    const double S_1  = TS_STEP(workings, S_1_formula, T * tan(alpha_D) / (pi * D * t_w * L_e), T,
                                alpha_D, D, t_w, L_e);
    const double ring = (3.0 + nu) * D_oi * D_oi / 4.0 + (1.0 - nu) * D_ri * D_ri / 4.0;
    const double S_2 =
        TS_STEP(workings, S_2_formula, rho * n * n / 4.0 * ring, rho, n, nu, D_oi, D_ri);
    const double S_3 = TS_STEP(workings, S_3_formula, 4.0 * T / (D * D * L_e * Y), T, D, L_e, Y);

    return (ts_spline_bursting){
        .S_1 = S_1,
        .S_2 = S_2,
        .S_3 = S_3,
        .S_t = TS_STEP(workings, S_t_formula, (K_a * K_m * (S_1 + S_3) + S_2) / K_f, K_a, K_m, S_1,
                       S_3, S_2, K_f),
    };
}

double ts_spline_slide(double D, double slope, ts_workings *workings)
{
    if (!(D > 0.0 && slope >= 0.0))
        return NAN;
    return TS_STEP(workings, slide_formula, 2.0 * D * slope, D, slope);
}

double ts_spline_wear_depth(double k, double pressure, double slide, double turns,
                            ts_workings *workings)
{
    if (!(k >= 0.0 && pressure >= 0.0 && slide >= 0.0 && turns >= 0.0))
        return NAN;
    return TS_STEP(workings, wear_formula, k * pressure * slide * turns, k, pressure, slide, turns);
}
