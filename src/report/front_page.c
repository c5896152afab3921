/* How much mass does each bit of wrap cost? */
#include "report/arrange_report.h"

#include <math.h>
#include <stdio.h>

#define INDENT    4
#define BAR_WIDTH 30

double ts_arrangement_wrap(const ts_arrange_told *told, const ts_arrangement *found)
{
    double wrap = 0.0;
    for (size_t b = 0; b < told->problem->problem.box_count; b++)
        if (found->boxes[b].present)
            wrap = fmax(wrap, found->boxes[b].wrap);
    return wrap;
}

static void head(const ts_arrange_told *told, ts_page *page)
{
    char wrap[32], mass[32];
    snprintf(wrap, sizeof wrap, "wrap %s", ts_kind_shown(TS_KIND_ANGLE, page->units)->name);
    snprintf(mass, sizeof mass, "%s %s", ts_arrange_is_weighted(told) ? "sum" : "mass",
             ts_kind_shown(TS_KIND_MASS, page->units)->name);
    ts_page_tone(page, TS_TONE_FAINT);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_right(page, ts_text_of(wrap), 10);
    ts_page_right(page, ts_text_of(mass), 10);
    ts_page_right(page, TS_TEXT("more"), 10);
    ts_buffer_add(page->out, "  ");
    ts_page_left(page, TS_TEXT("more"), BAR_WIDTH + 2);
    ts_buffer_add(page->out, "by all rules");
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_page_line_end(page);
}

/* A bar from the lightest to the heaviest of the front. */
static void bar(ts_page *page, double share)
{
    const size_t length = (size_t)lround(fmax(fmin(share, 1.0), 0.0) * BAR_WIDTH);
    ts_buffer_add(page->out, "  ");
    ts_buffer_fill(page->out, '#', length);
    ts_buffer_fill(page->out, ' ', BAR_WIDTH + 2 - length);
}

static void row(const ts_arrange_told *told, ts_page *page, const ts_front_point *p)
{
    const ts_front *f    = told->front;
    const double    best = f->points[0].found.mass, last = f->points[f->count - 1].found.mass;
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_value(page, ts_arrangement_wrap(told, &p->found), TS_KIND_ANGLE, 4, 10);
    ts_page_value(page, p->found.mass, TS_KIND_MASS, 5, 10);
    ts_page_value(page, fmax(p->found.mass - best, 0.0), TS_KIND_MASS, 3, 10);
    bar(page, last > best ? (p->found.mass - best) / (last - best) : 0.0);
    ts_buffer_add(page->out, !p->verdict.read   ? "could not be read again"
                             : p->verdict.holds ? "holds"
                                                : "does not hold");
    if (p->end != TS_ARRANGE_PROVEN)
        ts_buffer_add(page->out, ", not proven");
    ts_page_line_end(page);
}

static void says(const ts_arrange_told *told, ts_page *page)
{
    const ts_front *f  = told->front;
    size_t          no = 0;
    ts_buffer       text;
    ts_buffer_open(&text, page->out->allocator);
    for (size_t i = 0; i < f->count; i++)
        no += f->points[i].rule == TS_RULE_NONE ? 0 : 1;
    ts_buffer_add(&text,
                  "Each is the lightest of all within the wrap that it was searched in, found "
                  "by a search of its own; between two neighbours the least mass lies between "
                  "theirs.  ");
    if (isfinite(f->nothing_below)) {
        ts_buffer_add(&text, "Nothing fits within ");
        ts_page_value_text(page, &text, f->nothing_below, TS_KIND_ANGLE, 5);
        ts_buffer_print(&text, " %s.  ", ts_kind_shown(TS_KIND_ANGLE, page->units)->name);
    }
    if (no == 0)
        ts_buffer_add(&text, "Other code laid each out again and weighed it.");
    else
        ts_buffer_print(&text, "Other code does NOT agree with %zu of them.", no);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, &text, INDENT, INDENT);
}

static void orders(const ts_arrange_told *told, ts_page *page)
{
    const ts_front *f = told->front;
    for (size_t i = 0; i < f->count; i++) {
        ts_buffer text;
        ts_buffer_open(&text, page->out->allocator);
        ts_page_value_text(page, &text, ts_arrangement_wrap(told, &f->points[i].found),
                           TS_KIND_ANGLE, 4);
        ts_buffer_print(&text, " %s: ", ts_kind_shown(TS_KIND_ANGLE, page->units)->name);
        ts_arrange_order(told, &f->points[i].found, &text);
        ts_buffer_fill(page->out, ' ', INDENT);
        ts_page_wrap_made(page, &text, INDENT + 4, INDENT);
    }
}

void ts_front_page(const ts_arrange_told *told, ts_page *page)
{
    if (told->front == NULL || told->front->count == 0)
        return;
    ts_page_heading(page, "What less wrap costs");
    head(told, page);
    for (size_t i = 0; i < told->front->count; i++)
        row(told, page, &told->front->points[i]);
    orders(told, page);
    says(told, page);
}

static void point(const ts_arrange_told *told, ts_json *json, const ts_front_point *p)
{
    ts_json_object(json);
    ts_json_key(json, "within");
    ts_json_number(json, p->limit);
    ts_json_key(json, "wrap");
    ts_json_number(json, ts_arrangement_wrap(told, &p->found));
    ts_json_number_at(json, "mass", ts_arrange_searched(told, &p->found).mass);
    ts_json_number_at(json, "sum", p->found.mass);
    ts_json_key(json, "proven");
    ts_json_bool(json, p->end == TS_ARRANGE_PROVEN);
    ts_json_key(json, "verified");
    ts_json_bool(json, p->rule == TS_RULE_NONE);
    ts_arranged_verdict_json(json, &p->verdict);
    ts_arranged_boxes_json(json, told, &p->found);
    ts_json_end(json, '}');
}

void ts_front_json(const ts_arrange_told *told, ts_json *json)
{
    const ts_front *f = told->front;
    ts_json_key(json, "front");
    if (f == NULL) {
        ts_json_null(json);
        return;
    }
    ts_json_object(json);
    ts_json_key(json, "nothing_below");
    if (isfinite(f->nothing_below))
        ts_json_number(json, f->nothing_below);
    else
        ts_json_null(json);
    ts_json_key(json, "points");
    ts_json_array(json);
    for (size_t i = 0; i < f->count; i++)
        point(told, json, &f->points[i]);
    ts_json_end(json, ']');
    ts_json_end(json, '}');
}
