/* model/rate_judge.c: does the catalogue know the materials that a rate file names? */
#include "catalog/gear_material.h"
#include "model/rate_file.h"
#include "model/reading.h"

static void judge_row(ts_reading *reading, const ts_word *word)
{
    ts_gear_material found;
    if (word->standing != TS_GIVEN)
        return;
    const ts_text key = ts_text_of(word->text);
    if (ts_gear_material_named(key, &found))
        return;
    ts_complain(reading,
                &(ts_fault){.code     = "unknown-material",
                            .node     = word->node,
                            .expected = "a row of data/gear_material.tsv, such as carburised 9310",
                            .nearest  = ts_gear_material_nearest(ts_quoted(key))},
                "the catalogue has no material `%.*s`", (int)ts_quoted(key).length, key.at);
}

void ts_judge_rate(ts_reading *reading, const ts_rate_file *file)
{
    for (size_t i = 0; i < file->pair_count; i++) {
        judge_row(reading, &file->pairs[i].gear[0].material);
        judge_row(reading, &file->pairs[i].gear[1].material);
    }
    for (size_t i = 0; i < file->bevel_count; i++) {
        judge_row(reading, &file->bevels[i].gear[0].material);
        judge_row(reading, &file->bevels[i].gear[1].material);
    }
}
