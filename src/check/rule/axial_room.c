/* check/rule/axial_room.c: is every box deep enough for what stands on its shafts? */
#include "check/bearing_visit.h"

static const ts_formula reserve_formula = {
    .symbol  = "reserve_L_ax",
    .meaning = "reserve of the depth of the box over what the shaft needs",
    .unit    = "1",
    .text    = "depth/L_ax - 1",
    .source  = "reserve = capacity / demand - 1",
};

static const ts_line_gear *widest_gear(const ts_line *line)
{
    const ts_line_gear *widest = &line->gears[0];

    for (int g = 1; g < line->gear_count; g++)
        if (line->gears[g].width > widest->width)
            widest = &line->gears[g];
    return widest;
}

/* Or a narrower face, where it stays more than a quarter of what it is, and where the parts close
 * up behind it: not between places that the file tells. */
static void help(ts_check *check, ts_finding *finding, const ts_line *line, double depth)
{
    const ts_line_gear *widest = widest_gear(line);
    const ts_gear      *gear   = &check->train->gears[widest->gear];
    const double        face   = widest->width - (line->L_ax - depth);

    if (!line->lies_as_told && face > widest->width / 4.0 && gear->role != TS_GEAR_BEVEL)
        ts_remedy(check, finding,
                  "make the box at least %s deep, or the gear of %d teeth at most %s wide",
                  ts_shown_outward(check, line->L_ax, TS_KIND_LENGTH, +1), (int)gear->teeth.value,
                  ts_shown_outward(check, face, TS_KIND_LENGTH, -1));
    else
        ts_remedy(check, finding, "make the box at least %s deep",
                  ts_shown_outward(check, line->L_ax, TS_KIND_LENGTH, +1));
}

static void judge(ts_check *check, const ts_box *box, const ts_line *line)
{
    const double depth    = box->depth.value;
    ts_question  question = ts_question_about(check, line->node, TS_EVERY_CONDITION);
    question.level        = line->L_stack > depth ? TS_REFUSE : TS_WARN;
    question.value        = line->L_ax;
    question.limit        = depth;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_LENGTH;
    question.wanted       = -1e-9; /* what is pushed together to the last bit fits */
    question.symbol       = "L_ax";
    question.limit_symbol = "depth";
    question.reserve      = &reserve_formula;
    ts_workings_about(check->workings, line->node, TS_EVERY_CONDITION);
    ts_workings_given(check->workings, "depth", depth, "m", box->depth.node);
    ts_finding *finding = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "%s takes %s of its box along the axis, and the box is %s deep: gears and bearings "
            "with the gaps between them are %s long, and a wall with its seal stands at either end",
            line->name, ts_shown_apart(check, line->L_ax, depth, TS_KIND_LENGTH),
            ts_shown_apart(check, depth, line->L_ax, TS_KIND_LENGTH),
            ts_shown(check, line->L_stack, TS_KIND_LENGTH));
    help(check, finding, line, depth);
}

/* A depth that is not known is told once, however many shafts ask for it. */
static void judge_box(ts_check *check, uint32_t drive)
{
    const ts_box *box = &check->drive->drive[drive].box;

    for (uint32_t l = 0; l < check->lines->count; l++) {
        const ts_line *line = &check->lines->lines[l];
        if (line->kind != TS_LINE_BOX || isnan(line->L_ax) ||
            (uint32_t)check->train->shafts[line->shaft].drive != drive)
            continue;
        if (!ts_measure_known(box->depth)) {
            ts_not_computable(check, box->node, TS_EVERY_CONDITION, "the depth of the box");
            return;
        }
        judge(check, box, line);
    }
}

static void run(ts_check *check)
{
    for (uint32_t i = 0; check->lines != NULL && i < check->drive->drive_count; i++)
        if (check->drive->drive[i].box.depth.standing != TS_ABSENT)
            judge_box(check, i);
    ts_skip(check, "no shaft is laid out in a box whose depth is told");
}

const ts_rule ts_rule_axial_room = {
    .id       = "D2-axial-room",
    .title    = "Axial room of the shafts",
    .question = "Is every box deep enough for the gears and bearings on its shafts?",
    .why      = "What stands on a shaft stands between both pad faces of its box, or it cannot be "
                "built.",
    .level    = TS_REFUSE,
    .source   = "derived: parts one behind the other; gaps and walls: common practice, no source",
    .hint     = "make the box deeper, or its gears and bearings narrower",
    .run      = run,
};
