/* check/rule/shaft_supports.c: does every shaft lie on two bearings that stand on it? */
#include "check/bearing_visit.h"

#include <math.h>

static bool meshes_are_solved(const ts_check *check, const ts_line *line)
{
    for (uint32_t m = 0; m < check->train->mesh_count; m++)
        for (int g = 0; g < line->gear_count; g++)
            if ((check->train->meshes[m].driver == line->gears[g].gear ||
                 check->train->meshes[m].driven == line->gears[g].gear) &&
                !(check->motion->meshes[m].solved && isfinite(check->motion->meshes[m].tau[0])))
                return false;
    return true;
}

/* Where a bore leaves no wall, what it must stay below. */
static void help_bore(ts_check *check, const ts_line *line, ts_finding *finding)
{
    const ts_beam_section *thinnest = NULL;

    for (int i = 0; i < line->section_count; i++)
        if (!(line->sections[i].d_o > line->sections[i].d_i) &&
            (thinnest == NULL || line->sections[i].d_o < thinnest->d_o))
            thinnest = &line->sections[i];
    if (thinnest != NULL)
        ts_remedy(check, finding, "use a bore below %s where it is %s",
                  ts_shown_outward(check, thinnest->d_o, TS_KIND_LENGTH, -1),
                  ts_shown_apart(check, thinnest->d_i, thinnest->d_o, TS_KIND_LENGTH));
}

static void say_slides(ts_check *check, ts_finding *finding, const ts_line *line)
{
    const uint32_t number = (uint32_t)(line - check->lines->lines);
    const char    *place  = line->bearings[line->bearings[0].locates ? 0 : 1].place;
    double         most   = 0.0;
    int32_t        at     = 0;

    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        double push = 0.0;
        for (int g = 0; g < line->gear_count; g++)
            push += ts_line_at(check->lines, number, c)->load[g].F[0];
        if (fabs(push) > most) {
            most = fabs(push);
            at   = (int32_t)c;
        }
    }
    if (most > 0.0)
        ts_says(check, finding,
                "the %s bearing of %s, a cylindrical roller bearing, holds 0 N along its axis, and "
                "%s push it at %s",
                place, line->name, ts_shown(check, most, TS_KIND_FORCE),
                ts_condition_name(check, at));
    else
        ts_says(check, finding,
                "the %s bearing of %s, a cylindrical roller bearing, holds 0 N along its axis, and "
                "nothing else holds the shaft",
                place, line->name);
    ts_remedy(check, finding,
              "let the other bearing hold it (`locates: yes`), or make the %s one a "
              "deep groove or angular contact bearing",
              place);
}

/* The bearing that the fault is about; NULL: another fault. */
static const ts_line_bearing *beside_the_shaft(const ts_line *line)
{
    for (int k = 0; k < line->bearing_count; k++) {
        const ts_line_bearing *b = &line->bearings[k];
        if (b->there && (b->x < 0.0 || b->x > line->length))
            return b;
    }
    return NULL;
}

static void judge(ts_check *check, const ts_line *line)
{
    /* Meshes that cannot be solved are asked for by C6-mesh-solvable. */
    if (line->missing != NULL && (line->gear_count == 0 || meshes_are_solved(check, line))) {
        ts_not_computable(check, line->node, TS_EVERY_CONDITION, "%s of %s", line->missing,
                          line->name);
        return;
    }
    ts_finding *finding = ts_judge_fact(check, line->node, TS_EVERY_CONDITION, line->fault == NULL);
    if (finding == NULL)
        return;
    for (int k = 0; k < line->bearing_count; k++) {
        const ts_line_bearing *b = &line->bearings[k];
        if (!b->there || b->fault == NULL)
            continue;
        ts_says(check, finding, "%s has no %s bearing that could be rated: %s", line->name,
                b->place, b->fault);
        return;
    }
    if (line->quarrel != NULL) {
        ts_says(check, finding, "%s cannot turn for long: %s", line->name, line->quarrel);
        ts_remedy(check, finding, "give one of them `locates: yes` and the other `locates: no`");
        return;
    }
    if (line->slides) {
        say_slides(check, finding, line);
        return;
    }
    const ts_line_bearing *beside = beside_the_shaft(line);
    if (beside != NULL)
        ts_says(check, finding, "%s cannot turn: %s, the %s one at %s of %s", line->name,
                line->fault, beside->place, ts_shown(check, beside->x, TS_KIND_LENGTH),
                ts_shown(check, line->length, TS_KIND_LENGTH));
    else
        ts_says(check, finding, "%s cannot turn: %s; it is %s long", line->name, line->fault,
                ts_shown(check, line->length, TS_KIND_LENGTH));
    help_bore(check, line, finding);
}

static void run(ts_check *check)
{
    for (uint32_t l = 0; check->lines != NULL && l < check->lines->count; l++)
        judge(check, &check->lines->lines[l]);
    ts_skip(check, "no shaft turns in bearings of its own");
}

const ts_rule ts_rule_shaft_supports = {
    .id       = "E5-shaft-supports",
    .title    = "Supports of the shafts",
    .question = "Does every shaft lie on two bearings that stand on it and are known?",
    .why      = "One bearing lets a shaft tumble, and a bearing beside it holds nothing.",
    .level    = TS_REFUSE,
    .source   = "derived: two supports hold a shaft that none of them keeps from tilting",
    .hint     = "give it both bearings, on the shaft, in sizes that are known",
    .run      = run,
};
