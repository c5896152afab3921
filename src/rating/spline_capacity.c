/* rating/spline_capacity.c: which torque does the spline of a pad bear once? */
#include "rating/spline_capacity.h"

#include <math.h>

#define ONCE 1.0 /* cycles: below the handbook's first column that column holds */
#define UNIT 1.0 /* N.m: stresses are told for this torque                      */

#define SCALED                                                                                     \
    "derived: the stress grows with the torque; S_P of Machinery's Handbook (from memory)"
static const ts_formula formulas[TS_SPLINE_STRESSES] = {
    [TS_SPLINE_ROOT_SHEAR] = {"T_root", "torque that shears its roots", "N.m", "T*S_P/S_s", SCALED},
    [TS_SPLINE_TOOTH_SHEAR] = {"T_teeth", "torque that shears its teeth", "N.m", "T*S_P/S_sp",
                               SCALED},
    [TS_SPLINE_BURSTING]    = {"T_burst", "torque that bursts its sleeve", "N.m",
                               "T*(S_P_t - S_2/K_f)/(S_t - S_2/K_f)", SCALED},
};

static double fastest(const ts_drive_spline *item, uint32_t conditions)
{
    double n = 0.0;

    for (uint32_t c = 0; c < conditions; c++)
        n = fmax(n, item->cases[c].n); /* passes NaN over */
    return n;
}

static void note(const ts_drive_spline *item, const ts_spline_load *load,
                 const ts_spline_sleeve *sleeve, ts_workings *w)
{
    ts_workings_assumed(w, "T", load->T, "N.m", "the stresses below are those of this torque");
    ts_workings_assumed(w, "K_a", load->K_a, "1", "what is met once is its own peak");
    ts_workings_assumed(w, "n", sleeve->n, "rad/s", "the highest speed of the pad");
    ts_spline_note_shape(item, w);
    ts_workings_assumed(w, "S_P", ts_spline_stress_permitted(TS_SPLINE_ROOT_SHEAR), "Pa",
                        "shear of surface-hardened steel; Machinery's Handbook (from memory)");
    ts_workings_assumed(w, "S_P_t", ts_spline_stress_permitted(TS_SPLINE_BURSTING), "Pa",
                        "tension of surface-hardened steel; Machinery's Handbook (from memory)");
}

ts_spline_bears ts_spline_bears_once(const ts_drive_spline *item, uint32_t conditions,
                                     ts_workings *w)
{
    const ts_spline_case one  = {.T = UNIT, .n = fastest(item, conditions), .K_a = 1.0, .K_w = 1.0};
    ts_spline_load       load = ts_spline_load_of(item, &one);
    const ts_spline_sleeve sleeve = ts_spline_sleeve_of(item, &one);
    const double           S_P    = ts_spline_stress_permitted(TS_SPLINE_ROOT_SHEAR);
    const double           S_P_t  = ts_spline_stress_permitted(TS_SPLINE_BURSTING);

    note(item, &load, &sleeve, w);
    load.K_f                     = ts_spline_fatigue_factor(ONCE, false, w);
    const double             K_f = load.K_f, T = load.T;
    const double             S_s   = ts_spline_root_shear(&load, w);
    const double             S_sp  = ts_spline_pitch_shear(&load, w);
    const ts_spline_bursting burst = ts_spline_burst(&load, &sleeve, w);
    const double             S_2 = burst.S_2, S_t = burst.S_t;
    double                   bears[TS_SPLINE_STRESSES];

    bears[TS_SPLINE_ROOT_SHEAR] =
        TS_STEP(w, formulas[TS_SPLINE_ROOT_SHEAR], T * S_P / S_s, T, S_P, S_s);
    bears[TS_SPLINE_TOOTH_SHEAR] =
        TS_STEP(w, formulas[TS_SPLINE_TOOTH_SHEAR], T * S_P / S_sp, T, S_P, S_sp);
    bears[TS_SPLINE_BURSTING] =
        TS_STEP(w, formulas[TS_SPLINE_BURSTING], T * (S_P_t - S_2 / K_f) / (S_t - S_2 / K_f), T,
                S_P_t, S_2, K_f, S_t);
    ts_spline_bears least = {(double)NAN, TS_SPLINE_ROOT_SHEAR, NULL};
    /* Its own spin alone is more than it bears: no torque is left, and none is borne. */
    if (!(bears[TS_SPLINE_BURSTING] > 0.0))
        return least;
    for (int i = 0; i < TS_SPLINE_STRESSES; i++)
        if (i != TS_SPLINE_PRESSURE && !(bears[i] >= least.T))
            least = (ts_spline_bears){bears[i], (ts_spline_stress)i, formulas[i].symbol};
    return least;
}

void ts_splines_capacities(const ts_drive *drive, const ts_splines *splines,
                           ts_part_capacities *list, ts_workings *w)
{
    const ts_train *train = splines->power->motion->train;

    for (uint32_t i = 0; i < splines->count; i++) {
        const ts_drive_spline *item    = &splines->items[i];
        const ts_pad          *pad     = &train->pads[item->pad];
        const ts_accessory    *one     = &drive->accessories[pad->accessory];
        ts_spline_bears        once    = {(double)NAN, TS_SPLINE_ROOT_SHEAR, NULL};
        const char            *missing = item->missing;

        if (item->sized) {
            missing = NULL;
            ts_workings_about(w, one->node, TS_EVERY_CONDITION);
            once = ts_spline_bears_once(item, (uint32_t)drive->condition_count, w);
            if (isnan(once.T))
                missing = "a sleeve that bears its own spin";
        }
        const ts_part_capacity part = {.kind    = TS_PART_SPLINE,
                                       .shaft   = pad->shaft,
                                       .mesh    = TS_NOWHERE,
                                       .of_pad  = true,
                                       .pad     = item->pad,
                                       .T       = once.T,
                                       .node    = one->node,
                                       .symbol  = once.symbol,
                                       .what    = pad->name,
                                       .missing = missing};
        (void)ts_part_capacity_add(list, &part);
    }
}
