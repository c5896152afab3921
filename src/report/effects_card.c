/* What does one part do to the others when it fails, in each of its ways? */
#include "report/effects_report.h"

#include <math.h>

/* "hp spool > hp tower shaft -x- hp box input > generator" down to shaft k. */
static void add_path(const ts_effects *effects, const ts_outcome *outcome, uint32_t k,
                     ts_buffer *out)
{
    const ts_train    *train = effects->motion->train;
    const uint32_t     m     = train->shafts[k].mesh;
    const ts_part_goes here  = outcome->shafts[k];

    if (m == TS_NOWHERE) {
        ts_buffer_add(out, train->shafts[k].name);
        return;
    }
    const uint32_t driver = train->meshes[m].driver_shaft;
    add_path(effects, outcome, driver, out);
    const ts_goes before = outcome->shafts[driver].goes;
    ts_buffer_add(out, here.goes == before ? " > " : here.goes == TS_STOPS ? " -x- " : " -?- ");
    ts_buffer_add(out, train->shafts[k].name);
}

/* What stands in chapter->cell, as a row beside its label. */
static void item(ts_chapter *chapter, const char *label)
{
    ts_chapter_word(chapter, label);
    ts_chapter_cell(chapter);
}

/* ---- what breaks for it ---------------------------------------------------------------------- */

static void add_torque(const ts_page *page, double T, ts_buffer *out)
{
    ts_quantity_show(out, T, ts_kind_shown(TS_KIND_TORQUE, page->units), 4);
}

static void add_breakage(const ts_effects *effects, const ts_breakage *broken, const ts_page *page,
                         ts_buffer *out)
{
    if (!ts_effects_breaks(effects, broken, out)) {
        ts_buffer_add(out, "; what each part there bears is not known");
        return;
    }
    if (isfinite(broken->T)) {
        ts_buffer_add(out, " at no more than ");
        add_torque(page, broken->T, out);
    }
    if (isfinite(broken->T_next)) {
        ts_buffer_add(out, "; the next part on the way bears ");
        add_torque(page, broken->T_next, out);
        ts_buffer_add(out, broken->meant ? " at least before it parts"
                                         : " before it parts, so that it may be that one instead");
    }
}

static void breakages(const ts_effects *effects, const ts_outcome *outcome, ts_chapter *chapter)
{
    for (uint32_t i = 0; i < outcome->breakage_count; i++) {
        add_breakage(effects, &outcome->breakages[i], &chapter->page, &chapter->cell);
        item(chapter, "breaks");
    }
}

/* ---- pads ------------------------------------------------------------------------------------ */

static void halted(const ts_effects *effects, const ts_outcome *outcome, ts_goes goes,
                   ts_chapter *chapter)
{
    const ts_train *train = effects->motion->train;

    for (uint32_t p = 0; p < train->pad_count; p++) {
        const ts_pad *pad = &train->pads[p];
        if (pad->accessory < 0 || outcome->pads[p].goes != goes)
            continue;
        ts_buffer_print(&chapter->cell, "%s: ", pad->name);
        add_path(effects, outcome, pad->shaft, &chapter->cell);
        ts_buffer_add(&chapter->cell,
                      outcome->shafts[pad->shaft].goes == goes ? " > its pad" : " -x- its pad");
        item(chapter, goes == TS_STOPS ? "stops" : "in doubt");
    }
}

static void going_on(const ts_effects *effects, const ts_outcome *outcome, uint32_t condition,
                     ts_chapter *chapter)
{
    const ts_train *train = effects->motion->train;
    ts_buffer      *text  = &chapter->cell;
    bool            any   = false;

    for (uint32_t p = 0; p < train->pad_count; p++) {
        const ts_pad *pad = &train->pads[p];
        if (pad->accessory < 0 || outcome->pads[p].goes != TS_GOES_ON)
            continue;
        const double n     = effects->motion->speed[condition * train->shaft_count + pad->shaft];
        const int    sense = ts_pad_sense(effects->motion, pad);
        ts_buffer_print(text, "%s%s ", any ? ", " : "", pad->name);
        ts_page_speed_text(&chapter->page, text, n);
        ts_buffer_print(text, " rpm%s", sense > 0 ? " ccw" : sense < 0 ? " cw" : "");
        any = true;
    }
    if (any)
        ts_buffer_print(text, ", as before, at %s", effects->drive->conditions[condition].name);
    else
        ts_buffer_add(text, "nothing");
    item(chapter, "goes on");
}

/* Does anything beyond it still turn an accessory? */
static bool serves_nothing(const ts_effects *effects, const ts_outcome *outcome, uint32_t k,
                           bool before)
{
    const ts_train *train = effects->motion->train;

    for (uint32_t p = 0; p < train->pad_count; p++) {
        if (train->pads[p].accessory < 0 || (!before && outcome->pads[p].goes == TS_STOPS))
            continue;
        uint32_t s = train->pads[p].shaft;
        while (s != k && train->shafts[s].mesh != TS_NOWHERE)
            s = train->meshes[train->shafts[s].mesh].driver_shaft;
        if (s == k)
            return false;
    }
    return true;
}

static void idling(const ts_effects *effects, const ts_outcome *outcome, ts_chapter *chapter)
{
    const ts_train *train = effects->motion->train;
    ts_buffer      *text  = &chapter->cell;
    bool            any   = false;

    for (uint32_t k = 0; k < train->shaft_count; k++) {
        if (train->shafts[k].kind == TS_SHAFT_SPOOL || outcome->shafts[k].goes == TS_STOPS ||
            !serves_nothing(effects, outcome, k, false) ||
            serves_nothing(effects, outcome, k, true))
            continue;
        ts_buffer_print(text, "%s%s", any ? ", " : "", train->shafts[k].name);
        any = true;
    }
    if (any)
        item(chapter, "turns idle");
}

/* ---- the card -------------------------------------------------------------------------------- */

static void stuck(const ts_effects *effects, const ts_outcome *outcome, uint32_t condition,
                  ts_chapter *chapter)
{
    const ts_train *train = effects->motion->train;
    const ts_pad   *pad   = &train->pads[outcome->stuck_pad];
    const ts_span   limit = effects->drive->accessories[pad->accessory].speed[condition];
    ts_buffer      *text  = &chapter->cell;

    ts_buffer_print(text, "%s turns at ", pad->name);
    ts_page_speed_text(&chapter->page, text,
                       effects->motion->speed[condition * train->shaft_count + pad->shaft]);
    ts_buffer_print(text, " rpm at %s", effects->drive->conditions[condition].name);
    if (isfinite(limit.high)) {
        ts_buffer_add(text, "; its speed there is to be no more than ");
        ts_page_speed_text(&chapter->page, text, limit.high);
        ts_buffer_add(text, " rpm");
    }
    item(chapter, "carried");
}

/* Running, the clutch of a starter has let go, and its seizure passes unseen.  While it cranks, the
 * torque that wound the drive up is gone at once. */
static void cranking(const ts_effects *effects, ts_failure failure, ts_chapter *chapter)
{
    const ts_train *train = effects->motion->train;
    const int32_t   a =
        failure.mode == TS_FAILS_SEIZURE ? train->pads[failure.at].accessory : TS_EVERY_CONDITION;

    if (a < 0 || !ts_pick_known(effects->drive->accessories[a].clutch) ||
        effects->drive->accessories[a].clutch.value != TS_CLUTCH_OVERRUNNING)
        return;
    ts_buffer_print(&chapter->cell,
                    "the above is of a running engine, whose clutch has let go; if it seizes while "
                    "it cranks, its torque ends at once and the drive that it wound up springs "
                    "back, which may break other necks: towershaft seize FILE '%s' --condition "
                    "with the name of one in which it drives",
                    effects->drive->accessories[a].name);
    item(chapter, "cranking");
}

static void one_mode(const ts_effects *effects, uint32_t i, uint32_t condition, ts_chapter *chapter)
{
    const ts_outcome *outcome = &effects->outcomes[i];
    ts_buffer        *text    = &chapter->cell;

    ts_effects_part(effects, ts_failing_of(effects->failures[i].mode), effects->failures[i].at,
                    text);
    ts_buffer_print(text, ": %s", ts_failure_name(effects->failures[i].mode));
    if (!text->failed)
        ts_manuscript_heading(chapter->manuscript, 1, text->bytes);
    ts_buffer_clear(text);
    ts_manuscript_table(chapter->manuscript, "", ts_effects_card_columns, 2);
    breakages(effects, outcome, chapter);
    halted(effects, outcome, TS_STOPS, chapter);
    halted(effects, outcome, TS_IN_DOUBT, chapter);
    going_on(effects, outcome, condition, chapter);
    idling(effects, outcome, chapter);
    if (outcome->stuck_in)
        stuck(effects, outcome, condition, chapter);
    cranking(effects, effects->failures[i], chapter);
    ts_effects_class(effects, outcome, text);
    item(chapter, "engine");
    ts_effects_seen(effects, effects->failures[i], outcome, text);
    item(chapter, "seen as");
}

void ts_effects_card(const ts_effects *effects, ts_failing of, uint32_t at, uint32_t condition,
                     ts_chapter *chapter)
{
    for (uint32_t i = 0; i < effects->failure_count; i++)
        if (effects->failures[i].at == at && ts_failing_of(effects->failures[i].mode) == of)
            one_mode(effects, i, condition, chapter);
    ts_effects_lacks_card(effects, of, at, chapter);
    ts_manuscript_text(
        chapter->manuscript, TS_BLOCK_FAINT,
        "In a way: > goes on to, -x- is cut off before, -?- may be cut off before. What "
        "breaks is what parts: necks, tooth roots, splines and shafts. "
        "Flanks that yield and bearings that are dented hold on, so that `check` and "
        "`seize`, which count them as well, tell less that a way bears.");
}
