/* bank/bind_units.c: published cases about units and their factors. */
#include "bank/bank_case.h"
#include "element/tooth_force.h"

#include <math.h>
#include <stdio.h>

static double si_of(double value, const char *unit, ts_kind kind)
{
    return ts_to_si(value, ts_unit_named(ts_text_of(unit), kind));
}

/* The whitelist has no gallon, slug, ounce-inch or foot-pound of energy; each follows from units
 * that it has: gal = gpm*min, slug = lbf.s2/ft, 16 ozf.in = lbf.in, ft.lbf = lbf*ft. */
static void unit_exact(ts_case *c)
{
    const double one = ts_case_given(c, "one", TS_KIND_NUMBER);
    const double lbf = si_of(one, "lbf", TS_KIND_FORCE), ft = si_of(1.0, "ft", TS_KIND_LENGTH);
    const double gpm = si_of(one, "gpm", TS_KIND_VOLUME_FLOW);

    ts_case_computed(c, "lbf", lbf, TS_KIND_FORCE);
    ts_case_computed(c, "ftlbf", lbf * ft, TS_KIND_ENERGY);
    ts_case_computed(c, "inlbf", si_of(one, "lbf.in", TS_KIND_TORQUE), TS_KIND_TORQUE);
    ts_case_computed(c, "hp", si_of(one, "hp", TS_KIND_POWER), TS_KIND_POWER);
    ts_case_computed(c, "psi", si_of(one, "psi", TS_KIND_STRESS), TS_KIND_STRESS);
    ts_case_computed(c, "gpm", gpm, TS_KIND_VOLUME_FLOW);
    ts_case_computed(c, "lbh", si_of(one, "lb/h", TS_KIND_MASS_FLOW), TS_KIND_MASS_FLOW);
    if (ts_case_expects_in(c, "gal", "m3"))
        ts_case_counted(c, "gal", gpm * si_of(1.0, "min", TS_KIND_TIME));
    ts_case_computed(c, "oz_in", si_of(one / 16.0, "lbf.in", TS_KIND_TORQUE), TS_KIND_TORQUE);
    ts_case_computed(c, "F250", si_of(250.0 * one, "degF", TS_KIND_TEMPERATURE),
                     TS_KIND_TEMPERATURE);
    ts_case_computed(c, "slug", lbf / ft, TS_KIND_MASS);
    ts_case_computed(c, "lbin3", si_of(one, "lb/in3", TS_KIND_DENSITY), TS_KIND_DENSITY);
    ts_case_computed(c, "rpm", si_of(one, "rpm", TS_KIND_ROTATIONAL_SPEED),
                     TS_KIND_ROTATIONAL_SPEED);
}

static void unit_ksi(ts_case *c)
{
    for (size_t i = 0; i < ts_case_member_count(c, "ksi"); i++) {
        const char *name = ts_case_member_name(c, "ksi", i);

        ts_case_computed_as(c, ts_case_member(c, "ksi", name, TS_KIND_STRESS), TS_KIND_STRESS,
                            "%s_MPa", name);
    }
}

static void unit_torque_constant(ts_case *c)
{
    const ts_unit *inch_pound = ts_unit_named(TS_TEXT("lbf.in"), TS_KIND_TORQUE);
    const double   hp         = si_of(1.0, "hp", TS_KIND_POWER);
    const double   rpm        = si_of(1.0, "rpm", TS_KIND_ROTATIONAL_SPEED);
    const double   P          = ts_case_given(c, "hp", TS_KIND_POWER);
    const double   omega      = ts_case_given(c, "n", TS_KIND_ROTATIONAL_SPEED);

    if (!(omega > 0.0))
        ts_case_spoil(c, "must be above 0", "n");
    if (ts_case_expects_in(c, "const", "lbf.in.rpm/hp"))
        ts_case_counted(c, "const", ts_from_si(ts_torque_of_power(hp, rpm, NULL), inch_pound));
    ts_case_computed(c, "T", ts_torque_of_power(P, omega, NULL), TS_KIND_TORQUE);
}

static const ts_binding bindings[] = {
    {"unit-exact", unit_exact},
    {"unit_ksi", unit_ksi},
    {"unit-torque-constant", unit_torque_constant},
};
TS_BINDINGS(bindings);
