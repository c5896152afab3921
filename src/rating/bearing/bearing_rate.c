/* rating/bearing/bearing_rate.c: does a bearing hold its loads for as long as it must? */
#include "rating/bearing/bearing_rate.h"

#include "element/bearing_geometry.h"
#include "rating/bearing/dynamic_capacity.h"
#include "rating/bearing/least_load.h"
#include "rating/bearing/rolling_life.h"
#include "rating/bearing/static_capacity.h"

#include <math.h>

static const ts_formula L_nmh_formula = {
    .symbol  = "L_nmh",
    .meaning = "modified rating life in time",
    .unit    = "s",
    .text    = "a_1*a_ISO*L_10h",
    .source  = "ISO 281:2007, 9.1 (from memory)",
};
static const ts_formula S_0_formula = {
    .symbol  = "S_0",
    .meaning = "static safety",
    .unit    = "1",
    .text    = "C_0r/P_0",
    .source  = "ISO 76:2006, 8 (from memory)",
};

const char *ts_bearing_fault_says(ts_bearing_fault fault)
{
    static const char *const says[] = {
        [TS_BEARING_FINE]      = "fine",
        [TS_BEARING_BAD_SIZE]  = "bore, outside, pitch diameter and rolling elements do not make a "
                                 "bearing",
        [TS_BEARING_BAD_ANGLE] = "the contact angle has no load factors; they exist for 15 and "
                                 "from 20 to 45 degrees",
        [TS_BEARING_BAD_FORM]  = "only angular contact bearings have a contact angle here",
    };

    return says[fault];
}

static ts_bearing_fault judge(const ts_bearing *bearing)
{
    const ts_bearing_inside *in    = &bearing->inside;
    const double             angle = bearing->alpha * 180.0 / 3.14159265358979323846;

    if (!(bearing->d > 0.0 && bearing->D > bearing->d && bearing->rows >= 1 && bearing->rows <= 8 &&
          in->Z >= 3 && in->D_w > 0.0 && in->D_pw - in->D_w > bearing->d &&
          in->D_pw + in->D_w < bearing->D && in->D_w * in->Z < in->D_pw * 3.2))
        return TS_BEARING_BAD_SIZE;
    if (bearing->form == TS_BEARING_CYLINDRICAL_ROLLER ? !(in->L_we > 0.0)
                                                       : !(in->f_i > 0.5 && in->f_e > 0.5))
        return TS_BEARING_BAD_SIZE;
    if (bearing->form != TS_BEARING_ANGULAR_CONTACT)
        return fabs(bearing->alpha) > 0.0 ? TS_BEARING_BAD_FORM : TS_BEARING_FINE;
    if (fabs(angle - 15.0) <= 1e-9 || (angle >= 20.0 - 1e-9 && angle <= 45.0 + 1e-9))
        return TS_BEARING_FINE;
    return TS_BEARING_BAD_ANGLE;
}

static void prepare_balls(const ts_bearing *bearing, ts_bearing_ability *ability,
                          ts_workings *workings)
{
    const ts_bearing_inside *in  = &bearing->inside;
    ts_ball_set              set = {
                     .i     = bearing->rows,
                     .Z     = in->Z,
                     .D_w   = in->D_w,
                     .alpha = bearing->alpha,
                     .b_m   = TS_BALL_RATING,
    };

    ability->p   = TS_LIFE_BALL;
    ability->f_0 = ts_static_f_0(ability->gamma, workings);
    ability->f_c = set.f_c = ts_ball_f_c(ability->gamma, in->f_i, in->f_e, TS_BALL_LEVEL, workings);
    ability->C_r           = ts_ball_capacity(&set, isnan(bearing->C_r) ? workings : NULL);
    ability->C_0r          = ts_ball_static_capacity(ability->f_0, bearing->rows, in->Z, in->D_w,
                                                     bearing->alpha, isnan(bearing->C_0r) ? workings : NULL);
}

static void prepare_rollers(const ts_bearing *bearing, ts_bearing_ability *ability,
                            ts_workings *workings)
{
    const ts_bearing_inside *in  = &bearing->inside;
    ts_roller_set            set = {
                   .i    = bearing->rows,
                   .Z    = in->Z,
                   .D_we = in->D_w,
                   .L_we = in->L_we,
                   .b_m  = TS_ROLLER_RATING,
    };
    const ts_static_rollers rollers = {
        .i = bearing->rows, .Z = in->Z, .D_we = in->D_w, .L_we = in->L_we, .D_pw = in->D_pw};

    ability->p   = TS_LIFE_ROLLER;
    ability->f_0 = NAN;
    ability->f_c = set.f_c = ts_roller_f_c(ability->gamma, workings);
    ability->C_r           = ts_roller_capacity(&set, isnan(bearing->C_r) ? workings : NULL);
    ability->C_0r = ts_roller_static_capacity(&rollers, isnan(bearing->C_0r) ? workings : NULL);
}

/* Of forms whose factors no load changes: rollers, and contact angles from 20 degrees. */
static ts_load_factors lasting_factors(const ts_bearing *bearing)
{
    if (bearing->form == TS_BEARING_CYLINDRICAL_ROLLER)
        return ts_cylindrical_roller_factors();
    /* At 15 degrees it does; without a relative axial load there are then no factors. */
    return bearing->form == TS_BEARING_ANGULAR_CONTACT
               ? ts_angular_contact_factors(bearing->alpha, bearing->rows, NAN, NULL)
               : (ts_load_factors){.e = NAN};
}

ts_bearing_fault ts_bearing_prepare(const ts_bearing *bearing, ts_bearing_ability *ability,
                                    ts_workings *workings)
{
    const ts_bearing_fault fault  = judge(bearing);
    const bool             roller = bearing->form == TS_BEARING_CYLINDRICAL_ROLLER;

    if (fault != TS_BEARING_FINE)
        return fault;
    ability->d_m = ts_bearing_mean_diameter(bearing->d, bearing->D, workings);
    ability->gamma =
        ts_bearing_gamma(bearing->inside.D_w, bearing->inside.D_pw, bearing->alpha, workings);
    /* What a maker states is not told twice. */
    if (roller)
        prepare_rollers(bearing, ability, workings);
    else
        prepare_balls(bearing, ability, workings);
    if (!isnan(bearing->C_r))
        ability->C_r = bearing->C_r;
    if (!isnan(bearing->C_0r))
        ability->C_0r = bearing->C_0r;
    if (!(ability->C_r > 0.0 && ability->C_0r > 0.0))
        return TS_BEARING_BAD_SIZE;
    ability->C_u = ts_fatigue_load_limit(roller ? TS_ROLLING_ROLLERS : TS_ROLLING_BALLS,
                                         ability->C_0r, bearing->inside.D_pw, workings);
    ability->still   = ts_bearing_static_factors(bearing);
    ability->factors = lasting_factors(bearing);
    ability->room    = ts_dirt_room_of(bearing->inside.D_pw);
    return TS_BEARING_FINE;
}

/* ---- one duty -------------------------------------------------------------------------------- */

static ts_load_factors factors_of(const ts_bearing *bearing, const ts_bearing_ability *ability,
                                  double F_a, ts_workings *workings)
{
    if (bearing->form == TS_BEARING_CYLINDRICAL_ROLLER ||
        (workings == NULL && !isnan(ability->factors.e)))
        return ability->factors;
    const double relative = ts_relative_axial_load(ability->f_0, F_a, ability->C_0r, workings);

    if (bearing->form == TS_BEARING_DEEP_GROOVE)
        return ts_deep_groove_factors(relative, workings);
    /* The table's number is f_0 i F_a/C_0r, C_0r that of the set. */
    return ts_angular_contact_factors(bearing->alpha, bearing->rows, relative * bearing->rows,
                                      workings);
}

ts_static_factors ts_bearing_static_factors(const ts_bearing *bearing)
{
    switch (bearing->form) {
    case TS_BEARING_ANGULAR_CONTACT:
        return ts_static_angular_contact(bearing->alpha, bearing->rows);
    case TS_BEARING_CYLINDRICAL_ROLLER:
        return (ts_static_factors){1.0, 0.0};
    case TS_BEARING_DEEP_GROOVE:
    case TS_BEARING_FORM_COUNT:
        break;
    }
    return ts_static_deep_groove();
}

static void modify_life(const ts_bearing *bearing, const ts_bearing_ability *ability,
                        const ts_bearing_duty *duty, const ts_bearing_want *want,
                        ts_duty_rating *rating, ts_workings *workings)
{
    const double             D_pw = bearing->inside.D_pw;
    const ts_rolling_element element =
        bearing->form == TS_BEARING_CYLINDRICAL_ROLLER ? TS_ROLLING_ROLLERS : TS_ROLLING_BALLS;
    const double a_1 = ts_reliability_factor(want->S, workings);

    rating->kappa =
        ts_viscosity_ratio(duty->nu, ts_reference_viscosity(duty->n, D_pw, workings), workings);
    rating->e_C = want->e_C;
    if (isnan(rating->e_C))
        rating->e_C = ts_contamination_in(&ability->room, want->cleanness, rating->kappa, workings);
    const double q     = ts_fatigue_load_share(rating->e_C, ability->C_u, rating->P, workings);
    const double a_ISO = ts_life_modification(element, rating->kappa, q, workings);
    const double L_10h = rating->L_10h;

    rating->a_ISO = a_ISO;
    if (!isnan(a_1 * a_ISO))
        rating->L_nmh = TS_STEP(workings, L_nmh_formula, a_1 * a_ISO * L_10h, a_1, a_ISO, L_10h);
}

double ts_bearing_duty_load(const ts_bearing *bearing, const ts_bearing_ability *ability,
                            const ts_bearing_duty *duty)
{
    const ts_load_factors factors = factors_of(bearing, ability, duty->F_a, NULL);

    return ts_bearing_load(&factors, duty->F_r, duty->F_a, NULL);
}

double ts_bearing_basic_life(const ts_bearing *bearing, const ts_bearing_ability *ability,
                             const ts_bearing_duty *duty)
{
    const double P = ts_bearing_duty_load(bearing, ability, duty);

    if (isnan(P))
        return NAN;
    if (!(P > 0.0 && duty->n > 0.0))
        return INFINITY;
    return ts_life_in_time(ts_basic_life(ability->C_r, P, ability->p, NULL), duty->n, NULL);
}

ts_duty_rating ts_bearing_duty_rate(const ts_bearing *bearing, const ts_bearing_ability *ability,
                                    const ts_bearing_duty *duty, const ts_bearing_want *want,
                                    ts_workings *workings)
{
    const bool            roller  = bearing->form == TS_BEARING_CYLINDRICAL_ROLLER;
    const ts_load_factors factors = factors_of(bearing, ability, duty->F_a, workings);
    ts_duty_rating        rating  = {.kappa  = NAN,
                                     .e_C    = NAN,
                                     .a_ISO  = NAN,
                                     .L_10h  = INFINITY,
                                     .L_nmh  = INFINITY,
                                     .S_0    = INFINITY,
                                     .within = factors.within};

    rating.P          = ts_bearing_load(&factors, duty->F_r, duty->F_a, workings);
    rating.P_0        = ts_static_load(ability->still, duty->F_r, duty->F_a, workings);
    const double C_0r = ability->C_0r, P_0 = rating.P_0;
    if (isnan(P_0))
        rating.S_0 = NAN;
    if (P_0 > 0.0)
        rating.S_0 = TS_STEP(workings, S_0_formula, C_0r / P_0, C_0r, P_0);
    rating.n_dm             = ts_bearing_speed_number(duty->n, ability->d_m, workings);
    rating.F_rmin           = ts_least_load_share(roller ? 0.02 : 0.01, ability->C_r, workings);
    rating.outside_life_law = rating.P > ability->C_r / 2.0;
    if (isnan(rating.P))
        rating.L_10h = rating.L_nmh = NAN;
    if (!(rating.P > 0.0 && duty->n > 0.0))
        return rating;
    rating.L_10h = ts_life_in_time(ts_basic_life(ability->C_r, rating.P, ability->p, workings),
                                   duty->n, workings);
    rating.L_nmh = NAN;
    if (duty->nu > 0.0)
        modify_life(bearing, ability, duty, want, &rating, workings);
    return rating;
}

/* ---- all duties ------------------------------------------------------------------------------ */

typedef struct sum_of_harm {
    double time, basic, modified;
} sum_of_harm;

static void add_duty(ts_bearing_rating *all, const ts_duty_rating *one, double n, int j)
{
    if (one->S_0 < all->S_0) {
        all->S_0          = one->S_0;
        all->worst_static = j;
    }
    if (n > 0.0 && one->P / one->F_rmin < all->slip) {
        all->slip       = one->P / one->F_rmin;
        all->worst_slip = j;
    }
    all->n_dm = fmax(all->n_dm, one->n_dm);
}

ts_bearing_rating ts_bearing_rate(const ts_bearing *bearing, const ts_bearing_ability *ability,
                                  const ts_bearing_duty *duties, int count,
                                  const ts_bearing_want *want, ts_duty_rating *ratings)
{
    ts_bearing_rating all = {
        .S_0 = INFINITY, .slip = INFINITY, .worst_life = -1, .worst_static = -1, .worst_slip = -1};
    sum_of_harm sum  = {0.0, 0.0, 0.0};
    double      most = 0.0;

    for (int j = 0; j < count; j++) {
        const ts_duty_rating one  = ts_bearing_duty_rate(bearing, ability, &duties[j], want, NULL);
        const double         harm = duties[j].t > 0.0 ? duties[j].t / one.L_10h : 0.0;

        add_duty(&all, &one, duties[j].n, j);
        sum.time += duties[j].t;
        sum.basic += harm;
        sum.modified += duties[j].t > 0.0 ? duties[j].t / one.L_nmh : 0.0;
        if (harm > most) {
            most           = harm;
            all.worst_life = j;
        }
        if (ratings != NULL)
            ratings[j] = one;
    }
    all.L_10h = all.L_nmh = NAN;
    if (sum.time > 0.0) {
        all.L_10h = sum.time / sum.basic;
        all.L_nmh = sum.time / sum.modified;
    }
    return all;
}
