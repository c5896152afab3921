/* bank/bind_numbers.c: published cases about hunting teeth and simplest ratios. */
#include "bank/bank_case.h"
#include "element/hunting.h"
#include "element/stern_brocot.h"

#include <inttypes.h>
#include <stdio.h>

static void read_teeth(ts_case *c, int *z_1, int *z_2)
{
    *z_1 = ts_case_whole(c, "z1");
    *z_2 = ts_case_whole(c, "z2");
    if (*z_1 < 1 || *z_2 < 1)
        ts_case_spoil(c, "must be at least 1", "tooth numbers");
}

static void hunting(ts_case *c)
{
    int z_1, z_2;

    read_teeth(c, &z_1, &z_2);
    const ts_hunting hunt = ts_hunting_of(z_1, z_2);
    ts_case_counted(c, "gcd", hunt.gcd);
    ts_case_counted(c, "pinion_turns_to_repeat", hunt.turns_1);
    ts_case_counted(c, "gear_turns_to_repeat", hunt.turns_2);
    ts_case_counted(c, "meshes_to_repeat", (double)hunt.meshes);
    ts_case_counted(c, "assembly_phases", hunt.assemblies);
    ts_case_counted(c, "f_hunt_over_f_mesh", hunt.share);
}

static double rpm_in_hertz(double rpm)
{
    const ts_unit *minute = ts_unit_named(TS_TEXT("min"), TS_KIND_TIME);

    return rpm / ts_to_si(1.0, minute);
}

/* Rows of z_1, z_2 and the speed of gear 1 in rpm. */
static void hunting_rows(ts_case *c)
{
    for (size_t row = 0; row < ts_case_length(c, "pairs"); row++) {
        const double z_1 = ts_case_cell(c, "pairs", row, 0);
        const double z_2 = ts_case_cell(c, "pairs", row, 1);
        const double n_1 = rpm_in_hertz(ts_case_cell(c, "pairs", row, 2));

        if (!(z_1 >= 1.0 && z_2 >= 1.0 && z_1 <= 1e6 && z_2 <= 1e6))
            ts_case_spoil(c, "must lie between 1 and a million", "tooth numbers");
        const ts_hunting hunt = ts_hunting_of((int)z_1, (int)z_2);
        ts_case_listed(c, "f_repeat", ts_hunting_frequency(n_1, (int)z_1, (int)z_2, NULL),
                       TS_KIND_FREQUENCY);
        ts_case_listed(c, "meshes_to_repeat", (double)hunt.meshes, TS_KIND_NUMBER);
    }
}

static void hunting_frequency(ts_case *c)
{
    int z_1, z_2;

    read_teeth(c, &z_1, &z_2);
    const ts_unit *rpm = ts_unit_named(TS_TEXT("rpm"), TS_KIND_ROTATIONAL_SPEED);
    const double   n   = ts_from_si(ts_case_given(c, "n", TS_KIND_ROTATIONAL_SPEED), rpm);
    ts_case_computed(c, "HTF", ts_hunting_frequency(rpm_in_hertz(n), z_1, z_2, NULL),
                     TS_KIND_FREQUENCY);
}

/* The case asks for 21/17 on the walk, whose denominators zmax bounds, and for the nearest fraction
 * with a denominator up to 40, as its method text says. */
static void mediants_to_decimal(ts_case *c)
{
    const int       over_most = 1000000; /* no gear has more teeth */
    const double    target    = ts_case_given(c, "target", TS_KIND_NUMBER);
    const int       most      = ts_case_whole(c, "zmax");
    ts_mediant_walk walk      = ts_mediant_begin();
    bool            meets     = false;

    if (!(target > 0.0))
        ts_case_spoil(c, "must be above 0", "target");
    do {
        const ts_rational here = walk.here;

        if (here.over == 21 && here.under == 17) {
            meets = true;
            ts_case_counted(c, "value_21_17", ts_rational_value(here));
        }
    } while (walk.here.under <= most && walk.here.over <= over_most &&
             ts_mediant_step_to(&walk, target));
    ts_case_counted(c, "contains_21_17", meets ? 1.0 : 0.0);

    const ts_rational best = ts_nearest_ratio(target, over_most, most < 40 ? most : 40);
    ts_case_listed(c, "best_num_den", (double)best.over, TS_KIND_NUMBER);
    ts_case_listed(c, "best_num_den", (double)best.under, TS_KIND_NUMBER);
}

/* The mediants on the way to a fraction, whole numbers left out. */
static void mediants_to_fraction(ts_case *c)
{
    const int         num = ts_case_whole(c, "num"), den = ts_case_whole(c, "den");
    const ts_rational target = ts_rational_of(num, den);
    ts_mediant_walk   walk   = ts_mediant_begin();
    char              word[48];

    if (num < 1 || den < 1)
        ts_case_spoil(c, "must be at least 1", "num and den");
    do {
        if (walk.here.under <= 1)
            continue;
        snprintf(word, sizeof word, "%" PRId64 "/%" PRId64, walk.here.over, walk.here.under);
        ts_case_listed_word(c, "path", word);
    } while (ts_mediant_step(&walk, target));
}

static const ts_binding bindings[] = {
    {"hunting", hunting},
    {"comb-hunting-tooth", hunting_rows},
    {"comb-hunting-tooth-web-formula", hunting_frequency},
    {"comb-stern-brocot-1.234", mediants_to_decimal},
    {"comb-brocot-191-23", mediants_to_fraction},
};
TS_BINDINGS(bindings);
