/* model/field_oil.c: what does the file say of the oil, and of how it comes to the teeth? */
#include "model/drive.h"
#include "model/field.h"

#include "catalog/oil.h"

const char *const ts_lubrications[] = {"jets", "dip", NULL};

/* ---- what the specification says --------------------------------------------------------------
 */

static const ts_oil_row *row_of(const void *record)
{
    const ts_oil *oil = record;
    return oil->specification.standing == TS_GIVEN || oil->specification.standing == TS_ASSUMED
               ? ts_oil_at((size_t)oil->specification.value)
               : NULL;
}

static ts_preset nu_40_preset(const void *record)
{
    const ts_oil_row *row = row_of(record);
    return row == NULL ? (ts_preset){NULL, NULL} : (ts_preset){row->nu_40, row->source};
}

static ts_preset nu_100_preset(const void *record)
{
    const ts_oil_row *row = row_of(record);
    return row == NULL ? (ts_preset){NULL, NULL} : (ts_preset){row->nu_100, row->source};
}

static ts_preset rho_15_preset(const void *record)
{
    const ts_oil_row *row = row_of(record);
    return row == NULL ? (ts_preset){NULL, NULL} : (ts_preset){row->rho_15, row->source};
}

/* A load stage that the file gives says more of this oil than its specification does. */
static ts_preset theta_S_preset(const void *record)
{
    const ts_oil     *oil = record;
    const ts_oil_row *row = row_of(record);
    if (row == NULL || oil->scuffing_stage.standing != TS_ABSENT)
        return (ts_preset){NULL, NULL};
    return (ts_preset){row->theta_S, row->limit_source};
}

static ts_preset test_preset(const void *record)
{
    const ts_oil *oil = record;
    if (oil->micropitting_stage.standing != TS_GIVEN)
        return (ts_preset){NULL, NULL};
    return (ts_preset){"90 degC", "the usual temperature of the test FVA 54/7 (from memory)"};
}

/* ---- the fields -------------------------------------------------------------------------------
 */

#define OF_KIND(of) .form = TS_FORM_MEASURE, .kind = TS_KIND_##of
#define BY_ROW      "what usual oils of its `specification` have, see data/oil.tsv"

static const ts_field oil_fields[] = {
    {.key  = "specification",
     .form = TS_FORM_PICK,
     TS_AT(ts_oil, specification),
     .choices = ts_oil_keys,
     .preset  = {"MIL-PRF-23699", "the usual oil of turbine engines; common practice, no source"},
     .says    = "The public specification of the oil, from which its other values follow where the "
                "file does not give them.",
     .example = "MIL-PRF-23699"},
    {.key = "viscosity at 40",
     OF_KIND(KINEMATIC_VISCOSITY),
     TS_AT(ts_oil, nu_40),
     .range     = TS_ABOVE(0.0, 1e-2, "cSt"),
     .preset    = {"27 cSt", BY_ROW},
     .preset_of = nu_40_preset,
     .says      = "Kinematic viscosity at 40 degC.",
     .example   = "27 cSt"},
    {.key = "viscosity at 100",
     OF_KIND(KINEMATIC_VISCOSITY),
     TS_AT(ts_oil, nu_100),
     .range     = TS_ABOVE(0.0, 1e-2, "cSt"),
     .preset    = {"5.1 cSt", BY_ROW},
     .preset_of = nu_100_preset,
     .says      = "Kinematic viscosity at 100 degC.",
     .example   = "5.1 cSt"},
    {.key = "density",
     OF_KIND(DENSITY),
     TS_AT(ts_oil, rho_15),
     .range     = TS_FROM(500.0, 2000.0, "kg/m3"),
     .preset    = {"1000 kg/m3", BY_ROW},
     .preset_of = rho_15_preset,
     .says      = "Density at 15 degC.",
     .example   = "1000 kg/m3"},
    {.key = "scuffing stage",
     OF_KIND(NUMBER),
     TS_AT(ts_oil, scuffing_stage),
     .range = TS_ABOVE(0.0, 15.0, "1"),
     .says  = "Load stage at which the oil fails in the test A/8.3/90 of ISO 14635-1; without the "
              "key the one that leads to its `scuffing temperature`.",
     .example = "10"},
    {.key = "scuffing temperature",
     OF_KIND(TEMPERATURE),
     TS_AT(ts_oil, theta_S),
     .range     = TS_FROM(273.15, 1273.15, "degC"),
     .preset    = {"220 degC", BY_ROW ", unless its `scuffing stage` is given"},
     .preset_of = theta_S_preset,
     .says      = "Contact temperature at which case-hardened flanks scuff in this oil.",
     .example   = "220 degC"},
    {.key  = "micropitting stage",
     .form = TS_FORM_TALLY,
     TS_AT(ts_oil, micropitting_stage),
     .range = TS_FROM(5, 10, "1"),
     .says  = "Stage at which the oil fails in the micropitting test of FVA 54/7; without the key "
              "films are told but not judged.",
     .example = "10"},
    {.key = "micropitting test",
     OF_KIND(TEMPERATURE),
     TS_AT(ts_oil, micropitting_test),
     .range  = TS_FROM(323.15, 373.15, "degC"),
     .preset = {"90 degC", "asked for by `micropitting stage`: the usual temperature of the test "
                           "FVA 54/7 (from memory)"},
     .preset_of = test_preset,
     .says      = "Oil temperature of that test.",
     .example   = "60 degC"},
    {.key = "feed",
     OF_KIND(TEMPERATURE),
     TS_AT(ts_oil, feed),
     .range   = TS_FROM(233.15, 523.15, "degC"),
     .preset  = {"90 degC", "behind the cooler of a warm engine; common practice, no source"},
     .says    = "Temperature of the oil that comes to the teeth.",
     .example = "90 degC"},
    {.key  = "feed at",
     .form = TS_FORM_BY_CONDITION,
     .kind = TS_KIND_TEMPERATURE,
     TS_AT(ts_oil, feed_at),
     .range   = TS_FROM(233.15, 523.15, "degC"),
     .says    = "The same in single conditions, where it is not `feed`.",
     .example = "{crank: -10 degC, red line: 120 degC}"},
    {.key = "bearing rise",
     OF_KIND(TEMPERATURE_DIFFERENCE),
     TS_AT(ts_oil, bearing_rise),
     .range   = TS_FROM(0.0, 150.0, "K"),
     .preset  = {"30 K", "a bearing runs warmer than the oil that it is fed; common practice, no "
                          "source"},
     .says    = "By how much warmer than its feed the oil in a bearing is.",
     .example = "25 K"},
    {.key  = "cleanness",
     .form = TS_FORM_PICK,
     TS_AT(ts_oil, cleanness),
     .choices = ts_cleannesses,
     .preset  = {"on line 15/12", "a fine filter in the circuit; common practice, no source"},
     .says    = "How clean it is in the bearings: filter and code of ISO 4406.",
     .example = "on line 17/14"},
    {.key = "rise",
     OF_KIND(TEMPERATURE_DIFFERENCE),
     TS_AT(ts_oil, rise),
     .range   = TS_ABOVE(0.0, 150.0, "K"),
     .preset  = {"35 K", "by how much oil warms in engine gearboxes; common practice, no source"},
     .says    = "By how much the oil may warm in the boxes, in every condition that lasts.",
     .example = "40 K"},
    {.key = "hottest",
     OF_KIND(TEMPERATURE),
     TS_AT(ts_oil, hottest),
     .range   = TS_FROM(273.15, 573.15, "degC"),
     .preset  = {"165 degC", "below where ester oils age soon; common practice, no source"},
     .says    = "How warm the oil may leave the boxes, in any condition.",
     .example = "170 degC"},
    {.key = "jet pressure",
     OF_KIND(STRESS),
     TS_AT(ts_oil, jet_pressure),
     .range   = TS_ABOVE(0.0, 1e7, "bar"),
     .preset  = {"3 bar", "that drops over oil jets of engines; common practice, no source"},
     .says    = "What drops over the holes of the jets at full flow.",
     .example = "3.5 bar"},
    {.key = "least jet",
     OF_KIND(LENGTH),
     TS_AT(ts_oil, least_jet),
     .range   = TS_ABOVE(0.0, 0.02, "mm"),
     .preset  = {"0.8 mm", "smaller holes are blocked by what a filter lets through; common "
                            "practice, no source"},
     .says    = "The smallest hole of a jet; a place that needs less oil is given more.",
     .example = "0.9 mm"},
    {.key = "jet gap",
     OF_KIND(LENGTH),
     TS_AT(ts_oil, jet_gap),
     .range   = TS_FROM(0.0, 0.5, "mm"),
     .preset  = {"15 mm", "from holes to teeth and bearings; common practice, no source"},
     .says    = "The gap that every jet has to cross, from its hole to what it wets.",
     .example = "12 mm"},
    {.key = "flow",
     OF_KIND(VOLUME_FLOW),
     TS_AT(ts_oil, flow),
     .range   = TS_ABOVE(0.0, 1.0, "L/min"),
     .says    = "Full flow to the jets of all boxes; without the key what keeps every place within "
                "its `rise`.",
     .example = "14 L/min"},
};

/* An oil is thinner where it is hotter, and its scuffing temperature follows from its stage. */
static const char *judge_oil(const void *record, const char **key, const char **expected)
{
    const ts_oil *oil = record;
    if (oil->scuffing_stage.standing == TS_GIVEN && oil->theta_S.standing == TS_GIVEN) {
        *key      = "scuffing temperature";
        *expected = "one of `scuffing stage` and `scuffing temperature`";
        return "the scuffing temperature follows from the load stage, and both are given";
    }
    if (!(oil->nu_100.value >= oil->nu_40.value))
        return NULL;
    *key      = oil->nu_100.standing == TS_GIVEN ? "viscosity at 100" : "viscosity at 40";
    *expected = "`viscosity at 100` smaller than `viscosity at 40`";
    return "the oil is not thinner at 100 degC than at 40 degC";
}

const ts_record_table ts_table_oil = {
    .id   = "oil",
    .name = "the oil",
    .says = "The oil that runs through the boxes.",
    TS_TABLE(ts_oil, oil_fields),
    .judge = judge_oil,
};
