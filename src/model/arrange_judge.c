/* model/arrange_judge.c: which accessories and spools does the freedom to arrange name? */
#include "model/reading.h"

static int32_t find_spool(ts_reading *reading, ts_node at, bool at_key, ts_text name)
{
    const int32_t spool = ts_name_index_find(&reading->spools, name);
    if (spool < 0 && !ts_names_are_missing(&reading->spools))
        ts_complain(reading,
                    &(ts_fault){.code     = "unknown-spool",
                                .node     = at,
                                .at_key   = at_key,
                                .expected = "a spool that `spools` describes",
                                .nearest  = ts_nearest_name(reading, name, &reading->spools)},
                    "no spool is called `%.*s`", (int)ts_quoted(name).length, name.at);
    return spool;
}

static bool is_tapped(const ts_drive *drive, int32_t spool)
{
    for (size_t d = 0; d < drive->drive_count; d++) {
        if (drive->drive[d].spool == spool)
            return true;
    }
    return false;
}

static void complain_not_tapped(ts_reading *reading, ts_node at, bool at_key, int32_t spool)
{
    ts_complain(reading,
                &(ts_fault){.code     = "spool-without-drive",
                            .node     = at,
                            .at_key   = at_key,
                            .expected = "a spool that `drive` taps"},
                "the spool `%s` has no box, so nothing can stand there",
                reading->spools.names[spool]);
}

static void judge_box(ts_reading *reading, ts_box_freedom *box)
{
    const ts_text name = reading->source->nodes[box->node].key;
    box->spool         = find_spool(reading, box->node, true, name);
    if (box->spool >= 0 && !is_tapped(reading->drive, box->spool))
        complain_not_tapped(reading, box->node, true, box->spool);
}

static void judge_accessory(ts_reading *reading, ts_accessory_freedom *freedom)
{
    const ts_text name = reading->source->nodes[freedom->node].key;
    freedom->only      = -1;
    freedom->accessory = ts_name_index_find(&reading->accessories, name);
    if (freedom->accessory < 0 && !ts_names_are_missing(&reading->accessories))
        ts_complain(reading,
                    &(ts_fault){.code     = "unknown-accessory",
                                .node     = freedom->node,
                                .at_key   = true,
                                .expected = "an accessory of the file",
                                .nearest  = ts_nearest_name(reading, name, &reading->accessories)},
                    "no accessory is called `%.*s`", (int)ts_quoted(name).length, name.at);
    if (freedom->spool.standing != TS_GIVEN)
        return;
    freedom->only =
        find_spool(reading, freedom->spool.node, false, ts_text_of(freedom->spool.text));
    if (freedom->only >= 0 && !is_tapped(reading->drive, freedom->only))
        complain_not_tapped(reading, freedom->spool.node, false, freedom->only);
}

/* Records that could not be read have no node, and were complained of where they stand. */
void ts_judge_arrange(ts_reading *reading)
{
    ts_freedom *arrange = &reading->drive->arrange;
    for (size_t i = 0; i < arrange->box_count; i++) {
        if (arrange->boxes[i].node != 0)
            judge_box(reading, &arrange->boxes[i]);
    }
    for (size_t i = 0; i < arrange->accessory_count; i++) {
        if (arrange->accessories[i].node != 0)
            judge_accessory(reading, &arrange->accessories[i]);
    }
}
