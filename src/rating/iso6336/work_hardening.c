/* rating/iso6336/work_hardening.c: what does a soft gear gain from a hard mate? */
#include "rating/iso6336/work_hardening.h"

#include "rating/iso6336/gear_step.h"

#include <math.h>

static const ts_formula R_zH_formula = {
    .symbol  = "R_zH",
    .meaning = "equivalent roughness of the hard flank",
    .unit    = "m",
    .text    = "min(16e-6, max(3e-6, R_zhard*(0.01/rho_red)^0.33*(R_zhard/R_zsoft)^0.66"
               "/(v*nu_40*1e6/1500)^0.33))",
    .source  = ISO_6336_2 "13.2" RECALLED,
};
static const ts_formula Z_W_formula = {
    .symbol  = "Z_W",
    .meaning = "work hardening factor",
    .unit    = "1",
    .text    = "(1.2 - (min(470, max(130, HB)) - 130)/1700)*(3e-6/R_zH)^0.15",
    .source  = ISO_6336_2 "13.2" RECALLED,
};
static const ts_formula Z_W_stat_formula = {
    .symbol  = "Z_Wstat",
    .meaning = "work hardening factor at static strength",
    .unit    = "1",
    .text    = "1.05 - (min(470, max(130, HB)) - 130)/6800",
    .source  = ISO_6336_2 "13.2 (from memory; 6800 because the line must end at 1)",
};
static const ts_formula A_W_formula = {
    .symbol  = "A_W",
    .meaning = "constant of the work hardening factor",
    .unit    = "1",
    .text    = "0.00898*min(1.7, HB_ratio) - 0.00829",
    .source  = ISO_6336_2 "13.3" RECALLED,
};
static const ts_formula Z_W_through_formula = {
    .symbol  = "Z_W",
    .meaning = "work hardening factor",
    .unit    = "1",
    .text    = "1 + A_W*(min(20, u_teeth) - 1)",
    .source  = ISO_6336_2 "13.3" RECALLED,
};

double ts_equivalent_roughness(const ts_work_hardening_input *in, ts_workings *workings)
{
    const double R_zhard = in->R_zhard, R_zsoft = in->R_zsoft, rho_red = in->rho_red;
    const double v = in->v, nu_40 = in->nu_40;
    const double R_zH = R_zhard * pow(0.01 / rho_red, 0.33) * pow(R_zhard / R_zsoft, 0.66) /
                        pow(v * nu_40 * 1e6 / 1500.0, 0.33);

    return TS_STEP(workings, R_zH_formula, fmin(16e-6, fmax(3e-6, R_zH)), R_zhard, R_zsoft, rho_red,
                   v, nu_40);
}

static double above_130(double HB)
{
    return fmin(470.0, fmax(130.0, HB)) - 130.0;
}

double ts_work_hardening_surface(double HB, double R_zH, ts_workings *workings)
{
    return TS_STEP(workings, Z_W_formula, (1.2 - above_130(HB) / 1700.0) * pow(3e-6 / R_zH, 0.15),
                   HB, R_zH);
}

double ts_work_hardening_surface_static(double HB, ts_workings *workings)
{
    return TS_STEP(workings, Z_W_stat_formula, 1.05 - above_130(HB) / 6800.0, HB);
}

double ts_work_hardening_through(double HB_ratio, double u, ts_workings *workings)
{
    const double u_teeth = u;

    if (HB_ratio < 1.2)
        return 1.0;
    const double A_W =
        TS_STEP(workings, A_W_formula, 0.00898 * fmin(1.7, HB_ratio) - 0.00829, HB_ratio);
    return TS_STEP(workings, Z_W_through_formula, 1.0 + A_W * (fmin(20.0, u_teeth) - 1.0), A_W,
                   u_teeth);
}
