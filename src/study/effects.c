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
