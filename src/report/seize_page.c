/* What happens when an accessory seizes, or is jolted, with its neck and without it? */
#include "report/seize_report.h"

#include "report/check_page.h"
#include "report/register.h"

#include <math.h>
#include <stdio.h>

/* Of what it bears; what broke at just that has met it. */
#define BROKEN (1.0 - 1e-9)

enum { INDENT = 2, NAME_WIDE = 50, CELL = 9, KIND = 11 };

static const double degree = 57.29577951308232, two_pi = 6.28318530717958648;

const char *const ts_jolt_words[TS_JOLTS] = {
    [TS_JOLT_SHORT] = "short", [TS_JOLT_STEP] = "step",     [TS_JOLT_SLAM] = "slam",
    [TS_JOLT_CHOP] = "chop",   [TS_JOLT_ENGAGE] = "engage",
};

const char *ts_seize_run_word(const ts_seize_answer *seize, int which)
{
    static const char *const words[TS_SEIZE_RUNS] = {
        [TS_SEIZE_STRONG] = "neck at its strongest",
        [TS_SEIZE_WEAK]   = "neck at its weakest",
        [TS_SEIZE_BARE]   = "without its neck",
    };

    if (seize->jolt == TS_JOLT_NONE)
        return words[which];
    return which == TS_SEIZE_WEAK ? "necks at their weakest" : "without necks";
}

void ts_seize_joint(ts_buffer *out, const ts_drive_twist *twist, size_t joint)
{
    const ts_twist_joint *one = &twist->joints[joint];

    if (one->link == TS_LINK_MESH)
        ts_buffer_print(out, "mesh %s > %s", twist->parts[one->from].name,
                        twist->parts[one->to].name);
    else
        ts_buffer_print(out, "%s %s", one->link == TS_LINK_PAD ? "shaft to" : "tube to",
                        twist->parts[one->to].name);
}

double ts_seize_peak(const ts_seize_run *run, size_t joint)
{
    const ts_bond_peak *peak = &run->seizure.run.peaks[joint];

    return fabs(peak->after) > fabs(peak->before) ? peak->after : peak->before;
}

size_t ts_seize_nearest(const ts_seize_answer *seize, const ts_seize_run *run, double *share)
{
    size_t best = 0;

    *share = 0.0;
    for (size_t i = 0; i < seize->twist->model.spring_count; i++) {
        const double here = fabs(ts_seize_peak(run, i)) / seize->walls[i].T;
        if (here > *share) {
            *share = here;
            best   = i;
        }
    }
    return best;
}

size_t ts_seize_nearest_neck(const ts_seize_answer *seize, const ts_seize_run *run, double *share)
{
    size_t best = SIZE_MAX;

    *share = 0.0;
    for (size_t i = 0; i < seize->twist->model.spring_count; i++) {
        const double here = fabs(ts_seize_peak(run, i)) / run->breaks[i];
        if (seize->twist->joints[i].link == TS_LINK_PAD && isfinite(run->breaks[i]) &&
            here > *share) {
            *share = here;
            best   = i;
        }
    }
    return best;
}

bool ts_seize_leaves_out(const ts_seize_answer *seize, const ts_answer *answer, uint32_t pad)
{
    const ts_pad *one = &answer->train->pads[pad];

    if (one->accessory < 0 || answer->train->shafts[one->shaft].drive != seize->twist->drive)
        return false;
    for (size_t i = 0; i < seize->twist->model.body_count; i++)
        if (seize->twist->parts[i].accessory == one->accessory)
            return false;
    return true;
}

static void sentence(ts_page *page, ts_buffer *text)
{
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, text, 2 * INDENT, INDENT);
}

static void add_torque(const ts_page *page, ts_buffer *text, double T)
{
    const ts_unit *shown = ts_kind_shown(TS_KIND_TORQUE, page->units);

    ts_page_short(text, ts_from_si(T, shown), 4);
    ts_buffer_print(text, " %s", shown->name);
}

/* "generator 1 is shorted at take-off" */
static void name_it(const ts_seize_answer *seize, const ts_answer *answer, ts_buffer *text)
{
    static const char *const of_accessory[TS_JOLTS + 1] = {
        [TS_JOLT_SHORT] = "is shorted",
        [TS_JOLT_STEP]  = "takes its overload at once",
        [TS_JOLT_NONE]  = "seizes",
    };
    const char *who = answer->drive->accessories[seize->accessory].name;
    const char *at  = ts_answer_condition(answer, (int32_t)seize->condition);

    if (seize->jolt == TS_JOLT_ENGAGE)
        ts_buffer_print(text, "the clutch of %s takes hold at %s", who, at);
    else if (seize->jolt == TS_JOLT_SLAM || seize->jolt == TS_JOLT_CHOP)
        ts_buffer_print(text, "the throttle is %s at %s",
                        seize->jolt == TS_JOLT_SLAM ? "slammed open" : "chopped", at);
    else
        ts_buffer_print(text, "%s %s at %s", who, of_accessory[seize->jolt], at);
}

static void tell_stop(const ts_seize_answer *seize, ts_buffer *text)
{
    if (seize->ramp > 0.0) {
        ts_buffer_add(text, "; its friction grows evenly, and would stop its rotor by itself in ");
        ts_page_short(text, 1e3 * seize->ramp, 4);
        ts_buffer_add(text, " ms");
    } else {
        ts_buffer_add(text, "; its rotor stops at once");
    }
    if (seize->neck_of != NULL)
        ts_buffer_print(text, "; the neck of %s stands in the place of its own", seize->neck_of);
}

static void tell_slam(const ts_page *page, const ts_seize_answer *seize, ts_buffer *text)
{
    const ts_unit *shown = ts_kind_shown(TS_KIND_ROTATIONAL_ACCELERATION, page->units);

    ts_buffer_print(text, "; the input of its box would %s ", seize->alpha > 0.0 ? "gain" : "lose");
    ts_page_short(text, ts_from_si(fabs(seize->alpha), shown), 4);
    ts_buffer_print(text, " %s if all were rigid, for which the spool is %s ", shown->name,
                    seize->alpha > 0.0 ? "driven with" : "braked with");
    add_torque(page, text, fabs(seize->runs[TS_SEIZE_BARE].seizure.pulse.A));
}

/* What comes from outside, in numbers. */
static void tell_jolt(const ts_page *page, const ts_seize_answer *seize, ts_buffer *text)
{
    const ts_torque_pulse *pulse = &seize->runs[TS_SEIZE_BARE].seizure.pulse;

    if (seize->jolt == TS_JOLT_SHORT) {
        ts_buffer_add(text, "; about what it takes swing ");
        add_torque(page, text, pulse->A);
        ts_buffer_add(text, " at ");
        ts_page_short(text, pulse->omega / two_pi, 4);
        ts_buffer_add(text, " Hz, braking first, and fall to 1/e in ");
        ts_page_short(text, 1e3 / pulse->decay, 4);
        ts_buffer_add(text, " ms");
    } else if (seize->jolt == TS_JOLT_STEP) {
        ts_buffer_add(text, "; it takes ");
        add_torque(page, text, fabs(pulse->A));
        ts_buffer_add(text, pulse->A > 0.0 ? " less from then on" : " more from then on");
    } else if (seize->jolt == TS_JOLT_ENGAGE) {
        ts_buffer_add(text, "; its rotor is ");
        ts_page_speed_text(page, text, seize->slip);
        ts_buffer_add(text, " rpm faster and drives with ");
        add_torque(page, text, pulse->A);
    } else {
        tell_slam(page, seize, text);
    }
}

static void title(const ts_seize_answer *seize, const ts_answer *answer, ts_page *page)
{
    ts_buffer text;

    ts_buffer_open(&text, page->out->allocator);
    name_it(seize, answer, &text);
    ts_page_heading(page, text.failed ? "" : text.bytes);
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
    ts_buffer_open(&text, page->out->allocator);
    if (seize->jolt == TS_JOLT_SLAM || seize->jolt == TS_JOLT_CHOP)
        ts_buffer_print(&text, "the pad of %s turns at ",
                        answer->drive->accessories[seize->accessory].name);
    else
        ts_buffer_add(&text, "its pad turns at ");
    ts_page_speed_text(page, &text, seize->speed);
    ts_buffer_add(&text, " rpm");
    if (seize->jolt == TS_JOLT_NONE)
        tell_stop(seize, &text);
    else if (seize->because == NULL)
        tell_jolt(page, seize, &text);
    sentence(page, &text);
}

static void add_time(ts_buffer *text, double t)
{
    ts_page_short(text, 1e3 * t, 4);
    ts_buffer_add(text, " ms");
}

/* "the neck of x breaks", "a tooth of mesh ... breaks" */
static void add_break(const ts_page *page, ts_buffer *text, const ts_drive_twist *twist,
                      const ts_train_event *event)
{
    const ts_twist_joint *joint = &twist->joints[event->bond];

    if (joint->link == TS_LINK_MESH) {
        ts_buffer_add(text, "teeth break in ");
        ts_seize_joint(text, twist, event->bond);
    } else {
        ts_buffer_print(text, "the neck to %s breaks", twist->parts[joint->to].name);
    }
    ts_buffer_add(text, " at ");
    add_torque(page, text, fabs(event->T));
    ts_buffer_add(text, " after ");
    add_time(text, event->t);
}

static void tell_breaks(const ts_page *page, const ts_seize_answer *seize, const ts_seizure *it,
                        ts_buffer *text)
{
    bool any = false;

    for (size_t i = 0; i < it->run.event_count; i++) {
        if (it->run.events[i].what != TS_HAPPENS_BREAK)
            continue;
        ts_buffer_add(text, any ? "; then " : "");
        add_break(page, text, seize->twist, &it->run.events[i]);
        if (!any && seize->jolt == TS_JOLT_NONE) {
            ts_buffer_add(text, ", within ");
            ts_page_short(text, degree * it->pad_angle, 3);
            ts_buffer_add(text, " deg of the pad, wound up further by ");
            ts_page_short(text, degree * it->twist, 3);
            ts_buffer_add(text, " deg");
        }
        any = true;
    }
    if (!any)
        ts_buffer_add(text, "nothing breaks");
}

/* Accessories that are, or are not, still joined to the spool. */
static void tell_parts(const ts_seize_answer *seize, const ts_answer *answer, const ts_seizure *it,
                       bool turning, ts_buffer *text)
{
    bool any = false;

    for (size_t i = 0; i < seize->twist->model.body_count; i++) {
        const int32_t who = seize->twist->parts[i].accessory;
        if (who < 0 || it->turns[i] != turning)
            continue;
        ts_buffer_print(text, "%s%s", any ? ", " : "", answer->drive->accessories[who].name);
        any = true;
    }
    if (!any)
        ts_buffer_add(text, "nothing");
}

static void tell_neck(const ts_page *page, const ts_seize_answer *seize, const ts_seize_run *run,
                      ts_buffer *text)
{
    double       share;
    const size_t at = ts_seize_nearest_neck(seize, run, &share);

    if (at == SIZE_MAX || share > BROKEN)
        return;
    ts_buffer_print(text, ".  Neck nearest to breaking: to %s, ",
                    seize->twist->parts[seize->twist->joints[at].to].name);
    add_torque(page, text, fabs(ts_seize_peak(run, at)));
    ts_buffer_add(text, " of ");
    add_torque(page, text, run->breaks[at]);
}

static void tell_run(const ts_seize_answer *seize, const ts_answer *answer, ts_page *page,
                     int which)
{
    const ts_seize_run *run = &seize->runs[which];
    const ts_seizure   *it  = &run->seizure;
    double              share;
    ts_buffer           text;

    if (!run->there)
        return;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text, "%s: ", ts_seize_run_word(seize, which));
    tell_breaks(page, seize, it, &text);
    if (it->run.fault != TS_RUN_FINE) {
        ts_buffer_print(&text, "; refused: %s, at ", ts_run_fault_says(it->run.fault));
        add_time(&text, it->run.t);
        sentence(page, &text);
        return;
    }
    const size_t near = ts_seize_nearest(seize, run, &share);
    if (seize->jolt == TS_JOLT_NONE && it->turns[it->body] && !it->held) {
        ts_buffer_add(&text, ".  It still slips when the run ends, after ");
        add_time(&text, it->until);
    }
    ts_buffer_add(&text, it->held ? ".  Held by what seized: " : ".  Keeps turning: ");
    tell_parts(seize, answer, it, true, &text);
    ts_buffer_add(&text, "; cut off: ");
    tell_parts(seize, answer, it, false, &text);
    if (share > 0.0) {
        ts_buffer_add(&text, share > BROKEN ? ".  Beyond what it bears: "
                                            : ".  Nearest to what it bears: ");
        ts_seize_joint(&text, seize->twist, near);
        ts_buffer_add(&text, ", ");
        ts_buffer_fixed(&text, 100.0 * share, 1);
        ts_buffer_add(&text, " %");
    }
    if (seize->jolt != TS_JOLT_NONE)
        tell_neck(page, seize, run, &text);
    ts_buffer_add(&text, ".  Energies off by ");
    ts_buffer_significant(&text, it->run.energy.balance, 2);
    ts_buffer_print(&text, "; flanks met %zu times in ", it->run.touches);
    add_time(&text, it->until);
    ts_buffer_add(&text, ".");
    sentence(page, &text);
}

static void cell(ts_page *page, double value)
{
    ts_buffer text;

    ts_buffer_open(&text, page->out->allocator);
    if (isfinite(value))
        ts_page_short(&text, ts_from_si(fabs(value), ts_kind_shown(TS_KIND_TORQUE, page->units)),
                      4);
    else
        ts_buffer_add(&text, "-");
    if (!text.failed)
        ts_page_right(page, ts_text_of(text.bytes), CELL);
    page->out->failed = page->out->failed || text.failed;
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
}

static void table(const ts_seize_answer *seize, ts_page *page)
{
    static const char *const heads[] = {"steady", "strong", "weak", "without", "bears", "by"};

    char first[NAME_WIDE];

    snprintf(first, sizeof first, "  largest torques, %s at the outer part",
             ts_kind_shown(TS_KIND_TORQUE, page->units)->name);
    ts_page_left(page, ts_text_of(first), NAME_WIDE);
    for (size_t i = 0; i < sizeof heads / sizeof heads[0]; i++)
        ts_page_right(page, ts_text_of(heads[i]),
                      i + 1 < sizeof heads / sizeof heads[0] ? CELL : KIND);
    ts_page_line_end(page);
    for (size_t i = 0; i < seize->twist->model.spring_count; i++) {
        ts_buffer name;
        ts_buffer_open(&name, page->out->allocator);
        ts_buffer_add(&name, "  ");
        ts_seize_joint(&name, seize->twist, i);
        ts_page_left(page, ts_text_of(name.failed ? "" : name.bytes), NAME_WIDE);
        page->out->failed = page->out->failed || name.failed;
        page->out->failed = page->out->failed || name.failed;
        ts_buffer_close(&name);
        cell(page, seize->runs[TS_SEIZE_BARE].seizure.run.peaks[i].start);
        for (int k = 0; k < TS_SEIZE_RUNS; k++)
            cell(page, seize->runs[k].there ? ts_seize_peak(&seize->runs[k], i) : (double)NAN);
        cell(page, seize->walls[i].T);
        ts_page_right(
            page,
            ts_text_of(isfinite(seize->walls[i].T) ? ts_part_kind_word(seize->walls[i].kind) : "-"),
            KIND);
        ts_page_line_end(page);
    }
}

static void grounds(const ts_seize_answer *seize, const ts_answer *answer, ts_page *page)
{
    const size_t plays = seize->runs[TS_SEIZE_BARE].seizure.plays_assumed;
    ts_buffer    text;

    ts_page_heading(page, "Assumed");
    ts_register_page(page, answer->drive->seize_assumed, answer->drive->seize_assumed_count);
    if (seize->jolt != TS_JOLT_NONE)
        ts_register_page(page, answer->drive->jolt_assumed, answer->drive->jolt_assumed_count);
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text,
                    "The play of %zu mesh%s is as `play` has it; torques go in proportion to "
                    "speed, rotors are rigid, necks and teeth part at once.",
                    plays, plays == 1 ? "" : "es");
    for (uint32_t p = 0; p < answer->train->pad_count; p++)
        if (ts_seize_leaves_out(seize, answer, p))
            ts_buffer_print(&text, "  Left out, without a rotor: %s.", answer->train->pads[p].name);
    sentence(page, &text);
}

void ts_seize_page(const ts_seize_answer *seize, const ts_answer *answer, ts_page *page)
{
    ts_answer_title(answer, page);
    ts_seize_told(seize, answer, page);
}

void ts_seize_told(const ts_seize_answer *seize, const ts_answer *answer, ts_page *page)
{
    title(seize, answer, page);
    if (seize->because != NULL) {
        ts_buffer text;
        ts_buffer_open(&text, page->out->allocator);
        ts_buffer_print(&text, "not computed: %s%s%s", seize->because,
                        seize->of != NULL ? " of " : "", seize->of != NULL ? seize->of : "");
        sentence(page, &text);
        return;
    }
    for (int k = 0; k < TS_SEIZE_RUNS; k++)
        tell_run(seize, answer, page, k);
    table(seize, page);
    grounds(seize, answer, page);
}
