/* rating/spline/spline_factor.c: which factors does the practice of splines put on their stress? */
#include "rating/spline/spline_stress.h"

#include "base/table_line.h"

#include <math.h>

#define TABLES "Machinery's Handbook, involute splines, tables 7 to 10 (after D. W. Dudley 1957)"

/* Straight between the columns with both scales logarithmic. */
static double between_logs(const double *x, const double *y, size_t count, double at)
{
    double ln_y[16];

    if (!(at > 0.0 && at < 1e30))
        return NAN;
    for (size_t i = 0; i < count; i++)
        ln_y[i] = log(y[i]);
    return exp(ts_table_between(x, ln_y, count, log10(at)));
}

double ts_spline_fatigue_factor(double torque_cycles, bool reversed, ts_workings *workings)
{
    static const double decades[] = {3, 4, 5, 6, 7};
    static const double one_way[] = {1.8, 1.0, 0.5, 0.4, 0.3};
    static const double both[]    = {1.8, 1.0, 0.4, 0.3, 0.2};
    const double        K_f = between_logs(decades, reversed ? both : one_way, 5, torque_cycles);

    ts_workings_row(workings, "K_f", K_f, "1", TABLES ", by torque cycles");
    return K_f;
}

double ts_spline_wear_factor(double revolutions, ts_workings *workings)
{
    static const double decades[] = {4, 5, 6, 7, 8, 9, 10};
    static const double factors[] = {4.0, 2.8, 2.0, 1.4, 1.0, 0.7, 0.5};
    const double        K_w       = between_logs(decades, factors, 7, revolutions);

    ts_workings_row(workings, "K_w", K_w, "1", TABLES ", by revolutions");
    return K_w;
}

double ts_spline_misalignment_factor(double L_e, double slope, ts_workings *workings)
{
    static const double lengths[]  = {0.5 * 0.0254, 0.0254, 2.0 * 0.0254, 4.0 * 0.0254};
    static const double slopes[]   = {0.0, 0.001, 0.002, 0.004, 0.008};
    static const double rows[5][4] = {
        {1.0, 1.0, 1.0, 1.0}, {1.0, 1.0, 1.0, 1.5}, {1.0, 1.0, 1.5, 2.0},
        {1.0, 1.5, 2.0, 2.5}, {1.5, 2.0, 2.5, 3.0},
    };
    double at_length[5];

    if (!(L_e > 0.0 && slope >= 0.0))
        return NAN;
    for (int i = 0; i < 5; i++)
        at_length[i] = ts_table_between(lengths, rows[i], 4, L_e);
    const double K_m = ts_table_between(slopes, at_length, 5, slope);

    ts_workings_row(workings, "K_m", K_m, "1", TABLES ", by misalignment and length");
    return K_m;
}

double ts_spline_application_factor(ts_spline_source source, ts_workings *workings)
{
    static const double factors[] = {1.0, 1.2, 1.5, 1.8};
    const double        K_a       = factors[source];

    ts_workings_row(workings, "K_a", K_a, "1", TABLES ", turbine or electric motor");
    return K_a;
}
