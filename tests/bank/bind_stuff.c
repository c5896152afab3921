/* bank/bind_stuff.c: published cases about metals and oils. */
#include "bank/bank_case.h"
#include "catalog/metal.h"
#include "element/oil_viscosity.h"

/* ---- metals: the row of the table, and what follows from the case's own numbers ----------------
 */

static void row(ts_case *c, const char *key)
{
    ts_metal metal;

    if (!ts_metal_named(ts_text_of(key), &metal))
        ts_case_spoil(c, "is not in the table", key);
    if (ts_case_expects(c, "G"))
        ts_case_computed(c, "G",
                         ts_shear_modulus(ts_case_given(c, "E", TS_KIND_STRESS),
                                          ts_case_given(c, "nu", TS_KIND_NUMBER)),
                         TS_KIND_STRESS);
    ts_case_computed(c, "Ftu", metal.Ftu, TS_KIND_STRESS);
    ts_case_computed(c, "Fty", metal.Fty, TS_KIND_STRESS);
    if (ts_case_expects_in(c, "rho", "g/cm3") || ts_case_expects_in(c, "rho", "kg/m3"))
        ts_case_computed(c, "rho", metal.rho, TS_KIND_DENSITY);
    ts_case_counted(c, "cte", metal.cte);
    ts_case_counted(c, "cte_204", metal.cte);
    ts_case_counted(c, "cte_204_F", metal.cte * 5.0 / 9.0);
    ts_case_counted(c, "ratio", metal.Fty / metal.Ftu);
}

static void mat_9310(ts_case *c)
{
    row(c, "9310 core");
}

static void mat_ze41a(ts_case *c)
{
    row(c, "ze41a-t5");
}

static void mat_we43(ts_case *c)
{
    row(c, "we43-t6");
}

static void mat_ez33a(ts_case *c)
{
    row(c, "ez33a-t5");
}

static void mat_a357(ts_case *c)
{
    row(c, "a357-t61");
}

static void mat_m50(ts_case *c)
{
    row(c, "m50");
}

/* The sheet prints inches. */
static void mat_52100(ts_case *c)
{
    const double   Msi = ts_case_given(c, "E_Msi", TS_KIND_NUMBER);
    const ts_unit *ksi = ts_unit_named(TS_TEXT("ksi"), TS_KIND_STRESS);

    row(c, "52100");
    ts_case_computed(c, "E", ts_to_si(1000.0 * Msi, ksi), TS_KIND_STRESS);
    ts_case_computed(c, "rho", ts_case_given(c, "rho_in", TS_KIND_DENSITY), TS_KIND_DENSITY);
}

/* ---- oils ------------------------------------------------------------------------------------ */

static double viscosity(ts_case *c, const char *name)
{
    return ts_case_given(c, name, TS_KIND_KINEMATIC_VISCOSITY);
}

/* The case's own zero of the Celsius scale, 273 in one source. */
static double kelvin(ts_case *c, double si)
{
    return si - 273.15 + ts_case_given_or(c, "T0", TS_KIND_TEMPERATURE, 273.15);
}

static double temperature(ts_case *c, const char *name)
{
    return kelvin(c, ts_case_given(c, name, TS_KIND_TEMPERATURE));
}

static void two_points(ts_case *c)
{
    const ts_viscosity_law law = ts_viscosity_law_of(
        viscosity(c, "v1"), temperature(c, "t1"), viscosity(c, "v2"), temperature(c, "t2"), NULL);

    ts_case_computed(c, "A", law.A, TS_KIND_NUMBER);
    ts_case_computed(c, "B", law.B, TS_KIND_NUMBER);
    if (ts_case_expects(c, "v"))
        ts_case_computed(c, "v", ts_viscosity_at(&law, temperature(c, "t"), NULL),
                         TS_KIND_KINEMATIC_VISCOSITY);
}

static void cold(ts_case *c)
{
    const ts_viscosity_law law = ts_viscosity_law_of(
        viscosity(c, "v1"), temperature(c, "t1"), viscosity(c, "v2"), temperature(c, "t2"), NULL);

    ts_case_computed(c, "v989", ts_viscosity_at(&law, kelvin(c, 98.9 + 273.15), NULL),
                     TS_KIND_KINEMATIC_VISCOSITY);
    ts_case_computed(c, "v150", ts_viscosity_at(&law, kelvin(c, 150.0 + 273.15), NULL),
                     TS_KIND_KINEMATIC_VISCOSITY);
    ts_case_computed(c, "vm40", ts_viscosity_at(&law, kelvin(c, -40.0 + 273.15), NULL),
                     TS_KIND_KINEMATIC_VISCOSITY);
}

static void limits(ts_case *c)
{
    const double           hot = 373.15, warm = 313.15;
    const ts_viscosity_law thick =
        ts_viscosity_law_of(viscosity(c, "v40"), warm, viscosity(c, "v100"), hot, NULL);
    const ts_viscosity_law thin =
        ts_viscosity_law_of(viscosity(c, "w40"), warm, viscosity(c, "w100"), hot, NULL);

    ts_case_computed(c, "v80_23699", ts_viscosity_at(&thick, 353.15, NULL),
                     TS_KIND_KINEMATIC_VISCOSITY);
    ts_case_computed(c, "v120_7808", ts_viscosity_at(&thin, 393.15, NULL),
                     TS_KIND_KINEMATIC_VISCOSITY);
}

static const ts_binding bindings[] = {
    {"mat-9310-core", mat_9310},
    {"mat-ze41a-t5", mat_ze41a},
    {"mat-we43", mat_we43},
    {"mat-ez33a", mat_ez33a},
    {"mat-a357", mat_a357},
    {"mat-m50", mat_m50},
    {"mat-52100", mat_52100},
    {"oil-d341-vg32", two_points},
    {"oil-d341-extrapolate", two_points},
    {"oil-type2-cold", cold},
    {"oil-spec-limits", limits},
};
TS_BINDINGS(bindings);
