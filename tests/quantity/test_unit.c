/* Is the whitelist of units whole, and is every factor the published one?
 *
 * Source of the published factors: NIST SP 811 (2008), B.8, to the seven digits printed there (from
 * memory).  test_units_against_udunits.c asks a second source about every unit.
 */
#include "quantity/quantity.h"

#include "support/close.h"

#include <string.h>

static const ts_unit *unit_of(const char *name, ts_kind kind)
{
    const ts_unit *unit = ts_unit_named(ts_text_of(name), kind);
    if (unit == NULL)
        fail_msg("there is no %s", name);
    return unit;
}

static void published_factors(void **state)
{
    (void)state;
    static const struct {
        const char *name;
        ts_kind     kind;
        double      factor;
    } published[] = {
        {"in", TS_KIND_LENGTH, 2.54e-2},
        {"ft", TS_KIND_LENGTH, 3.048e-1},
        {"in2", TS_KIND_AREA, 6.4516e-4},
        {"deg", TS_KIND_ANGLE, 1.745329e-2},
        {"arcmin", TS_KIND_ANGLE, 2.908882e-4},
        {"arcsec", TS_KIND_ANGLE, 4.848137e-6},
        {"lb", TS_KIND_MASS, 4.535924e-1},
        {"lb/in3", TS_KIND_DENSITY, 2.767990e4},
        {"lb.in2", TS_KIND_INERTIA, 2.926397e-4},
        {"lb.ft2", TS_KIND_INERTIA, 4.214011e-2},
        {"ft/min", TS_KIND_VELOCITY, 5.08e-3},
        {"rpm", TS_KIND_ROTATIONAL_SPEED, 1.047198e-1},
        {"lbf", TS_KIND_FORCE, 4.448222},
        {"lbf.in", TS_KIND_TORQUE, 1.129848e-1},
        {"lbf.ft", TS_KIND_TORQUE, 1.355818},
        {"kW.h", TS_KIND_ENERGY, 3.6e6},
        {"hp", TS_KIND_POWER, 7.456999e2},
        {"bar", TS_KIND_STRESS, 1e5},
        {"psi", TS_KIND_STRESS, 6.894757e3},
        {"ksi", TS_KIND_STRESS, 6.894757e6},
        {"psi(a)", TS_KIND_PRESSURE_ABSOLUTE, 6.894757e3},
        {"psi(g)", TS_KIND_PRESSURE_GAUGE, 6.894757e3},
        {"degR", TS_KIND_TEMPERATURE_DIFFERENCE, 5.555556e-1},
        {"gpm", TS_KIND_VOLUME_FLOW, 6.309020e-5},
        {"lb/h", TS_KIND_MASS_FLOW, 1.259979e-4},
        {"lb/min", TS_KIND_MASS_FLOW, 7.559873e-3},
        {"cSt", TS_KIND_KINEMATIC_VISCOSITY, 1e-6},
        {"lbf/in", TS_KIND_STIFFNESS, 1.751268e2},
    };
    for (size_t i = 0; i < sizeof published / sizeof published[0]; i++) {
        const ts_unit *unit = unit_of(published[i].name, published[i].kind);
        /* half a unit of the seventh digit, at worst 5e-7 of the value */
        assert_close(ts_to_si(1.0, unit), published[i].factor, 5e-7);
        assert_same_double(ts_to_si(1.0, unit), unit->factor);
    }
}

/* derived: exact products of the defined factors, multiplied out by hand to the last digit. */
static void exact_factors_to_the_last_bit(void **state)
{
    (void)state;
    assert_same_double(ts_to_si(1.0, unit_of("lbf", TS_KIND_FORCE)), 4.4482216152605);
    assert_same_double(ts_to_si(1.0, unit_of("lbf.in", TS_KIND_TORQUE)), 0.1129848290276167);
    assert_same_double(ts_to_si(1.0, unit_of("lbf.ft", TS_KIND_TORQUE)), 1.3558179483314004);
    assert_same_double(ts_to_si(1.0, unit_of("hp", TS_KIND_POWER)), 745.69987158227022);
    assert_same_double(ts_to_si(1.0, unit_of("ft/min", TS_KIND_VELOCITY)), 0.00508);
    assert_same_double(ts_to_si(1.0, unit_of("lb.in2", TS_KIND_INERTIA)), 0.0002926396534292);
    assert_same_double(ts_to_si(30.0, unit_of("rpm", TS_KIND_ROTATIONAL_SPEED)), acos(-1.0));
    assert_same_double(ts_to_si(180.0, unit_of("deg", TS_KIND_ANGLE)), acos(-1.0));
    assert_same_double(ts_to_si(9.0, unit_of("degR", TS_KIND_TEMPERATURE_DIFFERENCE)), 5.0);
}

/* Source: the fixed points of the scales, SI Brochure 2.3.1 and NIST SP 811 (2008), B.8. */
static void temperatures_have_their_own_zero(void **state)
{
    (void)state;
    const ts_unit *c = unit_of("degC", TS_KIND_TEMPERATURE);
    const ts_unit *f = unit_of("degF", TS_KIND_TEMPERATURE);
    assert_same_double(ts_to_si(0.0, c), 273.15);
    assert_same_double(ts_to_si(100.0, c), 373.15);
    assert_same_double(ts_to_si(32.0, f), 273.15);
    assert_same_double(ts_to_si(212.0, f), 373.15);
    assert_close_abs(ts_to_si(-459.67, f), 0.0, 1e-13);
    assert_same_double(ts_to_si(-40.0, f), ts_to_si(-40.0, c));
    /* half a unit in the last place of 288.15, which is no double, and 9/5 of that */
    assert_close_abs(ts_from_si(288.15, c), 15.0, 0x1p-45);
    assert_close_abs(ts_from_si(288.15, f), 59.0, 1.8 * 0x1p-45);
    assert_null(ts_unit_named(TS_TEXT("degC"), TS_KIND_TEMPERATURE_DIFFERENCE));
    assert_null(ts_unit_named(TS_TEXT("degF"), TS_KIND_TEMPERATURE_DIFFERENCE));
}

static void equal_quantities_are_equal_doubles(void **state)
{
    (void)state;
    assert_same_double(ts_to_si(25.4, unit_of("mm", TS_KIND_LENGTH)),
                       ts_to_si(1.0, unit_of("in", TS_KIND_LENGTH)));
    assert_same_double(ts_to_si(12.0, unit_of("in", TS_KIND_LENGTH)),
                       ts_to_si(1.0, unit_of("ft", TS_KIND_LENGTH)));
    assert_same_double(ts_to_si(12.0, unit_of("lbf.in", TS_KIND_TORQUE)),
                       ts_to_si(1.0, unit_of("lbf.ft", TS_KIND_TORQUE)));
    assert_same_double(ts_to_si(3600.0, unit_of("lb/h", TS_KIND_MASS_FLOW)),
                       ts_to_si(1.0, unit_of("lb/s", TS_KIND_MASS_FLOW)));
    assert_same_double(ts_to_si(3.0, unit_of("W.h", TS_KIND_ENERGY)),
                       ts_to_si(10.8, unit_of("kJ", TS_KIND_ENERGY)));
}

static void infinities_and_great_numbers_pass(void **state)
{
    (void)state;
    const ts_unit *rpm = unit_of("rpm", TS_KIND_ROTATIONAL_SPEED);
    assert_same_double(ts_to_si((double)INFINITY, rpm), (double)INFINITY);
    assert_same_double(ts_from_si(-(double)INFINITY, rpm), -(double)INFINITY);
    assert_close(ts_to_si(1e290, rpm), 1.0471975511965976e289, 1e-15);
    assert_close(ts_from_si(ts_to_si(1e-290, rpm), rpm), 1e-290, 1e-15);
    assert_same_double(ts_to_si(0.0, rpm), 0.0);
}

static void every_kind_is_whole(void **state)
{
    (void)state;
    size_t of_all_kinds = 0;
    for (int k = 0; k < TS_KIND_COUNT; k++) {
        const ts_kind  kind = (ts_kind)k;
        const ts_unit *si   = ts_kind_si(kind);
        assert_non_null(ts_kind_name(kind));
        assert_int_equal(si->kind, kind);
        assert_same_double(si->factor, 1.0);
        assert_same_double(si->offset, 0.0);
        assert_int_equal(ts_kind_shown(kind, TS_UNITS_METRIC)->kind, kind);
        assert_int_equal(ts_kind_shown(kind, TS_UNITS_US)->kind, kind);
        for (int other = 0; other < k; other++)
            assert_string_not_equal(ts_kind_name(kind), ts_kind_name((ts_kind)other));
        for (size_t i = 0; i < ts_unit_count(); i++)
            of_all_kinds += ts_unit_at(i)->kind == kind ? 1 : 0;
    }
    assert_int_equal(of_all_kinds, ts_unit_count());
}

static void every_unit_is_found_by_its_name_and_says_its_source(void **state)
{
    (void)state;
    for (size_t i = 0; i < ts_unit_count(); i++) {
        const ts_unit *unit = ts_unit_at(i);
        assert_ptr_equal(ts_unit_named(ts_text_of(unit->name), unit->kind), unit);
        assert_non_null(ts_unit_named_any(ts_text_of(unit->name)));
        assert_true(strlen(unit->source) > 4);
        assert_true(strlen(unit->exact) > 0);
        assert_true(unit->factor > 0.0);
        assert_true(fabs(unit->factor_rest) <= unit->factor * 0x1p-53);
        for (const char *at = unit->name; *at != '\0'; at++)
            assert_in_range(*at, '!', '~');
    }
    assert_null(ts_unit_named_any(TS_TEXT("furlong")));
    assert_null(ts_unit_named(TS_TEXT("N.m"), TS_KIND_ENERGY));
    assert_null(ts_unit_named(TS_TEXT("J"), TS_KIND_TORQUE));
    assert_null(ts_unit_named(TS_TEXT("Hz"), TS_KIND_ROTATIONAL_SPEED));
    assert_null(ts_unit_named(TS_TEXT("rpm"), TS_KIND_FREQUENCY));
}

/* Each hint leads to a unit, and none stands for a spelling that is accepted anyway. */
static void every_spelling_leads_to_a_unit(void **state)
{
    (void)state;
    static const struct {
        const char *spelling;
        const char *unit;
    } spellings[] = {
#include "unit_spelling.inc"
    };
    for (size_t i = 0; i < sizeof spellings / sizeof spellings[0]; i++) {
        bool leads = false;
        for (int k = 0; k < TS_KIND_COUNT; k++) {
            const bool due = ts_unit_named(ts_text_of(spellings[i].unit), (ts_kind)k) != NULL;
            const bool is  = ts_unit_named(ts_text_of(spellings[i].spelling), (ts_kind)k) != NULL;
            leads          = leads || (due && !is);
        }
        if (!leads)
            fail_msg("%s for %s", spellings[i].unit, spellings[i].spelling);
    }
}

static void people_see_the_customary_units(void **state)
{
    (void)state;
    static const struct {
        ts_kind     kind;
        const char *metric;
        const char *us;
    } shown[] = {
        {TS_KIND_ROTATIONAL_SPEED, "rpm", "rpm"},
        {TS_KIND_POWER, "kW", "hp"},
        {TS_KIND_TORQUE, "N.m", "lbf.in"},
        {TS_KIND_LENGTH, "mm", "in"},
        {TS_KIND_MASS, "kg", "lb"},
        {TS_KIND_STRESS, "MPa", "ksi"},
        {TS_KIND_TEMPERATURE, "degC", "degF"},
        {TS_KIND_VOLUME_FLOW, "L/min", "gpm"},
    };
    for (size_t i = 0; i < sizeof shown / sizeof shown[0]; i++) {
        assert_string_equal(ts_kind_shown(shown[i].kind, TS_UNITS_METRIC)->name, shown[i].metric);
        assert_string_equal(ts_kind_shown(shown[i].kind, TS_UNITS_US)->name, shown[i].us);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(published_factors),
        cmocka_unit_test(exact_factors_to_the_last_bit),
        cmocka_unit_test(temperatures_have_their_own_zero),
        cmocka_unit_test(equal_quantities_are_equal_doubles),
        cmocka_unit_test(infinities_and_great_numbers_pass),
        cmocka_unit_test(every_kind_is_whole),
        cmocka_unit_test(every_unit_is_found_by_its_name_and_says_its_source),
        cmocka_unit_test(every_spelling_leads_to_a_unit),
        cmocka_unit_test(people_see_the_customary_units),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
