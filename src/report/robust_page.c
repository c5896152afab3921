/* Which answer stays the lightest when loads and bands are not what they should be? */
#include "report/arrange_report.h"

#include <math.h>

#define INDENT 4

static void send(ts_page *page, ts_buffer *text)
{
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, text, INDENT, INDENT);
}

static void open(const ts_page *page, ts_buffer *text)
{
    ts_buffer_open(text, page->out->allocator);
}

static void add_percent(ts_buffer *out, double factor)
{
    ts_page_short(out, 100.0 * factor, 6);
    ts_buffer_add(out, " %");
}

static void cell(ts_page *page, double kg)
{
    if (isfinite(kg))
        ts_page_value(page, kg, TS_KIND_MASS, 5, 12);
    else
        ts_page_right(page, TS_TEXT("too weak"), 12);
}

/* ---- loads -------------------------------------------------------------------------------------
 */

static void loads_table(const ts_arrange_told *told, ts_page *page)
{
    const ts_robust *r     = told->robust;
    const double     at[3] = {1.0 - r->loads, 1.0, 1.0 + r->loads};
    ts_buffer        text;
    open(page, &text);
    ts_page_tone(page, TS_TONE_FAINT);
    ts_page_left(page, TS_TEXT("    answer"), 14);
    for (int i = 0; i < 3; i++) {
        ts_buffer_print(&text, "%s at ", ts_kind_shown(TS_KIND_MASS, page->units)->name);
        add_percent(&text, at[i]);
        ts_page_right(page, (ts_text){text.bytes, text.length}, 12);
        ts_buffer_clear(&text);
    }
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_page_line_end(page);
    for (size_t i = 0; i < told->result->count; i++) {
        ts_buffer_fill(page->out, ' ', INDENT);
        ts_buffer_integer(page->out, (int64_t)i + 1);
        ts_buffer_fill(page->out, ' ', i < 9 ? 9 : 8);
        cell(page, r->answers[i].less);
        cell(page, r->answers[i].as);
        cell(page, r->answers[i].more);
        ts_page_line_end(page);
    }
}

static void loads_changes(const ts_arrange_told *told, ts_page *page)
{
    const ts_robust *r = told->robust;
    ts_buffer        text;
    open(page, &text);
    if (r->first < told->result->count)
        ts_buffer_print(&text, "At the least loads answer %zu is the lightest of these",
                        r->first + 1);
    else
        ts_buffer_add(&text, "At the least loads none of these bears them");
    for (size_t i = 0; i < r->change_count; i++) {
        ts_buffer_add(&text, "; from ");
        add_percent(&text, r->changes[i].factor);
        if (r->changes[i].to < told->result->count)
            ts_buffer_print(&text, " on answer %zu", r->changes[i].to + 1);
        else
            ts_buffer_add(&text, " on none bears them");
    }
    ts_buffer_add(&text, r->change_count == 0 ? ", and stays so throughout." : ".");
    send(page, &text);
}

static bool has_order_of(const ts_arranged_branch *a, const ts_arranged_branch *b)
{
    bool same = a->count == b->count;
    for (uint32_t i = 0; same && i < a->count; i++)
        same = a->shafts[i].front == b->shafts[i].front && a->shafts[i].rear == b->shafts[i].rear;
    return same;
}

static bool is_box_like(const ts_arranged_box *x, const ts_arranged_box *y)
{
    if (!x->present || !y->present)
        return x->present == y->present;
    return x->input.front == y->input.front && x->input.rear == y->input.rear &&
           has_order_of(&x->branches[0], &y->branches[0]) &&
           has_order_of(&x->branches[1], &y->branches[1]);
}

/* The answer with the same order, faces and boxes; their number: none has. */
static size_t like(const ts_arrange_told *told, const ts_arrangement *found)
{
    for (size_t i = 0; i < told->result->count; i++) {
        bool same = true;
        for (size_t b = 0; b < told->problem->problem.box_count && same; b++)
            same = is_box_like(&found->boxes[b], &told->result->answers[i].boxes[b]);
        if (same)
            return i;
    }
    return told->result->count;
}

static void corner(const ts_arrange_told *told, ts_page *page, const ts_robust_corner *c,
                   ts_buffer *text)
{
    if (!c->fits) {
        ts_buffer_add(text, c->end == TS_ARRANGE_PROVEN ? "nothing fits."
                                                        : "nothing was found before the end.");
        send(page, text);
        return;
    }
    const size_t same = like(told, &c->found);
    ts_buffer_add(text, "the lightest of all weighs ");
    ts_arrange_sum(told, page, c->found.mass, text);
    ts_buffer_add(text, c->end == TS_ARRANGE_PROVEN ? "" : " (so far; not proven)");
    if (same < told->result->count) {
        ts_buffer_print(text, ", with the order, faces and boxes of answer %zu.", same + 1);
    } else {
        ts_buffer_add(text, ", and is none of these: ");
        ts_arrange_order(told, &c->found, text);
        ts_buffer_add(text, ".");
    }
    send(page, text);
}

static void corner_at(const ts_arrange_told *told, ts_page *page, const ts_robust_corner *c,
                      double factor)
{
    ts_buffer text;
    open(page, &text);
    ts_buffer_add(&text, "At ");
    add_percent(&text, factor);
    ts_buffer_add(&text, ", teeth and places chosen anew: ");
    corner(told, page, c, &text);
}

static void loads(const ts_arrange_told *told, ts_page *page)
{
    const ts_robust *r = told->robust;
    ts_buffer        text;
    open(page, &text);
    ts_buffer_add(&text, "If all loads were up to ");
    add_percent(&text, r->loads);
    ts_buffer_add(&text, " less or more");
    ts_page_heading(page, text.bytes);
    ts_buffer_close(&text);
    if (ts_arrange_is_weighted(told)) {
        open(page, &text);
        ts_buffer_add(&text, "In sum, with what wrap and servicing count as:");
        send(page, &text);
    }
    loads_table(told, page);
    loads_changes(told, page);
    corner_at(told, page, &r->corner_less, 1.0 - r->loads);
    corner_at(told, page, &r->corner_more, 1.0 + r->loads);
}

/* ---- bands -------------------------------------------------------------------------------------
 */

static void add_speed(const ts_page *page, ts_buffer *out, double si)
{
    ts_page_value_text(page, out, si, TS_KIND_ROTATIONAL_SPEED, 4);
    ts_buffer_print(out, " %s", ts_kind_shown(TS_KIND_ROTATIONAL_SPEED, page->units)->name);
}

static void band_of(const ts_arrange_told *told, ts_page *page, size_t index)
{
    const ts_robust_answer *r = &told->robust->answers[index];
    ts_buffer               text;
    open(page, &text);
    ts_buffer_print(&text, "Answer %zu keeps its bands until they lose ", index + 1);
    add_speed(page, &text, r->slack);
    ts_buffer_print(&text, ": then %s leaves its own at %s.",
                    told->problem->problem.accessories[r->accessory].name,
                    told->drive->conditions[r->condition].name);
    send(page, &text);
}

/* The lightest answer that keeps its bands when they lose more than that; they come lightest
 * first. */
static size_t first_beyond(const ts_arrange_told *told, double lost)
{
    for (size_t i = 0; i < told->result->count; i++)
        if (told->robust->answers[i].slack > lost)
            return i;
    return told->result->count;
}

static void band_changes(const ts_arrange_told *told, ts_page *page)
{
    const ts_robust *r    = told->robust;
    size_t           best = first_beyond(told, 0.0);
    ts_buffer        text;
    open(page, &text);
    if (best == told->result->count)
        ts_buffer_add(&text, "None of these has anything to lose");
    else
        ts_buffer_print(&text, "The lightest of these is answer %zu", best + 1);
    while (best < told->result->count && r->answers[best].slack < r->bands) {
        const double lost = r->answers[best].slack;
        ts_buffer_add(&text, " until bands lose ");
        add_speed(page, &text, lost);
        best = first_beyond(told, lost);
        if (best < told->result->count)
            ts_buffer_print(&text, "; beyond that answer %zu", best + 1);
        else
            ts_buffer_add(&text, "; beyond that none of these");
    }
    ts_buffer_add(&text, ".");
    send(page, &text);
}

static void bands(const ts_arrange_told *told, ts_page *page)
{
    const ts_robust *r = told->robust;
    ts_buffer        text;
    open(page, &text);
    ts_buffer_add(&text, "If every band were up to ");
    add_speed(page, &text, r->bands);
    ts_buffer_add(&text, " narrower at each end");
    ts_page_heading(page, text.bytes);
    ts_buffer_close(&text);
    for (size_t i = 0; i < told->result->count; i++)
        band_of(told, page, i);
    band_changes(told, page);
    open(page, &text);
    ts_buffer_add(&text, "With all of ");
    add_speed(page, &text, r->bands);
    ts_buffer_add(&text, " lost, teeth and places chosen anew: ");
    corner(told, page, &r->corner_bands, &text);
}

void ts_robust_page(const ts_arrange_told *told, ts_page *page)
{
    if (told->robust == NULL)
        return;
    if (told->robust->loads > 0.0)
        loads(told, page);
    if (told->robust->bands > 0.0)
        bands(told, page);
    ts_sampled_answers_page(told, page);
}

/* ---- JSON --------------------------------------------------------------------------------------
 */

/* The number of an answer, from 0; null: none of them. */
static void which(ts_json *json, const ts_arrange_told *told, const char *key, size_t answer)
{
    ts_json_key(json, key);
    if (answer < told->result->count)
        ts_json_integer(json, (int64_t)answer);
    else
        ts_json_null(json);
}

static void corner_json(ts_json *json, const ts_arrange_told *told, const char *key,
                        const ts_robust_corner *c)
{
    ts_json_key(json, key);
    ts_json_object(json);
    ts_json_key(json, "proven");
    ts_json_bool(json, c->end == TS_ARRANGE_PROVEN);
    ts_json_number_at(json, "mass", c->fits ? c->found.mass : (double)NAN);
    which(json, told, "like", c->fits ? like(told, &c->found) : told->result->count);
    ts_arranged_boxes_json(json, told, &c->found);
    ts_json_end(json, '}');
}

static void loads_json(const ts_arrange_told *told, ts_json *json)
{
    const ts_robust *r = told->robust;
    ts_json_object(json);
    ts_json_number_at(json, "share", r->loads);
    ts_json_key(json, "answers");
    ts_json_array(json);
    for (size_t i = 0; i < told->result->count; i++) {
        ts_json_object(json);
        ts_json_number_at(json, "less", r->answers[i].less);
        ts_json_number_at(json, "as_demanded", r->answers[i].as);
        ts_json_number_at(json, "more", r->answers[i].more);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    which(json, told, "first", r->first);
    ts_json_key(json, "changes");
    ts_json_array(json);
    for (size_t i = 0; i < r->change_count; i++) {
        ts_json_object(json);
        ts_json_number_at(json, "factor", r->changes[i].factor);
        which(json, told, "to", r->changes[i].to);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    corner_json(json, told, "least", &r->corner_less);
    corner_json(json, told, "most", &r->corner_more);
    ts_json_end(json, '}');
}

static void bands_json(const ts_arrange_told *told, ts_json *json)
{
    const ts_robust *r = told->robust;
    ts_json_object(json);
    ts_json_number_at(json, "narrower", r->bands);
    ts_json_key(json, "answers");
    ts_json_array(json);
    for (size_t i = 0; i < told->result->count; i++) {
        ts_json_object(json);
        ts_json_number_at(json, "keeps_until", r->answers[i].slack);
        ts_json_key(json, "accessory");
        ts_json_string(json, told->problem->problem.accessories[r->answers[i].accessory].name);
        ts_json_key(json, "condition");
        ts_json_string(json, told->drive->conditions[r->answers[i].condition].name);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    corner_json(json, told, "most", &r->corner_bands);
    ts_json_end(json, '}');
}

void ts_robust_json(const ts_arrange_told *told, ts_json *json)
{
    const ts_robust *r = told->robust;
    ts_json_key(json, "robust");
    if (r == NULL) {
        ts_json_null(json);
        return;
    }
    ts_json_object(json);
    ts_json_key(json, "loads");
    if (r->loads > 0.0)
        loads_json(told, json);
    else
        ts_json_null(json);
    ts_json_key(json, "bands");
    if (r->bands > 0.0)
        bands_json(told, json);
    else
        ts_json_null(json);
    ts_sampled_answers_json(told, json);
    ts_json_end(json, '}');
}
