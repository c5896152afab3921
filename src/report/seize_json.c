/* How is a seizure or a jolt written as JSON, by docs/schema/seize.schema.json? */
#include "report/seize_report.h"

#include "report/json_quantity.h"
#include "report/register.h"

#include "base/json_writer.h"

#include <math.h>

static const double two_pi = 6.28318530717958648;

static void name_of(ts_json *json, const char *key, const ts_drive_twist *twist, size_t joint,
                    const ts_allocator *allocator)
{
    ts_buffer text;

    ts_buffer_open(&text, allocator);
    ts_seize_joint(&text, twist, joint);
    ts_json_key(json, key);
    ts_json_made(json, &text);
    ts_buffer_close(&text);
}

static void events(ts_json *json, const ts_seize_answer *seize, const ts_seizure *it,
                   const ts_allocator *allocator)
{
    static const char *const words[] = {[TS_HAPPENS_TOUCH_LEADING]  = "leading flanks meet",
                                        [TS_HAPPENS_TOUCH_TRAILING] = "trailing flanks meet",
                                        [TS_HAPPENS_PART]           = "flanks part",
                                        [TS_HAPPENS_BREAK]          = "breaks",
                                        [TS_HAPPENS_STAND]          = "stands",
                                        [TS_HAPPENS_SLIP]           = "slips"};

    ts_json_key(json, "events");
    ts_json_array(json);
    for (size_t i = 0; i < it->run.event_count; i++) {
        const ts_train_event *event = &it->run.events[i];
        ts_json_object(json);
        ts_json_rounded_at(json, "t", event->t);
        ts_json_string_at(json, "what", words[event->what]);
        if (event->bond != TS_NO_BODY)
            name_of(json, "of", seize->twist, event->bond, allocator);
        ts_json_rounded_at(json, "T", event->T);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void peaks(ts_json *json, const ts_seize_answer *seize, const ts_seize_run *run,
                  const ts_allocator *allocator)
{
    ts_json_key(json, "peaks");
    ts_json_array(json);
    for (size_t i = 0; i < seize->twist->model.spring_count; i++) {
        const ts_bond_peak *peak = &run->seizure.run.peaks[i];
        ts_json_object(json);
        name_of(json, "of", seize->twist, i, allocator);
        ts_json_rounded_at(json, "steady", peak->start);
        ts_json_rounded_at(json, "before", peak->before);
        ts_json_rounded_at(json, "after", peak->after);
        ts_json_rounded_at(json, "bears", seize->walls[i].T);
        if (isfinite(seize->walls[i].T))
            ts_json_string_at(json, "by", ts_part_kind_word(seize->walls[i].kind));
        if (isfinite(run->breaks[i]))
            ts_json_rounded_at(json, "breaks", run->breaks[i]);
        ts_json_key(json, "broken");
        ts_json_bool(json, peak->broken);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void energy(ts_json *json, const ts_energy_account *e)
{
    ts_json_key(json, "energy");
    ts_json_object(json);
    ts_json_rounded_at(json, "kinetic", e->kinetic);
    ts_json_rounded_at(json, "strain", e->strain);
    ts_json_rounded_at(json, "damped", e->damped);
    ts_json_rounded_at(json, "stopped", e->stopped);
    ts_json_rounded_at(json, "broken", e->broken);
    ts_json_rounded_at(json, "work", e->work);
    ts_json_rounded_at(json, "balance", e->balance < 1e-9 ? 0.0 : e->balance);
    ts_json_end(json, '}');
}

static void turning(ts_json *json, const char *key, bool on, const ts_seize_answer *seize,
                    const ts_answer *answer, const ts_seizure *it)
{
    ts_json_key(json, key);
    ts_json_array(json);
    for (size_t i = 0; i < seize->twist->model.body_count; i++)
        if (seize->twist->parts[i].accessory >= 0 && it->turns[i] == on)
            ts_json_string(json, answer->drive->accessories[seize->twist->parts[i].accessory].name);
    ts_json_end(json, ']');
}

/* Column `at` of a table of `wide` columns, sample by sample. */
static void column(ts_json *json, const char *key, const double *of, size_t count, size_t wide,
                   size_t at)
{
    ts_json_key(json, key);
    ts_json_array(json);
    for (size_t i = 0; i < count; i++)
        ts_json_rounded(json, of[i * wide + at]);
    ts_json_end(json, ']');
}

static void trace_springs(ts_json *json, const ts_seize_answer *seize, const ts_train_trace *trace,
                          const ts_allocator *allocator)
{
    static const char *const links[] = {
        [TS_LINK_SHAFT] = "shaft", [TS_LINK_MESH] = "mesh", [TS_LINK_PAD] = "pad"};
    const ts_drive_twist *twist = seize->twist;

    ts_json_key(json, "springs");
    ts_json_array(json);
    for (size_t i = 0; i < twist->model.spring_count; i++) {
        ts_json_object(json);
        name_of(json, "of", twist, i, allocator);
        ts_json_string_at(json, "link", links[twist->joints[i].link]);
        ts_json_count_at(json, "from", twist->joints[i].from);
        ts_json_count_at(json, "to", twist->joints[i].to);
        column(json, "T", trace->T, trace->count, twist->model.spring_count, i);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void trace(ts_json *json, const ts_seize_answer *seize, const ts_answer *answer,
                  const ts_train_trace *trace)
{
    const ts_drive_twist *twist = seize->twist;

    ts_json_key(json, "trace");
    ts_json_object(json);
    column(json, "t", trace->t, trace->count, 1, 0);
    trace_springs(json, seize, trace, answer->allocator);
    ts_json_key(json, "bodies");
    ts_json_array(json);
    for (size_t i = 0; i < twist->model.body_count; i++) {
        ts_json_object(json);
        ts_json_string_at(json, "of", twist->parts[i].name);
        ts_json_count_at(json, "shaft", twist->parts[i].shaft);
        if (twist->parts[i].accessory >= 0)
            ts_json_string_at(json, "accessory",
                              answer->drive->accessories[twist->parts[i].accessory].name);
        column(json, "speed", trace->w, trace->count, twist->model.body_count, i);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    ts_json_end(json, '}');
}

static void run(ts_json *json, const ts_seize_answer *seize, const ts_answer *answer, int which)
{
    const ts_seize_run *one = &seize->runs[which];
    const ts_seizure   *it  = &one->seizure;

    if (!one->there)
        return;
    ts_json_object(json);
    ts_json_string_at(json, "run", ts_seize_run_word(seize, which));
    ts_json_rounded_at(json, "neck", one->neck);
    ts_json_rounded_at(json, "until", it->until);
    if (it->run.fault != TS_RUN_FINE) {
        ts_json_string_at(json, "because", ts_run_fault_says(it->run.fault));
        ts_json_rounded_at(json, "t", it->run.t);
        if (it->run.at < seize->twist->model.body_count)
            ts_json_string_at(json, "of", seize->twist->parts[it->run.at].name);
    }
    ts_json_rounded_at(json, "pad_angle", it->pad_angle);
    ts_json_rounded_at(json, "twist", it->twist);
    ts_json_count_at(json, "touches", it->run.touches);
    ts_json_count_at(json, "happened", it->run.happened);
    events(json, seize, it, answer->allocator);
    peaks(json, seize, one, answer->allocator);
    energy(json, &it->run.energy);
    ts_json_key(json, "held");
    ts_json_bool(json, it->held);
    turning(json, "turns_on", true, seize, answer, it);
    turning(json, "cut_off", false, seize, answer, it);
    if (it->run.trace.count > 0)
        trace(json, seize, answer, &it->run.trace);
    ts_json_end(json, '}');
}

static void jolt(ts_json *json, const ts_seize_answer *seize)
{
    const ts_torque_pulse *pulse = &seize->runs[TS_SEIZE_BARE].seizure.pulse;

    ts_json_key(json, "jolt");
    ts_json_object(json);
    ts_json_string_at(json, "what", ts_jolt_words[seize->jolt]);
    if (seize->because == NULL)
        ts_json_rounded_at(json, "torque", pulse->A);
    if (seize->because == NULL && seize->jolt == TS_JOLT_SHORT) {
        ts_json_rounded_at(json, "frequency", pulse->omega / two_pi);
        ts_json_rounded_at(json, "decay", 1.0 / pulse->decay);
    }
    if (seize->alpha != 0.0)
        ts_json_rounded_at(json, "acceleration", seize->alpha);
    if (seize->jolt == TS_JOLT_ENGAGE)
        ts_json_rounded_at(json, "slip", seize->slip);
    ts_json_end(json, '}');
}

static void left_out(ts_json *json, const ts_seize_answer *seize, const ts_answer *answer)
{
    ts_json_key(json, "left_out");
    ts_json_array(json);
    for (uint32_t p = 0; seize->because == NULL && p < answer->train->pad_count; p++)
        if (ts_seize_leaves_out(seize, answer, p))
            ts_json_string(json, answer->train->pads[p].name);
    ts_json_end(json, ']');
}

void ts_seize_json(const ts_seize_answer *seize, const ts_answer *answer, ts_buffer *out)
{
    ts_json json;

    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    ts_json_head(&json, answer);
    ts_json_string_at(&json, "accessory", answer->drive->accessories[seize->accessory].name);
    ts_json_string_at(&json, "condition", ts_answer_condition(answer, (int32_t)seize->condition));
    ts_json_rounded_at(&json, "speed", seize->speed);
    ts_json_rounded_at(&json, "ramp", seize->ramp);
    if (seize->jolt != TS_JOLT_NONE)
        jolt(&json, seize);
    if (seize->neck_of != NULL)
        ts_json_string_at(&json, "neck_of", seize->neck_of);
    if (seize->because != NULL)
        ts_json_string_at(&json, "because", seize->because);
    if (seize->of != NULL)
        ts_json_string_at(&json, "of", seize->of);
    left_out(&json, seize, answer);
    ts_register_json(&json, answer->drive->seize_assumed, answer->drive->seize_assumed_count);
    if (seize->jolt != TS_JOLT_NONE)
        ts_register_json_at(&json, "jolt_assumptions", answer->drive->jolt_assumed,
                            answer->drive->jolt_assumed_count);
    ts_json_key(&json, "runs");
    ts_json_array(&json);
    for (int k = 0; seize->because == NULL && k < TS_SEIZE_RUNS; k++)
        run(&json, seize, answer, k);
    ts_json_end(&json, ']');
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
