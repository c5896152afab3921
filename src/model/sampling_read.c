/* model/sampling_read.c: which study does a file describe? */
#include "model/sampling_read.h"

#include "model/reading.h"
#include "model/tree_read.h"

static const char *root_fault(const ts_source *source)
{
    if (source->node_count == 0)
        return "the file is empty";
    if (source->nodes[1].form != TS_NODE_MAPPING)
        return "the file is not a record of keys";
    if (ts_source_child(source, 1, TS_TEXT("towershaft study")) != 0)
        return NULL;
    if (ts_source_child(source, 1, TS_TEXT("towershaft rate")) != 0)
        return "this is a rate file; `towershaft rate` reads it";
    if (ts_source_child(source, 1, TS_TEXT("towershaft")) != 0)
        return "this is a drive file; a study names the drive and what varies in it";
    return NULL;
}

ts_status ts_read_sampling(ts_text bytes, const ts_file_places *places, ts_sampling_file *file)
{
    const size_t before = ts_diagnostics_count(places->list);
    ts_status    status =
        ts_read_tree(bytes, places->name, places->arena, places->list, places->source);
    *file = (ts_sampling_file){.source = places->source};
    if (status != TS_OK)
        return status;
    ts_reading  reading = {.source = places->source,
                           .arena  = places->arena,
                           .list   = places->list,
                           .tables = &ts_sampling_tables};
    const char *fault   = root_fault(places->source);
    if (fault != NULL)
        ts_complain(&reading,
                    &(ts_fault){.code     = "no-study",
                                .node     = places->source->node_count > 0 ? 1 : 0,
                                .expected = "a study file, which begins with towershaft study: 1"},
                    "%s", fault);
    else
        ts_read_record(&reading, &ts_table_sampling, 1, file);
    if (reading.no_memory || ts_arena_failed(places->arena))
        return TS_NO_MEMORY;
    file->assumed       = reading.assumed[TS_APART_NOT].items;
    file->assumed_count = reading.assumed[TS_APART_NOT].count;
    return ts_diagnostics_count(places->list) > before ? TS_NOT_UNDERSTOOD : TS_OK;
}
