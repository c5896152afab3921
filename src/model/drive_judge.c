/* model/drive_judge.c: does the file contradict itself where no single record can see it? */
#include "model/reading.h"

#include <string.h>

static bool has_key(const ts_reading *reading, ts_node node, const char *key)
{
    return ts_source_child(reading->source, node, ts_text_of(key)) != 0;
}

/* ---- speeds --------------------------------------------------------------------------------- */

static void judge_speed(ts_reading *reading, const ts_condition *condition, int32_t spool)
{
    const char   *name  = reading->spools.names[spool];
    const ts_node child = ts_source_child(reading->source, condition->node, ts_text_of(name));
    if (child != 0 && condition->speed[spool].standing != TS_UNKNOWN)
        return; /* given, or its message was made already */
    ts_complain(reading,
                &(ts_fault){.code     = "missing-speed",
                            .node     = child != 0 ? child : condition->node,
                            .at_key   = child == 0,
                            .expected = "its speed in every condition, such as 13400 rpm"},
                "`%s` gives no speed of the spool `%s`, which is tapped", condition->name, name);
}

static void judge_speeds(ts_reading *reading)
{
    const ts_drive *drive = reading->drive;
    for (size_t d = 0; d < drive->drive_count; d++) {
        const int32_t spool = drive->drive[d].spool;
        for (size_t c = 0; spool >= 0 && c < drive->condition_count; c++) {
            if (drive->conditions[c].node != 0)
                judge_speed(reading, &drive->conditions[c], spool);
        }
    }
}

/* ---- accessories ---------------------------------------------------------------------------- */

static void judge_accessories(ts_reading *reading)
{
    const ts_drive *drive = reading->drive;
    for (size_t a = 0; a < drive->accessory_count; a++) {
        const ts_accessory *accessory = &drive->accessories[a];
        if (accessory->purpose.standing != TS_GIVEN || accessory->purpose.value != TS_FOR_START ||
            has_key(reading, accessory->node, "drives"))
            continue;
        ts_complain(reading,
                    &(ts_fault){.code     = "starter-without-drives",
                                .node     = accessory->node,
                                .at_key   = true,
                                .expected = "its torque by condition, such as drives: {crank: 220 "
                                            "N.m}"},
                    "`%s` is for the start and drives nothing", accessory->name);
    }
}

/* ---- modules -------------------------------------------------------------------------------- */

static void complain_module(ts_reading *reading, ts_node node, const char *what)
{
    ts_complain(reading,
                &(ts_fault){.code     = "missing-module",
                            .node     = node,
                            .at_key   = true,
                            .expected = "`module` here or in `gears` of the box, such as 2.0 mm"},
                "neither %s nor the box gives a module", what);
}

static void judge_module(ts_reading *reading, const ts_box_shaft *shaft)
{
    if (shaft->node == 0)
        return; /* no record stands there, which was said already */
    if (!has_key(reading, shaft->node, "module"))
        complain_module(reading, shaft->node, "this shaft");
    for (size_t s = 0; s < shaft->step_count; s++) {
        if (shaft->steps[s].node != 0 && !has_key(reading, shaft->steps[s].node, "module"))
            complain_module(reading, shaft->steps[s].node, "this step gear");
    }
}

/* Depth is bounded by that of the file. */
static void judge_modules_of(ts_reading *reading, const ts_box_shaft *shafts, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        judge_module(reading, &shafts[i]);
        judge_modules_of(reading, shafts[i].branch, shafts[i].branch_count);
    }
}

static void judge_modules(ts_reading *reading)
{
    for (size_t d = 0; d < reading->drive->drive_count; d++) {
        const ts_box *box = &reading->drive->drive[d].box;
        if (box->gears.node != 0 && has_key(reading, box->gears.node, "module"))
            continue;
        judge_modules_of(reading, &box->input, 1);
        judge_modules_of(reading, box->clockwise, box->clockwise_count);
        judge_modules_of(reading, box->anticlockwise, box->anticlockwise_count);
    }
}

/* ---- pads and driving gears ------------------------------------------------------------------ */

/* Where each accessory was met first; node 0: nowhere yet. */
typedef struct pad_list {
    ts_reading *reading;
    ts_node    *met; /* one an accessory */
} pad_list;

static void judge_pad(const pad_list *pads, const ts_pad_end *pad)
{
    if (pad->use != TS_PAD_ACCESSORY)
        return;
    const ts_reading *reading = pads->reading;
    const ts_node     first   = pads->met[pad->accessory];
    if (first == 0) {
        pads->met[pad->accessory] = pad->node;
        return;
    }
    ts_complain(pads->reading,
                &(ts_fault){.code     = "pad-used-twice",
                            .node     = pad->node,
                            .expected = "each accessory on one pad"},
                "`%s` sits on a pad already, on line %u",
                reading->accessories.names[pad->accessory], reading->source->nodes[first].line);
}

/* `from` counts its driver's gears: 0 the main gear, then the steps. */
static void judge_from(ts_reading *reading, const ts_box_shaft *shaft, const ts_box_shaft *driver)
{
    if (shaft->from.standing != TS_GIVEN || (size_t)shaft->from.value <= driver->step_count)
        return;
    ts_complain(reading,
                &(ts_fault){.code     = "missing-step",
                            .node     = shaft->from.node,
                            .expected = "a gear that its driver has, such as gear"},
                "the shaft that drives this one has no such step; it has %zu", driver->step_count);
}

/* A chain of shafts, each driven by the one before it.  Depth is bounded by that of the file. */
static void judge_chain(const pad_list *pads, const ts_box_shaft *shafts, size_t count,
                        const ts_box_shaft *driver)
{
    for (size_t i = 0; i < count; i++) {
        judge_from(pads->reading, &shafts[i], i == 0 ? driver : &shafts[i - 1]);
        judge_pad(pads, &shafts[i].front);
        judge_pad(pads, &shafts[i].rear);
        judge_chain(pads, shafts[i].branch, shafts[i].branch_count, &shafts[i]);
    }
}

static void judge_boxes(ts_reading *reading)
{
    const ts_drive *drive = reading->drive;
    const pad_list  pads  = {reading, TS_TAKE(reading->arena, ts_node, reading->accessories.count)};
    if (pads.met == NULL) {
        reading->no_memory = true;
        return;
    }
    for (size_t d = 0; d < drive->drive_count; d++) {
        const ts_box *box = &drive->drive[d].box;
        judge_pad(&pads, &box->input.front);
        judge_pad(&pads, &box->input.rear);
        judge_chain(&pads, box->input.branch, box->input.branch_count, &box->input);
        judge_chain(&pads, box->clockwise, box->clockwise_count, &box->input);
        judge_chain(&pads, box->anticlockwise, box->anticlockwise_count, &box->input);
    }
}

/* ---- sumps ----------------------------------------------------------------------------------- */

static const ts_sump *find_sump(const ts_drive *drive, const char *name)
{
    for (size_t a = 0; a < drive->accessory_count; a++)
        for (size_t i = 0; i < drive->accessories[a].pumps.sump_count; i++)
            if (strcmp(drive->accessories[a].pumps.sumps[i].name, name) == 0)
                return &drive->accessories[a].pumps.sumps[i];
    return NULL;
}

static const char *nearest_sump(const ts_drive *drive, ts_text word)
{
    const char *nearest = NULL;

    for (size_t a = 0; a < drive->accessory_count && nearest == NULL; a++) {
        const ts_pumps *pumps = &drive->accessories[a].pumps;
        const char     *names[TS_SCAVENGE_MOST];
        size_t          count = 0;

        for (size_t i = 0; i < pumps->sump_count && i < TS_SCAVENGE_MOST; i++)
            names[count++] = pumps->sumps[i].name;
        nearest = ts_text_nearest(word, names, count);
    }
    return nearest;
}

static void judge_drain(ts_reading *reading, const ts_word *told, const ts_sump **sump)
{
    if (told->standing != TS_GIVEN)
        return;
    *sump = find_sump(reading->drive, told->text);
    if (*sump != NULL)
        return;
    const ts_text name = ts_text_of(told->text);
    ts_complain(reading,
                &(ts_fault){.code     = "unknown-sump",
                            .node     = told->node,
                            .expected = "a sump of an accessory with `pumps`",
                            .nearest  = nearest_sump(reading->drive, name)},
                "no sump is called `%.*s`", (int)ts_quoted(name).length, name.at);
}

static void judge_drains(ts_reading *reading)
{
    for (size_t d = 0; d < reading->drive->drive_count; d++) {
        ts_spool_drive *one = &reading->drive->drive[d];
        judge_drain(reading, &one->take_off.drains_to, &one->take_off.sump);
        judge_drain(reading, &one->box.drains_to, &one->box.sump);
    }
}

/* ---- waivers -------------------------------------------------------------------------------- */

static bool is_same_waiver(const ts_waiver *a, const ts_waiver *b)
{
    return a->rule.text != NULL && b->rule.text != NULL && a->at.text != NULL &&
           b->at.text != NULL && strcmp(a->rule.text, b->rule.text) == 0 &&
           strcmp(a->at.text, b->at.text) == 0;
}

static void judge_waivers(ts_reading *reading)
{
    const ts_drive *drive = reading->drive;
    for (size_t i = 1; i < drive->waived_count; i++) {
        size_t k = 0;
        while (k < i && !is_same_waiver(&drive->waived[k], &drive->waived[i]))
            k++;
        if (k == i)
            continue;
        ts_complain(reading,
                    &(ts_fault){.code     = "duplicate-waiver",
                                .node     = drive->waived[i].node,
                                .expected = "one waiver for one rule at one place"},
                    "this waives what the waiver on line %u waives already",
                    reading->source->nodes[drive->waived[k].node].line);
    }
}

void ts_judge_drive(ts_reading *reading)
{
    judge_speeds(reading);
    judge_accessories(reading);
    judge_modules(reading);
    judge_boxes(reading);
    judge_drains(reading);
    judge_waivers(reading);
    ts_judge_arrange(reading);
}
