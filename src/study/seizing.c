/* What does a study say of an accessory that seizes, or is jolted? */
#include "study/seizing.h"
#include "study/figures.h"
#include "study/lone_chapter.h"
#include "study/outlet.h"
#include "study/say_quantity.h"
#include "study/study.h"
#include "study/twisting.h"

#include "report/seize_report.h"
#include "towershaft/seize.h"

#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

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
    ts_study_say_quantity(study, "the ramp is no time that can be followed",
                          "a time from 0.001 ms to 1 s, such as 20 ms", text, TS_KIND_TIME, "ms");
    return false;
}

/* ---- what is asked ----------------------------------------------------------------------------
 */

static bool choose_neck(wish *w, const char *of)
{
    if (of == NULL)
        return true;
    w->neck_of = ts_study_choose_accessory(w->study, of, w->arena);
    if (w->neck_of < 0)
        return false;
    w->out->neck_of = w->study->drive.accessories[w->neck_of].name;
    if (neck_item(w->study, ts_train_pad_of(&w->study->train, w->neck_of)) != TS_NOWHERE)
        return true;
    ts_study_say(w->study, "unknown-choice", "that accessory has no neck to lend",
                 "an accessory with a `neck` whose band is known", NULL);
    return false;
}

/* Only what is put on from outside can come by and by. */
static bool choose_rise(wish *w)
{
    if (w->out->ramp <= 0.0 || (w->out->jolt != TS_JOLT_SHORT && w->out->jolt != TS_JOLT_ENGAGE))
        return true;
    ts_study_say(w->study, "unknown-choice", "that jolt comes at once",
                 "a ramp for a step, slam or chop", NULL);
    return false;
}

static bool choose_jolt(wish *w, const char *word)
{
    w->out->jolt = TS_JOLT_NONE;
    if (word == NULL)
        return true;
    const int jolt = ts_study_choose(w->study, "jolt", word, ts_jolt_words, TS_JOLTS);
    w->out->jolt   = jolt < 0 ? TS_JOLT_NONE : (ts_jolt)jolt;
    return jolt >= 0;
}

static bool is_of_spool(ts_jolt jolt)
{
    return jolt == TS_JOLT_SLAM || jolt == TS_JOLT_CHOP;
}

/* A slam goes through the whole tree; the accessory only tells which. */
static bool choose_accessory(wish *w, const char *name)
{
    const ts_train *train = &w->study->train;

    for (uint32_t p = 0; name == NULL && is_of_spool(w->out->jolt) && p < train->pad_count; p++)
        if (train->pads[p].accessory >= 0) {
            w->out->accessory = train->pads[p].accessory;
            return true;
        }
    if (name == NULL) {
        ts_study_say(w->study, "unknown-choice", "that jolt is one of an accessory",
                     "the name of an accessory", NULL);
        return false;
    }
    w->out->accessory = ts_study_choose_accessory(w->study, name, w->arena);
    return w->out->accessory >= 0;
}

static double pad_speed(const wish *w, uint32_t condition)
{
    const ts_train *train = &w->study->train;

    return w->study->motion
        .speed[(size_t)condition * train->shaft_count + train->pads[w->pad].shaft];
}

/* The fastest; of an engagement the slowest in which the pad turns and is not driven. */
static void choose_fitting(wish *w)
{
    const ts_study *study = w->study;
    const uint32_t  count = (uint32_t)study->drive.condition_count;
    double          best  = w->out->jolt == TS_JOLT_ENGAGE ? (double)INFINITY : -1.0;

    for (uint32_t c = 0; c < count; c++) {
        const ts_pad_load *load = &study->power.pad[(size_t)c * study->train.pad_count + w->pad];
        const double       here = pad_speed(w, c);
        const bool         better =
            w->out->jolt == TS_JOLT_ENGAGE
                        ? here > 0.0 && here < best && load->clutch_state != TS_CLUTCH_STATE_ENGAGED
                        : here > best;
        if (!better)
            continue;
        best              = here;
        w->out->condition = c;
    }
}

static ts_status choose(wish *w, const ts_seize_options *options)
{
    ts_seize_answer *out = w->out;
    int32_t          condition;

    w->neck_of = -1;
    if (!choose_jolt(w, options->jolt) || !choose_accessory(w, options->accessory) ||
        !ts_study_choose_condition(w->study, options->condition, &condition) ||
        !choose_ramp(w->study, options->ramp, &out->ramp) || !choose_rise(w) ||
        !choose_neck(w, options->neck_of))
        return ts_arena_failed(w->arena) ? TS_NO_MEMORY : ts_study_refused(w->study);
    w->pad = ts_train_pad_of(&w->study->train, out->accessory);
    if (w->pad == TS_NOWHERE)
        return TS_OK;
    choose_fitting(w);
    if (condition >= 0)
        out->condition = (uint32_t)condition;
    out->speed = pad_speed(w, out->condition);
    return TS_OK;
}

/* ---- what bears and what breaks ---------------------------------------------------------------
 */

static bool is_of_pad(const wish *w, size_t joint, uint32_t pad)
{
    const ts_drive_twist *twist = w->out->twist;
    const int32_t         who   = twist->parts[twist->joints[joint].to].accessory;

    return twist->joints[joint].link == TS_LINK_PAD && who >= 0 &&
           ts_train_pad_of(&w->study->train, who) == pad;
}

/* The spring whose outer body a part's torque is counted at; SIZE_MAX: none of this tree. */
static size_t joint_of(const wish *w, const ts_part_capacity *part)
{
    const ts_drive_twist *twist = w->out->twist;

    for (size_t i = 0; i < twist->model.spring_count; i++) {
        const ts_twist_joint *joint = &twist->joints[i];
        if (part->of_pad ? is_of_pad(w, i, part->pad)
            : part->mesh != TS_NOWHERE
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
        const size_t            at   = joint_of(w, part);
        if (at == SIZE_MAX || !(part->T > 0.0))
            continue;
        if (part->kind == TS_PART_ROOT || part->kind == TS_PART_NECK)
            w->breaks[at] = fmin(w->breaks[at], part->T);
        if (part->kind != TS_PART_NECK && part->T < walls[at].T)
            walls[at] = (ts_seize_wall){part->T, part->kind};
    }
}

/* When a pad's neck breaks in a run; INFINITY: never.  Of a seizure necks of other pads break at
 * the strongest that they may be, the worst for what stands behind. */
static double neck_in(const wish *w, int which, int32_t who)
{
    const ts_study *study = w->study;
    const bool      jolt  = w->out->jolt != TS_JOLT_NONE;
    const bool      own   = jolt || who == w->out->accessory;
    const uint32_t  item =
        neck_item(study, ts_train_pad_of(&study->train, own && w->neck_of >= 0 ? w->neck_of : who));

    if (item == TS_NOWHERE || (own && which == TS_SEIZE_BARE))
        return (double)INFINITY;
    return own && which == TS_SEIZE_WEAK ? study->necks.items[item].band.low
                                         : study->necks.items[item].band.high;
}

/* The same of a neck in a radial shaft: of a jolt weak too, or left out; else as it bears most. */
static double tower_neck_in(const wish *w, int which, uint32_t shaft)
{
    const ts_necks *necks = &w->study->necks;

    for (uint32_t i = 0; i < necks->count; i++) {
        const ts_drive_neck *neck = &necks->items[i];
        if (neck->pad != TS_NOWHERE || neck->shaft != shaft || !isfinite(neck->band.high))
            continue;
        if (w->out->jolt == TS_JOLT_NONE)
            return neck->band.high;
        return which == TS_SEIZE_WEAK ? neck->band.low : (double)INFINITY;
    }
    return (double)INFINITY;
}

static void set_necks(const wish *w, int which)
{
    const ts_drive_twist *twist = w->out->twist;

    for (size_t i = 0; i < twist->model.spring_count; i++) {
        const int32_t who = twist->parts[twist->joints[i].to].accessory;
        if (twist->joints[i].link == TS_LINK_PAD && who >= 0)
            w->breaks[i] = neck_in(w, which, who);
        if (twist->joints[i].link == TS_LINK_SHAFT)
            w->breaks[i] = tower_neck_in(w, which, twist->parts[twist->joints[i].to].shaft);
    }
}

/* ---- what is done to it -----------------------------------------------------------------------
 */

/* N.m that its accessory takes continuously, the highest of all conditions; NaN: not known. */
static double continuous(const wish *w)
{
    const uint32_t guard = w->study->select.of_pad[w->pad];

    return guard == TS_NOWHERE ? (double)NAN : w->study->select.guards[guard].run.T;
}

/* It swings about what is taken, and brakes first. */
static ts_torque_pulse short_pulse(const wish *w)
{
    const ts_jolt_wish *jolt = &w->study->drive.jolt;

    return (ts_torque_pulse){.A     = jolt->short_torque.value * continuous(w),
                             .decay = 1.0 / jolt->short_decay.value,
                             .omega = 2.0 * pi * jolt->short_frequency.value,
                             .phase = pi / 2.0};
}

static ts_torque_pulse step_pulse(const wish *w)
{
    const ts_study    *study = w->study;
    const ts_overload *over  = &study->drive.accessories[w->out->accessory].torque.overload;
    const double       now =
        study->power.pad[(size_t)w->out->condition * study->train.pad_count + w->pad].T;
    const double then = over->standing == TS_GIVEN
                            ? over->torque
                            : study->drive.jolt.step_torque.value * continuous(w);

    return (ts_torque_pulse){.A = now - then};
}

/* What its `curve` gives at the speed of its pad; beyond the curve as at its end. */
static double on_curve(const ts_accessory *one, double speed)
{
    const ts_torque_point *points = one->curve;
    size_t                 i      = 1;

    while (i + 1 < one->curve_count && points[i].speed.value < speed)
        i++;
    const double along =
        (speed - points[i - 1].speed.value) / (points[i].speed.value - points[i - 1].speed.value);
    return fmax(0.0, points[i - 1].torque.value +
                         fmin(1.0, fmax(0.0, along)) *
                             (points[i].torque.value - points[i - 1].torque.value));
}

/* What the starter puts in at the speed of its pad. */
static ts_torque_pulse engaging_pulse(const wish *w)
{
    const ts_accessory *one   = &w->study->drive.accessories[w->out->accessory];
    const uint32_t      guard = w->study->select.of_pad[w->pad];

    if (one->curve_count > 1)
        return (ts_torque_pulse){.A = on_curve(one, w->out->speed)};
    const double T = guard == TS_NOWHERE ? (double)NAN : w->study->select.guards[guard].start.T;
    return (ts_torque_pulse){.A = T};
}

/* Turns of the input of its box over those of its spool. */
static double input_ratio(const wish *w)
{
    const ts_train *train = &w->study->train;
    const uint32_t  drive = train->shafts[train->pads[w->pad].shaft].drive;

    for (uint32_t s = 0; s < train->shaft_count; s++)
        if (train->shafts[s].kind == TS_SHAFT_BOX && train->shafts[s].drive == drive)
            return fabs(ts_rational_value(w->study->motion.shafts[s].ratio));
    return (double)NAN;
}

static void ask_jolt(wish *w, ts_seizure_question *question)
{
    const ts_jolt_wish *jolt = &w->study->drive.jolt;

    switch (w->out->jolt) {
    case TS_JOLT_SHORT:
        question->pulse = short_pulse(w);
        break;
    case TS_JOLT_STEP:
        question->pulse = step_pulse(w);
        break;
    case TS_JOLT_SLAM:
    case TS_JOLT_CHOP:
        w->out->alpha       = w->out->jolt == TS_JOLT_SLAM ? jolt->slam.value : -jolt->chop.value;
        question->alpha     = w->out->alpha / input_ratio(w);
        question->accessory = -1;
        break;
    case TS_JOLT_ENGAGE:
        question->pulse = engaging_pulse(w);
        question->slip = w->out->slip = jolt->slip.value;
        break;
    case TS_JOLT_NONE:
        question->stops = true;
        break;
    }
    question->pulse.rise = question->stops ? 0.0 : w->out->ramp;
}

static void give_up(wish *w, const char *because, const char *of)
{
    w->out->because = because;
    w->out->of      = of;
}

static ts_status run_one(wish *w, int which)
{
    ts_seize_run       *run      = &w->out->runs[which];
    ts_seizure_question question = {.drive     = &w->study->drive,
                                    .power     = &w->study->power,
                                    .twist     = w->out->twist,
                                    .condition = w->out->condition,
                                    .accessory = w->out->accessory,
                                    .ramp      = w->out->ramp,
                                    .breaks    = w->breaks,
                                    .samples   = w->samples};

    ask_jolt(w, &question);
    if (!isfinite(question.pulse.A) || !isfinite(question.alpha)) {
        give_up(w, "the file does not tell the torque", w->study->train.pads[w->pad].name);
        return TS_OK;
    }
    run->there  = true;
    run->breaks = TS_TAKE(w->arena, double, w->out->twist->model.spring_count + 1);
    if (run->breaks == NULL)
        return TS_NO_MEMORY;
    set_necks(w, which);
    memcpy(run->breaks, w->breaks, w->out->twist->model.spring_count * sizeof *w->breaks);
    run->neck = neck_in(w, which, w->out->accessory);
    return ts_drive_seize(&question, w->arena, &run->seizure);
}

/* The tree of its pad, in the state of the condition; false: it could not be had. */
static bool find_tree(wish *w, const ts_twist_answer *answer)
{
    const ts_study *study = w->study;
    const uint32_t  drive = study->train.shafts[study->train.pads[w->pad].shaft].drive;
    const bool      on    = w->out->jolt == TS_JOLT_ENGAGE ||
                    ts_drive_is_cranked(&study->power, drive, w->out->condition);

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
    const size_t   joints = w->out->twist->model.spring_count;
    const uint32_t of     = w->neck_of < 0 ? w->pad : ts_train_pad_of(&w->study->train, w->neck_of);
    const bool     necked = neck_item(w->study, of) != TS_NOWHERE;
    const bool     jolt   = w->out->jolt != TS_JOLT_NONE;
    ts_seize_wall *walls  = TS_TAKE(w->arena, ts_seize_wall, joints + 1);
    ts_status      status = TS_OK;

    w->breaks = TS_TAKE(w->arena, double, joints + 1);
    if (walls == NULL || w->breaks == NULL)
        return TS_NO_MEMORY;
    build_walls(w, walls);
    w->out->walls = walls;
    if (necked && !jolt)
        status = run_one(w, TS_SEIZE_STRONG);
    if (status == TS_OK && (necked || jolt))
        status = run_one(w, TS_SEIZE_WEAK);
    return status == TS_OK && w->out->because == NULL ? run_one(w, TS_SEIZE_BARE) : status;
}

static const char *cannot(const wish *w)
{
    const ts_accessory *one = &w->study->drive.accessories[w->out->accessory];

    if (w->pad == TS_NOWHERE)
        return "it stands on no pad";
    if (!(w->out->speed > 0.0))
        return "it stands still in this condition";
    if (w->out->jolt == TS_JOLT_ENGAGE &&
        (!ts_pick_known(one->clutch) || one->clutch.value != TS_CLUTCH_OVERRUNNING))
        return "it has no overrunning clutch that could take hold";
    if (w->out->jolt == TS_JOLT_ENGAGE &&
        w->study->power.pad[(size_t)w->out->condition * w->study->train.pad_count + w->pad]
                .clutch_state == TS_CLUTCH_STATE_ENGAGED)
        return "its clutch has taken hold already in this condition";
    return NULL;
}

ts_status ts_study_seize(ts_study *study, const ts_seize_options *options,
                         const ts_twist_answer *twist, ts_arena *arena, ts_seize_answer *out)
{
    wish w = {.study = study, .arena = arena, .out = out, .samples = options->samples};

    *out             = (ts_seize_answer){.accessory = -1};
    ts_status status = choose(&w, options);
    if (status != TS_OK)
        return status;
    if (cannot(&w) != NULL) {
        give_up(&w, cannot(&w), NULL);
        return TS_OK;
    }
    ts_twist_answer own;
    if (twist == NULL)
        status = ts_study_twist(study, arena, &own);
    if (status != TS_OK || !find_tree(&w, twist != NULL ? twist : &own))
        return status;
    return run_all(&w);
}

ts_status ts_study_tell_seizure(ts_study *study, const char *accessory, ts_arena *arena,
                                ts_chapter *chapter)
{
    const ts_seize_options options = {.accessory = accessory};
    ts_seize_answer        seize;
    const ts_status        status = ts_study_seize(study, &options, NULL, arena, &seize);
    if (status == TS_OK)
        ts_chapter_seizure(chapter, &seize, 2);
    return status;
}

static void write_chapter(ts_chapter *chapter, const void *seize)
{
    ts_chapter_seizure(chapter, seize, 1);
}

typedef struct telling {
    const ts_seize_options *options;
    ts_verdict              verdict;
} telling;

static ts_verdict verdict_of(const ts_seize_answer *seize)
{
    if (seize->because != NULL)
        return TS_VERDICT_NOT_COMPUTABLE;
    for (int k = 0; k < TS_SEIZE_RUNS; k++)
        if (seize->runs[k].there && seize->runs[k].seizure.run.fault != TS_RUN_FINE)
            return TS_VERDICT_NOT_COMPUTABLE;
    return ts_seize_is_borne(seize) ? TS_HOLDS : TS_DOES_NOT_HOLD;
}

static ts_status tell(ts_telling *it, void *about)
{
    telling        *what = about;
    ts_seize_answer seize;
    ts_status       status = ts_study_seize(it->study, what->options, NULL, it->arena, &seize);

    if (status == TS_OK && what->options->json)
        ts_seize_json(&seize, &it->answer, it->page.out);
    else if (status == TS_OK)
        status = ts_study_lone_chapter(it->study, it->arena, write_chapter, &seize, &it->page);
    what->verdict = status == TS_OK ? verdict_of(&seize) : TS_VERDICT_NOT_COMPUTABLE;
    return status;
}

ts_status ts_seize_write(ts_study *study, const ts_seize_options *options,
                         const ts_page_options *look, ts_verdict *verdict, const ts_sink *sink)
{
    telling    what = {options, TS_VERDICT_NOT_COMPUTABLE};
    const bool fits = options != NULL && options->samples <= TS_SEIZE_SAMPLES_MOST;

    const ts_status status =
        fits ? ts_outlet_tell(study, look, tell, &what, sink) : TS_NOT_UNDERSTOOD;
    *verdict = status == TS_OK ? what.verdict : TS_VERDICT_NOT_COMPUTABLE;
    return status;
}
