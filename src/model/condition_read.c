/* model/condition_read.c: what does the file say condition by condition? */
#include "model/reading.h"

static size_t value_size(const ts_field *field)
{
    return field->form == TS_FORM_SPAN_BY_CONDITION ? sizeof(ts_span) : sizeof(ts_measure);
}

static size_t value_count(const ts_reading *reading, const ts_field *field)
{
    return field->form == TS_FORM_SPOOL_SPEEDS ? reading->spools.count : reading->conditions.count;
}

void ts_set_all_absent(ts_reading *reading, const ts_target *target)
{
    const size_t count  = value_count(reading, target->field);
    const size_t size   = value_size(target->field);
    char        *values = ts_arena_take(reading->arena, count, size);
    if (values == NULL) {
        reading->no_memory = true;
        return;
    }
    ts_set_pointer(target->to, values);
    for (size_t i = 0; i < count; i++)
        ts_set_absent(&(ts_target){target->field, values + i * size, target->record});
}

bool ts_read_spool_speed(ts_reading *reading, const ts_field *field, ts_node node, void *record)
{
    const ts_node_place *place = &reading->source->nodes[node];
    const int32_t        spool = ts_name_index_find(&reading->spools, place->key);
    ts_measure          *speed = ts_get_pointer(ts_member(record, field->offset));
    if (spool < 0 || speed == NULL)
        return false;
    ts_read_scalar(reading, &(ts_target){field, &speed[spool], place->parent}, node);
    return true;
}

static void complain_condition(ts_reading *reading, ts_node child)
{
    const ts_text key = reading->source->nodes[child].key;
    if (ts_names_are_missing(&reading->conditions))
        return;
    ts_complain(reading,
                &(ts_fault){.code     = "unknown-condition",
                            .node     = child,
                            .at_key   = true,
                            .expected = "a condition that `conditions` describes",
                            .nearest  = ts_nearest_name(reading, key, &reading->conditions)},
                "no condition is called `%.*s`", (int)ts_quoted(key).length, key.at);
}

/* One of the values, as a field of its own. */
static ts_field one_value(const ts_field *field)
{
    ts_field one = *field;
    one.form     = field->form == TS_FORM_BY_CONDITION ? TS_FORM_MEASURE : TS_FORM_SPAN;
    return one;
}

/* `always` fills every condition that is not named. */
static void spread(ts_reading *reading, const ts_target *target, ts_span *values, ts_node always)
{
    const ts_field one = one_value(target->field);
    ts_span        all;
    ts_read_scalar(reading, &(ts_target){&one, &all, target->record}, always);
    if (all.standing == TS_ABSENT)
        return;
    for (size_t i = 0; i < reading->conditions.count; i++) {
        if (values[i].standing == TS_ABSENT)
            values[i] = all;
    }
}

void ts_read_by_condition(ts_reading *reading, const ts_target *target, ts_node node)
{
    const ts_node_place *nodes  = reading->source->nodes;
    const ts_field      *field  = target->field;
    const ts_field       one    = one_value(field);
    const size_t         size   = value_size(field);
    ts_node              always = 0;
    ts_set_all_absent(reading, target);
    char *values = ts_get_pointer(target->to);
    if (values == NULL)
        return;
    if (nodes[node].form != TS_NODE_MAPPING) {
        ts_complain_form(reading, field, node, "values by condition");
        return;
    }
    for (ts_node child = nodes[node].first; child != 0; child = nodes[child].next) {
        const int32_t condition = ts_name_index_find(&reading->conditions, nodes[child].key);
        if (field->form == TS_FORM_SPAN_BY_CONDITION && ts_text_is(nodes[child].key, "always"))
            always = child;
        else if (condition < 0 && nodes[child].spoiled)
            continue; /* the end of a number that a comma cut */
        else if (condition < 0)
            complain_condition(reading, child);
        else
            ts_read_scalar(reading, &(ts_target){&one, values + (size_t)condition * size, node},
                           child);
    }
    if (always != 0)
        spread(reading, target, (ts_span *)(void *)values, always);
}
