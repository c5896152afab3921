/* What happens when an accessory seizes, or is jolted, with its neck and without it? */
#include "report/seize_report.h"

#include "report/register.h"

#include <math.h>

/* Of what it bears; what broke at just that has met it. */
#define BROKEN (1.0 - 1e-9)

enum { COLUMNS_MOST = 4 + TS_SEIZE_RUNS };

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

double ts_seize_share(const ts_seize_answer *seize, const ts_seize_run *run, size_t joint)
{
    return fabs(ts_seize_peak(run, joint)) / seize->walls[joint].T;
}

size_t ts_seize_nearest(const ts_seize_answer *seize, const ts_seize_run *run, double *share)
{
    size_t best = 0;

    *share = 0.0;
    for (size_t i = 0; i < seize->twist->model.spring_count; i++) {
        const double here = ts_seize_share(seize, run, i);
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
        if (seize->twist->joints[i].link != TS_LINK_MESH && isfinite(run->breaks[i]) &&
            here > *share) {
            *share = here;
            best   = i;
        }
    }
    return best;
}

/* The first that breaks; NULL: nothing does. */
static const ts_train_event *first_break(const ts_seize_run *run)
{
    for (size_t i = 0; run->there && i < run->seizure.run.event_count; i++)
        if (run->seizure.run.events[i].what == TS_HAPPENS_BREAK)
            return &run->seizure.run.events[i];
    return NULL;
}

bool ts_seize_is_borne(const ts_seize_answer *seize)
{
    return seize->jolt == TS_JOLT_NONE || first_break(&seize->runs[TS_SEIZE_WEAK]) == NULL;
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

/* What stands in chapter->cell, as a paragraph. */
static void paragraph(ts_chapter *chapter, ts_block_tone tone)
{
    if (!chapter->cell.failed)
        ts_manuscript_text(chapter->manuscript, tone, chapter->cell.bytes);
    ts_buffer_clear(&chapter->cell);
}

static void add_torque(const ts_page *page, ts_buffer *text, double T)
{
    const ts_unit *shown = ts_kind_shown(TS_KIND_TORQUE, page->units);

    ts_page_short(text, ts_from_si(T, shown), 4);
    ts_buffer_print(text, " %s", shown->name);
}

void ts_seize_name(const ts_seize_answer *seize, const ts_answer *answer, ts_buffer *text)
{
    static const char *const of_accessory[TS_JOLTS + 1] = {
        [TS_JOLT_SHORT] = "is shorted",
        [TS_JOLT_STEP]  = "takes its overload",
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
        ts_buffer_add(text, " ms; that it is a generator which can be shorted is taken from the "
                            "question, for the file does not tell");
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
    if (seize->ramp > 0.0) {
        ts_buffer_add(text, "; that comes evenly in ");
        ts_page_short(text, 1e3 * seize->ramp, 4);
        ts_buffer_add(text, " ms");
    } else if (seize->jolt != TS_JOLT_SHORT) {
        ts_buffer_add(text, "; that comes at once");
    }
}

static void title(const ts_seize_answer *seize, ts_chapter *chapter, int level)
{
    const ts_answer *answer = chapter->answer;
    ts_buffer       *text   = &chapter->cell;

    ts_seize_name(seize, answer, text);
    if (!text->failed)
        ts_manuscript_heading(chapter->manuscript, level, text->bytes);
    ts_buffer_clear(text);
    if (seize->jolt == TS_JOLT_SLAM || seize->jolt == TS_JOLT_CHOP)
        ts_buffer_print(text, "the pad of %s turns at ",
                        answer->drive->accessories[seize->accessory].name);
    else
        ts_buffer_add(text, "its pad turns at ");
    ts_page_speed_text(&chapter->page, text, seize->speed);
    ts_buffer_add(text, " rpm");
    if (seize->jolt == TS_JOLT_NONE)
        tell_stop(seize, text);
    else if (seize->because == NULL)
        tell_jolt(&chapter->page, seize, text);
    paragraph(chapter, TS_BLOCK_PLAIN);
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
        ts_buffer_print(
            text, "nothing in the %s drive",
            answer->drive->spools[answer->drive->drive[seize->twist->drive].spool].name);
}

static void tell_neck(const ts_page *page, const ts_seize_answer *seize, const ts_seize_run *run,
                      ts_buffer *text)
{
    double       share;
    const size_t at = ts_seize_nearest_neck(seize, run, &share);

    if (at == SIZE_MAX || share > BROKEN)
        return;
    ts_buffer_print(text, ". Neck nearest to breaking: to %s, ",
                    seize->twist->parts[seize->twist->joints[at].to].name);
    add_torque(page, text, fabs(ts_seize_peak(run, at)));
    ts_buffer_add(text, " of ");
    add_torque(page, text, run->breaks[at]);
}

/* The part to blame for a run that does not reach its end, where there is one. */
static void tell_culprit(const ts_seize_answer *seize, const ts_train_run *run, ts_buffer *text)
{
    if (run->at >= seize->twist->model.body_count)
        return;
    if (run->fault == TS_RUN_STUCK)
        ts_buffer_print(text, "; fastest of all swings %s: is its inertia right?",
                        seize->twist->parts[run->at].name);
    else if (run->fault == TS_RUN_NOT_FINITE)
        ts_buffer_print(text, "; first at %s", seize->twist->parts[run->at].name);
}

static void tell_run(const ts_seize_answer *seize, ts_chapter *chapter, int which)
{
    const ts_page      *page = &chapter->page;
    ts_buffer          *text = &chapter->cell;
    const ts_seize_run *run  = &seize->runs[which];
    const ts_seizure   *it   = &run->seizure;
    double              share;

    if (!run->there)
        return;
    ts_buffer_print(text, "%s: ", ts_seize_run_word(seize, which));
    tell_breaks(page, seize, it, text);
    if (it->run.fault != TS_RUN_FINE) {
        ts_buffer_print(text, "; refused: %s, at ", ts_run_fault_says(it->run.fault));
        add_time(text, it->run.t);
        ts_buffer_add(text, " of ");
        add_time(text, it->until);
        tell_culprit(seize, &it->run, text);
        paragraph(chapter, TS_BLOCK_PLAIN);
        return;
    }
    const size_t near = ts_seize_nearest(seize, run, &share);
    if (seize->jolt == TS_JOLT_NONE && it->turns[it->body] && !it->held) {
        ts_buffer_add(text, ". It still slips when the run ends, after ");
        add_time(text, it->until);
    }
    ts_buffer_add(text, it->held ? ". Held by what seized: " : ". Keeps turning: ");
    tell_parts(seize, chapter->answer, it, true, text);
    ts_buffer_add(text, "; cut off: ");
    tell_parts(seize, chapter->answer, it, false, text);
    if (share > 0.0) {
        ts_buffer_add(text,
                      share > BROKEN ? ". Beyond what it bears: " : ". Nearest to what it bears: ");
        ts_seize_joint(text, seize->twist, near);
        ts_buffer_add(text, ", ");
        ts_buffer_fixed(text, 100.0 * share, 1);
        ts_buffer_add(text, " %");
    }
    if (seize->jolt != TS_JOLT_NONE)
        tell_neck(page, seize, run, text);
    ts_buffer_add(text, ". Energies off by ");
    ts_buffer_significant(text, it->run.energy.balance, 2);
    ts_buffer_print(text, "; flanks met %zu times in ", it->run.touches);
    add_time(text, it->until);
    ts_buffer_add(text, ".");
    paragraph(chapter, TS_BLOCK_PLAIN);
}

/* In a box: what breaks under a load that comes in service. */
static void warn(const ts_seize_answer *seize, ts_chapter *chapter)
{
    const ts_train_event *event = first_break(&seize->runs[TS_SEIZE_WEAK]);

    if (ts_seize_is_borne(seize) || event == NULL)
        return;
    ts_buffer_add(&chapter->cell, "does not hold: this load must be borne, and ");
    add_break(&chapter->page, &chapter->cell, seize->twist, event);
    if (!chapter->cell.failed)
        ts_manuscript_box(chapter->manuscript, TS_BLOCK_WARNING, chapter->cell.bytes);
    ts_buffer_clear(&chapter->cell);
}

/* ---- the table --------------------------------------------------------------------------------
 */

/* Over the column of a run. */
static const char *run_head(const ts_seize_answer *seize, int which)
{
    static const char *const heads[TS_SEIZE_RUNS] = {
        [TS_SEIZE_STRONG] = "strong neck",
        [TS_SEIZE_WEAK]   = "weak neck",
        [TS_SEIZE_BARE]   = "no neck",
    };

    if (seize->jolt == TS_JOLT_NONE)
        return heads[which];
    return which == TS_SEIZE_WEAK ? "weak necks" : "no necks";
}

static void torque_cell(ts_chapter *chapter, double T)
{
    if (isfinite(T))
        ts_page_short(&chapter->cell,
                      ts_from_si(fabs(T), ts_kind_shown(TS_KIND_TORQUE, chapter->page.units)), 4);
    else
        ts_buffer_add(&chapter->cell, "-");
    ts_chapter_cell(chapter);
}

static void row(const ts_seize_answer *seize, ts_chapter *chapter, size_t joint)
{
    const ts_seize_wall *wall = &seize->walls[joint];

    ts_seize_joint(&chapter->cell, seize->twist, joint);
    ts_chapter_cell(chapter);
    torque_cell(chapter, seize->runs[TS_SEIZE_BARE].seizure.run.peaks[joint].start);
    for (int k = 0; k < TS_SEIZE_RUNS; k++)
        if (seize->runs[k].there)
            torque_cell(chapter, ts_seize_peak(&seize->runs[k], joint));
    torque_cell(chapter, wall->T);
    ts_chapter_word(chapter, isfinite(wall->T) ? ts_part_kind_word(wall->kind) : "-");
}

/* A column for every run that was made: of a jolt there is none with the necks at their strongest.
 */
static void table(const ts_seize_answer *seize, ts_chapter *chapter)
{
    ts_column columns[COLUMNS_MOST];
    size_t    count = 0;

    columns[count++] = (ts_column){"at", false};
    columns[count++] = (ts_column){"steady", true};
    for (int k = 0; k < TS_SEIZE_RUNS; k++)
        if (seize->runs[k].there)
            columns[count++] = (ts_column){run_head(seize, k), true};
    columns[count++] = (ts_column){"bears", true};
    columns[count++] = (ts_column){"by", false};
    ts_buffer_print(&chapter->cell, "largest torques, %s at the outer part",
                    ts_kind_shown(TS_KIND_TORQUE, chapter->page.units)->name);
    if (!chapter->cell.failed)
        ts_manuscript_table(chapter->manuscript, chapter->cell.bytes, columns, count);
    ts_buffer_clear(&chapter->cell);
    for (size_t i = 0; i < seize->twist->model.spring_count; i++)
        row(seize, chapter, i);
}

/* Is it a starter behind an overrunning clutch that drives in this condition? */
static bool is_started_by(const ts_seize_answer *seize, const ts_answer *answer)
{
    const ts_accessory *one = seize->jolt == TS_JOLT_NONE && seize->accessory >= 0
                                  ? &answer->drive->accessories[seize->accessory]
                                  : NULL;

    return one != NULL && ts_pick_known(one->clutch) &&
           one->clutch.value == TS_CLUTCH_OVERRUNNING &&
           ts_measure_known(one->drives[seize->condition]);
}

static void grounds(const ts_seize_answer *seize, ts_chapter *chapter)
{
    const ts_answer *answer = chapter->answer;
    const ts_drive  *drive  = answer->drive;
    const size_t     plays  = seize->runs[TS_SEIZE_BARE].seizure.plays_assumed;

    ts_register_cells(chapter, drive->seize_assumed, drive->seize_assumed_count);
    if (seize->jolt != TS_JOLT_NONE)
        ts_register_cells(chapter, drive->jolt_assumed, drive->jolt_assumed_count);
    ts_buffer_print(
        &chapter->cell,
        "The play of %zu mesh%s is as `play` has it; torques go in proportion to "
        "speed, rotors are rigid, necks and teeth part at once. What a part bears is the "
        "least that makes it yield (flank, shaft), dents it (bearing) or breaks it "
        "(root, spline), at its own shaft; teeth part only where their roots break.",
        plays, plays == 1 ? "" : "es");
    if (is_started_by(seize, answer))
        ts_buffer_add(&chapter->cell,
                      " It drives here: when it stops its torque ends at once, and the drive that "
                      "it wound up springs back. `effects` tells of a running engine, whose clutch "
                      "has let go.");
    for (uint32_t p = 0; p < answer->train->pad_count; p++)
        if (ts_seize_leaves_out(seize, answer, p))
            ts_buffer_print(&chapter->cell, " Left out, without a rotor: %s.",
                            answer->train->pads[p].name);
    paragraph(chapter, TS_BLOCK_FAINT);
}

void ts_chapter_seizure(ts_chapter *chapter, const ts_seize_answer *seize, int level)
{
    title(seize, chapter, level);
    if (seize->because != NULL) {
        ts_buffer_print(&chapter->cell, "not computed: %s%s%s", seize->because,
                        seize->of != NULL ? " of " : "", seize->of != NULL ? seize->of : "");
        if (!chapter->cell.failed)
            ts_manuscript_box(chapter->manuscript, TS_BLOCK_PLAIN, chapter->cell.bytes);
        ts_buffer_clear(&chapter->cell);
        return;
    }
    for (int k = 0; k < TS_SEIZE_RUNS; k++)
        tell_run(seize, chapter, k);
    warn(seize, chapter);
    table(seize, chapter);
    grounds(seize, chapter);
}
