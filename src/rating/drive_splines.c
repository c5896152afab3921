/* rating/drive_splines.c: how hard is the spline of every pad worked, in every condition? */
#include "rating/drive_splines.h"

#include "motion/value_note.h"
#include "rating/drive_teeth.h"

#include <math.h>

#define MADE    "common practice, no source"
#define LENGTH  0.93 /* engaged length over the pitch diameter: 0.745 in of 0.8 in, 16T 20 pitch */
#define SLOPE   1e-3 /* tilt of two shafts in one pad                                  */
#define OUTSIDE 1.35 /* outside of the sleeve over its major diameter                 */
#define Y_FORM  1.5  /* tooth form in bursting                                         */
#define STEEL   7850.0 /* kg/m3                                                          */
#define K_WEAR  1e-18  /* 1/Pa  lubricated steel that rubs to and fro                    */

static const double pi = 3.14159265358979323846;

static const struct {
    const char *symbol, *says;
    double      permitted;
} stresses[TS_SPLINE_STRESSES] = {
    [TS_SPLINE_ROOT_SHEAR]  = {"S_s", "the shear under its roots, fatigue counted,",
                               40000.0 * 6894.757293168},
    [TS_SPLINE_TOOTH_SHEAR] = {"S_sp", "the shear of its teeth, fatigue counted,",
                               40000.0 * 6894.757293168},
    [TS_SPLINE_PRESSURE]    = {"S_c", "the pressure on its flanks, wear counted,",
                               4000.0 * 6894.757293168},
    [TS_SPLINE_BURSTING]    = {"S_t", "the tension that bursts its sleeve, fatigue counted,",
                               45000.0 * 6894.757293168},
};

const char *ts_spline_stress_symbol(ts_spline_stress stress)
{
    return stresses[stress].symbol;
}

const char *ts_spline_stress_says(ts_spline_stress stress)
{
    return stresses[stress].says;
}

double ts_spline_stress_permitted(ts_spline_stress stress)
{
    return stresses[stress].permitted;
}

/* ---- memory ---------------------------------------------------------------------------------- */

static const ts_accessory *accessory_of(const ts_drive *drive, const ts_pad *pad)
{
    return pad->use == TS_PAD_ACCESSORY ? &drive->accessories[pad->accessory] : NULL;
}

/* Whose spline it is: only pads with an accessory have an item. */
static const ts_accessory *fitted(const ts_drive *drive, const ts_splines *splines,
                                  const ts_drive_spline *item)
{
    return &drive->accessories[splines->power->motion->train->pads[item->pad].accessory];
}

ts_status ts_splines_prepare(const ts_drive *drive, const ts_power *power, ts_arena *arena,
                             ts_splines *out)
{
    const ts_train *train = power->motion->train;

    *out       = (ts_splines){.power = power};
    out->items = TS_TAKE(arena, ts_drive_spline, (size_t)train->pad_count + 1);
    if (out->items == NULL)
        return TS_NO_MEMORY;
    for (uint32_t p = 0; p < train->pad_count; p++) {
        const ts_accessory *one = accessory_of(drive, &train->pads[p]);
        if (one == NULL || one->spline.text == NULL)
            continue;
        ts_drive_spline *item = &out->items[out->count++];
        *item                 = (ts_drive_spline){.pad    = p,
                                                  .node   = one->spline.node,
                                                  .over   = one->torque.overload.node,
                                                  .number = one->spline.text};
        item->cases           = TS_TAKE(arena, ts_spline_case, drive->condition_count + 1);
        if (item->cases == NULL)
            return TS_NO_MEMORY;
    }
    return TS_OK;
}

/* ---- size ------------------------------------------------------------------------------------ */

static double speed_of(const ts_splines *splines, const ts_drive_spline *item, size_t c)
{
    const ts_motion *motion = splines->power->motion;
    const ts_train  *train  = motion->train;

    return fabs(motion->speed[c * train->shaft_count + train->pads[item->pad].shaft]);
}

/* False: what fatigues or wears it is not told. */
static bool count_cycles(const ts_drive *drive, const ts_splines *splines, ts_drive_spline *item)
{
    double starts = 0.0;
    bool   timed  = true;

    item->turns = 0.0;
    for (size_t c = 0; c < drive->condition_count; c++) {
        const ts_condition *condition = &drive->conditions[c];
        const double        seconds   = ts_condition_seconds(condition);

        if (condition->events.standing == TS_GIVEN)
            starts = fmax(starts, (double)condition->events.value);
        if (isnan(seconds))
            timed = false;
        else
            item->turns += speed_of(splines, item, c) / (2.0 * pi) * seconds;
    }
    item->cycles = starts;
    if (!(starts > 0.0))
        item->missing = "the starts (`events` of a condition) that fatigue the spline";
    else if (!timed || isnan(item->turns))
        item->missing = "the times and speeds of all conditions that wear the spline";
    return item->missing == NULL;
}

static const ts_formula wall_formula = {"t_w", "wall of the sleeve", "m", "(D_oi - D_ri)/2",
                                        "derived: from its teeth to its outside"};

static double wall_of(const ts_drive_spline *item, ts_workings *w)
{
    const double D_oi = item->D_oi, D_ri = item->shape.D_ri;

    return TS_STEP(w, wall_formula, (D_oi - D_ri) / 2.0, D_oi, D_ri);
}

static bool size(const ts_drive *drive, const ts_splines *splines, ts_drive_spline *item,
                 ts_workings *w)
{
    const ts_accessory *one = fitted(drive, splines, item);
    ts_spline_number    number;

    if (!ts_spline_number_read(item->number, &number))
        return false;
    ts_workings_given(w, number.P_d > 0.0 ? "N" : "z", number.N, "1", item->node);
    ts_workings_assumed(w, "alpha_D", pi / 6.0, "rad", "30 degrees, side fit; as its standard");
    if (number.P_d > 0.0)
        ts_workings_given(w, "P_d", number.P_d, "1/m", item->node);
    else
        ts_workings_given(w, "m", number.m, "m", item->node);
    const bool made = number.P_d > 0.0 ? ts_spline_b921(number.N, number.P_d, pi / 6.0,
                                                        TS_SPLINE_FILLET_ROOT, &item->shape, w)
                                       : ts_spline_iso4156(number.N, number.m, pi / 6.0,
                                                           TS_SPLINE_FILLET_ROOT, &item->shape, w);
    if (!made)
        return false;
    item->made  = !ts_measure_known(one->spline_length);
    item->L_e   = item->made ? LENGTH * item->shape.D : one->spline_length.value;
    item->slope = SLOPE;
    item->D_oi  = ts_measure_known(one->sleeve) ? one->sleeve.value : OUTSIDE * item->shape.D_ri;
    if (item->made)
        ts_workings_assumed(w, "L_e", item->L_e, "m", "0.93 of the pitch diameter; " MADE);
    else
        TS_NOTE_MEASURE(w, drive, "L_e", one->spline_length, "m", "spline length");
    ts_workings_assumed(w, "slope", item->slope, "1", "tilt of two shafts in one pad; " MADE);
    if (ts_measure_known(one->sleeve))
        TS_NOTE_MEASURE(w, drive, "D_oi", one->sleeve, "m", "sleeve");
    else
        ts_workings_assumed(w, "D_oi", item->D_oi, "m",
                            "outside 1.35 of the major diameter; " MADE);
    ts_workings_assumed(w, "D_ri", item->shape.D_ri, "m", "of the standard");
    item->t_w = wall_of(item, w);
    return true;
}

static const ts_spline_source sources[] = {
    [TS_SHOCK_UNIFORM]      = TS_SPLINE_UNIFORM,
    [TS_SHOCK_LIGHT]        = TS_SPLINE_LIGHT_SHOCK,
    [TS_SHOCK_INTERMITTENT] = TS_SPLINE_INTERMITTENT,
    [TS_SHOCK_HEAVY]        = TS_SPLINE_HEAVY_SHOCK,
};

#define ONCE_ONLY "what is met once: the file tells no starts, or not all times"

static void find_factors(const ts_accessory *one, ts_drive_spline *item, ts_workings *w)
{
    const ts_spline *s = &item->shape;

    const bool told = item->missing == NULL;
    ts_workings_assumed(w, "cycles", item->cycles, "1",
                        told ? "the most `events` of a condition: starts" : ONCE_ONLY);
    ts_workings_assumed(w, "turns", item->turns, "1",
                        told ? "speeds times times of all conditions" : ONCE_ONLY);
    item->K_a = ts_spline_application_factor(sources[one->shock.value], w);
    item->K_m = ts_spline_misalignment_factor(item->L_e, item->slope, w);
    item->K_f = ts_spline_fatigue_factor(item->cycles, false, w);
    item->K_w = ts_spline_wear_factor(fmax(item->turns, 1.0), w);
    ts_workings_assumed(w, "D", s->D, "m", "of the standard");
    item->slide = ts_spline_slide(s->D, item->slope, w);
}

/* ---- one torque ------------------------------------------------------------------------------ */

void ts_spline_note_shape(const ts_drive_spline *item, ts_workings *w)
{
    const ts_subject of = {item->node, TS_EVERY_CONDITION};
    const ts_spline *s  = &item->shape;
    const char      *as = "as in the standard";

    ts_workings_assumed(w, "N", s->N, "1", as);
    ts_workings_borrow(w, "L_e", item->L_e, of, "L_e");
    ts_workings_assumed(w, "D", s->D, "m", as);
    ts_workings_assumed(w, "D_re", s->D_re, "m", as);
    ts_workings_assumed(w, "D_ri", s->D_ri, "m", as);
    ts_workings_assumed(w, "t", s->s_v, "m", as);
    ts_workings_assumed(w, "h", s->D / s->N, "m", "D/N of a fillet root (from memory)");
    ts_workings_assumed(w, "D_h", 0.0, "m", "the shaft is taken as solid");
    ts_workings_borrow(w, "K_m", item->K_m, of, "K_m");
    ts_workings_assumed(w, "alpha_D", s->alpha_D, "rad", as);
    ts_workings_borrow(w, "t_w", item->t_w, of, "t_w");
    ts_workings_borrow(w, "D_oi", item->D_oi, of, "D_oi");
    ts_workings_assumed(w, "Y", Y_FORM, "1", "tooth form, usual (from memory)");
    ts_workings_assumed(w, "rho", STEEL, "kg/m3", "steel; " MADE);
    ts_workings_assumed(w, "nu", 0.3, "1", "steel; " MADE);
}

ts_spline_load ts_spline_load_of(const ts_drive_spline *item, const ts_spline_case *one)
{
    const ts_spline *s = &item->shape;

    return (ts_spline_load){.T    = one->T,
                            .N    = s->N,
                            .D    = s->D,
                            .D_re = s->D_re,
                            .D_h  = 0.0,
                            .L_e  = item->L_e,
                            .t    = s->s_v,
                            .h    = s->D / s->N,
                            .K_a  = one->K_a,
                            .K_m  = item->K_m,
                            .K_f  = item->K_f,
                            .K_w  = one->K_w};
}

ts_spline_sleeve ts_spline_sleeve_of(const ts_drive_spline *item, const ts_spline_case *one)
{
    const ts_spline *s = &item->shape;

    return (ts_spline_sleeve){.D_ri    = s->D_ri,
                              .D_oi    = item->D_oi,
                              .t_w     = item->t_w,
                              .alpha_D = s->alpha_D,
                              .Y       = Y_FORM,
                              .rho     = STEEL,
                              .n       = one->n};
}

/* `out` brings torque, speed and the factors K_a and K_w. */
static void rate(const ts_drive_spline *item, ts_spline_case *out, ts_workings *w)
{
    const ts_spline_load   load   = ts_spline_load_of(item, out);
    const ts_spline_sleeve sleeve = ts_spline_sleeve_of(item, out);

    ts_workings_row(w, "T", load.T, "N.m", "derived: the torque of the pad, either way");
    ts_spline_note_shape(item, w);
    ts_workings_borrow(w, "K_f", item->K_f, (ts_subject){item->node, TS_EVERY_CONDITION}, "K_f");
    ts_workings_row(w, "n", out->n, "rad/s", "derived: the speed of the pad");
    out->S[TS_SPLINE_ROOT_SHEAR]  = ts_spline_root_shear(&load, w);
    out->S[TS_SPLINE_TOOTH_SHEAR] = ts_spline_pitch_shear(&load, w);
    out->S[TS_SPLINE_PRESSURE]    = ts_spline_pressure_flexible(&load, w);
    out->S[TS_SPLINE_BURSTING]    = ts_spline_burst(&load, &sleeve, w).S_t;
    out->h_w                      = (double)NAN;
    out->known                    = true;
}

static void wear(const ts_drive_spline *item, double seconds, double n, ts_spline_case *out,
                 ts_workings *w)
{
    const double turns = n / (2.0 * pi) * seconds;
    /* What really presses: without the factor that allows less for more turns. */
    const double pressure = out->S[TS_SPLINE_PRESSURE] * item->K_w;

    if (isnan(turns))
        return;
    ts_workings_assumed(w, "k", K_WEAR, "1/Pa", "lubricated steel; order of magnitude, no source");
    ts_workings_row(w, "pressure", pressure, "Pa", "derived: S_c*K_w: the pressure itself");
    ts_workings_borrow(w, "slide", item->slide, (ts_subject){item->node, TS_EVERY_CONDITION},
                       "slide");
    ts_workings_row(w, "turns", turns, "1", "derived: speed times the duration of the condition");
    out->h_w = ts_spline_wear_depth(K_WEAR, pressure, item->slide, turns, w);
}

static void keep_most(ts_drive_spline *item, const ts_spline_case *one, int32_t c)
{
    for (int i = 0; i < TS_SPLINE_STRESSES; i++)
        if (one->S[i] > item->most[i]) {
            item->most[i] = one->S[i];
            item->at[i]   = c;
        }
}

static void solve_conditions(const ts_drive *drive, const ts_splines *splines,
                             ts_drive_spline *item, ts_workings *w)
{
    const uint32_t   pads = splines->power->motion->train->pad_count;
    const ts_subject of   = {item->node, TS_EVERY_CONDITION};

    for (size_t c = 0; c < drive->condition_count; c++) {
        const ts_pad_load *load = &splines->power->pad[c * pads + item->pad];
        const double       n    = speed_of(splines, item, c);
        ts_spline_case    *one  = &item->cases[c];

        *one = (ts_spline_case){.h_w = (double)NAN};
        if (isnan(load->T) || isnan(n))
            continue;
        ts_workings_about(w, item->node, (int32_t)c);
        ts_workings_borrow(w, "K_w", item->K_w, of, "K_w");
        ts_workings_borrow(w, "K_a", item->K_a, of, "K_a");
        *one = (ts_spline_case){.T = fabs(load->T), .n = n, .K_a = item->K_a, .K_w = item->K_w};
        rate(item, one, w);
        wear(item, ts_condition_seconds(&drive->conditions[c]), n, one, w);
        if (!isnan(one->h_w))
            item->h_w += one->h_w;
        keep_most(item, one, (int32_t)c);
    }
}

/* An overload is met at the highest speed of the pad. */
static void solve_overload(const ts_drive *drive, const ts_splines *splines, ts_drive_spline *item,
                           ts_workings *w)
{
    const ts_accessory *one = fitted(drive, splines, item);
    double              n   = 0.0;

    item->overload = (ts_spline_case){.h_w = (double)NAN};
    if (one->torque.overload.standing != TS_GIVEN)
        return;
    for (size_t c = 0; c < drive->condition_count; c++)
        n = fmax(n, speed_of(splines, item, c));
    ts_workings_about(w, item->over, TS_EVERY_CONDITION);
    /* What rubs under an overload is the turns of all of them, one a start. */
    const double turns = n / (2.0 * pi) * one->torque.overload.time * item->cycles;
    const double K_w   = ts_spline_wear_factor(fmax(turns, 1.0), w);
    ts_workings_assumed(w, "K_a", 1.0, "1", "an overload is told as its peak: no shock is added");
    item->overload =
        (ts_spline_case){.T = one->torque.overload.torque, .n = n, .K_a = 1.0, .K_w = K_w};
    rate(item, &item->overload, w);
    keep_most(item, &item->overload, TS_EVERY_CONDITION);
}

/* Without what fatigues and wears it: its factors and speeds, and shear and bursting of an overload
 * that is met once.  The pressure on its flanks is a matter of wear. */
static void solve_once(const ts_drive *drive, const ts_splines *splines, ts_drive_spline *item,
                       ts_workings *w)
{
    item->cycles = item->turns = 1.0;
    find_factors(fitted(drive, splines, item), item, w);
    item->turns = (double)NAN;
    for (size_t c = 0; c < drive->condition_count; c++)
        item->cases[c] =
            (ts_spline_case){.n = speed_of(splines, item, c), .h_w = (double)NAN, .known = false};
    solve_overload(drive, splines, item, w);
    item->most[TS_SPLINE_PRESSURE] = -1.0;
}

void ts_splines_solve(const ts_drive *drive, ts_splines *splines, ts_workings *workings)
{
    for (uint32_t i = 0; i < splines->count; i++) {
        ts_drive_spline *item = &splines->items[i];

        item->h_w     = 0.0;
        item->missing = NULL;
        item->sized   = false;
        for (int k = 0; k < TS_SPLINE_STRESSES; k++) {
            item->most[k] = -1.0;
            item->at[k]   = TS_EVERY_CONDITION;
        }
        ts_workings_about(workings, item->node, TS_EVERY_CONDITION);
        if (!size(drive, splines, item, workings)) {
            item->missing = "the dimensions of the spline";
            continue;
        }
        if (!(item->t_w > 0.0)) {
            item->missing = "a `sleeve` wider than the teeth of the spline";
            continue;
        }
        item->sized = true;
        if (!count_cycles(drive, splines, item)) {
            solve_once(drive, splines, item, workings);
            continue;
        }
        find_factors(fitted(drive, splines, item), item, workings);
        solve_conditions(drive, splines, item, workings);
        solve_overload(drive, splines, item, workings);
        if (item->most[TS_SPLINE_ROOT_SHEAR] < 0.0)
            item->missing = "the torques of all conditions of the spline";
    }
}

/* ---- what would do --------------------------------------------------------------------------- */

const ts_spline_case *ts_spline_worst(const ts_drive_spline *item, ts_spline_stress stress)
{
    const int32_t c = item->at[stress];

    return c == TS_EVERY_CONDITION ? &item->overload : &item->cases[c];
}

static double stress_with(const ts_drive_spline *item, const ts_spline_case *one,
                          ts_spline_stress stress, double L_e, double D_oi)
{
    ts_drive_spline trial = *item;
    ts_spline_case  out   = *one;

    trial.L_e  = L_e;
    trial.K_m  = ts_spline_misalignment_factor(L_e, item->slope, NULL);
    trial.D_oi = D_oi;
    trial.t_w  = wall_of(&trial, NULL);
    rate(&trial, &out, NULL);
    return out.S[stress];
}

#define LONGEST 10.0 /* times as long: nothing that fits a pad */
#define HALVES  60   /* of an interval: to the last bits      */

double ts_spline_length_for(const ts_drive_spline *item, const ts_spline_case *one,
                            ts_spline_stress stress)
{
    const double permitted = ts_spline_stress_permitted(stress);
    double       low = item->L_e, high = LONGEST * item->L_e;

    if (!(stress_with(item, one, stress, high, item->D_oi) <= permitted))
        return NAN;
    for (int i = 0; i < HALVES; i++) {
        const double middle = 0.5 * (low + high);
        if (stress_with(item, one, stress, middle, item->D_oi) <= permitted)
            high = middle;
        else
            low = middle;
    }
    return high;
}

double ts_spline_sleeve_for(const ts_drive_spline *item, const ts_spline_case *one)
{
    const double permitted = ts_spline_stress_permitted(TS_SPLINE_BURSTING);
    double       low = item->D_oi, high = 2.0 * item->D_oi;

    /* A thicker wall is stressed less by the wedging, and more by its own spin. */
    if (!(stress_with(item, one, TS_SPLINE_BURSTING, item->L_e, high) <= permitted))
        return NAN;
    for (int i = 0; i < HALVES; i++) {
        const double middle = 0.5 * (low + high);
        if (stress_with(item, one, TS_SPLINE_BURSTING, item->L_e, middle) <= permitted)
            high = middle;
        else
            low = middle;
    }
    return high;
}
