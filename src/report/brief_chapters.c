/* report/brief_chapters.c: how is a drive told to those who meet it the first time? */
#include "report/brief.h"

#include "report/effects_report.h"

#include <math.h>

static const char *sense_says(int sense)
{
    return sense > 0 ? "anticlockwise" : sense < 0 ? "clockwise" : "in a sense that is not told";
}

/* What stands in the chapter's cell, as a paragraph. */
static void say(ts_chapter *chapter)
{
    if (!chapter->cell.failed && chapter->cell.length > 0)
        ts_manuscript_text(chapter->manuscript, TS_BLOCK_PLAIN, chapter->cell.bytes);
    chapter->manuscript->failed = chapter->manuscript->failed || chapter->cell.failed;
    ts_buffer_clear(&chapter->cell);
}

static void item(ts_chapter *chapter, const char *label)
{
    if (!chapter->cell.failed)
        ts_manuscript_item(chapter->manuscript, TS_BLOCK_PLAIN, label, chapter->cell.bytes);
    chapter->manuscript->failed = chapter->manuscript->failed || chapter->cell.failed;
    ts_buffer_clear(&chapter->cell);
}

/* ---- what it is for -------------------------------------------------------------------------- */

static uint32_t list_for(ts_chapter *chapter, ts_purpose purpose)
{
    const ts_answer *answer = chapter->answer;
    uint32_t         count  = 0;

    for (uint32_t p = 0; p < answer->train->pad_count; p++) {
        const ts_pad *pad = &answer->train->pads[p];
        if (pad->accessory < 0 ||
            answer->drive->accessories[pad->accessory].purpose.value != (int)purpose)
            continue;
        ts_buffer_print(&chapter->cell, "%s%s", count++ > 0 ? ", " : "", pad->name);
    }
    return count;
}

static void purposes(ts_chapter *chapter)
{
    static const struct {
        ts_purpose  purpose;
        const char *label, *none;
    } rows[] = {{TS_FOR_ENGINE, "Without these the engine stops", "none"},
                {TS_FOR_AIRCRAFT, "These serve the aircraft", "none"},
                {TS_FOR_START, "This starts the engine", "nothing on this drive"}};

    ts_manuscript_heading(chapter->manuscript, 1, "What it is for");
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        ts_buffer_print(&chapter->cell, "%s: ", rows[i].label);
        if (list_for(chapter, rows[i].purpose) == 0)
            ts_buffer_add(&chapter->cell, rows[i].none);
        ts_buffer_add(&chapter->cell, ".");
        say(chapter);
    }
}

/* ---- how the power goes ---------------------------------------------------------------------- */

static void take_off(ts_chapter *chapter, uint32_t tower)
{
    const ts_answer *answer = chapter->answer;
    const ts_train  *train  = answer->train;
    const uint32_t   spool  = train->meshes[train->shafts[tower].mesh].driver_shaft;

    ts_buffer_print(&chapter->cell,
                    "The %s turns %s, seen from behind. A pair of bevel gears turns its power by a "
                    "right angle into the %s, a second pair turns it back again into the gearbox.",
                    train->shafts[spool].name, sense_says(answer->motion->shafts[spool].sense),
                    train->shafts[tower].name);
    say(chapter);
}

/* "idler 2 clockwise, generator anticlockwise": one chain of a box, outwards. */
static void branch(ts_chapter *chapter, uint32_t drive, ts_way way, const char *label)
{
    const ts_answer *answer = chapter->answer;
    int              count  = 0;

    for (uint32_t k = 0; k < answer->train->shaft_count; k++) {
        const ts_shaft *shaft = &answer->train->shafts[k];
        if (shaft->kind == TS_SHAFT_BOX && shaft->drive == drive && shaft->way == way)
            ts_buffer_print(&chapter->cell, "%s%s %s", count++ > 0 ? ", " : label, shaft->name,
                            sense_says(answer->motion->shafts[k].sense));
    }
    if (count > 0)
        ts_buffer_add(&chapter->cell, ".");
    say(chapter);
}

static void box(ts_chapter *chapter, uint32_t drive)
{
    ts_manuscript_text(chapter->manuscript, TS_BLOCK_PLAIN,
                       "Each gear in the box turns against the one that drives it. From behind, in "
                       "order from the input outwards:");
    branch(chapter, drive, TS_WAY_NONE, "Input: ");
    branch(chapter, drive, TS_WAY_CLOCKWISE, "Clockwise along the arc: ");
    branch(chapter, drive, TS_WAY_ANTICLOCKWISE, "Anticlockwise along the arc: ");
}

/* The conditions in which power comes back through a radial shaft. */
static void coming_back(ts_chapter *chapter, uint32_t tower)
{
    const ts_answer *answer = chapter->answer;
    int              count  = 0;

    for (size_t c = 0; c < answer->drive->condition_count; c++)
        if (answer->power->T[c * answer->train->shaft_count + tower] < 0.0)
            ts_buffer_print(&chapter->cell, "%s%s", count++ > 0 ? ", " : "At ",
                            answer->drive->conditions[c].name);
    if (count > 0) {
        ts_buffer_add(&chapter->cell,
                      " the power comes the other way: what drives on the box turns "
                      "the spool, and the same teeth bear on their other flanks.");
        say(chapter);
    }
}

/* The first condition in which power comes back; NULL: there is none. */
static const char *start_of(const ts_answer *answer)
{
    for (size_t c = 0; c < answer->drive->condition_count; c++)
        for (uint32_t k = 0; k < answer->train->shaft_count; k++)
            if (answer->train->shafts[k].kind == TS_SHAFT_TOWER &&
                answer->power->T[c * answer->train->shaft_count + k] < 0.0)
                return answer->drive->conditions[c].name;
    return NULL;
}

static void power(ts_chapter *chapter, bool moving, bool numbers)
{
    const ts_answer *answer = chapter->answer;

    ts_manuscript_heading(chapter->manuscript, 1, "How the power goes and comes");
    for (uint32_t k = 0; k < answer->train->shaft_count; k++) {
        if (answer->train->shafts[k].kind != TS_SHAFT_TOWER)
            continue;
        take_off(chapter, k);
        box(chapter, answer->train->shafts[k].drive);
        coming_back(chapter, k);
    }
    const char *figure = moving ? TS_BRIEF_MOVING : numbers ? "power" : TS_BRIEF_PLAIN;
    ts_manuscript_figure(chapter->manuscript, figure, NULL,
                         "Who drives whom, in the condition in which most power is taken.");
    const char *back = start_of(answer);
    if (back != NULL)
        ts_manuscript_figure(chapter->manuscript, figure, back,
                             "The same at the start: the power comes the other way.");
}

/* ---- why each pad turns as it does ----------------------------------------------------------- */

static uint32_t meshes_before(const ts_train *train, uint32_t k)
{
    uint32_t count = 0;
    for (uint32_t s = k; train->shafts[s].mesh != TS_NOWHERE;
         s          = train->meshes[train->shafts[s].mesh].driver_shaft)
        count += train->meshes[train->shafts[s].mesh].kind == TS_MESH_CYLINDRICAL ? 1 : 0;
    return count;
}

static void pad_row(ts_chapter *chapter, const ts_pad *pad, bool numbers)
{
    const ts_answer    *answer = chapter->answer;
    const ts_accessory *one    = &answer->drive->accessories[pad->accessory];
    const int           sense  = ts_pad_sense(answer->motion, pad);
    const bool          free   = one->turns.standing != TS_GIVEN || one->turns.value == TS_EITHER;

    ts_chapter_word(chapter, pad->name);
    ts_chapter_word(chapter, pad->face == TS_FRONT ? "front" : "rear");
    ts_buffer_print(&chapter->cell, "%u", meshes_before(answer->train, pad->shaft));
    ts_chapter_cell(chapter);
    ts_chapter_word(chapter, sense_says(sense));
    ts_chapter_word(chapter, free                                          ? "either way"
                             : (one->turns.value == TS_CCW) == (sense > 0) ? "as it must"
                                                                           : "NOT as it must");
    ts_chapter_word(chapter, one->serves.text != NULL ? one->serves.text : "-");
    if (!numbers)
        return;
    const ts_rational ratio = answer->motion->shafts[pad->shaft].ratio;
    if (ts_rational_valid(ratio))
        ts_buffer_significant(&chapter->cell, ts_rational_value(ratio), 4);
    else
        ts_buffer_add(&chapter->cell, "?");
    ts_chapter_cell(chapter);
}

static void pads(ts_chapter *chapter, bool numbers)
{
    static const ts_column columns[] = {
        {"pad", false},      {"face", false},   {"meshes", true},        {"turns", false},
        {"its unit", false}, {"serves", false}, {"per spool turn", true}};
    const ts_train *train = chapter->answer->train;

    ts_manuscript_heading(chapter->manuscript, 1, "Why each pad turns as it does");
    ts_manuscript_text(chapter->manuscript, TS_BLOCK_PLAIN,
                       "Every mesh of the box turns the sense round once. Who faces a pad on the "
                       "front looks rearward and sees the shaft turn the other way than from "
                       "behind; who faces one on the rear sees it as from behind.");
    ts_manuscript_table(chapter->manuscript, "turns: for somebody who faces the pad", columns,
                        numbers ? 7 : 6);
    for (uint32_t p = 0; p < train->pad_count; p++)
        if (train->pads[p].accessory >= 0)
            pad_row(chapter, &train->pads[p], numbers);
    if (numbers)
        ts_manuscript_figure(chapter->manuscript, "behind", NULL, "Where they stand, from behind.");
}

/* ---- what breaks first ----------------------------------------------------------------------- */

static void lets_go(ts_chapter *chapter, const ts_effects *effects, const ts_outcome *outcome,
                    bool numbers)
{
    if (outcome->breakage_count == 0) {
        ts_chapter_word(chapter, "nothing need: its clutch lets it stand");
        return;
    }
    const ts_breakage *first = &outcome->breakages[0];
    (void)ts_effects_breaks(effects, first, &chapter->cell);
    if (numbers && isfinite(first->T)) {
        ts_buffer_add(&chapter->cell, ", at most at ");
        ts_quantity_show(&chapter->cell, first->T,
                         ts_kind_shown(TS_KIND_TORQUE, chapter->page.units), 4);
    }
    ts_chapter_cell(chapter);
}

static void suffer(ts_chapter *chapter, const ts_effects *effects, const ts_outcome *outcome,
                   ts_goes goes)
{
    ts_effects_pads(effects, outcome, goes, &chapter->cell);
    ts_chapter_cell(chapter);
}

static void breaks(ts_chapter *chapter, const ts_effects *effects, bool numbers)
{
    static const ts_column columns[] = {
        {"seizes", false}, {"lets go", false}, {"stops", false}, {"in doubt", false}};

    ts_manuscript_heading(chapter->manuscript, 1, "What breaks first, and why");
    ts_manuscript_text(
        chapter->manuscript, TS_BLOCK_PLAIN,
        "A spool has far more inertia than any tooth bears. When a unit seizes, "
        "something between it and the spool gives way. Where a unit has a shear neck, that is "
        "its own shaft and nothing inside of the box; where it has none, it is the "
        "weakest part of the way.");
    ts_manuscript_table(chapter->manuscript, "each unit by itself, while the engine runs", columns,
                        4);
    for (uint32_t i = 0; i < effects->failure_count; i++) {
        const ts_failure failure = effects->failures[i];
        if (failure.mode != TS_FAILS_SEIZURE)
            continue;
        ts_chapter_word(chapter, effects->motion->train->pads[failure.at].name);
        lets_go(chapter, effects, &effects->outcomes[i], numbers);
        suffer(chapter, effects, &effects->outcomes[i], TS_STOPS);
        suffer(chapter, effects, &effects->outcomes[i], TS_IN_DOUBT);
    }
    if (numbers && chapter->answer->select != NULL)
        ts_manuscript_figure(chapter->manuscript, "selectivity", NULL,
                             "What each neck bears, and what stands behind it.");
}

/* ---- questions ------------------------------------------------------------------------------- */

char ts_choice_letter(int choice)
{
    return (char)('a' + choice);
}

/* Below 100: a quiz is shorter. */
static const char *number_in(char label[3], size_t number)
{
    size_t length = 0;

    if (number >= 10)
        label[length++] = (char)('0' + number / 10 % 10);
    label[length++] = (char)('0' + number % 10);
    label[length]   = '\0';
    return label;
}

static void question(ts_chapter *chapter, const ts_question *one, size_t number)
{
    char label[3];

    ts_buffer_print(&chapter->cell, "%s", one->asks);
    for (int i = 0; i < one->count; i++)
        ts_buffer_print(&chapter->cell, "  (%c) %s%s", ts_choice_letter(i), one->choices[i].says,
                        i + 1 < one->count ? ";" : ".");
    item(chapter, number_in(label, number));
}

static void solution(ts_chapter *chapter, const ts_question *one, size_t number)
{
    char label[3];

    ts_buffer_print(&chapter->cell, "(%c) %s. %s", ts_choice_letter(one->right),
                    one->choices[one->right].says, one->because);
    for (int i = 0; i < one->count; i++)
        if (one->choices[i].slip != NULL)
            ts_buffer_print(&chapter->cell, " Not (%c): %s.", ts_choice_letter(i),
                            one->choices[i].slip);
    item(chapter, number_in(label, number));
}

static void quiz(ts_chapter *chapter, const ts_brief *brief)
{
    ts_manuscript_new_page(chapter->manuscript);
    ts_manuscript_heading(chapter->manuscript, 1, "Questions");
    for (size_t i = 0; i < brief->quiz->count; i++)
        question(chapter, &brief->quiz->questions[i], i + 1);
    if (!brief->key)
        return;
    ts_manuscript_new_page(chapter->manuscript);
    ts_manuscript_heading(chapter->manuscript, 1, "Answers, as the drive gives them");
    for (size_t i = 0; i < brief->quiz->count; i++)
        solution(chapter, &brief->quiz->questions[i], i + 1);
}

void ts_brief_chapters(ts_chapter *chapter, const ts_brief *brief)
{
    purposes(chapter);
    power(chapter, brief->moving, brief->numbers);
    pads(chapter, brief->numbers);
    breaks(chapter, brief->effects, brief->numbers);
    quiz(chapter, brief);
}
