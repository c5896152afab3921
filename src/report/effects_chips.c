/* Where does the metal of a failed part come by? */
#include "report/effects_report.h"

static bool has_plug(const ts_scavenge *line)
{
    return ts_pick_known(line->chip_plug) && line->chip_plug.value == TS_YES;
}

/* "fore, aft": the lines of a sump with a plug, or without; returns how many. */
static size_t add_lines(const ts_sump *sump, bool plugged, ts_buffer *out)
{
    size_t count = 0;

    for (size_t i = 0; i < sump->element_count; i++)
        if (has_plug(&sump->elements[i]) == plugged)
            ts_buffer_print(out, "%s%s", count++ > 0 ? ", " : "", sump->elements[i].name);
    return count;
}

/* "the hp box", "the hp take-off" */
static void add_place(const ts_drive *drive, const ts_chip_way *way, ts_buffer *out)
{
    ts_buffer_print(out, "the %s %s", drive->spools[drive->drive[way->drive].spool].name,
                    way->take_off ? "take-off" : "box");
}

void ts_chip_way_words(const ts_drive *drive, const ts_chip_way *way, ts_buffer *out)
{
    if (way->plug == TS_PLUG_NOT_TOLD || way->plug == TS_PLUG_NONE) {
        ts_buffer_add(out, "metal in the oil of ");
        add_place(drive, way, out);
        ts_buffer_add(out, way->plug == TS_PLUG_NONE ? ", which no chip plug catches"
                                                     : ", and no chip plug is told");
        return;
    }
    ts_buffer_add(out, "metal at the chip plug ");
    if (way->sump == NULL) {
        ts_buffer_add(out, "of ");
        add_place(drive, way, out);
        return;
    }
    ts_buffer_add(out, way->sump->element_count > 1 ? "in the lines " : "in the line ");
    (void)add_lines(way->sump, true, out);
    ts_buffer_print(out, " of the sump %s", way->sump->name);
    if (way->plug != TS_PLUG_SOME)
        return;
    ts_buffer_add(out, ", if it does not leave by ");
    (void)add_lines(way->sump, false, out);
    ts_buffer_add(out, ", which has none");
}

void ts_effects_metal(const ts_effects *effects, ts_failure failure, ts_buffer *out)
{
    const ts_chip_way way = ts_chip_way_of(effects->drive, effects->motion->train, failure);

    ts_chip_way_words(effects->drive, &way, out);
}
