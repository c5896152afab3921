/* rating/neck_life.c: how likely does a designed neck break too early, or too late? */
#include "rating/neck_life.h"

#include "element/round_torsion.h"
#include "motion/value_note.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

#define N_WEAR  1e6 /* cycles at which the fatigue strength is known */
#define FELT    0.9 /* notch sensitivity of a hard steel */
#define S_LN    0.1 /* scatter of the fatigue strength */
#define SQRT_12 3.46410161513775458705
#define SHIGLEY "R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, chapter 6"
#define FIRST                                                                                      \
    "derived: first order, independent causes; a uniform law spreads by its width/sqrt(12)"

static const ts_formula T_mid_formula = {
    .symbol  = "T_mid",
    .meaning = "middle break torque",
    .unit    = "N.m",
    .text    = "T_el + (y_low + y_high)/2*(T_pl - T_el)",
    .source  = "derived: at the mean of every cause",
};
static const ts_formula cov_formula = {
    .symbol  = "cov",
    .meaning = "coefficient of variation of the break torque",
    .unit    = "1",
    .text    = "sqrt(cov_F^2 + cov_ratio^2 + cov_w^2 + cov_y^2 + cov_K^2 + 3*(tol/d)^2)",
    .source  = FIRST,
};
static const ts_formula felt_formula = {
    .symbol  = "felt",
    .meaning = "notch that T_el holds already: the torque is divided by it",
    .unit    = "1",
    .text    = "(K_ts - 1)/ln(K_ts)",
    .source  = "derived: one over the mean of 1/divisor, uniform from 1 to K_ts",
};
static const ts_formula cov_K_formula = {
    .symbol  = "cov_K",
    .meaning = "coefficient of variation of 1/divisor, of a brittle neck",
    .unit    = "1",
    .text    = "sqrt(felt^2/K_ts - 1)",
    .source  = "derived: the mean of 1/divisor^2 is 1/K_ts, of 1/divisor 1/felt",
};
static const ts_formula K_f_formula = {
    .symbol  = "K_f",
    .meaning = "notch factor that fatigue feels",
    .unit    = "1",
    .text    = "1 + 0.9*(K_ts - 1)",
    .source  = SHIGLEY ", notch sensitivity of hard steels, 0.9 (from memory)",
};
static const ts_formula T_W_formula = {
    .symbol  = "T_W",
    .meaning = "amplitude of torque that half of the necks bear for 1e6 cycles",
    .unit    = "N.m",
    .text    = "T_el*felt*0.577*0.5/(ratio*K_f)",
    .source  = SHIGLEY ": half the tensile strength in bending, 0.577 of that in torsion (read)",
};
static const ts_formula k_formula = {
    .symbol  = "k",
    .meaning = "slope of the fatigue line from 1e3 to 1e6 cycles",
    .unit    = "1",
    .text    = "3*ln(10)/ln(0.9/0.5*K_f)",
    .source  = SHIGLEY ": 0.9 of the tensile strength at 1e3 cycles (from memory)",
};

/* ---- what it is ------------------------------------------------------------------------------ */

static double middle(const ts_spread *spread)
{
    return spread->law == TS_SPREAD_NORMAL ? spread->mean : (spread->low + spread->high) / 2.0;
}

static double deviation(const ts_spread *spread)
{
    return spread->law == TS_SPREAD_NORMAL ? spread->sigma : (spread->high - spread->low) / SQRT_12;
}

/* A brittle neck feels anything from nothing to all of its notch when it breaks: samples divide
 * the torque by what is uniform from 1 to K_ts.  One over the mean of 1/divisor. */
static double felt_at_once(const ts_shear_neck *made)
{
    const double rise = made->K_ts - 1.0;

    return made->brittle && rise > 0.0 ? rise / log1p(rise) : 1.0;
}

/* The difference rounds to a hair below nothing where there is hardly a notch. */
static double cov_of_notch(const ts_shear_neck *made)
{
    const double felt = felt_at_once(made);

    return made->brittle ? sqrt(fmax(0.0, felt * felt / made->K_ts - 1.0)) : 0.0;
}

static double note_notch(const ts_shear_neck *made, double K_ts, ts_workings *workings)
{
    const double felt = felt_at_once(made), cov_K = cov_of_notch(made);

    if (!made->brittle || !(K_ts > 1.0)) {
        ts_workings_row(workings, "felt", felt, "1", "only a brittle neck feels a notch at once");
        ts_workings_row(workings, "cov_K", cov_K, "1", "only a brittle neck feels a notch at once");
        return cov_K;
    }
    (void)TS_STEP(workings, felt_formula, felt, K_ts);
    return TS_STEP(workings, cov_K_formula, cov_K, felt, K_ts);
}

/* Everything at its mean. */
static double middle_torque(const ts_drive_neck *of, double *T_el_out, double *T_pl_out)
{
    const ts_shear_neck *made = &of->made;
    const double         tau  = middle(&made->Ftu) * middle(&made->ratio) * middle(&made->warmth);
    const double         d = middle(&made->d), d_i = middle(&made->d_i);
    const double         felt = felt_at_once(made);

    *T_el_out = ts_torque_elastic(tau, d, d_i, NULL) / felt;
    *T_pl_out = ts_torque_plastic(tau, d, d_i, NULL) / felt;
    return *T_el_out + middle(&made->yielding) * (*T_pl_out - *T_el_out);
}

static void make_of(const ts_drive_neck *of, ts_neck_make *make, ts_workings *workings)
{
    const ts_shear_neck *made = &of->made;
    const double         d = of->neck->diameter.value, tol = of->neck->tolerance.value;
    const double         y_low = made->yielding.low, y_high = made->yielding.high;
    const double         K_ts = of->K_ts, ratio = middle(&made->ratio);
    double               T_el, T_pl;
    const double         found     = middle_torque(of, &T_el, &T_pl);
    const double         cov_F     = deviation(&made->Ftu) / middle(&made->Ftu);
    const double         cov_ratio = deviation(&made->ratio) / ratio;
    const double         cov_w     = deviation(&made->warmth) / middle(&made->warmth);
    const double         cov_y     = deviation(&made->yielding) * (T_pl - T_el) / found;

    ts_workings_row(workings, "T_el", T_el, "N.m", "element/round_torsion.h at the means");
    ts_workings_row(workings, "T_pl", T_pl, "N.m", "element/round_torsion.h at the means");
    ts_workings_row(workings, "ratio", ratio, "1", "the middle of the shear ratio");
    ts_workings_row(workings, "cov_F", cov_F, "1", "of the tensile strength");
    ts_workings_row(workings, "cov_ratio", cov_ratio, "1", "of the shear ratio");
    ts_workings_row(workings, "cov_w", cov_w, "1", "of the strength left at temperature");
    ts_workings_row(workings, "cov_y", cov_y, "1", "of how much of the section yields");
    const double cov_K = note_notch(made, K_ts, workings);
    const double K_f   = TS_STEP(workings, K_f_formula, 1.0 + FELT * (K_ts - 1.0), K_ts);
    make->d_0          = d;
    make->T_mid = TS_STEP(workings, T_mid_formula, T_el + (y_low + y_high) / 2.0 * (T_pl - T_el),
                          T_el, y_low, y_high, T_pl);
    make->cov   = TS_STEP(workings, cov_formula,
                          sqrt(cov_F * cov_F + cov_ratio * cov_ratio + cov_w * cov_w + cov_y * cov_y +
                               cov_K * cov_K + 3.0 * (tol / d * (tol / d))),
                          cov_F, cov_ratio, cov_w, cov_y, cov_K, tol, d);
    /* Fatigue feels the notch once: what the static torque has of it is taken out. */
    const double felt = felt_at_once(made);
    make->T_W  = TS_STEP(workings, T_W_formula, T_el * felt * 0.577 * 0.5 / (ratio * K_f), T_el,
                         felt, ratio, K_f);
    make->k    = TS_STEP(workings, k_formula, 3.0 * log(10.0) / log(0.9 / 0.5 * K_f), K_f);
    make->N_W  = N_WEAR;
    make->s_ln = S_LN;
}

/* ---- what it meets --------------------------------------------------------------------------- */

typedef struct count {
    ts_neck_life *life;
    int           used;
} count;

static void add(count *to, double T_a, double T_m, double cycles)
{
    if (T_a > 0.0 && cycles > 0.0 && to->used < TS_NECK_LIFE_CYCLES)
        to->life->cycles[to->used++] = (ts_neck_cycles){T_a, T_m, cycles};
}

/* The largest number of events of any condition: how often the engine is started.  NaN: no
 * condition says. */
static double starts_of(const ts_drive *drive)
{
    double most = (double)NAN;

    for (size_t c = 0; c < drive->condition_count; c++)
        if (drive->conditions[c].events.standing == TS_GIVEN)
            most = fmax(most, (double)drive->conditions[c].events.value);
    return most;
}

static double torque_in(const ts_select *select, const ts_guard *guard, size_t c)
{
    const ts_power *power = select->teeth->power;
    const ts_train *train = power->motion->train;
    const double    T = guard->pad == TS_NOWHERE ? power->T[c * train->shaft_count + guard->shaft]
                                                 : power->pad[c * train->pad_count + guard->pad].T;
    return isnan(T) ? 0.0 : fabs(T);
}

static int count_cycles(const ts_select *select, const ts_guard *guard, ts_neck_life *life)
{
    const ts_drive  *drive  = select->drive;
    const ts_motion *motion = select->teeth->motion;
    const ts_neck   *neck   = select->necks->items[guard->neck].neck;
    const double     starts = starts_of(drive), ripple = neck->ripple.value;
    const double     swing[3] = {guard->run.T / 2.0, guard->start.T / 2.0, guard->T_over / 2.0};
    const double     times[3] = {starts, starts, starts * neck->overloads.value};
    count            to       = {life, 0};

    for (int i = 0; i < 3; i++)
        add(&to, swing[i], swing[i], times[i]);
    for (size_t c = 0; c < drive->condition_count; c++) {
        const double T     = torque_in(select, guard, c);
        const double omega = motion->speed[c * motion->train->shaft_count + guard->shaft];
        const double t     = ts_condition_seconds(&drive->conditions[c]);

        if (!isnan(omega) && !isnan(t))
            add(&to, ripple * T, T, omega * t / (2.0 * pi));
    }
    return to.used;
}

static void note_cycles(const ts_neck_life *life, ts_workings *workings)
{
    ts_workings_row(workings, "N_W", life->make.N_W, "1", "where the fatigue strength is known");
    for (int i = 0; i < life->duty.cycle_count; i++) {
        const ts_neck_cycles *c = &life->cycles[i];

        ts_workings_row(workings, "n", c->cycles, "1",
                        "starts, overloads, or turns of a condition");
        ts_workings_row(workings, "T_a", c->T_a, "N.m", "half of a swing, or the ripple");
        ts_workings_row(workings, "T_m", c->T_m, "N.m", "the torque about which it swings");
    }
}

/* ---- both ------------------------------------------------------------------------------------ */

void ts_neck_life_of(const ts_select *select, const ts_guard *guard, ts_neck_life *life,
                     ts_workings *workings)
{
    const ts_drive_neck *of = guard->neck == TS_NOWHERE ? NULL : &select->necks->items[guard->neck];

    *life        = (ts_neck_life){.missing = NULL};
    life->chance = (ts_neck_chance){NAN, NAN, NAN, NAN, NAN};
    if (of == NULL || !of->designed)
        life->missing = "a neck with a diameter";
    else if (of->missing != NULL)
        life->missing = of->missing;
    else if (isnan(starts_of(select->drive)))
        life->missing = "the number of starts (`events` of a condition) for the fatigue";
    else if (isnan(guard->legit.T))
        life->missing = "the highest legitimate torque";
    else if (!isfinite(guard->once.T) || !(guard->once.T > 0.0))
        life->missing = "the torque that the train behind it bears";
    if (life->missing != NULL)
        return;
    ts_workings_about(workings, of->neck->node, TS_EVERY_CONDITION);
    make_of(of, &life->make, workings);
    life->duty = (ts_neck_duty){.T_legit     = guard->legit.T,
                                .T_capacity  = guard->once.T,
                                .cycles      = life->cycles,
                                .cycle_count = count_cycles(select, guard, life)};
    if (workings != NULL)
        note_cycles(life, workings);
    life->chance = ts_neck_chance_of(&life->make, &life->duty, life->make.d_0, workings);
    if (isnan(life->chance.early))
        life->missing = "its chances: a steady torque reaches the middle break torque";
}

double ts_neck_life_balance(const ts_neck_life *life)
{
    if (life->missing != NULL)
        return (double)NAN;
    double T_m = 0.0;

    for (int i = 0; i < life->duty.cycle_count; i++)
        T_m = fmax(T_m, life->cycles[i].T_m);
    /* Below this a steady torque alone would break it, and there is no chance to balance. */
    const double least = life->make.d_0 * cbrt(1.001 * T_m / life->make.T_mid);

    return ts_neck_balance(&life->make, &life->duty, fmax(least, life->make.d_0 / 4.0),
                           4.0 * life->make.d_0);
}
