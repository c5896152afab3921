/* Which gears does no chip plug see? */
#include "report/effects_report.h"

#include "report/check_page.h"

static ts_chip_way way_of(const ts_effects *effects, ts_failure failure)
{
    return ts_chip_way_of(effects->drive, effects->motion->train, failure);
}

static bool is_blind(const ts_effects *effects, uint32_t i)
{
    return effects->failures[i].mode == TS_FAILS_TEETH &&
           way_of(effects, effects->failures[i]).plug != TS_PLUG_THERE;
}

/* All that drain the same way, in a sentence. */
static void print_blind(const ts_effects *effects, uint32_t number, bool take_off, ts_page *page)
{
    const ts_chip_way way = ts_chip_way_from(effects->drive, number, take_off);
    ts_buffer         text;
    size_t            count = 0;

    ts_buffer_open(&text, page->out->allocator);
    ts_chip_way_words(effects->drive, &way, &text);
    ts_buffer_add(&text, ": ");
    for (uint32_t i = 0; i < effects->failure_count; i++) {
        if (!is_blind(effects, i))
            continue;
        const ts_chip_way here = way_of(effects, effects->failures[i]);
        if (here.drive != number || here.take_off != take_off)
            continue;
        ts_buffer_add(&text, count++ > 0 ? "; " : "");
        ts_effects_part(effects, TS_FAILING_MESH, effects->failures[i].at, &text);
    }
    if (count == 0) {
        ts_buffer_close(&text);
        return;
    }
    ts_buffer_add(page->out, "  ");
    ts_page_wrap_made(page, &text, 4, 2);
}

void ts_effects_blind_page(const ts_effects *effects, ts_page *page)
{
    bool any = false;

    ts_page_heading(page, "Gears whose chips may pass no plug (`chip plug` and `drains to` of box "
                          "and take-off; H3-chips-seen)");
    for (uint32_t i = 0; i < effects->failure_count; i++)
        any = any || is_blind(effects, i);
    if (!any)
        ts_buffer_add(page->out, "  none\n");
    for (uint32_t d = 0; d < effects->drive->drive_count && any; d++) {
        print_blind(effects, d, true, page);
        print_blind(effects, d, false, page);
    }
}
