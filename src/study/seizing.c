/* What does a study say of an accessory that seizes? */
#include "study/seizing.h"
#include "study/figures.h"
#include "study/outlet.h"
#include "study/study.h"
#include "study/twisting.h"

#include "report/seize_report.h"
#include "towershaft/seize.h"

#include <math.h>
#include <string.h>

enum { ROOM = 16 }; /* touches of flanks leave moments besides those that are asked for */

typedef struct wish {
    ts_study        *study;
    ts_arena        *arena;
    ts_seize_answer *out;
    uint32_t         pad;
    int32_t          neck_of; /* accessory; -1: its own */
    double          *breaks;  /* [joint] */
    size_t           samples;
} wish;

/* The neck of a pad whose band is known, or TS_NOWHERE. */
static uint32_t neck_item(const ts_study *study, uint32_t pad)
{
    const uint32_t item = pad == TS_NOWHERE ? TS_NOWHERE : study->necks.of_pad[pad];

    if (item == TS_NOWHERE || !isfinite(study->necks.items[item].band.high))
        return TS_NOWHERE;
    return item;
}

static bool choose_ramp(ts_study *study, const char *text, double *ramp)
{
    const ts_unit *unit;

    *ramp = 0.0;
    if (text == NULL || (ts_quantity_parse(ts_text_of(text), TS_KIND_TIME, ramp, &unit, NULL) &&
                         *ramp >= 1e-6 && *ramp <= 1.0))
        return true;
    ts_study_say(study, "unknown-choice", "the ramp is no time that can be followed",
                 "a time from 0.001 ms to 1 s, such as 20 ms", NULL);
    return false;
}

static ts_status choose(wish *w, const ts_seize_options *options)
{
    ts_study        *study = w->study;
    ts_seize_answer *out   = w->out;
    const ts_train  *train = &study->train;
    int32_t          condition;

    out->accessory = ts_study_choose_accessory(study, options->accessory, w->arena);
    w->neck_of     = -1;
    if (out->accessory < 0 || !ts_study_choose_condition(study, options->condition, &condition) ||
        !choose_ramp(study, options->ramp, &out->ramp))
        return TS_NOT_UNDERSTOOD;
    if (options->neck_of != NULL) {
        w->neck_of = ts_study_choose_accessory(study, options->neck_of, w->arena);
        if (w->neck_of < 0)
            return TS_NOT_UNDERSTOOD;
        out->neck_of = study->drive.accessories[w->neck_of].name;
        if (neck_item(study, ts_train_pad_of(train, w->neck_of)) == TS_NOWHERE) {
            ts_study_say(study, "unknown-choice", "that accessory has no neck to lend",
                         "an accessory with a `neck` whose band is known", NULL);
            return TS_NOT_UNDERSTOOD;
        }
    }
    w->pad = ts_train_pad_of(train, out->accessory);
    if (w->pad == TS_NOWHERE)
        return TS_OK;
    const double  *speed = study->motion.speed;
    const uint32_t shaft = train->pads[w->pad].shaft;
    for (uint32_t c = 1; condition < 0 && c < study->drive.condition_count; c++)
        if (speed[(size_t)c * train->shaft_count + shaft] >
            speed[(size_t)out->condition * train->shaft_count + shaft])
            out->condition = c;
    if (condition >= 0)
        out->condition = (uint32_t)condition;
    out->speed = speed[(size_t)out->condition * train->shaft_count + shaft];
    return TS_OK;
}

/* The spring whose outer body a part's torque is counted at; SIZE_MAX: none of this tree. */
static size_t joint_of(const wish *w, const ts_part_capacity *part)
{
    const ts_drive_twist *twist = w->out->twist;

    for (size_t i = 0; i < twist->model.spring_count; i++) {
        const ts_twist_joint *joint = &twist->joints[i];
        if (part->mesh != TS_NOWHERE
                ? joint->mesh == part->mesh
                : joint->link != TS_LINK_PAD && twist->parts[joint->to].shaft == part->shaft &&
                      (joint->link == TS_LINK_SHAFT ||
                       w->study->train.shafts[part->shaft].kind == TS_SHAFT_BOX))
            return i;
    }
    return SIZE_MAX;
}

/* What every spring bears, and which of them break for it: teeth, and necks elsewhere. */
static void build_walls(wish *w, ts_seize_wall *walls)
{
    const ts_part_capacities *parts = &w->study->select.parts;

    for (size_t i = 0; i < w->out->twist->model.spring_count; i++) {
        walls[i]     = (ts_seize_wall){INFINITY, TS_PART_ROOT};
        w->breaks[i] = INFINITY;
    }
    for (size_t i = 0; i < parts->count; i++) {
        const ts_part_capacity *part = &parts->items[i];
        const size_t            at   = part->of_pad ? SIZE_MAX : joint_of(w, part);
        if (at == SIZE_MAX || !(part->T > 0.0))
            continue;
        if (part->kind == TS_PART_ROOT || part->kind == TS_PART_NECK)
            w->breaks[at] = fmin(w->breaks[at], part->T);
        if (part->kind != TS_PART_NECK && part->T < walls[at].T)
            walls[at] = (ts_seize_wall){part->T, part->kind};
    }
}

/* Necks of pads break at the strongest that they may be: the worst for what stands behind. */
static void set_necks(const wish *w, double neck)
{
    const ts_study       *study = w->study;
    const ts_drive_twist *twist = w->out->twist;

    for (size_t i = 0; i < twist->model.spring_count; i++) {
        const int32_t who = twist->parts[twist->joints[i].to].accessory;
        if (twist->joints[i].link != TS_LINK_PAD || who < 0)
            continue;
        const uint32_t pad  = ts_train_pad_of(&study->train, who);
        const uint32_t item = pad == TS_NOWHERE ? TS_NOWHERE : study->necks.of_pad[pad];
        const double   high =
            item == TS_NOWHERE ? (double)INFINITY : study->necks.items[item].band.high;
        w->breaks[i] = who == w->out->accessory ? neck : isnan(high) ? (double)INFINITY : high;
    }
}

/* Is a break among the events at this moment? */
static bool breaks_at(const ts_train_run *run, double t)
{
    for (size_t i = 0; i < run->event_count; i++)
        if (run->events[i].what == TS_HAPPENS_BREAK && run->events[i].t == t)
            return true;
    return false;
}

/* Every touch of flanks left a moment.  Kept are those that stand apart as the run took them where
 * nothing touched (close together at its beginning), breaks, and the last. */
static void thin(ts_train_run *run, double until, size_t samples, size_t bonds, size_t bodies)
{
    ts_train_trace *trace = &run->trace;
    size_t          kept  = 0;
    double          next  = 0.0;

    for (size_t i = 0; i < trace->count; i++) {
        const double t = trace->t[i];
        if (t < next && i + 1 < trace->count && !breaks_at(run, t))
            continue;
        trace->t[kept] = t;
        memmove(&trace->T[kept * bonds], &trace->T[i * bonds], bonds * sizeof *trace->T);
        memmove(&trace->w[kept * bodies], &trace->w[i * bodies], bodies * sizeof *trace->w);
        kept++;
        next = t + fmin(fmax(0.02 * t, 1e-7), 2.0 * until / (double)samples);
    }
    trace->count = kept;
}

static ts_status run_one(wish *w, ts_seize_run *run, double neck)
{
    const ts_seizure_question question = {.drive     = &w->study->drive,
                                          .power     = &w->study->power,
                                          .twist     = w->out->twist,
                                          .condition = w->out->condition,
                                          .accessory = w->out->accessory,
                                          .ramp      = w->out->ramp,
                                          .breaks    = w->breaks,
                                          .samples   = w->samples * ROOM};

    run->there = true;
    run->neck  = neck;
    set_necks(w, neck);
    const ts_status status = ts_drive_seize(&question, w->arena, &run->seizure);
    if (status == TS_OK && w->samples > 0)
        thin(&run->seizure.run, run->seizure.until, w->samples, w->out->twist->model.spring_count,
             w->out->twist->model.body_count);
    return status;
}

static void give_up(wish *w, const char *because, const char *of)
{
    w->out->because = because;
    w->out->of      = of;
}

/* The tree of its pad, in the state of the condition; false: it could not be had. */
static bool find_tree(wish *w, const ts_twist_answer *answer)
{
    const ts_study *study = w->study;
    const uint32_t  drive = study->train.shafts[study->train.pads[w->pad].shaft].drive;
    const bool      on    = ts_drive_is_cranked(&study->power, drive, w->out->condition);

    for (size_t i = 0; i < answer->count; i++)
        if (answer->items[i].drive == drive &&
            answer->items[i].cranked == (on && answer->items[i].clutch))
            w->out->twist = &answer->items[i];
    if (w->out->twist == NULL)
        return false;
    if (w->out->twist->missing != NULL)
        give_up(w, w->out->twist->missing, w->out->twist->lacks);
    else if (w->out->twist->fault != TS_TWIST_FINE)
        give_up(w, ts_twist_fault_says(w->out->twist->fault), NULL);
    else if (ts_seizure_body(w->out->twist, w->out->accessory) == TS_NO_BODY)
        give_up(w, "it stands still behind its clutch, or its inertia is not known", NULL);
    return w->out->because == NULL;
}

static ts_status run_all(wish *w)
{
    const ts_study *study = w->study;
    const uint32_t  of    = w->neck_of < 0 ? w->pad : ts_train_pad_of(&study->train, w->neck_of);
    const uint32_t  item  = neck_item(study, of);
    ts_seize_wall  *walls = TS_TAKE(w->arena, ts_seize_wall, w->out->twist->model.spring_count + 1);
    ts_status       status = TS_OK;

    w->breaks = TS_TAKE(w->arena, double, w->out->twist->model.spring_count + 1);
    if (walls == NULL || w->breaks == NULL)
        return TS_NO_MEMORY;
    build_walls(w, walls);
    w->out->walls = walls;
    if (item != TS_NOWHERE) {
        const ts_neck_limits band = study->necks.items[item].band;
        status                    = run_one(w, &w->out->runs[TS_SEIZE_STRONG], band.high);
        if (status == TS_OK)
            status = run_one(w, &w->out->runs[TS_SEIZE_WEAK], band.low);
    }
    return status == TS_OK ? run_one(w, &w->out->runs[TS_SEIZE_BARE], INFINITY) : status;
}

static ts_status solve(wish *w, const ts_seize_options *options)
{
    ts_twist_answer twist;
    ts_status       status = choose(w, options);

    if (status != TS_OK)
        return status;
    if (w->pad == TS_NOWHERE || !(w->out->speed > 0.0)) {
        give_up(w,
                w->pad == TS_NOWHERE ? "it stands on no pad" : "it stands still in this condition",
                NULL);
        return TS_OK;
    }
    status = ts_study_twist(w->study, w->arena, &twist);
    if (status != TS_OK || !find_tree(w, &twist))
        return status;
    return run_all(w);
}

ts_status ts_study_tell_seizure(ts_study *study, const char *accessory, ts_arena *arena,
                                ts_page *page)
{
    const ts_seize_options options = {.accessory = accessory};
    ts_seize_answer        seize   = {.accessory = -1};
    wish                   w       = {.study = study, .arena = arena, .out = &seize};
    const ts_answer        answer  = ts_study_answer(study);
    const ts_status        status  = solve(&w, &options);
    if (status == TS_OK)
        ts_seize_told(&seize, &answer, page);
    return status;
}

static bool all_fine(const ts_seize_answer *seize)
{
    for (int k = 0; k < TS_SEIZE_RUNS; k++)
        if (seize->runs[k].there && seize->runs[k].seizure.run.fault != TS_RUN_FINE)
            return false;
    return seize->because == NULL;
}

ts_status ts_seize_write(ts_study *study, const ts_seize_options *options,
                         const ts_page_options *look, bool *computed, const ts_sink *sink)
{
    *computed = false;
    if (!study->solved || options == NULL || options->accessory == NULL ||
        options->samples > TS_SEIZE_SAMPLES_MOST)
        return TS_NOT_UNDERSTOOD;
    ts_arena *arena = ts_arena_open(study->allocator);
    if (arena == NULL)
        return TS_NO_MEMORY;
    ts_seize_answer seize  = {.accessory = -1};
    wish            w      = {.study   = study,
                              .arena   = arena,
                              .out     = &seize,
                              .samples = options->json ? options->samples : 0};
    const ts_answer answer = ts_study_answer(study);
    ts_buffer       out;
    ts_buffer_open(&out, study->allocator);
    ts_page   page   = ts_outlet_page(look, &out);
    ts_status status = solve(&w, options);
    if (status == TS_OK && options->json)
        ts_seize_json(&seize, &answer, &out);
    else if (status == TS_OK)
        ts_seize_page(&seize, &answer, &page);
    if (status == TS_OK)
        status = ts_buffer_send(&out, sink);
    *computed = status == TS_OK && all_fine(&seize);
    ts_buffer_close(&out);
    ts_arena_close(arena);
    return status;
}
