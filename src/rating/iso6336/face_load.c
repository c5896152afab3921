/* rating/iso6336/face_load.c: what does a mesh out of parallel cost? */
#include "rating/iso6336/face_load.h"

#include "rating/iso6336/gear_step.h"

#include <math.h>

/* ISO 6336-1:2006, table of B_1 and B_2 (from memory). */
static const struct {
    double B_1, B_2;
    bool   eases_ends;
} lead_designs[TS_LEAD_DESIGN_COUNT] = {
    [TS_LEAD_STRAIGHT] = {1.0, 1.0, false},         [TS_LEAD_CROWNED] = {1.0, 0.5, true},
    [TS_LEAD_CROWNED_WELL] = {0.5, 0.5, true},      [TS_LEAD_CORRECTED] = {0.1, 1.0, false},
    [TS_LEAD_CORRECTED_CROWNED] = {0.1, 0.5, true}, [TS_LEAD_END_RELIEF] = {0.7, 0.7, true},
};

bool ts_lead_design_eases_ends(ts_lead_design lead)
{
    return lead_designs[lead].eases_ends;
}

#define TABLE ISO_6336_1 "7.5, table of lead modifications (from memory)"

static const ts_formula F_betax_formula = {
    .symbol  = "F_betax",
    .meaning = "misalignment of the mesh before running in",
    .unit    = "m",
    .text    = "max(1.33*B_1*f_sh + B_2*f_ma, 5e-12*F_mb)",
    .source  = ISO_6336_1 "7.5" RECALLED,
};

/* 0.005 um per N/mm is 5e-12 m per N/m. */
double ts_mesh_misalignment(double f_sh, double f_ma, ts_lead_design lead, double F_mb,
                            ts_workings *workings)
{
    const double B_1 = lead_designs[lead].B_1, B_2 = lead_designs[lead].B_2;
    const double made = 1.33 * B_1 * f_sh + B_2 * f_ma;

    TS_ROW(workings, "B_1", B_1, "1", TABLE);
    TS_ROW(workings, "B_2", B_2, "1", TABLE);
    /* fmax would pass over a NaN. */
    const double F_betax = isnan(made) ? made : fmax(made, 5e-12 * F_mb);
    if (isnan(F_betax))
        return NAN;
    return TS_STEP(workings, F_betax_formula, F_betax, B_1, f_sh, B_2, f_ma, F_mb);
}

static const ts_formula f_sh_formula = {
    .symbol  = "f_sh",
    .meaning = "deflection of pinion and shaft over the face width",
    .unit    = "m",
    .text    = "F_mb*0.023e-9*(abs(B_s + K_p*l*s/d_1^2*(d_1/d_sh)^4 - 0.3) + 0.3)*(b/d_1)^2",
    .source  = ISO_6336_1 "7.5" RECALLED,
};

/* 0.023 um mm/N is 0.023e-9 m2/N. */
double ts_shaft_deflection(const ts_shaft_deflection_input *in, ts_workings *workings)
{
    const double F_mb = in->F_mb, b = in->b, d_1 = in->d_1, d_sh = in->d_sh, l = in->l, s = in->s;
    const double K_p = in->K_p, B_s = in->B_s;
    const double thick = d_1 / d_sh, slim = b / d_1;
    const double bend = K_p * l * s / (d_1 * d_1) * ((thick * thick) * (thick * thick));

    return TS_STEP(workings, f_sh_formula,
                   F_mb * 0.023e-9 * (fabs(B_s + bend - 0.3) + 0.3) * (slim * slim), F_mb, b, d_1,
                   d_sh, l, s, K_p, B_s);
}

static const ts_formula F_betay_formula = {
    .symbol  = "F_betay",
    .meaning = "misalignment of the mesh after running in",
    .unit    = "m",
    .text    = "F_betax - y_beta",
    .source  = ISO_6336_1 "7.4.2" RECALLED,
};

double ts_misalignment_run_in(double F_betax, double y_beta, ts_workings *workings)
{
    return TS_STEP(workings, F_betay_formula, F_betax - y_beta, F_betax, y_beta);
}

static const ts_formula whole_face_formula = {
    .symbol  = "K_Hbeta",
    .meaning = "face load factor (contact), the whole face carries",
    .unit    = "1",
    .text    = "1 + F_betay*c_gamma_beta/(2*F_mb)",
    .source  = ISO_6336_1 "7.4.1" RECALLED,
};
static const ts_formula part_face_formula = {
    .symbol  = "K_Hbeta",
    .meaning = "face load factor (contact), a part of the face carries",
    .unit    = "1",
    .text    = "sqrt(2*F_betay*c_gamma_beta/F_mb)",
    .source  = ISO_6336_1 "7.4.1" RECALLED,
};

double ts_face_load_contact(double F_betay, double c_gamma_beta, double F_mb, ts_workings *workings)
{
    const double gap = F_betay * c_gamma_beta / (2.0 * F_mb);

    if (gap >= 1.0)
        return TS_STEP(workings, part_face_formula, sqrt(2.0 * F_betay * c_gamma_beta / F_mb),
                       F_betay, c_gamma_beta, F_mb);
    return TS_STEP(workings, whole_face_formula, 1.0 + gap, F_betay, c_gamma_beta, F_mb);
}

static const ts_formula N_F_formula = {
    .symbol  = "N_F",
    .meaning = "exponent of the face load factor (bending)",
    .unit    = "1",
    .text    = "1/(1 + 1/max(3, min(b_1/h_t1, b_2/h_t2)) + 1/max(3, min(b_1/h_t1, b_2/h_t2))^2)",
    .source  = ISO_6336_1 "7.6" RECALLED,
};
static const ts_formula K_Fbeta_formula = {
    .symbol  = "K_Fbeta",
    .meaning = "face load factor (bending)",
    .unit    = "1",
    .text    = "K_Hbeta^N_F",
    .source  = ISO_6336_1 "7.6" RECALLED,
};

double ts_face_load_exponent(double b_1, double h_t1, double b_2, double h_t2,
                             ts_workings *workings)
{
    const double slender = fmax(3.0, fmin(b_1 / h_t1, b_2 / h_t2));

    return TS_STEP(workings, N_F_formula, 1.0 / (1.0 + 1.0 / slender + 1.0 / (slender * slender)),
                   b_1, h_t1, b_2, h_t2);
}

double ts_face_load_bending(double K_Hbeta, double N_F, ts_workings *workings)
{
    return TS_STEP(workings, K_Fbeta_formula, pow(K_Hbeta, N_F), K_Hbeta, N_F);
}
