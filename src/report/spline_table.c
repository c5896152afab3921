/* How hard are the splines of the pads worked? */
#include "report/check_page.h"

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
        ts_buffer_print(&says, "not computable, %s are not known", item->missing);
    } else {
        ts_page_value_text(page, &says, item->L_e, TS_KIND_LENGTH, 3);
        ts_buffer_print(&says, " %s engaged%s; ", ts_kind_shown(TS_KIND_LENGTH, page->units)->name,
                        item->made ? " (made up)" : "");
        for (int i = 0; i < TS_SPLINE_STRESSES; i++)
            if (item->most[i] >= 0.0)
                stress(page, &says, answer, item, i);
        ts_buffer_print(&says, "; worn ");
        ts_page_short(&says, 1e6 * item->h_w, 2);
        ts_buffer_print(&says, " um in its life");
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
