/* Which ratios, centre distances and powers changed? */
#include "report/comparison_parts.h"

#include <math.h>
#include <string.h>

static const char *ratio_text(ts_changes *list, ts_rational ratio)
{
    ts_buffer made;
    ts_buffer_open(&made, list->allocator);
    ts_buffer_integer(&made, ratio.over);
    ts_buffer_add(&made, "/");
    ts_buffer_integer(&made, ratio.under);
    const char *kept = ts_change_keep(list, &made);
    ts_buffer_close(&made);
    return kept;
}

static uint32_t shaft_at(const ts_answer *answer, const char *address)
{
    ts_node       deepest;
    const ts_node node = ts_source_find(answer->source, ts_text_of(address), &deepest);
    for (uint32_t s = 0; node != 0 && s < answer->train->shaft_count; s++)
        if (answer->train->shafts[s].node == node)
            return s;
    return TS_NOWHERE;
}

static void centre(ts_changes *list, const ts_answer *before, const ts_answer *after, uint32_t was,
                   uint32_t is)
{
    if (after->train->shafts[is].kind != TS_SHAFT_BOX)
        return;
    const uint32_t then = before->train->shafts[was].mesh, now = after->train->shafts[is].mesh;
    const double   from = before->motion->meshes[then].a_w, to = after->motion->meshes[now].a_w;
    if (fabs(to - from) <= 1e-12 * fabs(from))
        return;
    ts_change_add(list, (ts_change){.kind     = TS_CHANGE_CENTRE,
                                    .subject  = after->train->shafts[is].name,
                                    .before   = ts_change_quantity(list, from, TS_KIND_LENGTH),
                                    .after    = ts_change_quantity(list, to, TS_KIND_LENGTH),
                                    .relative = ts_change_relative(from, to)});
}

static void shafts(ts_changes *list, const ts_answer *before, const ts_answer *after)
{
    for (uint32_t s = 0; s < after->train->shaft_count; s++) {
        const ts_shaft *shaft   = &after->train->shafts[s];
        const char     *address = ts_change_address(list, after, shaft->node);
        const uint32_t  was     = shaft_at(before, address);
        if (was == TS_NOWHERE || before->train->shafts[was].kind != shaft->kind ||
            shaft->mesh == TS_NOWHERE)
            continue;
        const ts_rational then = before->motion->shafts[was].ratio;
        const ts_rational now  = after->motion->shafts[s].ratio;
        if (!ts_rational_equal(then, now))
            ts_change_add(list, (ts_change){.kind     = TS_CHANGE_RATIO,
                                            .subject  = shaft->name,
                                            .before   = ratio_text(list, then),
                                            .after    = ratio_text(list, now),
                                            .relative = ts_change_relative(
                                                ts_rational_value(then), ts_rational_value(now))});
        centre(list, before, after, was, s);
    }
}

static int32_t spool_match(const ts_drive *drive, const char *name)
{
    for (size_t s = 0; s < drive->spool_count; s++)
        if (strcmp(drive->spools[s].name, name) == 0)
            return (int32_t)s;
    return -1;
}

static double power_of(const ts_answer *answer, int32_t condition, int32_t spool)
{
    return answer->power->spool[(size_t)condition * answer->drive->spool_count + (size_t)spool].P;
}

/* The condition in which the power of a spool changed most. */
static void spool(ts_changes *list, const ts_answer *before, const ts_answer *after, int32_t was,
                  int32_t is)
{
    double  largest = 0.0;
    int32_t at[2]   = {-1, -1};
    for (size_t c = 0; c < after->drive->condition_count; c++) {
        const int32_t other = ts_condition_match(before->drive, after->drive->conditions[c].name);
        if (other < 0)
            continue;
        const double from = power_of(before, other, was), to = power_of(after, (int32_t)c, is);
        /* Sums in another order differ in the last digits. */
        if (fabs(to - from) <= fmax(largest, 1e-9 * fmax(fabs(from), fabs(to))))
            continue;
        largest = fabs(to - from);
        at[0]   = other;
        at[1]   = (int32_t)c;
    }
    if (at[0] < 0)
        return;
    const double from = power_of(before, at[0], was), to = power_of(after, at[1], is);
    ts_change_add(list, (ts_change){.kind      = TS_CHANGE_POWER,
                                    .subject   = after->drive->spools[is].name,
                                    .condition = after->drive->conditions[at[1]].name,
                                    .before    = ts_change_quantity(list, from, TS_KIND_POWER),
                                    .after     = ts_change_quantity(list, to, TS_KIND_POWER),
                                    .relative  = ts_change_relative(from, to)});
}

void ts_compare_train(ts_changes *list, const ts_answer *before, const ts_answer *after)
{
    shafts(list, before, after);
    for (size_t s = 0; s < after->drive->spool_count; s++) {
        const int32_t was = spool_match(before->drive, after->drive->spools[s].name);
        if (was >= 0)
            spool(list, before, after, was, (int32_t)s);
    }
}
