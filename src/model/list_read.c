/* model/list_read.c: what do the lists of a file say, by position, by name and by condition? */
#include "model/reading.h"

static size_t count_children(const ts_source *source, ts_node node)
{
    size_t count = 0;
    for (ts_node child = source->nodes[node].first; child != 0; child = source->nodes[child].next)
        count++;
    return count;
}

static void complain_form(ts_reading *reading, const ts_field *field, ts_node node,
                          const char *what)
{
    ts_complain(reading,
                &(ts_fault){.code     = "wrong-form",
                            .node     = node,
                            .at_key   = true,
                            .expected = ts_field_expected(reading, field)},
                "`%s` needs %s", field->key, what);
}

/* ---- room ----------------------------------------------------------------------------------- */

/* Shafts are counted over the whole file, for lists of them may stand in one another. */
static bool is_too_many(ts_reading *reading, const ts_field *field, ts_node node, size_t count)
{
    if (field->record == &ts_table_box_shaft)
        reading->box_shafts += count;
    if (count <= field->most && reading->box_shafts <= TS_BOX_SHAFTS_MOST)
        return false;
    ts_complain(reading, &(ts_fault){.code = "too-many", .node = node, .at_key = true},
                "`%s` holds %zu items; the most are %zu, and %d shafts in a file", field->key,
                count, field->most, TS_BOX_SHAFTS_MOST);
    return true;
}

/* Room for `count` records; NULL with a message when they are too many. */
static char *make_list(ts_reading *reading, const ts_field *field, ts_node node, size_t count,
                       void *record)
{
    if (is_too_many(reading, field, node, count))
        return NULL;
    char *items = ts_arena_take(reading->arena, count, field->record->size);
    if (items == NULL) {
        reading->no_memory = true;
        return NULL;
    }
    ts_set_pointer(ts_member(record, field->offset), items);
    *(size_t *)ts_member(record, field->count_offset) = count;
    return items;
}

/* ---- by position ---------------------------------------------------------------------------- */

static void read_items(ts_reading *reading, const ts_field *field, ts_node node, void *record)
{
    const ts_node_place *nodes = reading->source->nodes;
    const size_t         count = count_children(reading->source, node);
    char                *items = make_list(reading, field, node, count, record);
    if (items == NULL)
        return;
    if (count == 0 && field->form == TS_FORM_ONE_OR_LIST)
        complain_form(reading, field, node, "at least one item, or no key at all");
    for (ts_node child = nodes[node].first; child != 0; child = nodes[child].next) {
        void *item = items + (size_t)(nodes[child].position - 1) * field->record->size;
        if (nodes[child].form == TS_NODE_MAPPING)
            ts_read_record(reading, field->record, child, item);
        else
            complain_form(reading, field, child, "records as its items");
    }
}

void ts_read_list(ts_reading *reading, const ts_field *field, ts_node node, void *record)
{
    const ts_node_form form = reading->source->nodes[node].form;
    if (form == TS_NODE_SEQUENCE) {
        read_items(reading, field, node, record);
    } else if (form == TS_NODE_MAPPING && field->form == TS_FORM_ONE_OR_LIST) {
        char *item = make_list(reading, field, node, 1, record);
        if (item != NULL)
            ts_read_record(reading, field->record, node, item);
    } else {
        complain_form(reading, field, node,
                      field->form == TS_FORM_LIST ? "a list" : "a record or a list of them");
    }
}

/* ---- by name -------------------------------------------------------------------------------- */

static int32_t tapped_spool(ts_reading *reading, ts_node child)
{
    const ts_text name  = reading->source->nodes[child].key;
    const int32_t spool = ts_name_index_find(&reading->spools, name);
    if (spool < 0)
        ts_complain(reading,
                    &(ts_fault){.code     = "unknown-spool",
                                .node     = child,
                                .at_key   = true,
                                .expected = "a spool that `spools` describes",
                                .nearest  = ts_nearest_name(reading, name, &reading->spools)},
                    "the spool `%.*s` is tapped but not described", (int)ts_quoted(name).length,
                    name.at);
    return spool;
}

/* The heading of a record in a list by name: its own name, or the number of its spool. */
static bool read_heading(ts_reading *reading, const ts_field *field, ts_node child, void *item,
                         size_t number)
{
    if (field->form == TS_FORM_TAPPED) {
        ((ts_spool_drive *)item)->spool = tapped_spool(reading, child);
        return true;
    }
    /* The structs of all lists by name begin with their name (model/field.h). */
    const ts_name_index *names = field->record == &ts_table_condition ? &reading->conditions
                                 : field->record == &ts_table_spool   ? &reading->spools
                                                                      : &reading->accessories;
    if (number >= names->count)
        return false;
    *(const char **)item = names->names[number];
    return true;
}

void ts_read_named(ts_reading *reading, const ts_field *field, ts_node node, void *record)
{
    const ts_node_place *nodes = reading->source->nodes;
    if (nodes[node].form != TS_NODE_MAPPING || nodes[node].first == 0) {
        complain_form(reading, field, node, "records by name");
        return;
    }
    char *items = make_list(reading, field, node, count_children(reading->source, node), record);
    if (items == NULL)
        return;
    size_t number = 0;
    for (ts_node child = nodes[node].first; child != 0; child = nodes[child].next) {
        void *item = items + number * field->record->size;
        if (!read_heading(reading, field, child, item, number++))
            continue;
        if (nodes[child].form == TS_NODE_MAPPING)
            ts_read_record(reading, field->record, child, item);
        else
            ts_complain(reading, &(ts_fault){.code = "wrong-form", .node = child, .at_key = true},
                        "`%.*s` needs a record of keys", (int)ts_quoted(nodes[child].key).length,
                        nodes[child].key.at);
    }
}

/* ---- by condition and by spool -------------------------------------------------------------- */

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
    ts_complain(reading,
                &(ts_fault){.code     = "unknown-condition",
                            .node     = child,
                            .at_key   = true,
                            .expected = "a condition that `conditions` describes",
                            .nearest  = ts_nearest_name(reading, key, &reading->conditions)},
                "no condition is called `%.*s`", (int)ts_quoted(key).length, key.at);
}

/* `always` fills every condition that is not named. */
static void spread(ts_reading *reading, const ts_target *target, ts_span *values, ts_node always)
{
    ts_span all;
    ts_read_scalar(reading, &(ts_target){target->field, &all, target->record}, always);
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
    const size_t         size   = value_size(field);
    ts_node              always = 0;
    ts_set_all_absent(reading, target);
    char *values = ts_get_pointer(target->to);
    if (values == NULL)
        return;
    if (nodes[node].form != TS_NODE_MAPPING) {
        complain_form(reading, field, node, "values by condition");
        return;
    }
    for (ts_node child = nodes[node].first; child != 0; child = nodes[child].next) {
        const int32_t condition = ts_name_index_find(&reading->conditions, nodes[child].key);
        if (field->form == TS_FORM_SPAN_BY_CONDITION && ts_text_is(nodes[child].key, "always"))
            always = child;
        else if (condition < 0)
            complain_condition(reading, child);
        else
            ts_read_scalar(reading, &(ts_target){field, values + (size_t)condition * size, node},
                           child);
    }
    if (always != 0)
        spread(reading, target, (ts_span *)(void *)values, always);
}
