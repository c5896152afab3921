/* What does a study say of parts that fail? */
#include "study/figures.h"
#include "study/outlet.h"
#include "study/study.h"

#include "report/effects_report.h"
#include "towershaft/effects.h"

#include <string.h>

typedef struct found_part {
    ts_failing of;
    uint32_t   at;
    bool       there;
} found_part;

/* 0: it is of no accessory. */
static ts_node accessory_node(const ts_effects *effects, ts_failure failure)
{
    if (ts_failing_of(failure.mode) != TS_FAILING_PAD)
        return 0;
    const int32_t a = effects->motion->train->pads[failure.at].accessory;
    return a >= 0 ? effects->drive->accessories[a].node : 0;
}

static found_part at_node(const ts_effects *effects, ts_node node)
{
    for (uint32_t i = 0; i < effects->failure_count; i++)
        if (node != 0 && (ts_effects_node(effects, effects->failures[i]) == node ||
                          accessory_node(effects, effects->failures[i]) == node))
            return (found_part){ts_failing_of(effects->failures[i].mode), effects->failures[i].at,
                                true};
    return (found_part){.there = false};
}

static bool begins_part(const ts_effects *effects, uint32_t i)
{
    return i == 0 || effects->failures[i - 1].at != effects->failures[i].at ||
           ts_failing_of(effects->failures[i - 1].mode) != ts_failing_of(effects->failures[i].mode);
}

static found_part part_number(const ts_effects *effects, size_t number)
{
    for (uint32_t i = 0; i < effects->failure_count; i++)
        if (begins_part(effects, i) && number-- == 0)
            return (found_part){ts_failing_of(effects->failures[i].mode), effects->failures[i].at,
                                true};
    return (found_part){.there = false};
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

static ts_status choose_part(ts_study *study, const ts_effects *effects, const char *part,
                             ts_arena *arena, found_part *found)
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

/* The condition in which the part turns fastest, unless one is named. */
static ts_status choose_condition(ts_study *study, const char *name, const found_part *part,
                                  int32_t *condition)
{
    const ts_train *train = &study->train;
    const uint32_t  shaft = part->of == TS_FAILING_SHAFT  ? part->at
                            : part->of == TS_FAILING_MESH ? train->meshes[part->at].driven_shaft
                                                          : train->pads[part->at].shaft;

    if (!ts_study_choose_condition(study, name, condition))
        return TS_NOT_UNDERSTOOD;
    if (*condition >= 0)
        return TS_OK;
    *condition = 0;
    for (uint32_t c = 0; c < study->drive.condition_count; c++)
        if (study->motion.speed[c * train->shaft_count + shaft] >
            study->motion.speed[(uint32_t)*condition * train->shaft_count + shaft])
            *condition = (int32_t)c;
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

static bool is_of(const ts_effects *effects, uint32_t i, const found_part *part)
{
    const ts_failure one = effects->failures[i];

    if (!part->there)
        return one.mode == TS_FAILS_SEIZURE;
    return ts_failing_of(one.mode) == part->of && one.at == part->at;
}

/* Of one part, or of all that seize. */
static bool choose_mode(ts_study *study, const ts_effects *effects, const found_part *part,
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
    ts_effects *effects = TS_TAKE(arena, ts_effects, 1);
    found_part  part    = {.there = false};
    const char *name = NULL, *mode = NULL;

    if (effects == NULL || (at != NULL && !split(at, arena, &name, &mode)))
        return TS_NO_MEMORY;
    ts_status status =
        ts_effects_prepare(&study->drive, &study->motion, &study->select, arena, effects);
    if (status == TS_OK)
        status = ts_effects_each(effects, arena);
    if (status == TS_OK && name != NULL)
        status = choose_part(study, effects, name, arena, &part);
    if (status != TS_OK)
        return status;
    if (!choose_mode(study, effects, &part, mode, &subject->failure))
        return mode != NULL ? TS_NOT_UNDERSTOOD : TS_OK; /* nothing of the drive may seize */
    subject->effects = effects;
    subject->failed  = failure_words(effects, subject->failure, arena);
    return subject->failed != NULL ? TS_OK : TS_NO_MEMORY;
}

static ts_status write(ts_study *study, const ts_effects_options *options, bool json,
                       const ts_page_options *look, ts_arena *arena, ts_buffer *out)
{
    const ts_answer answer = ts_study_answer(study);
    ts_page         page   = ts_outlet_page(look, out);
    const bool      whole  = options == NULL || options->part == NULL || options->part[0] == '\0';
    ts_effects      effects;
    found_part      part;
    int32_t         condition;
    ts_status       status =
        ts_effects_solve(&study->drive, &study->motion, &study->select, arena, &effects);

    if (status == TS_OK && json)
        ts_effects_json(&effects, &answer, out);
    else if (status == TS_OK && whole)
        ts_effects_page(&effects, &answer, &page);
    if (status != TS_OK || json || whole)
        return status;
    status = choose_part(study, &effects, options->part, arena, &part);
    if (status == TS_OK)
        status = choose_condition(study, options->condition, &part, &condition);
    if (status == TS_OK)
        ts_effects_card(&effects, &answer, part.of, part.at, (uint32_t)condition, &page);
    return status;
}

ts_status ts_effects_write(ts_study *study, const ts_effects_options *options, bool json,
                           const ts_page_options *page, const ts_sink *sink)
{
    if (!study->solved)
        return TS_NOT_UNDERSTOOD;
    ts_arena *arena = ts_arena_open(study->allocator);
    if (arena == NULL)
        return TS_NO_MEMORY;
    ts_buffer out;
    ts_buffer_open(&out, study->allocator);
    ts_status status = write(study, options, json, page, arena, &out);
    if (status == TS_OK)
        status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    ts_arena_close(arena);
    return status;
}
