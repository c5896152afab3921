/* How does play change as a drive grows hot, in words and tables? */
#include "report/warm_report.h"

#include "motion/motion.h"

#include <math.h>

/* ---- does it hold? ----------------------------------------------------------------------------
 */

static const ts_temperatures *told(const ts_answer *answer, uint32_t drive)
{
    return &answer->drive->drive[drive].box.gears.temperatures;
}

bool ts_warm_is_within(const ts_warm_answer *warm, const ts_answer *answer, uint32_t drive)
{
    static const double    near   = 1e-6; /* K, of a soak at the very end of a range */
    const ts_warm_course  *course = &warm->courses[drive];
    const ts_temperatures *within = told(answer, drive);

    return within->node == 0 || (course->gears[0] >= within->gears.low - near &&
                                 course->gears[1] <= within->gears.high + near &&
                                 course->apart[0] >= within->casing.low - near &&
                                 course->apart[1] <= within->casing.high + near);
}

/* What does not hold goes before what cannot be computed, as in check/run.c. */
static ts_verdict worse(ts_verdict a, ts_verdict b)
{
    if (a == TS_DOES_NOT_HOLD || b == TS_DOES_NOT_HOLD)
        return TS_DOES_NOT_HOLD;
    return a != TS_HOLDS ? a : b;
}

static ts_verdict verdict_of(const ts_warm_course *course)
{
    ts_verdict verdict = TS_HOLDS;

    if (course->missing != NULL || course->fault != NULL)
        return TS_VERDICT_NOT_COMPUTABLE;
    for (size_t p = 0; p < course->play_count; p++) {
        const ts_warm_play *play = &course->plays[p];
        if (play->missing != NULL)
            verdict = worse(verdict, TS_VERDICT_NOT_COMPUTABLE);
        else if (!(play->low[play->least] > 0.0))
            verdict = worse(verdict, TS_DOES_NOT_HOLD);
    }
    return verdict;
}

ts_verdict ts_warm_verdict(const ts_warm_answer *warm, const ts_answer *answer)
{
    ts_verdict worst = TS_HOLDS;

    for (uint32_t d = 0; d < answer->drive->drive_count; d++) {
        const ts_warm_course *course = &warm->courses[d];
        worst                        = worse(worst, verdict_of(course));
        if (course->missing == NULL && course->fault == NULL && course->play_count > 0 &&
            !ts_warm_is_within(warm, answer, d))
            worst = TS_DOES_NOT_HOLD;
    }
    return worst;
}

/* ---- words ------------------------------------------------------------------------------------
 */

static void paragraph(ts_chapter *chapter, ts_block_tone tone)
{
    if (!chapter->cell.failed && chapter->cell.length > 0)
        ts_manuscript_text(chapter->manuscript, tone, chapter->cell.bytes);
    ts_buffer_clear(&chapter->cell);
}

static const ts_unit *unit(const ts_chapter *chapter, ts_kind kind)
{
    return ts_kind_shown(kind, chapter->page.units);
}

static void add_shown(ts_chapter *chapter, double si, ts_kind kind)
{
    ts_buffer_fixed(&chapter->cell, ts_from_si(si, unit(chapter, kind)), 1);
}

static void add_span(ts_chapter *chapter, const double of[2], ts_kind kind)
{
    add_shown(chapter, of[0], kind);
    ts_buffer_add(&chapter->cell, " to ");
    add_shown(chapter, of[1], kind);
    ts_buffer_print(&chapter->cell, " %s", unit(chapter, kind)->name);
}

static void add_minutes(ts_buffer *text, double t)
{
    ts_page_short(text, t / 60.0, 4);
    ts_buffer_add(text, " min");
}

static void add_expansion(ts_buffer *text, double alpha)
{
    ts_page_short(text, 1e6 * alpha, 4);
    ts_buffer_add(text, " ppm/K");
}

static void grounds(const ts_warm_answer *warm, ts_chapter *chapter)
{
    ts_buffer *text = &chapter->cell;

    ts_buffer_add(text, "From ");
    add_shown(chapter, warm->soak, TS_KIND_TEMPERATURE);
    ts_buffer_print(text, " %s all through%s, ", unit(chapter, TS_KIND_TEMPERATURE)->name,
                    !warm->soak_assumed ? ""
                    : warm->soak_of_file
                        ? " (assumed: the coldest that gears may be)"
                        : " (assumed: no `temperatures` tell how cold gears may be)");
    for (size_t l = 0; l < warm->leg_count; l++) {
        ts_buffer_print(text, "%s%s ", l > 0 ? ", " : "",
                        chapter->answer->drive->conditions[warm->legs[l].condition].name);
        add_minutes(text, warm->legs[l].duration);
    }
    if (warm->legs_assumed)
        ts_buffer_add(text,
                      " (assumed: every condition in the order of the file, 10 min where hours "
                      "are spent in it, 1 min elsewhere)");
    ts_buffer_add(text, ".  ");
    if (isnan(warm->air)) {
        ts_buffer_add(text, "The casing gives off no heat: no air round it is told.");
    } else {
        ts_buffer_add(text, "Round the casing air of ");
        add_shown(chapter, warm->air, TS_KIND_TEMPERATURE);
        ts_buffer_print(text, " %s.", unit(chapter, TS_KIND_TEMPERATURE)->name);
    }
    if (warm->alpha_assumed) {
        ts_buffer_add(text, "  Where no `temperatures` are told, gears grow by ");
        add_expansion(text, warm->alpha[0]);
        ts_buffer_print(text, " (%s) and casings by ", warm->metal[0]);
        add_expansion(text, warm->alpha[1]);
        ts_buffer_print(text, " (%s), assumed from `mass`.", warm->metal[1]);
    }
    paragraph(chapter, TS_BLOCK_PLAIN);
}

static void sources(ts_chapter *chapter)
{
    ts_manuscript_text(
        chapter->manuscript, TS_BLOCK_FAINT,
        "Heat by the first method of the oil, that of the teeth into the gears.  The casing "
        "exchanges "
        "200 W/(m2 K) with the oil (ISO/TR 14179-2, from memory), faces and rims of gears twice as "
        "much, and plays take in gears that exchange from half to two and a half times that "
        "(common "
        "practice, no source); the casing gives 15 to the air (the same, from memory).  Metals "
        "hold "
        "3 R a mole (Dulong and Petit).  The feed is as warm as the file has it from the first "
        "moment "
        "of a condition.  Play is normal to the flanks, over all allowances; that of bevels moves "
        "with the spool and stands with the float of the take-off.");
}

/* ---- tables -----------------------------------------------------------------------------------
 */

static void temperature_cell(ts_chapter *chapter, double kelvin)
{
    add_shown(chapter, kelvin, TS_KIND_TEMPERATURE);
    ts_chapter_cell(chapter);
}

static void minutes_cell(ts_chapter *chapter, double t)
{
    ts_buffer_fixed(&chapter->cell, t / 60.0, 2);
    ts_chapter_cell(chapter);
}

static void temperatures(const ts_warm_answer *warm, const ts_warm_course *course,
                         ts_chapter *chapter)
{
    static const ts_column columns[] = {{"at the end of", false}, {"min", true}, {"oil", true},
                                        {"gears from", true},     {"to", true},  {"casing", true}};

    ts_buffer_print(&chapter->cell, "Temperatures, %s", unit(chapter, TS_KIND_TEMPERATURE)->name);
    if (!chapter->cell.failed)
        ts_manuscript_table(chapter->manuscript, chapter->cell.bytes, columns, 6);
    ts_buffer_clear(&chapter->cell);
    for (size_t l = 0; l <= warm->leg_count; l++) {
        const ts_warm_moment *at = &course->moments[l * warm->samples];
        ts_chapter_word(
            chapter, l == 0 ? "the cold soak"
                            : chapter->answer->drive->conditions[warm->legs[l - 1].condition].name);
        minutes_cell(chapter, at->t);
        temperature_cell(chapter, at->oil);
        temperature_cell(chapter, at->least);
        temperature_cell(chapter, at->most);
        temperature_cell(chapter, at->casing);
    }
}

static void fine_cell(ts_chapter *chapter, double m)
{
    ts_chapter_fine(chapter, m);
    ts_chapter_cell(chapter);
}

static void play_row(const ts_warm_course *course, const ts_warm_play *play, ts_chapter *chapter)
{
    const ts_mesh     *mesh   = &chapter->answer->train->meshes[play->mesh];
    const ts_shaft    *shafts = chapter->answer->train->shafts;
    const ts_backlash *judged = &chapter->answer->motion->meshes[play->mesh].backlash;

    ts_buffer_print(&chapter->cell, "%s > %s", shafts[mesh->driver_shaft].name,
                    shafts[mesh->driven_shaft].name);
    ts_chapter_cell(chapter);
    if (play->missing != NULL) {
        ts_buffer_print(&chapter->cell, "not told: %s", play->missing);
        ts_chapter_cell(chapter);
        for (int i = 0; i < 6; i++)
            ts_chapter_word(chapter, "");
        return;
    }
    fine_cell(chapter, play->low[0]);
    fine_cell(chapter, play->low[play->least]);
    minutes_cell(chapter, course->moments[play->least].t);
    fine_cell(chapter, play->low[course->moment_count - 1]);
    fine_cell(chapter, play->high[play->most]);
    if (isnan(judged->j_bn[TS_BACKLASH_LOW]))
        ts_chapter_word(chapter, "\xC2\xB7");
    else
        fine_cell(chapter, judged->j_bn[TS_BACKLASH_LOW]);
    ts_chapter_word(chapter, !(play->low[play->least] > 0.0) ? "NONE LEFT" : "");
}

static void plays(const ts_warm_course *course, ts_chapter *chapter)
{
    static const ts_column columns[] = {
        {"mesh", false},      {"cold", true},    {"least", true},       {"at min", true},
        {"at the end", true}, {"at most", true}, {"judged from", true}, {"", false}};

    ts_buffer_print(&chapter->cell,
                    "Play, %s: the least that allowances leave; at most, the most that they leave; "
                    "judged from: the least warm play that E10-backlash counts with, \xC2\xB7 "
                    "where no temperatures are told",
                    chapter->page.units == TS_UNITS_US ? "in" : "mm");
    if (!chapter->cell.failed)
        ts_manuscript_table(chapter->manuscript, chapter->cell.bytes, columns, 8);
    ts_buffer_clear(&chapter->cell);
    for (size_t p = 0; p < course->play_count; p++)
        play_row(course, &course->plays[p], chapter);
}

static void reach(const ts_warm_answer *warm, uint32_t drive, ts_chapter *chapter)
{
    const ts_warm_course  *course   = &warm->courses[drive];
    const ts_temperatures *within   = told(chapter->answer, drive);
    const bool             fine     = ts_warm_is_within(warm, chapter->answer, drive);
    const double           gears[2] = {within->gears.low, within->gears.high};
    const double           apart[2] = {within->casing.low, within->casing.high};

    ts_buffer_add(&chapter->cell, "Meshing gears come through ");
    add_span(chapter, course->gears, TS_KIND_TEMPERATURE);
    ts_buffer_add(&chapter->cell, ", the casing is ");
    add_span(chapter, course->apart, TS_KIND_TEMPERATURE_DIFFERENCE);
    ts_buffer_add(&chapter->cell, " above them");
    if (within->node != 0) {
        ts_buffer_add(&chapter->cell, fine ? ", within the " : ", BEYOND the ");
        add_span(chapter, gears, TS_KIND_TEMPERATURE);
        ts_buffer_add(&chapter->cell, " and ");
        add_span(chapter, apart, TS_KIND_TEMPERATURE_DIFFERENCE);
        ts_buffer_add(&chapter->cell, " that `temperatures` tells");
    }
    ts_buffer_add(&chapter->cell, ".");
    paragraph(chapter, fine ? TS_BLOCK_PLAIN : TS_BLOCK_WARNING);
}

static void add_energy(ts_buffer *text, const char *before, double J)
{
    ts_buffer_add(text, before);
    ts_page_short(text, J / 1e3, 4);
    ts_buffer_add(text, " kJ");
}

static void energies(const ts_warm_course *course, ts_chapter *chapter)
{
    ts_buffer *text = &chapter->cell;

    add_energy(text, "Heat: arose ", course->heat);
    add_energy(text, "; the oil took away ", course->carried);
    add_energy(text, ", the air ", course->given);
    add_energy(text, ", and the metal has ", course->stored);
    ts_buffer_add(text, " more than at the beginning; off by ");
    ts_buffer_significant(text, course->balance, 2);
    ts_buffer_add(text, ".");
    paragraph(chapter, TS_BLOCK_PLAIN);
}

static void one_drive(const ts_warm_answer *warm, uint32_t drive, ts_chapter *chapter)
{
    const ts_warm_course *course = &warm->courses[drive];
    const ts_drive       *all    = chapter->answer->drive;

    ts_buffer_print(&chapter->cell, "The %s drive", all->spools[all->drive[drive].spool].name);
    if (!chapter->cell.failed)
        ts_manuscript_heading(chapter->manuscript, 2, chapter->cell.bytes);
    ts_buffer_clear(&chapter->cell);
    if (course->missing != NULL || course->fault != NULL) {
        if (course->fault != NULL)
            ts_buffer_print(&chapter->cell, "not computed: %s", course->fault);
        else
            ts_buffer_print(&chapter->cell, "not computed: the file does not tell %s%s%s",
                            course->missing, course->lacks != NULL ? " of " : "",
                            course->lacks != NULL ? course->lacks : "");
        if (!chapter->cell.failed)
            ts_manuscript_box(chapter->manuscript, TS_BLOCK_PLAIN, chapter->cell.bytes);
        ts_buffer_clear(&chapter->cell);
        return;
    }
    temperatures(warm, course, chapter);
    if (course->play_count == 0)
        return;
    plays(course, chapter);
    reach(warm, drive, chapter);
    energies(course, chapter);
}

void ts_chapter_warm(ts_chapter *chapter, const ts_warm_answer *warm)
{
    ts_manuscript_heading(chapter->manuscript, 1, "Play as the drive grows hot");
    grounds(warm, chapter);
    for (uint32_t d = 0; d < chapter->answer->drive->drive_count; d++)
        one_drive(warm, d, chapter);
    sources(chapter);
}
