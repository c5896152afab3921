/* Which seizure or jolt of a study is drawn, and what does its picture need? */
#include "study/figures.h"
#include "study/seizing.h"
#include "study/study.h"

#include "draw/drawn_seizure.h"
#include "report/seize_report.h"

#include <math.h>
#include <string.h>

enum { SAMPLES = 2000 };

/* The accessory with a neck whose continuous torque is highest; NULL: none has one. */
static const char *usual(const ts_study *study)
{
    const char *name = NULL;
    double      most = 0.0;

    for (uint32_t p = 0; p < study->train.pad_count; p++) {
        const int32_t  who   = study->train.pads[p].accessory;
        const uint32_t guard = study->select.of_pad[p];
        if (who < 0 || study->necks.of_pad[p] == TS_NOWHERE || guard == TS_NOWHERE ||
            !(study->select.guards[guard].run.T > most))
            continue;
        most = study->select.guards[guard].run.T;
        name = study->drive.accessories[who].name;
    }
    return name;
}

/* Those parts that come nearest to what they bear, as `seize` tells it, the nearest first. */
static void choose_lines(const ts_seize_answer *seize, const ts_seize_run *from, ts_drawn_run *to)
{
    const size_t first = to->line_count;

    for (size_t j = 0; j < seize->twist->model.spring_count; j++) {
        const double share = ts_seize_share(seize, from, j);
        size_t       at    = to->line_count;
        while (at > first && ts_seize_share(seize, from, to->lines[at - 1].joint) < share)
            at--;
        if (at == TS_DRAWN_LINES || !(share > 0.0))
            continue;
        to->line_count += to->line_count < TS_DRAWN_LINES;
        for (size_t k = to->line_count - 1; k > at; k--)
            to->lines[k] = to->lines[k - 1];
        to->lines[at] = (ts_drawn_line){j, seize->walls[j].T, false};
    }
}

/* Of a jolt the neck that comes nearest to breaking stands before them. */
static void choose_neck(const ts_seize_answer *seize, const ts_seize_run *from, ts_drawn_run *to)
{
    double       share;
    const size_t at = ts_seize_nearest_neck(seize, from, &share);

    if (seize->jolt != TS_JOLT_NONE && at != SIZE_MAX)
        to->lines[to->line_count++] = (ts_drawn_line){at, from->breaks[at], true};
}

static ts_status take_run(const ts_seize_answer *seize, int which, ts_arena *arena,
                          ts_drawn_seizure *out)
{
    const ts_seize_run   *from  = &seize->runs[which];
    const ts_train_trace *trace = &from->seizure.run.trace;
    ts_drawn_run         *to    = &out->runs[out->run_count];

    if (!from->there || out->run_count == TS_DRAWN_RUNS)
        return TS_OK;
    double *ms = TS_TAKE(arena, double, trace->count + 1);
    if (ms == NULL)
        return TS_NO_MEMORY;
    for (size_t i = 0; i < trace->count; i++)
        ms[i] = 1e3 * trace->t[i];
    *to = (ts_drawn_run){
        .word = ts_seize_run_word(seize, which), .run = &from->seizure.run, .ms = ms};
    choose_neck(seize, from, to);
    choose_lines(seize, from, to);
    out->run_count++;
    return TS_OK;
}

static ts_status take_name(ts_study *study, const ts_seize_answer *seize, ts_drawn_seizure *out)
{
    const ts_answer answer = ts_study_answer(study);
    ts_buffer       text;

    ts_buffer_open(&text, study->allocator);
    ts_seize_name(seize, &answer, &text);
    out->what = text.failed ? NULL : ts_arena_copy(study->asked, text.bytes, text.length);
    ts_buffer_close(&text);
    return out->what != NULL ? TS_OK : TS_NO_MEMORY;
}

static ts_status draw_it(ts_study *study, const ts_seize_options *options, ts_drawn_seizure *out)
{
    ts_seize_answer *seize = TS_TAKE(study->asked, ts_seize_answer, 1);

    if (seize == NULL)
        return TS_NO_MEMORY;
    ts_status status = ts_study_seize(study, options, NULL, study->asked, seize);
    if (status == TS_OK)
        status = take_name(study, seize, out);
    if (status != TS_OK)
        return status;
    out->because = seize->because;
    out->jolt    = seize->jolt != TS_JOLT_NONE;
    out->twist   = seize->twist;
    if (seize->because != NULL)
        return TS_OK;
    status = take_run(seize, out->jolt ? TS_SEIZE_WEAK : TS_SEIZE_STRONG, study->asked, out);
    return status == TS_OK ? take_run(seize, TS_SEIZE_BARE, study->asked, out) : status;
}

ts_status ts_study_drawn_seizure(ts_study *study, const char *accessory, const char *condition,
                                 ts_drawn_seizure *out)
{
    const ts_seize_options options = {.accessory = accessory != NULL ? accessory : usual(study),
                                      .condition = condition,
                                      .samples   = SAMPLES};

    *out = (ts_drawn_seizure){.what = NULL};
    return options.accessory != NULL ? draw_it(study, &options, out) : TS_OK;
}

ts_status ts_study_drawn_jolt(ts_study *study, const char *at, const char *condition,
                              ts_drawn_seizure *out)
{
    const char      *word    = at != NULL ? at : ts_jolt_words[TS_JOLT_SLAM];
    const char      *colon   = strstr(word, ": ");
    ts_seize_options options = {
        .jolt = colon != NULL ? colon + 2 : word, .condition = condition, .samples = SAMPLES};

    *out = (ts_drawn_seizure){.jolt = true};
    if (colon != NULL) {
        options.accessory = ts_arena_copy(study->asked, word, (size_t)(colon - word));
        if (options.accessory == NULL)
            return TS_NO_MEMORY;
    }
    return draw_it(study, &options, out);
}
