/* motion/sense_statement.c: does every shaft turn as the file says that it does? */
#include "motion/motion_parts.h"

#include <string.h>

#define CHAIN_BYTES 600
#define CHAIN_MOST  10 /* shafts that are named; of a longer chain the ones nearest to the fault */

typedef struct chain_text {
    char   bytes[CHAIN_BYTES];
    size_t length;
} chain_text;

/* What does not fit is left out whole: names are at most 40 bytes, so ten of them fit. */
static void append(chain_text *chain, const char *text)
{
    const size_t length = strlen(text);

    if (length >= CHAIN_BYTES - chain->length)
        return;
    memcpy(chain->bytes + chain->length, text, length + 1);
    chain->length += length;
}

/* As the file would write it: an engine-parallel shaft in the file's sight, a radial shaft seen
 * from outside whatever the sight. */
static const char *sense_word(const ts_drive *drive, const ts_shaft *shaft, int sense)
{
    const bool from_front = drive->sight.value == TS_FROM_FRONT && shaft->kind != TS_SHAFT_TOWER;

    return (sense > 0) != from_front ? "ccw" : "cw";
}

/* "hp spool ccw, hp tower shaft cw, hp box input cw": from the spool to the shaft. */
static void write_chain(const ts_drive *drive, const ts_motion *motion, uint32_t shaft,
                        chain_text *chain)
{
    const ts_train *train = motion->train;
    uint32_t        path[CHAIN_MOST];
    size_t          count = 0;

    while (count < CHAIN_MOST) {
        path[count++] = shaft;
        if (train->shafts[shaft].mesh == TS_NOWHERE)
            break;
        shaft = train->meshes[train->shafts[shaft].mesh].driver_shaft;
    }
    if (train->shafts[path[count - 1]].mesh != TS_NOWHERE)
        append(chain, "..., ");
    while (count-- > 0) {
        append(chain, train->shafts[path[count]].name);
        append(chain, " ");
        append(chain,
               sense_word(drive, &train->shafts[path[count]], motion->shafts[path[count]].sense));
        if (count > 0)
            append(chain, ", ");
    }
}

static const ts_pick *statement_of(const ts_drive *drive, const ts_shaft *shaft)
{
    if (shaft->kind == TS_SHAFT_TOWER)
        return &drive->drive[shaft->drive].tower_shaft.turns;
    return shaft->kind == TS_SHAFT_BOX ? &shaft->record->turns : NULL;
}

void ts_motion_statements(const ts_drive *drive, const ts_motion *motion, ts_diagnostics *list)
{
    const ts_train *train = motion->train;

    for (uint32_t s = 0; s < train->shaft_count; s++) {
        const ts_shaft *shaft = &train->shafts[s];
        const ts_pick  *turns = statement_of(drive, shaft);
        const int       sense = motion->shafts[s].sense;

        if (turns == NULL || turns->standing != TS_GIVEN || turns->value == TS_EITHER || sense == 0)
            continue;
        const int stated = turns->value == TS_CCW ? 1 : -1;

        if (stated == sense)
            continue;
        chain_text          chain = {.length = 0};
        const ts_diagnostic rest  = {
             .code     = "contradictory-senses",
             .line     = ts_node_line(drive, turns->node),
             .column   = ts_node_column(drive, turns->node),
             .expected = sense_word(drive, shaft, sense),
        };

        write_chain(drive, motion, s, &chain);
        ts_diagnose_format(list, &rest, "%s is said to turn %s, but the train turns it %s: %s",
                           shaft->name, sense_word(drive, shaft, stated),
                           sense_word(drive, shaft, sense), chain.bytes);
    }
}
