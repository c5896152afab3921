/* rating/neck_life.c: how likely does a designed neck break too early, or too late? */
#include "rating/neck_life.h"

#include "catalog/metal.h"
#include "element/round_torsion.h"
#include "motion/value_note.h"
#include "rating/shaft/din743.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

#define N_WEAR       1e6   /* cycles at which the fatigue strength is known */
#define FELT         0.9   /* notch sensitivity of a hard steel */
#define S_LN         0.1   /* scatter of the fatigue strength */
#define S_E_MOST     700e6 /* Pa, no steel bears more in rotating bending */
#define R_Z          4e-6  /* m, of a ground neck: common practice, no source */
#define SQRT_12      3.46410161513775458705
#define SHIGLEY      "R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, chapter 6"
#define ONLY_BRITTLE "derived: only a brittle neck feels a notch at once"
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
static const ts_formula K_2_formula = {
    .symbol  = "K_2",
    .meaning = "size factor of the stress gradient",
    .unit    = "1",
    .text    = "1 - 0.2*ln(max(1, min(d, 0.15)/0.0075))/ln(20)",
    .source  = "DIN 743-2:2012, 5.4 (from memory)",
};
static const ts_formula K_formula = {
    .symbol  = "K",
    .meaning = "notch, size and surface together",
    .unit    = "1",
    .text    = "K_f/K_2 + 1/K_Ft - 1",
    .source  = "DIN 743-1:2012, 4.2 (from memory)",
};
static const ts_formula T_W_formula = {
    .symbol  = "T_W",
    .meaning = "amplitude of torque that half of the necks bear for 1e6 cycles",
    .unit    = "N.m",
    .text    = "T_el*felt*0.577*share/(ratio*K)",
    .source  = SHIGLEY ": 0.577 of the strength in bending (read)",
};
static const ts_formula share_formula = {
    .symbol  = "share",
    .meaning = "fatigue strength in rotating bending over tensile strength",
    .unit    = "1",
    .text    = "min(0.5, 700e6/sigma_BK)",
    .source  = SHIGLEY ": half the tensile strength (read), at most 700 MPa (from memory)",
};
static const ts_formula T_ripple_formula = {
    .symbol  = "T_a",
    .meaning = "amplitude of its torque",
    .unit    = "N.m",
    .text    = "ripple*T_m",
    .source  = "derived: no swing is computed for it",
};
static const ts_formula T_swing_formula = {
    .symbol  = "T_a",
    .meaning = "amplitude of its torque",
    .unit    = "N.m",
    .text    = "min(max(told*T_m, swing), T_m)",
    .source  = "common practice, no source: beyond the mean flanks part, which breaks a resonance",
};
static const ts_formula n_formula = {
    .symbol  = "n",
    .meaning = "swings of its torque in the whole life",
    .unit    = "1",
    .text    = "rate*t",
    .source  = "derived",
};
static const ts_formula k_formula = {
    .symbol  = "k",
    .meaning = "slope of the fatigue line from 1e3 to 1e6 cycles",
    .unit    = "1",
    .text    = "3*ln(10)/ln(0.9/share*K)",
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
        ts_workings_row(workings, "felt", felt, "1", ONLY_BRITTLE);
        ts_workings_row(workings, "cov_K", cov_K, "1", ONLY_BRITTLE);
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

/* Notch, size and surface together. */
static double feel_size(double sigma_BK, double d, double K_f, ts_neck_make *make,
                        ts_workings *workings)
{
    double K_Fb;

    ts_workings_assumed(workings, "R_z", R_Z, "m", "a ground neck; common practice, no source");
    ts_workings_row(workings, "sigma_BK", sigma_BK, "Pa",
                    "derived: the middle of its tensile strength");
    const double K_Ft = ts_din_roughness(R_Z, sigma_BK, &K_Fb, workings);
    const double K_2  = TS_STEP(workings, K_2_formula, ts_din_size_of_gradient(d), d);

    make->K_f = K_f;
    make->K_F = K_Ft;
    return TS_STEP(workings, K_formula, K_f / K_2 + 1.0 / K_Ft - 1.0, K_f, K_2, K_Ft);
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

    ts_workings_row(workings, "T_el", T_el, "N.m", "derived: element/round_torsion.h at the means");
    ts_workings_row(workings, "T_pl", T_pl, "N.m", "derived: element/round_torsion.h at the means");
    ts_workings_row(workings, "ratio", ratio, "1", "derived: the middle of the shear ratio");
    ts_workings_row(workings, "cov_F", cov_F, "1", "derived: of the tensile strength");
    ts_workings_row(workings, "cov_ratio", cov_ratio, "1", "derived: of the shear ratio");
    ts_workings_row(workings, "cov_w", cov_w, "1", "derived: of the strength left at temperature");
    ts_workings_row(workings, "cov_y", cov_y, "1", "derived: of how much of the section yields");
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
    const double felt     = felt_at_once(made);
    const double K        = feel_size(middle(&made->Ftu), d, K_f, make, workings);
    const double sigma_BK = middle(&made->Ftu);
    const double share = TS_STEP(workings, share_formula, fmin(0.5, S_E_MOST / sigma_BK), sigma_BK);
    make->T_W  = TS_STEP(workings, T_W_formula, T_el * felt * 0.577 * share / (ratio * K), T_el,
                         felt, share, ratio, K);
    make->k    = TS_STEP(workings, k_formula, 3.0 * log(10.0) / log(0.9 / share * K), share, K);
    make->N_W  = N_WEAR;
    make->s_ln = S_LN;
}

/* ---- what it meets --------------------------------------------------------------------------- */

typedef struct count {
    const ts_select *select;
    const ts_guard  *guard;
    const ts_neck   *neck;
    ts_neck_life    *life;
    ts_workings     *workings;
    int              used;
} count;

static void add(count *to, double T_a, double T_m, double cycles)
{
    if (T_a > 0.0 && cycles > 0.0 && to->used < TS_NECK_LIFE_CYCLES)
        to->life->cycles[to->used++] = (ts_neck_cycles){T_a, T_m, cycles};
}

/* Does something drive the drive then? */
static bool is_start(const ts_power *power, size_t c)
{
    for (uint32_t p = 0; p < power->motion->train->pad_count; p++)
        if (power->pad[c * power->motion->train->pad_count + p].T < 0.0)
            return true;
    return false;
}

/* How often the engine is started: the largest number of events of a condition in which something
 * drives, else of any.  NaN: no condition says. */
static double starts_of(const ts_select *select)
{
    const ts_drive *drive  = select->drive;
    double          starts = (double)NAN, most = (double)NAN;

    for (size_t c = 0; c < drive->condition_count; c++) {
        if (drive->conditions[c].events.standing != TS_GIVEN)
            continue;
        const double n = (double)drive->conditions[c].events.value;
        most           = fmax(most, n);
        if (is_start(select->teeth->power, c))
            starts = fmax(starts, n);
    }
    return isnan(starts) ? most : starts;
}

static double torque_in(const ts_select *select, const ts_guard *guard, size_t c)
{
    const ts_power *power = select->teeth->power;
    const ts_train *train = power->motion->train;
    const double    T = guard->pad == TS_NOWHERE ? power->T[c * train->shaft_count + guard->shaft]
                                                 : power->pad[c * train->pad_count + guard->pad].T;
    return isnan(T) ? 0.0 : fabs(T);
}

/* By torsional vibration; NULL where nothing was computed of it. */
static const ts_torque_swing *swing_in(const ts_select *select, const ts_guard *guard, uint32_t c)
{
    const ts_train        *train = select->teeth->power->motion->train;
    const ts_torque_swing *swing;

    if (select->forced == NULL)
        return NULL;
    if (guard->pad == TS_NOWHERE)
        swing = ts_forced_at_tube(select->forced, select->forced_count, c, guard->shaft);
    else
        swing = ts_forced_at_accessory(select->forced, select->forced_count, c,
                                       train->pads[guard->pad].accessory);
    return swing != NULL && isfinite(swing->swing) ? swing : NULL;
}

/* Many like sources now and then swing together: amplitudes follow Rayleigh's law, whose mean of
 * the m-th powers is Gamma(1 + m/2) times the root of the mean square to that power.  No sum of
 * independent phases has a greater one, nor passes the sum of the amplitudes.  The greater of both
 * slopes of the fatigue line gives the greater factor. */
static double peak_of(double k)
{
    const double m = 2.0 * k - 1.0, x = m / 2.0;

    /* Not lgamma, which tells the sign in a global that all threads share.  Beyond the range of
     * tgamma Stirling's series errs by less than 1e-11. */
    if (x <= 150.0)
        return pow(tgamma(1.0 + x), 1.0 / m);
    return exp((x * (log(x) - 1.0) + log(2.0 * pi * x) / 2.0 + 1.0 / (12.0 * x)) / m);
}

/* As often as the accessory ripples in a turn of its pad, else once a turn. */
static double turns_of_ripple(const count *to, double omega)
{
    const ts_select *select = to->select;
    const int32_t    who    = to->guard->pad == TS_NOWHERE
                                  ? -1
                                  : select->teeth->motion->train->pads[to->guard->pad].accessory;
    const ts_tally  *order  = who < 0 ? NULL : &select->drive->accessories[who].ripple_order;
    const double times = order == NULL || order->standing == TS_ABSENT ? 1.0 : (double)order->value;

    return times * fabs(omega) / (2.0 * pi);
}

/* The ripple that the file tells stands beside what is computed; one that is assumed is in it, as
 * that of the accessory. */
static double amplitude(const count *to, const ts_torque_swing *computed, double T_m)
{
    const ts_measure *ripple_told = &to->neck->ripple;
    const double      ripple      = ripple_told->value;
    ts_workings      *workings    = to->workings;

    if (computed == NULL) {
        ts_workings_row(workings, "ripple", ripple, "1", "derived: `ripple` of the neck");
        return TS_STEP(workings, T_ripple_formula, ripple * T_m, ripple, T_m);
    }
    const double told  = ripple_told->standing == TS_GIVEN ? ripple : 0.0;
    const double swing = computed->swing;

    ts_workings_row(workings, "told", told, "1",
                    "derived: `ripple` of the neck, where the file tells it");
    ts_workings_row(workings, "swing", swing, "N.m",
                    "derived: torsional vibration, linear: `twist`, docs/method/torsion.md");
    return TS_STEP(workings, T_swing_formula, fmin(fmax(told * T_m, swing), T_m), told, T_m, swing);
}

/* Is what the file tells greater than what is computed? */
static bool ripple_stands(const count *to, const ts_torque_swing *computed, double T_m)
{
    const ts_measure *ripple = &to->neck->ripple;

    return ripple->standing == TS_GIVEN && ripple->value * T_m > computed->swing;
}

/* As long as a condition lasts the torque swings about what it is then. */
static void vibrate(count *to, uint32_t c)
{
    const ts_motion       *motion   = to->select->teeth->motion;
    const ts_torque_swing *computed = swing_in(to->select, to->guard, c);
    const double           T_m      = torque_in(to->select, to->guard, c);
    const double omega = motion->speed[(size_t)c * motion->train->shaft_count + to->guard->shaft];
    const double t     = ts_condition_seconds(&to->select->drive->conditions[c]);
    const bool   by_ripple = computed == NULL || ripple_stands(to, computed, T_m);
    const double rate      = by_ripple ? turns_of_ripple(to, omega) : computed->rate;

    if (!(T_m > 0.0) || isnan(rate) || isnan(t))
        return;
    ts_workings_about(to->workings, to->neck->node, (int32_t)c);
    ts_workings_row(to->workings, "T_m", T_m, "N.m", "derived: the torque that it carries then");
    ts_workings_row(to->workings, "rate", rate, "Hz",
                    by_ripple
                        ? "derived: of its ripple: so often a turn as its accessory, else once"
                        : "derived: Rice's rate of the swing: response/drive_forced.h");
    ts_workings_row(to->workings, "t", t, "s",
                    "derived: how long the condition lasts in the whole life");
    const double T_a = amplitude(to, computed, T_m);
    const double n   = TS_STEP(to->workings, n_formula, rate * t, rate, t);
    const int    at  = to->used;
    add(to, T_a, T_m, n);
    to->life->condition[at] = (int32_t)c;
}

/* From one sense to the other and back is one cycle, however often the torque rests at nothing on
 * its way (rainflow). */
static void turn_about(count *to, double inwards, double outwards, double cycles)
{
    add(to, (outwards + inwards) / 2.0, fabs(outwards - inwards) / 2.0, cycles);
}

/* Overloads stand beside the plain starts: so many a start.  A start turns the torque about but
 * once: what overloads there are beyond one come from nothing. */
static void count_overloads(count *to, double starts)
{
    const ts_guard *guard = to->guard;
    const double    all = starts * to->neck->overloads.value, once = fmin(all, starts);
    const bool      of_tower = guard->pad == TS_NOWHERE, in = !of_tower && guard->at_start;
    const double    inwards  = in ? fmax(guard->T_over, guard->start.T) : guard->start.T;
    const double    outwards = of_tower || in ? guard->run.T : fmax(guard->T_over, guard->run.T);
    const double    peak     = !of_tower                             ? guard->T_over
                               : guard->run.T > guard->plain_run     ? guard->run.T
                               : guard->start.T > guard->plain_start ? guard->start.T
                                                                     : 0.0;

    if (!(peak > 0.0))
        return;
    turn_about(to, inwards, outwards, once);
    turn_about(to, 0.0, peak, all - once);
}

/* What takes the torque from nothing to its height and back, or to the other sense. */
static void count_events(count *to)
{
    const ts_select *select = to->select;
    const ts_guard  *guard  = to->guard;
    const double     starts = starts_of(select);

    turn_about(to, guard->plain_start, guard->plain_run, starts);
    count_overloads(to, starts);
    for (size_t c = 0; c < select->drive->condition_count; c++) {
        const ts_tally *events = &select->drive->conditions[c].events;
        const double    T      = torque_in(select, guard, c) / 2.0;

        if (events->standing == TS_GIVEN && !is_start(select->teeth->power, c))
            add(to, T, T, (double)events->value);
    }
    for (int i = 0; i < to->used; i++)
        to->life->condition[i] = TS_EVERY_CONDITION;
}

static int count_cycles(const ts_select *select, const ts_guard *guard, ts_neck_life *life,
                        ts_workings *workings)
{
    count to = {.select   = select,
                .guard    = guard,
                .neck     = select->necks->items[guard->neck].neck,
                .life     = life,
                .workings = workings};

    count_events(&to);
    for (uint32_t c = 0; c < select->drive->condition_count; c++)
        vibrate(&to, c);
    ts_workings_about(workings, to.neck->node, TS_EVERY_CONDITION);
    return to.used;
}

static void note_cycles(const ts_neck_life *life, ts_node node, ts_workings *workings)
{
    ts_workings_row(workings, "N_W", life->make.N_W, "1",
                    "cycles at which the fatigue strength is known; " SHIGLEY " (from memory)");
    for (int i = 0; i < life->duty.cycle_count; i++) {
        const ts_neck_cycles *c    = &life->cycles[i];
        const ts_subject      from = {node, life->condition[i]};

        if (from.condition != TS_EVERY_CONDITION) {
            ts_workings_borrow(workings, "n", c->cycles, from, "n");
            ts_workings_borrow(workings, "T_a", c->T_a, from, "T_a");
            ts_workings_borrow(workings, "T_m", c->T_m, from, "T_m");
            continue;
        }
        ts_workings_row(workings, "n", c->cycles, "1",
                        "derived: starts, overloads or events of the file");
        ts_workings_row(workings, "T_a", c->T_a, "N.m",
                        "derived: half of the range of such an event");
        ts_workings_row(workings, "T_m", c->T_m, "N.m",
                        "derived: the torque about which it swings");
    }
}

/* ---- both ------------------------------------------------------------------------------------ */

static bool is_of_steel(const ts_neck *neck)
{
    const ts_metal metal = ts_metal_at((size_t)neck->metal.value);

    return ts_metal_is_steel(&metal);
}

/* Its chance to break early where each swing is the amplitude of the same harm by Rayleigh's law.
 */
static double early_at_most(const ts_select *select, const ts_guard *guard,
                            const ts_neck_life *life)
{
    const double   peak = peak_of(life->make.k);
    ts_neck_cycles cycles[TS_NECK_LIFE_CYCLES];
    ts_neck_duty   duty = life->duty;

    duty.cycles = cycles;
    for (int i = 0; i < duty.cycle_count; i++) {
        cycles[i] = life->cycles[i];
        if (life->condition[i] == TS_EVERY_CONDITION)
            continue;
        const ts_torque_swing *swing = swing_in(select, guard, (uint32_t)life->condition[i]);
        if (swing != NULL)
            cycles[i].T_a =
                fmin(fmax(cycles[i].T_a, fmin(swing->swing * peak, swing->sum)), cycles[i].T_m);
    }
    return ts_neck_chance_of(&life->make, &duty, life->make.d_0, NULL).early;
}

void ts_neck_life_of(const ts_select *select, const ts_guard *guard, ts_neck_life *life,
                     ts_workings *workings)
{
    const ts_drive_neck *of = guard->neck == TS_NOWHERE ? NULL : &select->necks->items[guard->neck];

    *life            = (ts_neck_life){.worst = -1};
    life->chance     = (ts_neck_chance){NAN, NAN, NAN, NAN, NAN};
    life->early_most = (double)NAN;
    if (of == NULL || !of->designed)
        life->missing = "a neck with a diameter";
    else if (of->missing != NULL)
        life->missing = of->missing;
    else if (!is_of_steel(of->neck))
        life->missing = "a fatigue strength (its law here is that of steel, and the metal is none)";
    else if (isnan(starts_of(select)))
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
                                .cycle_count = count_cycles(select, guard, life, workings)};
    if (workings != NULL)
        note_cycles(life, of->neck->node, workings);
    life->chance     = ts_neck_chance_of(&life->make, &life->duty, life->make.d_0, workings);
    life->early_most = early_at_most(select, guard, life);
    ts_workings_row(
        workings, "P_early_most", life->early_most, "1",
        "derived: by Rayleigh's law of the swings, an upper bound: docs/method/necks.md");
    double most = 0.0;
    for (int i = 0; i < life->duty.cycle_count; i++) {
        const double share = ts_neck_harm_share(&life->make, &life->duty, &life->chance, i);
        life->worst        = share > most ? i : life->worst;
        most               = fmax(most, share);
    }
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
