/* How do the answers compare, in one look? */
#include "report/short_list.h"

#include <math.h>
#include <stdio.h>

#define INDENT 4

enum { MASS = 10, MORE = 10, SHARE = 8, ANGLE = 10, COUNT = 8, RULES = 2 };

static void head_of(ts_page *page, const char *what, ts_kind kind, int width)
{
    char text[32];
    snprintf(text, sizeof text, "%s %s", what, ts_kind_shown(kind, page->units)->name);
    ts_page_right(page, ts_text_of(text), width);
}

static void head(const ts_arrange_told *told, ts_page *page)
{
    ts_page_tone(page, TS_TONE_FAINT);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_left(page, TS_TEXT("answer"), 6);
    head_of(page, "mass", TS_KIND_MASS, MASS);
    if (ts_arrange_is_weighted(told)) {
        head_of(page, "lower", TS_KIND_MASS, MASS);
        head_of(page, "sum", TS_KIND_MASS, MASS);
    }
    head_of(page, "regret", TS_KIND_MASS, MORE);
    ts_page_right(page, TS_TEXT("%"), SHARE);
    head_of(page, "wrap", TS_KIND_ANGLE, ANGLE);
    ts_page_right(page, TS_TEXT("idlers"), COUNT);
    ts_page_right(page, TS_TEXT("steps"), COUNT);
    ts_page_right(page, TS_TEXT("clashes"), COUNT + 1);
    ts_buffer_fill(page->out, ' ', RULES);
    ts_buffer_add(page->out, "by all rules");
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_page_line_end(page);
}

static void add_count(ts_page *page, size_t count, int width)
{
    char text[24];
    snprintf(text, sizeof text, "%zu", count);
    ts_page_right(page, ts_text_of(text), width);
}

static void regret(const ts_arrange_told *told, ts_page *page, size_t index)
{
    const double best = told->result->answers[0].mass;
    const double more = fmax(told->result->answers[index].mass - best, 0.0);
    char         text[24];
    if (index == 0) {
        ts_page_right(page, TS_TEXT("-"), MORE);
        ts_page_right(page, TS_TEXT("-"), SHARE);
        return;
    }
    ts_page_value(page, more, TS_KIND_MASS, 3, MORE);
    snprintf(text, sizeof text, "%.2f", 100.0 * more / best);
    ts_page_right(page, ts_text_of(text), SHARE);
}

static void row(const ts_arrange_told *told, ts_page *page, size_t index)
{
    const ts_arranged_verdict *v = &told->verdicts[index];
    const ts_arrange_account   a = ts_arrange_searched(told, &told->result->answers[index]);
    ts_buffer_fill(page->out, ' ', INDENT);
    add_count(page, index + 1, 6);
    ts_page_value(page, a.mass, TS_KIND_MASS, 5, MASS);
    if (ts_arrange_is_weighted(told)) {
        ts_page_value(page, a.lowered, TS_KIND_MASS, 4, MASS);
        ts_page_value(page, a.sum, TS_KIND_MASS, 5, MASS);
    }
    regret(told, page, index);
    ts_page_value(page, a.wrap, TS_KIND_ANGLE, 4, ANGLE);
    add_count(page, a.idler_count, COUNT);
    add_count(page, a.step_count, COUNT);
    add_count(page, v->clashes, COUNT + 1);
    ts_buffer_fill(page->out, ' ', RULES);
    ts_buffer_add(page->out, !v->read ? "not computable" : v->holds ? "holds" : "does not hold");
    ts_page_line_end(page);
}

void ts_short_list(const ts_arrange_told *told, ts_page *page)
{
    head(told, page);
    for (size_t i = 0; i < told->result->count; i++)
        row(told, page, i);
}
