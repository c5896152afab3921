/* At which speeds do the shafts whirl, what does unbalance do, and which tubes are allowed? */
#include "report/whirl_report.h"

#include "report/check_page.h"
#include "report/fine.h"

#include <math.h>

enum { INDENT = 2, NAME = 34, SPEED = 9, RATIO = 8, LENGTH = 9 };

static bool is_lacking(const ts_whirl_item *item)
{
    return item->missing != NULL || item->fault != NULL;
}

static void say_lack(const ts_whirl_item *item, ts_buffer *text)
{
    if (item->missing != NULL)
        ts_buffer_print(text, "%s: not computed: %s of %s is not known", item->name, item->missing,
                        item->lacks != NULL ? item->lacks : item->name);
    else
        ts_buffer_print(text, "%s: not computed: %s", item->name, item->fault);
}

static void paragraph(ts_page *page, ts_buffer *text)
{
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, text, INDENT, INDENT);
}

static double ratio_of(const ts_whirl_item *item)
{
    return item->forward / item->top;
}

static void add_ratio(ts_buffer *text, double ratio)
{
    if (isinf(ratio))
        ts_buffer_add(text, "no end");
    else if (isnan(ratio))
        ts_buffer_add(text, "?");
    else
        ts_buffer_fixed(text, ratio, 2);
}

static void speed_cell(ts_page *page, double omega)
{
    if (isinf(omega))
        ts_page_right(page, ts_text_of("none"), SPEED);
    else
        ts_page_speed(page, omega, SPEED);
}

static void row(const ts_whirl_answer *whirl, uint32_t i, ts_page *page)
{
    const ts_whirl_item   *item   = &whirl->whirls->items[i];
    const ts_whirl_course *course = &whirl->courses[i];
    const double           margin = whirl->whirls->drive->limits.whirl_margin.value;
    ts_buffer              text;

    ts_buffer_open(&text, page->out->allocator);
    if (is_lacking(item)) {
        say_lack(item, &text);
        paragraph(page, &text);
        return;
    }
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_left(page, ts_text_of(item->name), NAME);
    ts_page_speed(page, item->top, SPEED);
    speed_cell(page, item->forward);
    add_ratio(&text, ratio_of(item));
    ts_page_right(page, (ts_text){text.bytes != NULL ? text.bytes : "", text.length}, RATIO);
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
    speed_cell(page, course->speeds > 0 ? course->criticals[1][1] : (double)NAN);
    speed_cell(page, course->speeds > 0 ? course->criticals[0][0] : (double)NAN);
    if (ratio_of(item) < margin)
        ts_buffer_add(page->out, "  !");
    ts_page_line_end(page);
}

static void heads(ts_page *page)
{
    static const char *const words[] = {"highest", "first", "ratio", "second", "backward"};
    static const int         wide[]  = {SPEED, SPEED, RATIO, SPEED, SPEED};

    ts_page_tone(page, TS_TONE_FAINT);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_left(page, ts_text_of("shaft, speeds in rpm"), NAME);
    for (size_t i = 0; i < sizeof wide / sizeof wide[0]; i++)
        ts_page_right(page, ts_text_of(words[i]), wide[i]);
    ts_page_line_end(page);
    ts_page_tone(page, TS_TONE_PLAIN);
}

/* ---- radial shafts ----------------------------------------------------------------------------
 */

static void add_value(const ts_page *page, ts_buffer *text, double si, ts_kind kind)
{
    ts_page_value_text(page, text, si, kind, 4);
    ts_buffer_print(text, " %s", ts_kind_shown(kind, page->units)->name);
}

static void say_bearings(const ts_page *page, const ts_whirl_item *item, ts_buffer *text)
{
    ts_buffer_add(text, "Bearings: ");
    for (int k = 0; k < item->rotor.bearing_count; k++) {
        ts_buffer_print(text, "%s%s at ", k > 0 ? ", " : "", item->bearing_names[k]);
        add_value(page, text, item->bearings[k].x, TS_KIND_LENGTH);
        ts_buffer_add(text, " with ");
        add_value(page, text, item->bearings[k].k_r, TS_KIND_STIFFNESS);
    }
    ts_buffer_add(text, item->stated ? "."
                                     : "; what `stiffness` of a seat does not state is that "
                                       "of the bearing at its greatest load.");
}

static void say_unbalance(const ts_page *page, const ts_whirl_answer *whirl,
                          const ts_whirl_course *course, ts_buffer *text)
{
    ts_buffer_add(text, "Unbalance of G ");
    ts_page_short(text, whirl->whirls->drive->whirl.grade.value, 3);
    ts_buffer_add(text, ", ");
    ts_page_short(text, course->U * ts_unbalance_scale(page->units), 3);
    ts_buffer_print(text, " %s in all: at the highest speed it bends the shaft by ",
                    ts_unbalance_unit(page->units));
    ts_page_short(text, course->top_swing * ts_fine_scale(page->units), 3);
    ts_buffer_print(text, " %s at ", ts_fine_unit(page->units));
    add_value(page, text, course->top_x, TS_KIND_LENGTH);
    ts_buffer_add(text, " and loads the bearing ");
    ts_buffer_print(text, "%s with ", course->item->bearing_names[course->loaded]);
    add_value(page, text, course->top_load, TS_KIND_FORCE);
    ts_buffer_add(text, ".");
}

static void place_words(ts_buffer *text, int place)
{
    if (isnan(ts_map_places[place])) {
        ts_buffer_add(text, "none");
        return;
    }
    ts_buffer_add(text, "at ");
    ts_buffer_fixed(text, 100.0 * ts_map_places[place], 0);
    ts_buffer_add(text, " %");
}

static void map_row(ts_page *page, const ts_whirl_course *course, int diameter)
{
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_value(page, course->outside[diameter], TS_KIND_LENGTH, 3, LENGTH);
    for (int p = 0; p < TS_MAP_PLACES; p++) {
        const double L = course->longest[p * course->diameters + diameter];
        if (isnan(L))
            ts_page_right(page, ts_text_of("-"), LENGTH);
        else
            ts_page_value(page, L, TS_KIND_LENGTH, 4, LENGTH);
    }
    ts_page_line_end(page);
}

static void map(ts_page *page, const ts_whirl_answer *whirl, const ts_whirl_course *course)
{
    ts_buffer text;

    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_add(&text, "Allowed: the greatest length from apex to apex at which it whirls first "
                         "at ");
    ts_page_short(&text, whirl->whirls->drive->limits.whirl_margin.value, 3);
    ts_buffer_print(&text,
                    " times its highest speed, for an outside diameter and a mid bearing, "
                    "both in %s; the bore keeps its share of the outside",
                    ts_kind_shown(TS_KIND_LENGTH, page->units)->name);
    paragraph(page, &text);
    ts_page_tone(page, TS_TONE_FAINT);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_right(page, ts_text_of("outside"), LENGTH);
    for (int p = 0; p < TS_MAP_PLACES; p++) {
        ts_buffer_open(&text, page->out->allocator);
        place_words(&text, p);
        ts_page_right(page, (ts_text){text.bytes != NULL ? text.bytes : "", text.length}, LENGTH);
        page->out->failed = page->out->failed || text.failed;
        ts_buffer_close(&text);
    }
    ts_page_line_end(page);
    ts_page_tone(page, TS_TONE_PLAIN);
    for (int i = 0; i < course->diameters; i += 4)
        map_row(page, course, i);
}

static void say_splines(const ts_page *page, const ts_whirl_answer *whirl, ts_buffer *text)
{
    ts_buffer_add(text, "Splines of a radial shaft tilt with ");
    add_value(page, text, whirl->whirls->drive->whirl.spline_stiffness.value,
              TS_KIND_TORSIONAL_STIFFNESS);
    ts_buffer_add(text, "; loss factor of bearings ");
    ts_page_short(text, whirl->whirls->drive->whirl.bearing_loss.value, 3);
    ts_buffer_add(text, "; housings are rigid, gears are discs, and accessories lie in bearings of "
                        "their own. !: nearer to its highest speed than `whirl margin`.");
}

static void radial(const ts_whirl_answer *whirl, uint32_t i, ts_page *page)
{
    const ts_whirl_item *item = &whirl->whirls->items[i];
    ts_buffer            text;

    if (!item->radial || is_lacking(item) || whirl->courses[i].speeds == 0)
        return;
    ts_page_heading(page, item->name);
    ts_buffer_open(&text, page->out->allocator);
    say_bearings(page, item, &text);
    paragraph(page, &text);
    ts_buffer_open(&text, page->out->allocator);
    say_unbalance(page, whirl, &whirl->courses[i], &text);
    paragraph(page, &text);
    if (whirl->courses[i].diameters > 0)
        map(page, whirl, &whirl->courses[i]);
}

void ts_whirl_page(const ts_whirl_answer *whirl, const ts_answer *answer, ts_page *page)
{
    ts_buffer text;

    ts_answer_title(answer, page);
    ts_page_heading(page, "Critical speeds");
    heads(page);
    for (uint32_t i = 0; i < whirl->whirls->count; i++)
        row(whirl, i, page);
    ts_buffer_open(&text, page->out->allocator);
    say_splines(page, whirl, &text);
    paragraph(page, &text);
    for (uint32_t i = 0; i < whirl->whirls->count; i++)
        radial(whirl, i, page);
    ts_web_page(whirl->webs, page);
}

/* ---- the same in a report ----------------------------------------------------------------------
 */

static void say(ts_chapter *chapter, bool boxed)
{
    if (!chapter->cell.failed && boxed)
        ts_manuscript_box(chapter->manuscript, TS_BLOCK_PLAIN, chapter->cell.bytes);
    else if (!chapter->cell.failed)
        ts_manuscript_text(chapter->manuscript, TS_BLOCK_FAINT, chapter->cell.bytes);
    ts_buffer_clear(&chapter->cell);
}

static void speed_word(ts_chapter *chapter, double omega)
{
    if (isinf(omega))
        ts_buffer_add(&chapter->cell, "none");
    else
        ts_page_speed_text(&chapter->page, &chapter->cell, omega);
    ts_chapter_cell(chapter);
}

static void cells(ts_chapter *chapter, const ts_whirl_answer *whirl)
{
    static const ts_column columns[] = {{"shaft", false}, {"highest, rpm", true},
                                        {"first", true},  {"ratio", true},
                                        {"second", true}, {"backward", true}};

    ts_manuscript_table(chapter->manuscript, "Critical speeds", columns, 6);
    for (uint32_t i = 0; i < whirl->whirls->count; i++) {
        const ts_whirl_item *item = &whirl->whirls->items[i];
        if (is_lacking(item) || whirl->courses[i].speeds == 0)
            continue;
        ts_chapter_word(chapter, item->name);
        speed_word(chapter, item->top);
        speed_word(chapter, item->forward);
        add_ratio(&chapter->cell, ratio_of(item));
        ts_chapter_cell(chapter);
        speed_word(chapter, whirl->courses[i].criticals[1][1]);
        speed_word(chapter, whirl->courses[i].criticals[0][0]);
    }
}

void ts_chapter_whirl(ts_chapter *chapter, const ts_whirl_answer *whirl)
{
    ts_manuscript_heading(chapter->manuscript, 1, "Whirl");
    cells(chapter, whirl);
    for (uint32_t i = 0; i < whirl->whirls->count; i++) {
        const ts_whirl_item *item = &whirl->whirls->items[i];
        if (is_lacking(item)) {
            say_lack(item, &chapter->cell);
            say(chapter, true);
        } else if (item->radial && whirl->courses[i].speeds > 0) {
            ts_buffer_print(&chapter->cell, "%s: ", item->name);
            say_unbalance(&chapter->page, whirl, &whirl->courses[i], &chapter->cell);
            ts_buffer_add(&chapter->cell, " ");
            say_bearings(&chapter->page, item, &chapter->cell);
            say(chapter, false);
        }
    }
    say_splines(&chapter->page, whirl, &chapter->cell);
    say(chapter, false);
    ts_web_cells(chapter, whirl->webs);
}
