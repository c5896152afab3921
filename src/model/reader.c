/* model/reader.c: which drive does a file describe? */
#include "model/reader.h"

#include "model/reading.h"
#include "model/tree_read.h"
#include "model/tree_shift.h"

/* The keys of a mapping at the top of the file, as names; none when it is no mapping. */
static void index_names(ts_reading *reading, const char *key, ts_name_index *index)
{
    const ts_node_place *nodes = reading->source->nodes;
    const ts_node        list  = ts_source_child(reading->source, 1, ts_text_of(key));
    const ts_node first = list != 0 && nodes[list].form == TS_NODE_MAPPING ? nodes[list].first : 0;
    size_t        count = 0;
    for (ts_node child = first; child != 0; child = nodes[child].next)
        count++;
    const char **names = TS_TAKE(reading->arena, const char *, count);
    size_t       k     = 0;
    for (ts_node child = first; names != NULL && child != 0; child = nodes[child].next) {
        ts_judge_name(reading, child);
        names[k] = ts_arena_copy(reading->arena, nodes[child].key.at, nodes[child].key.length);
        if (names[k++] == NULL)
            names = NULL;
    }
    if (names == NULL || !ts_name_index_build(index, names, count, reading->arena))
        reading->no_memory = true;
}

/* Everything that is seen is converted while it is read, so the sight comes first. */
static void find_sight(ts_reading *reading)
{
    const ts_node sight = ts_source_child(reading->source, 1, TS_TEXT("sight"));
    const ts_node value = sight != 0 ? ts_source_value(reading->source, sight) : 0;
    reading->from_front =
        value != 0 && ts_text_is(reading->source->nodes[value].scalar, "from front");
}

/* ---- the file ------------------------------------------------------------------------------- */

#define RATE_KEY  TS_TEXT("towershaft rate")
#define DRIVE_DUE "a drive file, which begins with towershaft: 1"
#define RATE_DUE  "a rate file, which begins with towershaft rate: 1"

static bool is_rate_file(const ts_source *source)
{
    return source->node_count > 0 && ts_source_child(source, 1, RATE_KEY) != 0;
}

/* False with a message when the root is not a record of the wanted kind. */
static bool has_root(ts_reading *reading, ts_file_wanted wanted)
{
    const ts_source *source = reading->source;
    const bool       rate   = is_rate_file(source);
    const char      *says   = NULL;
    if (source->node_count == 0)
        says = "the file is empty";
    else if (source->nodes[1].form != TS_NODE_MAPPING)
        says = "the file is not a record of keys";
    else if (rate && wanted == TS_WANT_DRIVE)
        says = "this is a rate file; `towershaft rate` reads it, and `towershaft why`";
    else if (!rate && wanted == TS_WANT_RATE && ts_source_child(source, 1, TS_TEXT("towershaft")))
        says = "this is a drive file; `towershaft check` reads it";
    if (says == NULL)
        return true;
    ts_complain(reading,
                &(ts_fault){.code     = "no-drive",
                            .node     = source->node_count > 0 ? 1 : 0,
                            .expected = wanted == TS_WANT_RATE ? RATE_DUE : DRIVE_DUE},
                "%s", says);
    return false;
}

static void read_drive(ts_reading *reading, size_t before)
{
    index_names(reading, "conditions", &reading->conditions);
    index_names(reading, "spools", &reading->spools);
    index_names(reading, "accessories", &reading->accessories);
    if (reading->no_memory)
        return;
    find_sight(reading);
    ts_read_record(reading, &ts_table_drive, 1, reading->drive);
    if (reading->no_memory)
        return;
    ts_judge_drive(reading);
    if (ts_diagnostics_count(reading->list) == before)
        ts_complete_drive(reading);
}

static void read_rate(ts_reading *reading, ts_rate_file *file)
{
    ts_read_record(reading, &ts_table_rate, 1, file);
    if (!reading->no_memory)
        ts_judge_rate(reading, file);
}

/* `before`: messages that are not about this file. */
static ts_status read_nodes(ts_file_wanted wanted, const ts_file_places *places, size_t before,
                            ts_model *model)
{
    ts_source *source = places->source;

    *model         = (ts_model){.drive = {.source = source}, .rate = {.source = source}};
    model->is_rate = wanted == TS_WANT_RATE || (wanted == TS_WANT_EITHER && is_rate_file(source));
    ts_reading reading = {.source = source,
                          .arena  = places->arena,
                          .list   = places->list,
                          .tables = model->is_rate ? &ts_rate_tables : &ts_drive_tables,
                          .drive  = &model->drive};
    if (has_root(&reading, wanted)) {
        if (model->is_rate)
            read_rate(&reading, &model->rate);
        else
            read_drive(&reading, before);
    }
    if (reading.no_memory || ts_arena_failed(places->arena))
        return TS_NO_MEMORY;
    if (model->is_rate) {
        model->rate.assumed       = reading.assumed[TS_APART_NOT].items;
        model->rate.assumed_count = reading.assumed[TS_APART_NOT].count;
    } else {
        model->drive.assumed               = reading.assumed[TS_APART_NOT].items;
        model->drive.assumed_count         = reading.assumed[TS_APART_NOT].count;
        model->drive.arrange_assumed       = reading.assumed[TS_APART_ARRANGE].items;
        model->drive.arrange_assumed_count = reading.assumed[TS_APART_ARRANGE].count;
        model->drive.start_assumed         = reading.assumed[TS_APART_START].items;
        model->drive.start_assumed_count   = reading.assumed[TS_APART_START].count;
        model->drive.seize_assumed         = reading.assumed[TS_APART_SEIZE].items;
        model->drive.seize_assumed_count   = reading.assumed[TS_APART_SEIZE].count;
        model->drive.jolt_assumed          = reading.assumed[TS_APART_JOLT].items;
        model->drive.jolt_assumed_count    = reading.assumed[TS_APART_JOLT].count;
    }
    return ts_diagnostics_count(places->list) > before ? TS_NOT_UNDERSTOOD : TS_OK;
}

ts_status ts_read_nodes(ts_file_wanted wanted, const ts_file_places *places, ts_model *model)
{
    return read_nodes(wanted, places, ts_diagnostics_count(places->list), model);
}

ts_status ts_read_file(ts_text bytes, ts_file_wanted wanted, const ts_file_places *places,
                       ts_model *model)
{
    const size_t    before = ts_diagnostics_count(places->list);
    const ts_status status =
        ts_read_tree(bytes, places->name, places->arena, places->list, places->source);

    if (status == TS_OK)
        return read_nodes(wanted, places, before, model);
    *model = (ts_model){.drive = {.source = places->source}, .rate = {.source = places->source}};
    return status;
}

ts_status ts_read_file_near(ts_text bytes, const ts_source *near, ts_file_wanted wanted,
                            const ts_file_places *places, ts_model *model)
{
    const ts_status shifted = near != NULL ? ts_shift_tree(near, bytes, places) : TS_NOT_UNDERSTOOD;

    if (shifted == TS_OK)
        return ts_read_nodes(wanted, places, model);
    *model = (ts_model){.drive = {.source = places->source}, .rate = {.source = places->source}};
    return shifted == TS_NO_MEMORY ? shifted : ts_read_file(bytes, wanted, places, model);
}

ts_status ts_read_drive(ts_text bytes, const char *name, ts_arena *arena, ts_diagnostics *list,
                        ts_source *source, ts_drive *drive)
{
    const ts_file_places places = {name, arena, list, source};
    ts_model             model;
    const ts_status      status = ts_read_file(bytes, TS_WANT_DRIVE, &places, &model);
    *drive                      = model.drive;
    return status;
}
