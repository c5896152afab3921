/* Report: how fast and which way does everything turn, and who gives the power? */
#include "report/report_chapter.h"

#include <math.h>

#define CONDITIONS_MOST 24

/* "no", "pad", ... and a column for every condition; returns how many. */
static size_t columns_of(const ts_chapter *chapter, const ts_column *lead, size_t leads,
                         ts_column *columns)
{
    const ts_drive *drive = chapter->answer->drive;
    size_t          count = 0;
    for (; count < leads; count++)
        columns[count] = lead[count];
    for (size_t c = 0; c < drive->condition_count && c < CONDITIONS_MOST; c++)
        columns[count++] = (ts_column){drive->conditions[c].name, true};
    return count;
}

static size_t conditions_shown(const ts_chapter *chapter)
{
    const size_t count = chapter->answer->drive->condition_count;
    return count < CONDITIONS_MOST ? count : CONDITIONS_MOST;
}

static void speed(ts_chapter *chapter, const ts_pad *pad, size_t c)
{
    const ts_answer *answer = chapter->answer;
    const double     n      = answer->motion->speed[c * answer->train->shaft_count + pad->shaft];
    ts_page_speed_text(&chapter->page, &chapter->cell, n);
    if (pad->accessory >= 0) {
        const ts_span *band = &answer->drive->accessories[pad->accessory].speed[c];
        if (band->standing == TS_GIVEN && !(n >= band->low && n <= band->high))
            ts_buffer_add(&chapter->cell, " !");
    }
    ts_chapter_cell(chapter);
}

static void speeds(ts_chapter *chapter)
{
    static const ts_column lead[] = {
        {"no", true}, {"pad", false}, {"face", false}, {"turns", false}};
    ts_column        columns[4 + CONDITIONS_MOST];
    const ts_answer *answer = chapter->answer;
    const size_t     count  = columns_of(chapter, lead, 4, columns);
    ts_manuscript_heading(chapter->manuscript, 2, "Speeds and senses of the pads");
    ts_manuscript_table(chapter->manuscript, "rpm; turns: facing the pad; !: outside of its band",
                        columns, count);
    for (uint32_t p = 0; p < answer->train->pad_count; p++) {
        const ts_pad *pad = &answer->train->pads[p];
        ts_buffer_print(&chapter->cell, "%u", answer->train->shafts[pad->shaft].number);
        ts_chapter_cell(chapter);
        ts_chapter_word(chapter, pad->name);
        ts_chapter_word(chapter, pad->face == TS_FRONT ? "front" : "rear");
        ts_chapter_word(chapter, ts_pad_sense(answer->motion, pad) > 0 ? "ccw" : "cw");
        for (size_t c = 0; c < conditions_shown(chapter); c++)
            speed(chapter, pad, c);
    }
}

static double taken(const ts_spool_load *load)
{
    return load->P;
}
static double absorbed(const ts_spool_load *load)
{
    return load->P_pads + load->P_driving;
}
static double driving(const ts_spool_load *load)
{
    return load->P_driving;
}
static double lost(const ts_spool_load *load)
{
    return load->P_lost;
}

static bool is_tapped(const ts_drive *drive, size_t spool)
{
    for (size_t d = 0; d < drive->drive_count; d++)
        if (drive->drive[d].spool == (int32_t)spool)
            return true;
    return false;
}

static void spool_powers(ts_chapter *chapter, size_t spool)
{
    static const struct {
        const char *says;
        double (*of)(const ts_spool_load *load);
    } rows[]                = {{"taken from the spool (-: given to it)", taken},
                               {"absorbed at its pads", absorbed},
                               {"put in by what drives", driving},
                               {"lost in its meshes", lost}};
    const ts_answer *answer = chapter->answer;
    for (size_t r = 0; r < sizeof rows / sizeof rows[0]; r++) {
        ts_chapter_word(chapter, answer->drive->spools[spool].name);
        ts_chapter_word(chapter, rows[r].says);
        for (size_t c = 0; c < conditions_shown(chapter); c++)
            ts_chapter_value(
                chapter, rows[r].of(&answer->power->spool[c * answer->drive->spool_count + spool]),
                TS_KIND_POWER, 4);
    }
}

static void powers(ts_chapter *chapter)
{
    static const ts_column lead[] = {{"spool", false}, {"power", false}};
    ts_column              columns[2 + CONDITIONS_MOST];
    const size_t           count = columns_of(chapter, lead, 2, columns);
    ts_manuscript_heading(chapter->manuscript, 2, "Powers of the spools");
    ts_manuscript_table(chapter->manuscript,
                        chapter->page.units == TS_UNITS_US ? "hp; taken = absorbed - put in + lost"
                                                           : "kW; taken = absorbed - put in + lost",
                        columns, count);
    for (size_t s = 0; s < chapter->answer->drive->spool_count; s++)
        if (is_tapped(chapter->answer->drive, s))
            spool_powers(chapter, s);
}

void ts_chapter_turning(ts_chapter *chapter)
{
    ts_manuscript_heading(chapter->manuscript, 1, "Speeds, senses and powers");
    speeds(chapter);
    powers(chapter);
    ts_manuscript_figure(chapter->manuscript, "speeds", NULL,
                         "Speed bands of the pads against the travel of the spools.");
    ts_manuscript_figure(chapter->manuscript, "power", NULL,
                         "Who drives whom, in the condition in which most power is taken.");
}
