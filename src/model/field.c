/* model/field.c: which tables are there, and what do they have in common? */
#include "model/field.h"

#include <string.h>

const ts_record_table *const ts_tables[] = {
    &ts_table_drive,
    &ts_table_condition,
    &ts_table_spool,
    &ts_table_accessory,
    &ts_table_torque_limits,
    &ts_table_body,
    &ts_table_neck,
    &ts_table_pumps,
    &ts_table_sump,
    &ts_table_scavenge,
    &ts_table_attitude,
    &ts_table_separator,
    &ts_table_engine,
    &ts_table_cowl_point,
    &ts_table_keep_out,
    &ts_table_spool_drive,
    &ts_table_take_off,
    &ts_table_bevel_gears,
    &ts_table_tower_shaft,
    &ts_table_box,
    &ts_table_arc,
    &ts_table_tooth_system,
    &ts_table_temperatures,
    &ts_table_box_input,
    &ts_table_box_shaft,
    &ts_table_step_gear,
    &ts_table_box_seats,
    &ts_table_stub_seats,
    &ts_table_tower_seats,
    &ts_table_bearing_seat,
    &ts_table_shaft_section,
    &ts_table_oil,
    &ts_table_method,
    &ts_table_limits,
    &ts_table_assumption_line,
    &ts_table_waiver,
    &ts_table_arrange,
    &ts_table_arrange_box,
    &ts_table_arrange_accessory,
    &ts_table_arrange_bevels,
    &ts_table_arrange_tower,
    &ts_table_arrange_mass,
    &ts_table_arrange_weights,
    &ts_table_weighing,
    &ts_table_mount,
    &ts_table_torque_point,
    &ts_table_start,
    &ts_table_seizure,
    &ts_table_jolt,
    &ts_table_whirl,
};
const size_t ts_table_count = sizeof ts_tables / sizeof ts_tables[0];

static const ts_record_table *const rate_tables[] = {
    &ts_table_rate,         &ts_table_rate_pair,  &ts_table_rate_bin,       &ts_table_rate_inverse,
    &ts_table_rate_bevels,  &ts_table_rate_tooth, &ts_table_rate_tolerance, &ts_table_rate_steel,
    &ts_table_rate_bearing, &ts_table_rate_neck,  &ts_table_rate_spline,
};

static const ts_record_table *const sampling_tables[] = {
    &ts_table_sampling,
    &ts_table_sampling_vary,
    &ts_table_sampling_tie,
    &ts_table_sampling_watch,
};

const ts_table_set ts_drive_tables    = {ts_tables, sizeof ts_tables / sizeof ts_tables[0]};
const ts_table_set ts_rate_tables     = {rate_tables, sizeof rate_tables / sizeof rate_tables[0]};
const ts_table_set ts_sampling_tables = {sampling_tables,
                                         sizeof sampling_tables / sizeof sampling_tables[0]};

const char *const ts_long_form_keys[4] = {"value", "source", "date", "confidence"};
const char *const ts_confidences[]     = {"low", "medium", "high", NULL};
const char *const ts_reserved_words[]  = {"always",       "events", "hours",   "cover",
                                          "hand turning", "open",   "unknown", NULL};

/* A choice that has a default is left out instead, so that what is assumed is shown. */
bool ts_field_may_be_unknown(const ts_field *field)
{
    const bool defaulted = field->form == TS_FORM_PICK && field->preset.value != NULL;
    return field->need != TS_REQUIRED && !field->known && !defaulted;
}

const ts_field *ts_field_named(const ts_record_table *table, ts_text key)
{
    for (size_t i = 0; i < table->field_count; i++) {
        const ts_field *field = &table->fields[i];
        if (field->form != TS_FORM_SPOOL_SPEEDS && ts_text_is(key, field->key))
            return field;
    }
    return NULL;
}

const ts_record_table *ts_table_with_key(const ts_table_set *set, ts_text key,
                                         const ts_record_table *table)
{
    for (size_t i = 0; i < set->count; i++) {
        if (set->tables[i] != table && ts_field_named(set->tables[i], key) != NULL)
            return set->tables[i];
    }
    return NULL;
}
