/* How hard are the splines of the pads worked? */
#include "report/check_page.h"
#include "report/fine.h"
#include "report/report_chapter.h"

#include <math.h>

static void stress(ts_page *page, ts_buffer *says, const ts_answer *answer,
                   const ts_drive_spline *item, int i)
{
    const char *at = ts_answer_condition(answer, item->at[i]);

    ts_buffer_print(says, "%s ", ts_spline_stress_symbol((ts_spline_stress)i));
    ts_page_value_text(page, says, item->most[i], TS_KIND_STRESS, 3);
    ts_buffer_print(says, " of ");
    ts_page_value_text(page, says, ts_spline_stress_permitted((ts_spline_stress)i), TS_KIND_STRESS,
                       3);
    ts_buffer_print(says, " (%s)%s", at != NULL ? at : "overload",
                    i + 1 < TS_SPLINE_STRESSES ? ", " : "");
}

static void one(const ts_answer *answer, ts_page *page, const ts_drive_spline *item)
{
    ts_buffer says;

    ts_buffer_open(&says, answer->allocator);
    ts_buffer_print(&says, "%s, %s: ", answer->train->pads[item->pad].name, item->number);
    if (item->missing != NULL) {
        ts_buffer_print(&says, "not computable, %s are not known%s", item->missing,
                        item->sized && item->overload.known ? "; met once: " : "");
        for (int i = 0; i < TS_SPLINE_STRESSES && item->sized; i++)
            if (item->most[i] >= 0.0)
                stress(page, &says, answer, item, i);
    } else {
        ts_page_value_text(page, &says, item->L_e, TS_KIND_LENGTH, 3);
        ts_buffer_print(&says, " %s engaged%s; ", ts_kind_shown(TS_KIND_LENGTH, page->units)->name,
                        item->made ? " (made up)" : "");
        for (int i = 0; i < TS_SPLINE_STRESSES; i++)
            if (item->most[i] >= 0.0)
                stress(page, &says, answer, item, i);
        ts_buffer_print(&says, "; worn ");
        ts_page_short(&says, ts_fine_scale(page->units) * item->h_w, 2);
        ts_buffer_print(&says, " %s in its life", ts_fine_unit(page->units));
    }
    ts_page_wrap_made(page, &says, 2, 0);
}

void ts_spline_table(const ts_answer *answer, ts_page *page)
{
    if (answer->splines == NULL || answer->splines->count == 0)
        return;
    ts_page_heading(page, "Splines of the pads: the greatest stress of all conditions and what "
                          "hardened steel bears, MPa or ksi; wear ranks designs");
    for (uint32_t i = 0; i < answer->splines->count; i++)
        one(answer, page, &answer->splines->items[i]);
}

/* ---- the same in a report -------------------------------------------------------------------- */

static void one_cells(ts_chapter *chapter, const ts_drive_spline *item)
{
    const ts_answer *answer = chapter->answer;
    ts_chapter_word(chapter, answer->train->pads[item->pad].name);
    ts_buffer_print(&chapter->cell, "%s%s", item->number, item->made ? " *" : "");
    if (item->missing != NULL)
        ts_buffer_print(&chapter->cell, ": %s are not known", item->missing);
    ts_chapter_cell(chapter);
    ts_chapter_value(chapter, item->missing == NULL ? item->L_e : (double)NAN, TS_KIND_LENGTH, 3);
    for (int i = 0; i < TS_SPLINE_STRESSES; i++) {
        const bool  told = item->missing == NULL && item->most[i] >= 0.0;
        const char *at   = told ? ts_answer_condition(answer, item->at[i]) : "";
        ts_chapter_value(chapter, told ? item->most[i] : (double)INFINITY, TS_KIND_STRESS, 3);
        ts_chapter_word(chapter, at != NULL ? at : "overload");
    }
    if (item->missing == NULL)
        ts_page_short(&chapter->cell, ts_fine_scale(chapter->page.units) * item->h_w, 2);
    else
        ts_buffer_add(&chapter->cell, "?");
    ts_chapter_cell(chapter);
}

/* What hardened steel bears of each stress, which the columns have no room for. */
static void permitted(ts_chapter *chapter)
{
    ts_buffer_print(&chapter->cell,
                    "Splines of the pads, %s: the greatest stress of all conditions; hardened "
                    "steel bears ",
                    ts_kind_shown(TS_KIND_STRESS, chapter->page.units)->name);
    for (int i = 0; i < TS_SPLINE_STRESSES; i++) {
        ts_buffer_print(&chapter->cell, "%s%s ", i > 0 ? ", " : "",
                        ts_spline_stress_symbol((ts_spline_stress)i));
        ts_page_value_text(&chapter->page, &chapter->cell,
                           ts_spline_stress_permitted((ts_spline_stress)i), TS_KIND_STRESS, 3);
    }
    ts_buffer_add(&chapter->cell, "; wear in the life ranks designs; *: length made up");
}

void ts_spline_cells(ts_chapter *chapter)
{
    enum { LEADING = 3, ALL = LEADING + 2 * TS_SPLINE_STRESSES + 1 };
    const bool us           = chapter->page.units == TS_UNITS_US;
    ts_column  columns[ALL] = {
         {"pad", false}, {"spline", false}, {us ? "engaged in" : "engaged mm", true}};
    for (int i = 0; i < TS_SPLINE_STRESSES; i++) {
        columns[LEADING + 2 * i] = (ts_column){ts_spline_stress_symbol((ts_spline_stress)i), true};
        columns[LEADING + 2 * i + 1] = (ts_column){"at", false};
    }
    columns[ALL - 1] = (ts_column){us ? "worn mil" : "worn um", true};
    permitted(chapter);
    if (!chapter->cell.failed)
        ts_manuscript_table(chapter->manuscript, chapter->cell.bytes, columns, ALL);
    ts_buffer_clear(&chapter->cell);
    for (uint32_t i = 0; i < chapter->answer->splines->count; i++)
        one_cells(chapter, &chapter->answer->splines->items[i]);
}
