/* rate/steel_element.c: what does the catalogue say of a gear steel? */
#include "catalog/gear_material.h"
#include "catalog/hardness.h"
#include "rate/gear_steel.h"

static const char *const asked[] = {
    "hardness", "hardness_HRC", "core_HRC", "sigma_Hlim", "sigma_Flim", "sigma_y",
    "E",        "nu",           "rho",      NULL};

static const ts_rated_section section = {
    .title     = "Row of the catalogue",
    .standard  = "ISO 6336-5:2016",
    .condition = TS_EVERY_CONDITION,
    .asked     = asked,
};

static void note_row(ts_rate_desk *desk, const char *symbol, double value, const char *unit,
                     const char *source)
{
    if (!desk->failed && !isnan(value))
        ts_workings_row(desk->workings, symbol, value, unit, source);
}

static void tell_row(ts_rate_desk *desk, const ts_gear_material *steel, double hardness)
{
    static const char *const scale = "ASTM E140, table 1 (from memory), approximate";

    ts_rate_fact(desk, "row", steel->key);
    ts_rate_fact(desk, "class", ts_gear_class_name(steel->class));
    ts_rate_fact(desk, "grade", steel->grade);
    ts_rate_fact(desk, "basis", steel->basis);
    ts_rate_fact(desk, "source", steel->source);
    note_row(desk, "E", steel->E, "Pa", steel->source);
    note_row(desk, "nu", steel->nu, "1", steel->source);
    note_row(desk, "rho", steel->rho, "kg/m3", steel->source);
    note_row(desk, "sigma_y", steel->yield, "Pa", steel->source);
    note_row(desk, "core_HRC", steel->core_HRC, "1", steel->source);
    if (steel->class != TS_GEAR_NORMALISED)
        note_row(desk, "hardness_HRC", ts_hardness_in(TS_HARDNESS_HRC, hardness, TS_HARDNESS_HV),
                 "1", scale);
}

void ts_rate_steel_element(ts_rate_desk *desk, const ts_rate_steel *given)
{
    ts_gear_material steel;
    ts_gear_strength strength;

    ts_rate_open_element(desk, "material", &ts_table_rate_steel, given);
    ts_rate_open_section(desk, &section);
    if (!desk->failed && given->row.standing == TS_GIVEN) {
        steel           = ts_gear_material_at((size_t)given->row.value);
        double hardness = ts_rate_take(desk, "hardness");
        if (isnan(hardness)) {
            hardness = steel.hardness;
            note_row(desk, "hardness", hardness, "1", steel.source);
        }
        tell_row(desk, &steel, hardness);
        if (!desk->failed &&
            ts_gear_strength_of(&steel, hardness, TS_EITHER_GEAR, &strength, desk->workings))
            ts_rate_judge_hardness(desk, "rate-range-hardness", hardness, &steel, &strength);
    }
    (void)ts_rate_close_section(desk);
    ts_rate_close_element(desk);
}
