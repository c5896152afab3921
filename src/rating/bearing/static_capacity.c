/* rating/bearing/static_capacity.c: which standing load dents a bearing no more than it may? */
#include "rating/bearing/static_capacity.h"

#include "base/table_line.h"

#include <math.h>

#define ISO_76(what) "ISO 76:2006, " what " (from memory)"

static const double degree = 3.14159265358979323846 / 180.0;

static const ts_formula ball_formula = {
    .symbol  = "C_0r",
    .meaning = "basic static capacity",
    .unit    = "N",
    .text    = "1e6*f_0*i*Z*D_w^2*cos(alpha)",
    .source  = ISO_76("5.1"),
};
static const ts_formula roller_formula = {
    .symbol  = "C_0r",
    .meaning = "basic static capacity",
    .unit    = "N",
    .text    = "44e6*(1 - D_we*cos(alpha)/D_pw)*i*Z*L_we*D_we*cos(alpha)",
    .source  = ISO_76("7.1"),
};
static const ts_formula rows_formula = {
    .symbol  = "gain_C0",
    .meaning = "static capacity of the set over that of one bearing",
    .unit    = "1",
    .text    = "i",
    .source  = ISO_76("5.1.2"),
};
static const ts_formula load_formula = {
    .symbol  = "P_0",
    .meaning = "equivalent static load",
    .unit    = "N",
    .text    = "max(F_r, X_0*F_r + Y_0*F_a)",
    .source  = ISO_76("5.2"),
};

/* f_0 at gamma = 0.00, 0.01, ... */
static const double f_0_table[] = {
    14.7, 14.9, 15.1, 15.3, 15.5, 15.7, 15.9, 16.1, 16.3, 16.5, 16.4, 16.1, 15.9, 15.6,
    15.4, 15.2, 14.9, 14.7, 14.4, 14.2, 14.0, 13.7, 13.5, 13.2, 13.0, 12.8, 12.5, 12.3,
    12.1, 11.8, 11.6, 11.4, 11.2, 10.9, 10.7, 10.5, 10.3, 10.0, 9.8,  9.6,  9.4,
};
enum { F_0_STEPS = sizeof f_0_table / sizeof f_0_table[0] - 1 };

double ts_static_f_0(double gamma, ts_workings *workings)
{
    const double steps = gamma * 100.0;

    if (!(steps >= 0.0 && steps <= F_0_STEPS))
        return NAN;
    const size_t below = steps >= F_0_STEPS ? F_0_STEPS - 1 : (size_t)steps;
    const double f_0 =
        f_0_table[below] + (steps - (double)below) * (f_0_table[below + 1] - f_0_table[below]);

    ts_workings_row(workings, "f_0", f_0, "1", ISO_76("table 1 at gamma, straight between rows"));
    return f_0;
}

double ts_ball_static_capacity(double f_0, int rows, int balls, double D_w, double alpha,
                               ts_workings *workings)
{
    const double i = rows, Z = balls;

    if (!(f_0 > 0.0 && i >= 1.0 && Z >= 1.0 && D_w > 0.0 && alpha >= 0.0 && cos(alpha) > 0.0))
        return NAN;
    return TS_STEP(workings, ball_formula, 1e6 * f_0 * i * Z * D_w * D_w * cos(alpha), f_0, i, Z,
                   D_w, alpha);
}

double ts_roller_static_capacity(const ts_static_rollers *rollers, ts_workings *workings)
{
    const double i = rollers->i, Z = rollers->Z, alpha = rollers->alpha;
    const double D_we = rollers->D_we, L_we = rollers->L_we, D_pw = rollers->D_pw;

    if (!(i >= 1.0 && Z >= 1.0 && D_we > 0.0 && L_we > 0.0 && D_pw > D_we && alpha >= 0.0 &&
          cos(alpha) > 0.0))
        return NAN;
    const double slim = 1.0 - D_we * cos(alpha) / D_pw;

    return TS_STEP(workings, roller_formula, 44e6 * slim * i * Z * L_we * D_we * cos(alpha), D_we,
                   alpha, D_pw, i, Z, L_we);
}

double ts_static_rows_gain(double i, ts_workings *workings)
{
    return TS_STEP(workings, rows_formula, i, i);
}

ts_static_factors ts_static_deep_groove(void)
{
    return (ts_static_factors){0.6, 0.5};
}

/* ISO 76:2006, table 2: Y_0 of one bearing; a pair has X_0 = 1 and twice the Y_0. */
ts_static_factors ts_static_angular_contact(double alpha, int rows)
{
    static const double angles[] = {5, 10, 15, 20, 25, 30, 35, 40, 45};
    static const double Y_0[]    = {0.52, 0.50, 0.46, 0.42, 0.38, 0.33, 0.29, 0.26, 0.22};
    const double        at       = alpha / degree;

    if (!(at >= 5.0 - 1e-9 && at <= 45.0 + 1e-9))
        return (ts_static_factors){NAN, NAN};
    const double single = ts_table_between(angles, Y_0, 9, at);

    return rows > 1 ? (ts_static_factors){1.0, 2.0 * single} : (ts_static_factors){0.5, single};
}

double ts_static_load(ts_static_factors factors, double F_r, double F_a, ts_workings *workings)
{
    const double X_0 = factors.X_0, Y_0 = factors.Y_0;

    if (!(F_r >= 0.0 && F_a >= 0.0) || isnan(X_0) || isnan(Y_0))
        return NAN;
    return TS_STEP(workings, load_formula, fmax(F_r, X_0 * F_r + Y_0 * F_a), F_r, X_0, Y_0, F_a);
}
