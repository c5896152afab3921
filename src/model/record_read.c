/* model/record_read.c: what does a record of the file say, read by its table? */
#include "model/reading.h"

#include <string.h>

#define FIELDS_MOST 32 /* more than any table has */

/* ---- defaults ------------------------------------------------------------------------------- */

void ts_assume(ts_reading *reading, ts_node record, const char *key, ts_preset preset)
{
    ts_drive *drive = reading->drive;
    if (drive->assumed_count == reading->assumed_room) {
        const size_t   room = reading->assumed_room == 0 ? 64 : reading->assumed_room * 2;
        ts_assumption *more = TS_TAKE(reading->arena, ts_assumption, room);
        if (more == NULL) {
            reading->no_memory = true;
            return;
        }
        if (drive->assumed_count > 0)
            memcpy(more, drive->assumed, drive->assumed_count * sizeof *more);
        drive->assumed        = more;
        reading->assumed_room = room;
    }
    drive->assumed[drive->assumed_count++] =
        (ts_assumption){record, key, preset.value, preset.reason};
}

/* "gears/loss", for a value whose record is not in the file either. */
static const char *below(ts_reading *reading, const char *path, const char *key)
{
    if (path == NULL)
        return key;
    const size_t length = strlen(path) + 1 + strlen(key) + 1;
    char        *joined = TS_TAKE(reading->arena, char, length);
    if (joined == NULL) {
        reading->no_memory = true;
        return key;
    }
    memcpy(joined, path, strlen(path));
    joined[strlen(path)] = '/';
    memcpy(joined + strlen(path) + 1, key, strlen(key));
    return joined;
}

/* Which spool is cranked follows from all of them, and is settled later. */
static bool is_settled_later(const ts_field *field)
{
    return field->record == NULL && field->offset == offsetof(ts_spool, cranked) &&
           strcmp(field->key, "cranked") == 0;
}

static ts_preset preset_of(const ts_field *field, const void *record)
{
    if (field->preset_of != NULL)
        return field->preset_of(record);
    if (is_settled_later(field))
        return (ts_preset){NULL, NULL};
    return field->preset;
}

/* A record that the file leaves out: what its fields hold then.  `path` leads from the node of the
 * record that does stand in the file. */
static void fill_absent(ts_reading *reading, const ts_record_table *table, void *record,
                        ts_node node, const char *path);

/* A field that the file leaves out. */
static void fill_field(ts_reading *reading, const ts_field *field, void *record, ts_node node,
                       const char *path)
{
    const ts_target target = {field, ts_member(record, field->offset), node};
    const ts_preset preset = preset_of(field, record);
    switch (field->form) {
    case TS_FORM_RECORD:
        if (field->need == TS_OPTIONAL)
            fill_absent(reading, field->record, target.to, node, below(reading, path, field->key));
        return;
    case TS_FORM_LIST:
    case TS_FORM_ONE_OR_LIST:
    case TS_FORM_NAMED:
    case TS_FORM_TAPPED:
        return;
    case TS_FORM_SPOOL_SPEEDS:
    case TS_FORM_BY_CONDITION:
    case TS_FORM_SPAN_BY_CONDITION:
        ts_set_all_absent(reading, &target);
        return;
    default:
        break;
    }
    if (preset.value == NULL) {
        ts_set_absent(&target);
        return;
    }
    ts_read_preset(reading, &target, preset.value);
    ts_assume(reading, node, below(reading, path, field->key), preset);
}

static void fill_absent(ts_reading *reading, const ts_record_table *table, void *record,
                        ts_node node, const char *path)
{
    for (size_t i = 0; i < table->field_count; i++)
        fill_field(reading, &table->fields[i], record, node, path);
}

/* ---- fields --------------------------------------------------------------------------------- */

static void read_sub_record(ts_reading *reading, const ts_field *field, ts_node node, void *record)
{
    if (reading->source->nodes[node].form == TS_NODE_MAPPING) {
        ts_read_record(reading, field->record, node, ts_member(record, field->offset));
        return;
    }
    ts_complain(reading,
                &(ts_fault){.code     = "wrong-form",
                            .node     = node,
                            .at_key   = true,
                            .expected = ts_field_expected(reading, field)},
                "`%s` needs a record of keys", field->key);
}

static void read_field(ts_reading *reading, const ts_field *field, ts_node node, void *record)
{
    const ts_node   parent = reading->source->nodes[node].parent;
    const ts_target target = {field, ts_member(record, field->offset), parent};
    switch (field->form) {
    case TS_FORM_RECORD:
        read_sub_record(reading, field, node, record);
        break;
    case TS_FORM_LIST:
    case TS_FORM_ONE_OR_LIST:
        ts_read_list(reading, field, node, record);
        break;
    case TS_FORM_NAMED:
    case TS_FORM_TAPPED:
        ts_read_named(reading, field, node, record);
        break;
    case TS_FORM_BY_CONDITION:
    case TS_FORM_SPAN_BY_CONDITION:
        ts_read_by_condition(reading, &target, node);
        break;
    default:
        ts_read_scalar(reading, &target, node);
        break;
    }
}

static void complain_missing(ts_reading *reading, const ts_record_table *table,
                             const ts_field *field, ts_node node)
{
    ts_complain(reading,
                &(ts_fault){.code     = "missing-key",
                            .node     = node,
                            .at_key   = true,
                            .expected = ts_field_expected(reading, field)},
                "%s needs the key `%s`", table->name, field->key);
}

static void read_or_fill(ts_reading *reading, const ts_record_table *table, size_t i, ts_node child,
                         ts_node node, void *record)
{
    const ts_field *field = &table->fields[i];
    if (child != 0) {
        read_field(reading, field, child, record);
        return;
    }
    if (field->need != TS_OPTIONAL)
        complain_missing(reading, table, field, node);
    fill_field(reading, field, record, node, NULL);
}

/* ---- records -------------------------------------------------------------------------------- */

static const ts_field *spool_speeds(const ts_record_table *table)
{
    for (size_t i = 0; i < table->field_count; i++) {
        if (table->fields[i].form == TS_FORM_SPOOL_SPEEDS)
            return &table->fields[i];
    }
    return NULL;
}

/* Which child goes with which field; what belongs to none is a speed or an error. */
static void sort_children(ts_reading *reading, const ts_record_table *table, ts_node node,
                          ts_node children[FIELDS_MOST], void *record)
{
    const ts_node_place *nodes  = reading->source->nodes;
    const ts_field      *speeds = spool_speeds(table);
    if (speeds != NULL)
        fill_field(reading, speeds, record, node, NULL);
    for (ts_node child = nodes[node].first; child != 0; child = nodes[child].next) {
        const ts_field *field = ts_field_named(table, nodes[child].key);
        if (field != NULL && children[field - table->fields] == 0)
            children[field - table->fields] = child; /* of a key that stands twice, the first */
        else if (field != NULL)
            continue;
        else if (speeds == NULL || !ts_read_spool_speed(reading, speeds, child, record))
            ts_complain_unknown_key(reading, table, child);
    }
}

static void judge(ts_reading *reading, const ts_record_table *table, ts_node node, void *record)
{
    const char *key = NULL, *expected = NULL;
    const char *says = table->judge != NULL ? table->judge(record, &key, &expected) : NULL;
    if (says == NULL)
        return;
    const ts_node child = ts_source_child(reading->source, node, ts_text_of(key));
    ts_complain(reading,
                &(ts_fault){.code     = "contradiction",
                            .node     = child != 0 ? child : node,
                            .expected = expected},
                "%s", says);
}

void ts_read_record(ts_reading *reading, const ts_record_table *table, ts_node node, void *record)
{
    ts_node children[FIELDS_MOST]                     = {0};
    *(ts_node *)ts_member(record, table->node_offset) = node;
    sort_children(reading, table, node, children, record);
    for (size_t i = 0; i < table->field_count; i++) {
        if (table->fields[i].form != TS_FORM_SPOOL_SPEEDS)
            read_or_fill(reading, table, i, children[i], node, record);
    }
    judge(reading, table, node, record);
}
