/* model/record_read.c: what do the records of a file say, and the lists of them, read by their
 * tables? */
#include "model/reading.h"

#include <string.h>

/* ---- defaults ------------------------------------------------------------------------------- */

void ts_assume(ts_reading *reading, ts_node record, const char *key, ts_preset preset)
{
    ts_register *assumed = &reading->assumed[reading->apart];
    if (assumed->count == assumed->room) {
        const size_t   room = assumed->room == 0 ? 64 : assumed->room * 2;
        ts_assumption *more = TS_TAKE(reading->arena, ts_assumption, room);
        if (more == NULL) {
            reading->no_memory = true;
            return;
        }
        if (assumed->count > 0)
            memcpy(more, assumed->items, assumed->count * sizeof *more);
        assumed->items = more;
        assumed->room  = room;
    }
    assumed->items[assumed->count++] = (ts_assumption){record, key, preset.value, preset.reason};
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
    memcpy(joined, path, strlen(path) + 1);
    joined[strlen(path)] = '/';
    memcpy(joined + strlen(path) + 1, key, strlen(key) + 1);
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
static void fill_this(ts_reading *reading, const ts_field *field, void *record, ts_node node,
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

static void fill_field(ts_reading *reading, const ts_field *field, void *record, ts_node node,
                       const char *path)
{
    const ts_apart apart = reading->apart;
    reading->apart       = apart != TS_APART_NOT ? apart : field->apart;
    fill_this(reading, field, record, node, path);
    reading->apart = apart;
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
        const ts_apart apart = reading->apart;
        reading->apart       = apart != TS_APART_NOT ? apart : field->apart;
        ts_read_record(reading, field->record, node, ts_member(record, field->offset));
        reading->apart = apart;
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

/* Which child of a record goes with which field of its table. */
typedef struct children {
    ts_node of[TS_FIELDS_MOST];
    bool    misspelt[TS_FIELDS_MOST]; /* another key was told to mean this one */
} children;

static void read_or_fill(ts_reading *reading, const ts_record_table *table, size_t i,
                         const children *met, void *record)
{
    const ts_field *field = &table->fields[i];
    const ts_node   node  = *(const ts_node *)ts_member(record, table->node_offset);
    if (met->of[i] != 0) {
        read_field(reading, field, met->of[i], record);
        return;
    }
    if (field->need != TS_OPTIONAL && !met->misspelt[i])
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

/* A key that belongs to no field of the table. */
static void take_other(ts_reading *reading, const ts_record_table *table, ts_node child,
                       children *met)
{
    const ts_field *meant = ts_complain_unknown_key(reading, table, child);
    if (meant != NULL)
        met->misspelt[meant - table->fields] = true;
}

/* What belongs to no field is a speed or an error. */
static void sort_children(ts_reading *reading, const ts_record_table *table, ts_node node,
                          children *met, void *record)
{
    const ts_node_place *nodes  = reading->source->nodes;
    const ts_field      *speeds = spool_speeds(table);
    if (speeds != NULL)
        fill_field(reading, speeds, record, node, NULL);
    for (ts_node child = nodes[node].first; child != 0; child = nodes[child].next) {
        const ts_field *field = ts_field_named(table, nodes[child].key);
        if (field != NULL && met->of[field - table->fields] == 0)
            met->of[field - table->fields] = child; /* of a key that stands twice, the first */
        else if (field != NULL || nodes[child].spoiled)
            continue;
        else if (speeds == NULL || !ts_read_spool_speed(reading, speeds, child, record))
            take_other(reading, table, child, met);
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
    children met                                      = {.of = {0}};
    *(ts_node *)ts_member(record, table->node_offset) = node;
    sort_children(reading, table, node, &met, record);
    for (size_t i = 0; i < table->field_count; i++) {
        if (table->fields[i].form != TS_FORM_SPOOL_SPEEDS)
            read_or_fill(reading, table, i, &met, record);
    }
    judge(reading, table, node, record);
}

/* ---- lists of records, by position and by name --------------------------------------------- */

static size_t count_children(const ts_source *source, ts_node node)
{
    size_t count = 0;
    for (ts_node child = source->nodes[node].first; child != 0; child = source->nodes[child].next)
        count++;
    return count;
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
        ts_complain_form(reading, field, node, "at least one item, or no key at all");
    for (ts_node child = nodes[node].first; child != 0; child = nodes[child].next) {
        void *item = items + (size_t)(nodes[child].position - 1) * field->record->size;
        if (nodes[child].form == TS_NODE_MAPPING)
            ts_read_record(reading, field->record, child, item);
        else
            ts_complain_form(reading, field, child, "records as its items");
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
        ts_complain_form(reading, field, node,
                         field->form == TS_FORM_LIST ? "a list" : "a record or a list of them");
    }
}

/* ---- by name -------------------------------------------------------------------------------- */

static int32_t tapped_spool(ts_reading *reading, ts_node child)
{
    const ts_text name  = reading->source->nodes[child].key;
    const int32_t spool = ts_name_index_find(&reading->spools, name);
    if (spool < 0 && !ts_names_are_missing(&reading->spools))
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

/* Do other parts of the file refer to its names? */
static bool is_referred_to(const ts_record_table *record)
{
    return record == &ts_table_condition || record == &ts_table_spool ||
           record == &ts_table_accessory;
}

static const ts_name_index *index_of(const ts_reading *reading, const ts_record_table *record)
{
    if (record == &ts_table_condition)
        return &reading->conditions;
    return record == &ts_table_spool ? &reading->spools : &reading->accessories;
}

/* A name that nobody refers to is copied from its place. */
static bool read_own_name(ts_reading *reading, ts_node child, void *item)
{
    const ts_text name = reading->source->nodes[child].key;
    const char   *copy = ts_arena_copy(reading->arena, name.at, name.length);
    ts_judge_name(reading, child);
    reading->no_memory   = reading->no_memory || copy == NULL;
    *(const char **)item = copy;
    return copy != NULL;
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
    if (!is_referred_to(field->record))
        return read_own_name(reading, child, item);
    const ts_name_index *names = index_of(reading, field->record);
    if (number >= names->count)
        return false;
    *(const char **)item = names->names[number];
    return true;
}

void ts_read_named(ts_reading *reading, const ts_field *field, ts_node node, void *record)
{
    const ts_node_place *nodes = reading->source->nodes;
    if (nodes[node].form != TS_NODE_MAPPING || nodes[node].first == 0) {
        ts_complain_form(reading, field, node, "records by name");
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
