/* rating/bearing/life_modification.c: how do oil film, dirt and wanted reliability change the life?
 */
#include "rating/bearing/life_modification.h"

#include <math.h>

#define ISO_281(what) "ISO 281:2007, " what " (from memory)"

static const double pi = 3.14159265358979323846;

static const ts_formula a_1_formula = {
    .symbol  = "a_1",
    .meaning = "life factor for reliability",
    .unit    = "1",
    .text    = "0.05 + 0.95*(ln(1/S)/ln(1/0.9))^(1/1.5)",
    .source  = "ISO/TR 1281-2:2008, the Weibull law behind ISO 281, table 12 (from memory)",
};
static const ts_formula slow_formula = {
    .symbol  = "nu_1",
    .meaning = "reference viscosity",
    .unit    = "m2/s",
    .text    = "1e-6*45000*(n*30/pi)^-0.83*(1000*D_pw)^-0.5",
    .source  = ISO_281("9.3.3.1.2, below 1000 rpm"),
};
static const ts_formula fast_formula = {
    .symbol  = "nu_1",
    .meaning = "reference viscosity",
    .unit    = "m2/s",
    .text    = "1e-6*4500*(n*30/pi)^-0.5*(1000*D_pw)^-0.5",
    .source  = ISO_281("9.3.3.1.2, from 1000 rpm"),
};
static const ts_formula kappa_formula = {
    .symbol  = "kappa",
    .meaning = "viscosity ratio",
    .unit    = "1",
    .text    = "nu/nu_1",
    .source  = ISO_281("9.3.3.1.1"),
};
static const ts_formula C_u_small_formula = {
    .symbol  = "C_u",
    .meaning = "fatigue load limit",
    .unit    = "N",
    .text    = "C_0r/divisor",
    .source  = ISO_281("B.3.3, pitch diameter up to 100 mm; divisor 22 for balls, 8.2 for rollers"),
};
static const ts_formula C_u_large_formula = {
    .symbol  = "C_u",
    .meaning = "fatigue load limit",
    .unit    = "N",
    .text    = "C_0r/divisor*(0.1/D_pw)^fall",
    .source  = ISO_281("B.3.3, pitch diameter above 100 mm; fall 0.5 for balls, 0.3 for rollers"),
};
static const ts_formula a_formula = {
    .symbol  = "a_film",
    .meaning = "part of film and size in the contamination factor",
    .unit    = "1",
    .text    = "min(1, a_c*min(kappa, 4)^0.68*(1000*D_pw)^0.55)",
    .source  = ISO_281("annex A"),
};
static const ts_formula e_C_formula = {
    .symbol  = "e_C",
    .meaning = "contamination factor",
    .unit    = "1",
    .text    = "max(0, a_film*(1 - b/(1000*D_pw)^(1/3)))",
    .source  = ISO_281("annex A"),
};
static const ts_formula q_formula = {
    .symbol  = "q",
    .meaning = "fatigue load limit, dirt counted, over the load",
    .unit    = "1",
    .text    = "e_C*C_u/P",
    .source  = ISO_281("9.3.3.4"),
};
static const ts_formula ball_formula = {
    .symbol  = "a_ISO",
    .meaning = "life modification factor",
    .unit    = "1",
    .text    = "0.1*(1 - (2.5671 - A/min(kappa, 4)^B)^0.83*q^(1/3))^-9.3",
    .source  = ISO_281("9.3.3.4, radial ball bearings"),
};
static const ts_formula roller_formula = {
    .symbol  = "a_ISO",
    .meaning = "life modification factor",
    .unit    = "1",
    .text    = "0.1*(1 - (1.5859 - A/min(kappa, 4)^B)*q^0.4)^-9.185",
    .source  = ISO_281("9.3.3.4, radial roller bearings"),
};

double ts_reliability_factor(double S, ts_workings *workings)
{
    if (!(S >= 0.9 && S < 1.0))
        return NAN;
    if (workings == NULL && !(S > 0.9)) /* what the law gives there, to the last bit */
        return 1.0;
    const double a_1 = 0.05 + 0.95 * pow(log(1.0 / S) / log(1.0 / 0.9), 1.0 / 1.5);

    return TS_STEP(workings, a_1_formula, a_1, S);
}

double ts_reference_viscosity(double n, double D_pw, ts_workings *workings)
{
    const double rpm = n * 30.0 / pi;

    if (!(n > 0.0 && D_pw > 0.0))
        return NAN;
    /* 1000 rpm given in rad/s may come out a rounding below. */
    if (rpm < 1000.0 * (1.0 - 1e-12))
        return TS_STEP(workings, slow_formula,
                       1e-6 * 45000.0 * pow(rpm, -0.83) / sqrt(1000.0 * D_pw), n, D_pw);
    return TS_STEP(workings, fast_formula, 1e-6 * 4500.0 / sqrt(rpm) / sqrt(1000.0 * D_pw), n,
                   D_pw);
}

double ts_viscosity_ratio(double nu, double nu_1, ts_workings *workings)
{
    if (!(nu > 0.0 && nu_1 > 0.0))
        return NAN;
    return TS_STEP(workings, kappa_formula, nu / nu_1, nu, nu_1);
}

double ts_fatigue_load_limit(ts_rolling_element element, double C_0r, double D_pw,
                             ts_workings *workings)
{
    const double divisor = element == TS_ROLLING_BALLS ? 22.0 : 8.2;
    const double fall    = element == TS_ROLLING_BALLS ? 0.5 : 0.3;

    if (!(C_0r > 0.0 && D_pw > 0.0))
        return NAN;
    ts_workings_row(workings, "divisor", divisor, "1", ISO_281("B.3.3"));
    if (D_pw <= 0.1)
        return TS_STEP(workings, C_u_small_formula, C_0r / divisor, C_0r, divisor);
    ts_workings_row(workings, "fall", fall, "1", ISO_281("B.3.3"));
    return TS_STEP(workings, C_u_large_formula, C_0r / divisor * pow(0.1 / D_pw, fall), C_0r,
                   divisor, D_pw, fall);
}

typedef struct cleanness_row {
    const char *name;
    double      a_c, b; /* D_pw in mm */
} cleanness_row;

/* ISO 281:2007, annex A, from memory. */
static const cleanness_row cleannesses[TS_CLEANNESS_COUNT] = {
    [TS_ON_LINE_13_10]  = {"on line 13/10", 0.0864, 0.5663},
    [TS_ON_LINE_15_12]  = {"on line 15/12", 0.0432, 0.9987},
    [TS_ON_LINE_17_14]  = {"on line 17/14", 0.0288, 1.6329},
    [TS_ON_LINE_19_16]  = {"on line 19/16", 0.0216, 2.3362},
    [TS_OFF_LINE_13_10] = {"off line 13/10", 0.0864, 0.5796},
    [TS_OFF_LINE_15_12] = {"off line 15/12", 0.0288, 1.141},
    [TS_OFF_LINE_17_14] = {"off line 17/14", 0.0133, 1.670},
    [TS_OFF_LINE_19_16] = {"off line 19/16", 0.00864, 2.5164},
    [TS_OFF_LINE_21_18] = {"off line 21/18", 0.00411, 3.8974},
};

const char *ts_cleanness_name(ts_cleanness cleanness)
{
    return cleannesses[cleanness].name;
}

ts_dirt_room ts_dirt_room_of(double D_pw)
{
    const double mm = 1000.0 * D_pw;

    return (ts_dirt_room){.D_pw = D_pw, .power = pow(mm, 0.55), .root = cbrt(mm)};
}

static double contamination(const ts_dirt_room *room, double a_c, double b, double kappa,
                            ts_workings *workings)
{
    const double D_pw = room->D_pw;

    if (!(a_c > 0.0 && b >= 0.0 && kappa > 0.0 && D_pw > 0.0))
        return NAN;
    const double a_film =
        TS_STEP(workings, a_formula, fmin(1.0, a_c * pow(fmin(kappa, 4.0), 0.68) * room->power),
                a_c, kappa, D_pw);

    return TS_STEP(workings, e_C_formula, fmax(0.0, a_film * (1.0 - b / room->root)), a_film, b,
                   D_pw);
}

double ts_contamination_factor(double a_c, double b, double kappa, double D_pw,
                               ts_workings *workings)
{
    const ts_dirt_room room = ts_dirt_room_of(D_pw);

    return contamination(&room, a_c, b, kappa, workings);
}

double ts_contamination_in(const ts_dirt_room *room, ts_cleanness cleanness, double kappa,
                           ts_workings *workings)
{
    const cleanness_row *row = &cleannesses[cleanness];

    ts_workings_row(workings, "a_c", row->a_c, "1", ISO_281("annex A"));
    ts_workings_row(workings, "b", row->b, "1", ISO_281("annex A"));
    return contamination(room, row->a_c, row->b, kappa, workings);
}

double ts_contamination_of(ts_cleanness cleanness, double kappa, double D_pw, ts_workings *workings)
{
    const ts_dirt_room room = ts_dirt_room_of(D_pw);

    return ts_contamination_in(&room, cleanness, kappa, workings);
}

double ts_fatigue_load_share(double e_C, double C_u, double P, ts_workings *workings)
{
    if (!(e_C >= 0.0 && C_u > 0.0 && P > 0.0))
        return NAN;
    return TS_STEP(workings, q_formula, e_C * C_u / P, e_C, C_u, P);
}

typedef struct film_branch {
    double A, B;
} film_branch;

static film_branch branch_at(const film_branch branches[3], double kappa)
{
    return branches[kappa < 0.4 ? 0 : kappa < 1.0 ? 1 : 2];
}

/* Where the bracket falls to 0 the life has no end; the standard stops at 50, which either exponent
 * has passed at a half. */
static double capped(double bracket, double exponent)
{
    return bracket > 0.5 ? fmin(50.0, 0.1 * pow(bracket, exponent)) : 50.0;
}

static double noted(ts_workings *workings, const ts_formula *formula, double a_ISO, film_branch at,
                    double kappa, double q)
{
    const ts_input inputs[] = {{"A", at.A}, {"B", at.B}, {"kappa", kappa}, {"q", q}};

    ts_workings_row(workings, "A", at.A, "1", ISO_281("9.3.3.4, by the range of kappa"));
    ts_workings_row(workings, "B", at.B, "1", ISO_281("9.3.3.4, by the range of kappa"));
    if (a_ISO < 50.0)
        return ts_step_list(workings, formula, a_ISO, inputs, 4);
    ts_workings_row(workings, "a_ISO", 50.0, "1", ISO_281("9.3.3.4, the most that is granted"));
    return 50.0;
}

static const film_branch ball[3]   = {{2.2649, 0.054381}, {1.9987, 0.19087}, {1.9987, 0.071739}};
static const film_branch roller[3] = {{1.3993, 0.054381}, {1.2348, 0.19087}, {1.2348, 0.071739}};

double ts_film_share(ts_rolling_element element, double kappa)
{
    if (!(kappa >= 0.1))
        return NAN;
    const bool        balls = element == TS_ROLLING_BALLS;
    const double      most  = fmin(kappa, 4.0);
    const film_branch at    = branch_at(balls ? ball : roller, most);

    return balls ? pow(2.5671 - at.A / pow(most, at.B), 0.83) : 1.5859 - at.A / pow(most, at.B);
}

double ts_life_with_film(ts_rolling_element element, double film, double q)
{
    return element == TS_ROLLING_BALLS ? capped(1.0 - film * cbrt(q), -9.3)
                                       : capped(1.0 - film * pow(q, 0.4), -9.185);
}

double ts_life_modification(ts_rolling_element element, double kappa, double q,
                            ts_workings *workings)
{
    if (!(kappa >= 0.1 && q >= 0.0))
        return NAN;
    const bool   balls = element == TS_ROLLING_BALLS;
    const double a_ISO = ts_life_with_film(element, ts_film_share(element, kappa), q);

    return noted(workings, balls ? &ball_formula : &roller_formula, a_ISO,
                 branch_at(balls ? ball : roller, fmin(kappa, 4.0)), kappa, q);
}
