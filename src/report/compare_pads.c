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

/* The condition in which the speed changed most, relative to what it was. */
static void speeds(ts_changes *list, const ts_answer *before, const ts_answer *after,
                   const ts_pad *then, const ts_pad *now)
{
    ts_change worst   = {.kind = TS_CHANGE_PAD_SPEED, .subject = now->name, .relative = 0.0};
    int32_t   at[2]   = {-1, -1};
    double    fastest = 0.0;
    for (size_t c = 0; c < after->drive->condition_count; c++) {
        const int32_t other = ts_condition_match(before->drive, after->drive->conditions[c].name);
        if (other < 0)
            continue;
        const double was = speed(before, other, then), is = speed(after, (int32_t)c, now);
        const double relative = ts_change_relative(was, is);
        if (!says_more(relative, is, &worst, fastest))
            continue;
        fastest         = is;
        worst.relative  = relative;
        worst.condition = after->drive->conditions[c].name;
        at[0]           = other;
        at[1]           = (int32_t)c;
    }
    /* Ratios are exact, so a change this small is the rounding of the spool speed. */
    if (at[0] < 0 || fabs(worst.relative) < 1e-12)
        return;
    worst.before = ts_change_quantity(list, speed(before, at[0], then), TS_KIND_ROTATIONAL_SPEED);
    worst.after  = ts_change_quantity(list, speed(after, at[1], now), TS_KIND_ROTATIONAL_SPEED);
    ts_change_add(list, worst);
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
