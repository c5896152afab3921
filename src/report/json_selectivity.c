/* How are necks, and what stands behind them, written as JSON? */
#include "report/answer_json.h"

#include <math.h>

#define PARTS_MOST 64 /* of one pad, the nearest first */

static const char *const kinds[] = {
    [TS_PART_ROOT] = "tooth breaks", [TS_PART_FLANK] = "flank yields",
    [TS_PART_SPLINE] = "spline",     [TS_PART_SHAFT] = "shaft yields",
    [TS_PART_BEARING] = "bearing",   [TS_PART_NECK] = "neck breaks",
};
static const char *const verdicts[TS_SWAP_VERDICTS] = {
    [TS_SWAP_HOLDS] = "holds",   [TS_SWAP_NEAR] = "too near",       [TS_SWAP_EARLY] = "too early",
    [TS_SWAP_LATE] = "too late", [TS_SWAP_NOT_KNOWN] = "not known",
};

static void string(ts_json *json, const char *key, const char *value)
{
    ts_json_key(json, key);
    if (value != NULL)
        ts_json_string(json, value);
    else
        ts_json_null(json);
}

static void met(ts_json *json, const ts_answer *answer, const char *key, const ts_met_torque *T)
{
    ts_json_key(json, key);
    ts_json_object(json);
    ts_json_number_at(json, "T", T->T);
    string(json, "condition", ts_answer_condition(answer, T->condition));
    ts_json_end(json, '}');
}

static void loads(ts_json *json, const ts_answer *answer, const ts_guard *guard)
{
    ts_json_key(json, "must_pass");
    ts_json_object(json);
    ts_json_number_at(json, "highest", guard->legit.T);
    met(json, answer, "runs", &guard->run);
    met(json, answer, "drives", &guard->start);
    ts_json_key(json, "overload");
    ts_json_object(json);
    ts_json_number_at(json, "T", guard->T_over);
    ts_json_number_at(json, "seconds", guard->t_over);
    ts_json_end(json, '}');
    ts_json_number_at(json, "static", guard->T_static);
    ts_json_end(json, '}');
}

static void wall(ts_json *json, const ts_answer *answer, const char *key, const ts_wall *wall)
{
    const ts_part_capacity *part =
        wall->part == TS_NOWHERE ? NULL : &answer->select->parts.items[wall->part];

    ts_json_key(json, key);
    ts_json_object(json);
    ts_json_number_at(json, "T", wall->T);
    string(json, "part", part == NULL ? NULL : kinds[part->kind]);
    string(json, "of", part == NULL ? NULL : part->what);
    ts_json_number_at(json, "bears", part == NULL ? (double)NAN : ts_wall_bears(wall));
    ts_json_number_at(json, "transfer", wall->g);
    ts_json_number_at(json, "others", wall->L);
    string(json, "condition", ts_answer_condition(answer, wall->with));
    ts_json_end(json, '}');
}

static void neck(ts_json *json, const ts_answer *answer, const ts_guard *guard)
{
    ts_json_key(json, "neck");
    if (guard->neck == TS_NOWHERE) {
        ts_json_null(json);
        return;
    }
    const ts_drive_neck *of    = &answer->select->necks->items[guard->neck];
    const ts_json_place  least = {of->neck->node, TS_EVERY_CONDITION, "T_break_least"};
    const ts_json_place  most  = {of->neck->node, TS_EVERY_CONDITION, "T_break_most"};

    ts_json_object(json);
    ts_json_key(json, "least");
    ts_json_quantity(json, answer, of->band.low, TS_KIND_TORQUE, least);
    ts_json_key(json, "most");
    ts_json_quantity(json, answer, of->band.high, TS_KIND_TORQUE, most);
    ts_json_key(json, "designed");
    ts_json_bool(json, of->designed);
    ts_json_number_at(json, "above_loads", of->band.low / guard->legit.T);
    ts_json_number_at(json, "below_way", guard->once.T / of->band.high);
    ts_json_end(json, '}');
}

static void way(ts_json *json, const ts_answer *answer, const ts_guard *guard)
{
    uint32_t     parts[PARTS_MOST];
    const size_t count = ts_select_upstream(answer->select, guard, parts, PARTS_MOST);

    ts_json_key(json, "way");
    ts_json_array(json);
    for (size_t i = 0; i < count; i++) {
        const ts_wall           by   = ts_select_wall_of(answer->select, guard, parts[i]);
        const ts_part_capacity *part = &answer->select->parts.items[parts[i]];

        ts_json_object(json);
        string(json, "part", kinds[part->kind]);
        string(json, "of", part->what);
        ts_json_number_at(json, "bears", part->T);
        ts_json_number_at(json, "at_pad", by.T);
        string(json, "missing", part->missing);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void swapped(ts_json *json, const ts_answer *answer, const ts_guard *guard)
{
    const ts_select *select = answer->select;

    ts_json_key(json, "swapped");
    ts_json_array(json);
    for (uint32_t i = 0; i < select->count; i++) {
        const ts_guard *other = &select->guards[i];

        if (other == guard || guard->neck == TS_NOWHERE || other->neck == TS_NOWHERE ||
            guard->pad == TS_NOWHERE || other->pad == TS_NOWHERE)
            continue;
        const ts_swap swap = ts_select_swapped(select, guard, other);
        ts_json_object(json);
        string(json, "neck_of", answer->train->pads[other->pad].name);
        string(json, "verdict", verdicts[swap.verdict]);
        ts_json_key(json, "fits");
        ts_json_bool(json, swap.fits);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

void ts_json_selectivity(ts_json *json, const ts_answer *answer)
{
    const ts_select *select = answer->select;

    ts_json_key(json, "selectivity");
    ts_json_array(json);
    for (uint32_t i = 0; select != NULL && i < select->count; i++) {
        const ts_guard *guard = &select->guards[i];
        const bool      pad   = guard->pad != TS_NOWHERE;

        ts_json_object(json);
        string(json, "name",
               pad ? answer->train->pads[guard->pad].name
                   : answer->train->shafts[guard->shaft].name);
        ts_json_node(json, answer, "at",
                     pad ? answer->train->pads[guard->pad].node
                         : select->necks->items[guard->neck].neck->node);
        string(json, "unit", "N.m");
        string(json, "referred_to", answer->train->shafts[guard->reference].name);
        ts_json_number_at(json, "referred_by", guard->refer);
        loads(json, answer, guard);
        neck(json, answer, guard);
        wall(json, answer, "bears_once", &guard->once);
        wall(json, answer, "bears_overload", &guard->lasting);
        way(json, answer, guard);
        swapped(json, answer, guard);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}
