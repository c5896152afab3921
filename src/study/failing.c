/* Which part, and which of its failures, is asked about? */
#include "study/failing.h"
#include "study/figures.h"
#include "study/study.h"

#include "report/effects_report.h"

#include <string.h>

/* 0: it is of no accessory. */
static ts_node accessory_node(const ts_effects *effects, ts_failure failure)
{
    if (ts_failing_of(failure.mode) != TS_FAILING_PAD)
        return 0;
    const int32_t a = effects->motion->train->pads[failure.at].accessory;
    return a >= 0 ? effects->drive->accessories[a].node : 0;
}

static ts_found_part at_node(const ts_effects *effects, ts_node node)
{
    for (uint32_t i = 0; i < effects->failure_count; i++)
        if (node != 0 && (ts_effects_node(effects, effects->failures[i]) == node ||
                          accessory_node(effects, effects->failures[i]) == node))
            return (ts_found_part){ts_failing_of(effects->failures[i].mode),
                                   effects->failures[i].at, true};
    return (ts_found_part){.there = false};
}

static bool begins_part(const ts_effects *effects, uint32_t i)
{
    return i == 0 || effects->failures[i - 1].at != effects->failures[i].at ||
           ts_failing_of(effects->failures[i - 1].mode) != ts_failing_of(effects->failures[i].mode);
}

static ts_found_part part_number(const ts_effects *effects, size_t number)
{
    for (uint32_t i = 0; i < effects->failure_count; i++)
        if (begins_part(effects, i) && number-- == 0)
            return (ts_found_part){ts_failing_of(effects->failures[i].mode),
                                   effects->failures[i].at, true};
    return (ts_found_part){.there = false};
}

/* One name a part, in the order of part_number. */
static bool list_names(const ts_effects *effects, ts_arena *arena, const char **names,
                       size_t *count)
{
    for (uint32_t i = 0; i < effects->failure_count; i++) {
        ts_buffer text;
        if (!begins_part(effects, i))
            continue;
        ts_buffer_open(&text, ts_arena_allocator(arena));
        ts_effects_part(effects, ts_failing_of(effects->failures[i].mode), effects->failures[i].at,
                        &text);
        names[*count] = text.failed ? NULL : ts_arena_copy(arena, text.bytes, text.length);
        ts_buffer_close(&text);
        if (names[(*count)++] == NULL)
            return false;
    }
    return true;
}

ts_status ts_study_choose_part(ts_study *study, const ts_effects *effects, const char *part,
                               ts_arena *arena, ts_found_part *found)
{
    const char **names = TS_TAKE(arena, const char *, (size_t)effects->failure_count + 1);
    size_t       count = 0;

    if (names == NULL)
        return TS_NO_MEMORY;
    *found = at_node(effects, ts_source_find(&study->source, ts_text_of(part), NULL));
    if (found->there)
        return TS_OK;
    if (!list_names(effects, arena, names, &count))
        return TS_NO_MEMORY;
    const int chosen = ts_study_choose(study, "part", part, names, count);
    if (chosen < 0)
        return TS_NOT_UNDERSTOOD;
    *found = part_number(effects, (size_t)chosen);
    return TS_OK;
}

/* ---- one failure, for a picture -------------------------------------------------------------- */

/* How much it stops; a doubt counts less than any stop. */
static uint32_t weight_of(const ts_effects *effects, uint32_t i)
{
    const ts_train *train  = effects->motion->train;
    uint32_t        weight = 0;

    for (uint32_t p = 0; p < train->pad_count; p++)
        if (train->pads[p].accessory >= 0)
            weight += effects->outcomes[i].pads[p].goes == TS_STOPS      ? train->pad_count
                      : effects->outcomes[i].pads[p].goes == TS_IN_DOUBT ? 1
                                                                         : 0;
    return weight;
}

static bool is_of(const ts_effects *effects, uint32_t i, const ts_found_part *part)
{
    const ts_failure one = effects->failures[i];

    if (!part->there)
        return one.mode == TS_FAILS_SEIZURE;
    return ts_failing_of(one.mode) == part->of && one.at == part->at;
}

/* Of one part, or of all that seize. */
static bool choose_mode(ts_study *study, const ts_effects *effects, const ts_found_part *part,
                        const char *mode, uint32_t *failure)
{
    const char *names[TS_FAILURE_MODES];
    uint32_t    numbers[TS_FAILURE_MODES], best = TS_NOWHERE;
    size_t      count = 0;

    for (uint32_t i = 0; i < effects->failure_count; i++) {
        if (!is_of(effects, i, part))
            continue;
        if (best == TS_NOWHERE || weight_of(effects, i) > weight_of(effects, best))
            best = i;
        if (!part->there || count == TS_FAILURE_MODES)
            continue;
        names[count]     = ts_failure_name(effects->failures[i].mode);
        numbers[count++] = i;
    }
    if (mode != NULL) {
        const int chosen = ts_study_choose(study, "failure of it", mode, names, count);
        best             = chosen < 0 ? TS_NOWHERE : numbers[chosen];
    }
    *failure = best;
    return best != TS_NOWHERE;
}

/* "generator 1: seized" into its two halves; the second NULL: only a part is named. */
static bool split(const char *at, ts_arena *arena, const char **part, const char **mode)
{
    const char *colon = strstr(at, ": ");

    *part = colon == NULL ? at : ts_arena_copy(arena, at, (size_t)(colon - at));
    *mode = colon == NULL ? NULL : colon + 2;
    return *part != NULL;
}

static const char *failure_words(const ts_effects *effects, uint32_t i, ts_arena *arena)
{
    const ts_failure one = effects->failures[i];
    ts_buffer        text;

    ts_buffer_open(&text, ts_arena_allocator(arena));
    ts_effects_part(effects, ts_failing_of(one.mode), one.at, &text);
    ts_buffer_print(&text, ": %s", ts_failure_name(one.mode));
    const char *words = text.failed ? NULL : ts_arena_copy(arena, text.bytes, text.length);
    ts_buffer_close(&text);
    return words;
}

ts_status ts_study_show_failure(ts_study *study, const char *at, ts_arena *arena,
                                ts_drawing_subject *subject)
{
    ts_effects   *effects = TS_TAKE(arena, ts_effects, 1);
    ts_found_part part    = {.there = false};
    const char   *name = NULL, *mode = NULL;

    if (effects == NULL || (at != NULL && !split(at, arena, &name, &mode)))
        return TS_NO_MEMORY;
    ts_status status =
        ts_effects_prepare(&study->drive, &study->motion, &study->select, arena, effects);
    if (status == TS_OK)
        status = ts_effects_each(effects, arena);
    if (status == TS_OK && name != NULL)
        status = ts_study_choose_part(study, effects, name, arena, &part);
    if (status != TS_OK)
        return status;
    if (!choose_mode(study, effects, &part, mode, &subject->failure))
        return mode != NULL ? TS_NOT_UNDERSTOOD : TS_OK; /* nothing of the drive may seize */
    subject->effects = effects;
    subject->chosen  = name == NULL;
    subject->failed  = failure_words(effects, subject->failure, arena);
    return subject->failed != NULL ? TS_OK : TS_NO_MEMORY;
}
