/* Does a second source, UDUNITS-2 of UCAR/Unidata, agree about every unit?
 *
 * link: udunits2
 *
 * Each unit is spelled for UDUNITS with the words of its definition; where UDUNITS has a name of
 * its own whose factor it rounds, that name is asked too, to the digits it keeps.
 */
#include "quantity/quantity.h"

#include "support/close.h"

#include <string.h>
#include <udunits2.h>

typedef struct spelling {
    const char *name;
    ts_kind     kind;
    const char *theirs;
    const char *si;
} spelling;

/* Gauge and absolute pressure are one thing to UDUNITS, and so are torque and energy. */
static const spelling spellings[] = {
    {"1", TS_KIND_NUMBER, "1", "1"},
    {"%", TS_KIND_NUMBER, "percent", "1"},
    {"m", TS_KIND_LENGTH, "meter", "m"},
    {"cm", TS_KIND_LENGTH, "centimeter", "m"},
    {"mm", TS_KIND_LENGTH, "millimeter", "m"},
    {"um", TS_KIND_LENGTH, "micrometer", "m"},
    {"in", TS_KIND_LENGTH, "international_inch", "m"},
    {"ft", TS_KIND_LENGTH, "international_foot", "m"},
    {"m2", TS_KIND_AREA, "meter^2", "m2"},
    {"cm2", TS_KIND_AREA, "centimeter^2", "m2"},
    {"mm2", TS_KIND_AREA, "millimeter^2", "m2"},
    {"in2", TS_KIND_AREA, "international_inch^2", "m2"},
    {"rad", TS_KIND_ANGLE, "radian", "rad"},
    {"mrad", TS_KIND_ANGLE, "milliradian", "rad"},
    {"deg", TS_KIND_ANGLE, "arc_degree", "rad"},
    {"arcmin", TS_KIND_ANGLE, "arc_minute", "rad"},
    {"arcsec", TS_KIND_ANGLE, "arc_second", "rad"},
    {"s", TS_KIND_TIME, "second", "s"},
    {"ms", TS_KIND_TIME, "millisecond", "s"},
    {"min", TS_KIND_TIME, "minute", "s"},
    {"h", TS_KIND_TIME, "hour", "s"},
    {"kg", TS_KIND_MASS, "kilogram", "kg"},
    {"g", TS_KIND_MASS, "gram", "kg"},
    {"lb", TS_KIND_MASS, "avoirdupois_pound", "kg"},
    {"kg/m3", TS_KIND_DENSITY, "kilogram/meter^3", "kg m-3"},
    {"g/cm3", TS_KIND_DENSITY, "gram/centimeter^3", "kg m-3"},
    {"lb/in3", TS_KIND_DENSITY, "avoirdupois_pound/international_inch^3", "kg m-3"},
    {"kg.m2", TS_KIND_INERTIA, "kilogram meter^2", "kg m2"},
    {"kg.mm2", TS_KIND_INERTIA, "kilogram millimeter^2", "kg m2"},
    {"kg.cm2", TS_KIND_INERTIA, "kilogram centimeter^2", "kg m2"},
    {"lb.in2", TS_KIND_INERTIA, "avoirdupois_pound international_inch^2", "kg m2"},
    {"lb.ft2", TS_KIND_INERTIA, "avoirdupois_pound international_foot^2", "kg m2"},
    {"lbf.in.s2", TS_KIND_INERTIA, "pound_force international_inch second^2", "kg m2"},
    {"m/s", TS_KIND_VELOCITY, "meter/second", "m/s"},
    {"mm/s", TS_KIND_VELOCITY, "millimeter/second", "m/s"},
    {"in/s", TS_KIND_VELOCITY, "international_inch/second", "m/s"},
    {"ft/s", TS_KIND_VELOCITY, "international_foot/second", "m/s"},
    {"ft/min", TS_KIND_VELOCITY, "international_foot/minute", "m/s"},
    {"rad/s", TS_KIND_ROTATIONAL_SPEED, "radian/second", "rad/s"},
    {"rpm", TS_KIND_ROTATIONAL_SPEED, "rpm", "rad/s"},
    {"rad/s2", TS_KIND_ROTATIONAL_ACCELERATION, "radian/second^2", "rad/s2"},
    {"rpm/s", TS_KIND_ROTATIONAL_ACCELERATION, "revolution/minute/second", "rad/s2"},
    {"Hz", TS_KIND_FREQUENCY, "hertz", "s-1"},
    {"kHz", TS_KIND_FREQUENCY, "kilohertz", "s-1"},
    {"N", TS_KIND_FORCE, "newton", "N"},
    {"kN", TS_KIND_FORCE, "kilonewton", "N"},
    {"lbf", TS_KIND_FORCE, "pound_force", "N"},
    {"N.m", TS_KIND_TORQUE, "newton meter", "N m"},
    {"N.mm", TS_KIND_TORQUE, "newton millimeter", "N m"},
    {"kN.m", TS_KIND_TORQUE, "kilonewton meter", "N m"},
    {"lbf.in", TS_KIND_TORQUE, "pound_force international_inch", "N m"},
    {"lbf.ft", TS_KIND_TORQUE, "pound_force international_foot", "N m"},
    {"J", TS_KIND_ENERGY, "joule", "J"},
    {"kJ", TS_KIND_ENERGY, "kilojoule", "J"},
    {"MJ", TS_KIND_ENERGY, "megajoule", "J"},
    {"W.h", TS_KIND_ENERGY, "watt hour", "J"},
    {"kW.h", TS_KIND_ENERGY, "kilowatt hour", "J"},
    {"W", TS_KIND_POWER, "watt", "W"},
    {"kW", TS_KIND_POWER, "kilowatt", "W"},
    {"MW", TS_KIND_POWER, "megawatt", "W"},
    {"hp", TS_KIND_POWER, "550 international_foot pound_force/second", "W"},
    {"Pa", TS_KIND_STRESS, "pascal", "Pa"},
    {"kPa", TS_KIND_STRESS, "kilopascal", "Pa"},
    {"MPa", TS_KIND_STRESS, "megapascal", "Pa"},
    {"GPa", TS_KIND_STRESS, "gigapascal", "Pa"},
    {"N/mm2", TS_KIND_STRESS, "newton/millimeter^2", "Pa"},
    {"bar", TS_KIND_STRESS, "bar", "Pa"},
    {"psi", TS_KIND_STRESS, "psi", "Pa"},
    {"ksi", TS_KIND_STRESS, "ksi", "Pa"},
    {"Pa(a)", TS_KIND_PRESSURE_ABSOLUTE, "pascal", "Pa"},
    {"kPa(a)", TS_KIND_PRESSURE_ABSOLUTE, "kilopascal", "Pa"},
    {"MPa(a)", TS_KIND_PRESSURE_ABSOLUTE, "megapascal", "Pa"},
    {"bar(a)", TS_KIND_PRESSURE_ABSOLUTE, "bar", "Pa"},
    {"psi(a)", TS_KIND_PRESSURE_ABSOLUTE, "psi", "Pa"},
    {"Pa(g)", TS_KIND_PRESSURE_GAUGE, "pascal", "Pa"},
    {"kPa(g)", TS_KIND_PRESSURE_GAUGE, "kilopascal", "Pa"},
    {"MPa(g)", TS_KIND_PRESSURE_GAUGE, "megapascal", "Pa"},
    {"bar(g)", TS_KIND_PRESSURE_GAUGE, "bar", "Pa"},
    {"psi(g)", TS_KIND_PRESSURE_GAUGE, "psi", "Pa"},
    {"K", TS_KIND_TEMPERATURE, "kelvin", "K"},
    {"degC", TS_KIND_TEMPERATURE, "degree_celsius", "K"},
    {"degF", TS_KIND_TEMPERATURE, "degree_fahrenheit", "K"},
    {"degR", TS_KIND_TEMPERATURE, "degree_rankine", "K"},
    {"K", TS_KIND_TEMPERATURE_DIFFERENCE, "kelvin", "K"},
    {"degR", TS_KIND_TEMPERATURE_DIFFERENCE, "degree_rankine", "K"},
    {"m3/s", TS_KIND_VOLUME_FLOW, "meter^3/second", "m3/s"},
    {"L/s", TS_KIND_VOLUME_FLOW, "liter/second", "m3/s"},
    {"L/min", TS_KIND_VOLUME_FLOW, "liter/minute", "m3/s"},
    {"L/h", TS_KIND_VOLUME_FLOW, "liter/hour", "m3/s"},
    {"gpm", TS_KIND_VOLUME_FLOW, "231 international_inch^3/minute", "m3/s"},
    {"kg/s", TS_KIND_MASS_FLOW, "kilogram/second", "kg/s"},
    {"g/s", TS_KIND_MASS_FLOW, "gram/second", "kg/s"},
    {"kg/min", TS_KIND_MASS_FLOW, "kilogram/minute", "kg/s"},
    {"kg/h", TS_KIND_MASS_FLOW, "kilogram/hour", "kg/s"},
    {"lb/s", TS_KIND_MASS_FLOW, "avoirdupois_pound/second", "kg/s"},
    {"lb/min", TS_KIND_MASS_FLOW, "avoirdupois_pound/minute", "kg/s"},
    {"lb/h", TS_KIND_MASS_FLOW, "avoirdupois_pound/hour", "kg/s"},
    {"m2/s", TS_KIND_KINEMATIC_VISCOSITY, "meter^2/second", "m2/s"},
    {"mm2/s", TS_KIND_KINEMATIC_VISCOSITY, "millimeter^2/second", "m2/s"},
    {"cSt", TS_KIND_KINEMATIC_VISCOSITY, "centistokes", "m2/s"},
    {"N/m", TS_KIND_STIFFNESS, "newton/meter", "N/m"},
    {"N/mm", TS_KIND_STIFFNESS, "newton/millimeter", "N/m"},
    {"N/um", TS_KIND_STIFFNESS, "newton/micrometer", "N/m"},
    {"lbf/in", TS_KIND_STIFFNESS, "pound_force/international_inch", "N/m"},
    {"N.m/rad", TS_KIND_TORSIONAL_STIFFNESS, "newton meter/radian", "N m/rad"},
    {"kN.m/rad", TS_KIND_TORSIONAL_STIFFNESS, "kilonewton meter/radian", "N m/rad"},
    {"N.m/deg", TS_KIND_TORSIONAL_STIFFNESS, "newton meter/arc_degree", "N m/rad"},
    {"lbf.in/rad", TS_KIND_TORSIONAL_STIFFNESS, "pound_force international_inch/radian", "N m/rad"},
    {"lbf.in/deg", TS_KIND_TORSIONAL_STIFFNESS, "pound_force international_inch/arc_degree",
     "N m/rad"},
    {"1/K", TS_KIND_THERMAL_EXPANSION, "1/kelvin", "1/K"},
    {"ppm/K", TS_KIND_THERMAL_EXPANSION, "micrometer/meter/kelvin", "1/K"},
    {"kg/rad", TS_KIND_MASS_PER_ANGLE, "kilogram/radian", "kg/rad"},
    {"kg/deg", TS_KIND_MASS_PER_ANGLE, "kilogram/arc_degree", "kg/rad"},
    {"lb/deg", TS_KIND_MASS_PER_ANGLE, "avoirdupois_pound/arc_degree", "kg/rad"},
};

#define SPELLING_COUNT (sizeof spellings / sizeof spellings[0])

static ut_system *open_system(void)
{
    (void)ut_set_error_message_handler(ut_ignore);
    ut_system *theirs = ut_read_xml(NULL);
    assert_non_null(theirs);
    return theirs;
}

static double their_si(ut_system *system, const char *unit_text, const char *si_text, double value)
{
    ut_unit *unit = ut_parse(system, unit_text, UT_ASCII);
    ut_unit *si   = ut_parse(system, si_text, UT_ASCII);
    if (unit == NULL || si == NULL)
        fail_msg("UDUNITS does not know %s or %s", unit_text, si_text);
    cv_converter *converter = ut_get_converter(unit, si);
    if (converter == NULL)
        fail_msg("UDUNITS does not turn %s into %s", unit_text, si_text);
    const double result = cv_convert_double(converter, value);
    cv_free(converter);
    ut_free(unit);
    ut_free(si);
    return result;
}

static void every_unit_agrees(void **state)
{
    (void)state;
    ut_system *system = open_system();
    for (size_t i = 0; i < SPELLING_COUNT; i++) {
        const spelling *s    = &spellings[i];
        const ts_unit  *unit = ts_unit_named(ts_text_of(s->name), s->kind);
        if (unit == NULL)
            fail_msg("there is no %s", s->name);
        /* A few roundings of theirs, of 1.1e-16 each; values on both sides of an offset. */
        assert_close(ts_to_si(1.0, unit), their_si(system, s->theirs, s->si, 1.0), 2e-15);
        assert_close(ts_to_si(-40.0, unit), their_si(system, s->theirs, s->si, -40.0), 2e-15);
        assert_close(ts_to_si(123.456, unit), their_si(system, s->theirs, s->si, 123.456), 2e-15);
    }
    ut_free_system(system);
}

static void every_unit_was_asked_about(void **state)
{
    (void)state;
    assert_int_equal(SPELLING_COUNT, ts_unit_count());
    for (size_t i = 0; i < ts_unit_count(); i++) {
        const ts_unit *unit  = ts_unit_at(i);
        size_t         times = 0;
        for (size_t k = 0; k < SPELLING_COUNT; k++)
            times += spellings[k].kind == unit->kind && strcmp(spellings[k].name, unit->name) == 0
                         ? 1
                         : 0;
        if (times != 1)
            fail_msg("%s was asked %zu times", unit->name, times);
    }
}

/* UDUNITS' own horsepower is 7.456999e2 W, its gallon 3.785412e-3 m3: half of the last digit. */
static void names_that_they_round_agree_as_far_as_they_go(void **state)
{
    (void)state;
    ut_system     *system = open_system();
    const ts_unit *hp     = ts_unit_named(TS_TEXT("hp"), TS_KIND_POWER);
    const ts_unit *gpm    = ts_unit_named(TS_TEXT("gpm"), TS_KIND_VOLUME_FLOW);
    assert_close(ts_to_si(1.0, hp), their_si(system, "horsepower", "W", 1.0), 0.5e-4 / 745.6999);
    assert_close(ts_to_si(1.0, gpm), their_si(system, "US_liquid_gallon/minute", "m3/s", 1.0),
                 0.5e-6 / 3.785412);
    ut_free_system(system);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_unit_agrees),
        cmocka_unit_test(every_unit_was_asked_about),
        cmocka_unit_test(names_that_they_round_agree_as_far_as_they_go),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
