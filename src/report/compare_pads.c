/* Which pads came, went, moved, or turn otherwise than before? */
#include "report/comparison_parts.h"

#include <math.h>
#include <string.h>

static const ts_pad *pad_of(const ts_answer *answer, const char *accessory)
{
    for (uint32_t p = 0; p < answer->train->pad_count; p++)
        if (answer->train->pads[p].accessory >= 0 &&
            strcmp(answer->train->pads[p].name, accessory) == 0)
            return &answer->train->pads[p];
    return NULL;
}

static void place(ts_changes *list, const ts_answer *before, const ts_answer *after,
                  const ts_pad *then, const ts_pad *now)
{
    const char *from = then != NULL ? ts_change_address(list, before, then->node) : NULL;
    const char *to   = now != NULL ? ts_change_address(list, after, now->node) : NULL;
    if (from != NULL && to != NULL && strcmp(from, to) == 0)
        return;
    ts_change_add(list, (ts_change){.kind     = then == NULL  ? TS_CHANGE_PAD_APPEARED
                                                : now == NULL ? TS_CHANGE_PAD_WENT
                                                              : TS_CHANGE_PAD_MOVED,
                                    .subject  = now != NULL ? now->name : then->name,
                                    .before   = from,
                                    .after    = to,
                                    .relative = NAN});
}

static void sense(ts_changes *list, const ts_answer *before, const ts_answer *after,
                  const ts_pad *then, const ts_pad *now)
{
    const int was = ts_pad_sense(before->motion, then), is = ts_pad_sense(after->motion, now);
    if (was == is)
        return;
    ts_change_add(list, (ts_change){.kind    = TS_CHANGE_PAD_SENSE,
                                    .subject = now->name,
                                    .before  = was > 0 ? "ccw facing the pad" : "cw facing the pad",
                                    .after   = is > 0 ? "ccw facing the pad" : "cw facing the pad",
                                    .relative = NAN});
}

static double speed(const ts_answer *answer, int32_t condition, const ts_pad *pad)
{
    return answer->motion->speed[(size_t)condition * answer->train->shaft_count + pad->shaft];
}

/* A ratio that changed changes every speed alike; then the fastest condition says most. */
static bool says_more(double relative, double speed, const ts_change *worst, double fastest)
{
    const double difference = fabs(relative) - fabs(worst->relative);
    if (fabs(difference) <= 1e-9 * fabs(worst->relative))
        return speed > fastest;
    return difference > 0.0;
}

/* Is it about this pad, its accessory, or the shaft that it stands on? */
static bool is_about(const ts_answer *answer, const ts_finding *finding, const ts_pad *pad)
{
    const ts_node accessory = answer->drive->accessories[pad->accessory].node;
    if (finding->node == answer->train->shafts[pad->shaft].node)
        return true;
    for (ts_node node = finding->node; node != 0; node = answer->source->nodes[node].parent) {
        if (node == pad->node || node == accessory)
            return true;
    }
    return false;
}

/* The condition of the worst finding on the pad that was not there before; -1: there is none. */
static int32_t told_condition(const ts_answer *before, const ts_answer *after, const ts_pad *pad)
{
    for (size_t i = 0; i < after->outcome->finding_count; i++) {
        const ts_finding *finding = &after->outcome->findings[i];
        if (finding->condition >= 0 && is_about(after, finding, pad) &&
            ts_finding_same(before->outcome, finding) == NULL)
            return finding->condition;
    }
    return -1;
}

/* Ratios are exact, so a change this small is the rounding of the spool speed. */
static bool has_changed(double relative)
{
    return fabs(relative) >= 1e-12;
}

/* The condition in which the speed changed most, relative to what it was, and of those that changed
 * alike the fastest; -1: there is none. */
static int32_t most_changed(const ts_answer *before, const ts_answer *after, const ts_pad *then,
                            const ts_pad *now)
{
    ts_change worst   = {.relative = 0.0};
    int32_t   found   = -1;
    double    fastest = 0.0;
    for (size_t c = 0; c < after->drive->condition_count; c++) {
        const int32_t other = ts_condition_match(before->drive, after->drive->conditions[c].name);
        if (other < 0)
            continue;
        const double is       = speed(after, (int32_t)c, now);
        const double relative = ts_change_relative(speed(before, other, then), is);
        if (!says_more(relative, is, &worst, fastest))
            continue;
        fastest        = is;
        worst.relative = relative;
        found          = (int32_t)c;
    }
    return found >= 0 && has_changed(worst.relative) ? found : -1;
}

/* The speed where it now matters: where a finding appeared, else where it changed most. */
static void speeds(ts_changes *list, const ts_answer *before, const ts_answer *after,
                   const ts_pad *then, const ts_pad *now)
{
    int32_t at = most_changed(before, after, then, now);
    if (at < 0)
        return;
    const int32_t told = told_condition(before, after, now);
    const int32_t was =
        told >= 0 ? ts_condition_match(before->drive, after->drive->conditions[told].name) : -1;
    if (was >= 0 &&
        has_changed(ts_change_relative(speed(before, was, then), speed(after, told, now))))
        at = told;
    const char   *condition = after->drive->conditions[at].name;
    const int32_t other     = ts_condition_match(before->drive, condition);
    const double  from = speed(before, other, then), to = speed(after, at, now);
    ts_change_add(list, (ts_change){
                            .kind      = TS_CHANGE_PAD_SPEED,
                            .subject   = now->name,
                            .condition = condition,
                            .before    = ts_change_quantity(list, from, TS_KIND_ROTATIONAL_SPEED),
                            .after     = ts_change_quantity(list, to, TS_KIND_ROTATIONAL_SPEED),
                            .relative  = ts_change_relative(from, to),
                        });
}

void ts_compare_pads(ts_changes *list, const ts_answer *before, const ts_answer *after)
{
    for (uint32_t p = 0; p < after->train->pad_count; p++) {
        const ts_pad *now = &after->train->pads[p];
        if (now->accessory < 0)
            continue;
        const ts_pad *then = pad_of(before, now->name);
        place(list, before, after, then, now);
        if (then == NULL)
            continue;
        sense(list, before, after, then, now);
        speeds(list, before, after, then, now);
    }
    for (uint32_t p = 0; p < before->train->pad_count; p++)
        if (before->train->pads[p].accessory >= 0 &&
            pad_of(after, before->train->pads[p].name) == NULL)
            place(list, before, after, &before->train->pads[p], NULL);
}
