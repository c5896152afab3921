/* Which tooth numbers give a ratio, and why do no others? */
#include "report/ratio_report.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#define INDENT 4

/* ---- words ------------------------------------------------------------------------------------
 */

static void send(ts_page *page, ts_buffer *text)
{
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, text, INDENT, INDENT);
}

static void open(const ts_page *page, ts_buffer *text)
{
    ts_buffer_open(text, page->out->allocator);
}

static void add_fraction(ts_buffer *out, ts_rational r)
{
    ts_buffer_integer(out, r.over);
    ts_buffer_add(out, "/");
    ts_buffer_integer(out, r.under);
}

/* "55/24", "25 - 30 - 58" or "(40/19)(35/32)" */
static void add_teeth(ts_buffer *out, const ts_ratio_told *told, const ts_ratio_teeth *t)
{
    switch (told->wish->train) {
    case TS_RATIO_PAIR:
        ts_buffer_print(out, "%d/%d", t->z[1], t->z[0]);
        break;
    case TS_RATIO_IDLER:
        ts_buffer_print(out, "%d/%d over %d", t->z[2], t->z[0], t->z[1]);
        break;
    case TS_RATIO_TWO:
        ts_buffer_print(out, "(%d/%d)(%d/%d)", t->z[1], t->z[0], t->z[3], t->z[2]);
        break;
    }
}

static void add_percent(ts_buffer *out, double share)
{
    ts_page_short(out, 100.0 * fabs(share), 2);
    ts_buffer_add(out, " %");
}

static void add_error(ts_buffer *out, const ts_ratio_teeth *t)
{
    if (t->miss == 0) {
        ts_buffer_add(out, "exact");
        return;
    }
    ts_buffer_add(out, t->error < 0.0 ? "-" : "+");
    add_percent(out, t->error);
}

/* A count of trains: "1 pair", "12 pairs". */
static void add_count(ts_buffer *out, const ts_ratio_told *told, uint64_t count)
{
    static const char *const one[]  = {"pair", "train over an idler", "train over a cluster"};
    static const char *const many[] = {"pairs", "trains over an idler", "trains over a cluster"};
    ts_buffer_integer(out, (int64_t)count);
    ts_buffer_print(out, " %s", count == 1 ? one[told->wish->train] : many[told->wish->train]);
}

/* ---- what was asked ---------------------------------------------------------------------------
 */

static void asked(const ts_ratio_told *told, ts_page *page)
{
    const ts_ratio_wish *w = told->wish;
    ts_buffer            text;
    open(page, &text);
    ts_buffer_add(&text, "Ratio ");
    if (told->written[0] != 0 && told->written[0] != w->wanted.over) {
        ts_buffer_print(&text, "%d/%d = ", told->written[0], told->written[1]);
    }
    add_fraction(&text, w->wanted);
    ts_buffer_add(&text, " = ");
    ts_page_short(&text, ts_rational_value(w->wanted), 8);
    ts_buffer_add(&text, " (driven teeth over driving teeth), taken from ");
    ts_page_short(&text, ts_rational_value(w->low), 8);
    ts_buffer_add(&text, " to ");
    ts_page_short(&text, ts_rational_value(w->high), 8);
    ts_buffer_print(&text, ", with %d to %d teeth on every gear", w->z_least, w->z_most);
    ts_buffer_add(&text, w->train == TS_RATIO_PAIR    ? "; a pair reverses the sense."
                         : w->train == TS_RATIO_IDLER ? ", over one idler; the sense stays."
                                                      : ", over two gears on one shaft between; "
                                                        "the sense stays.");
    ts_page_wrap_made(page, &text, 0, 0);
}

/* ---- the lists --------------------------------------------------------------------------------
 */

static void head(const ts_ratio_told *told, ts_page *page)
{
    ts_page_tone(page, TS_TONE_FAINT);
    ts_page_left(page, TS_TEXT("    teeth"), 24);
    ts_page_right(page, TS_TEXT("ratio"), 12);
    ts_page_right(page, TS_TEXT("off by"), 12);
    ts_page_right(page, TS_TEXT("mass"), 8);
    if (told->wish->sharing)
        ts_page_right(page, TS_TEXT("shares"), 8);
    if (told->wish->train == TS_RATIO_IDLER)
        ts_page_right(page, TS_TEXT("idlers"), 8);
    if (told->wish->centre.a_w > 0.0)
        ts_page_right(page, TS_TEXT("x_1+x_2"), 10);
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_page_line_end(page);
}

static void cell(ts_page *page, ts_buffer *text, int width)
{
    ts_page_right(page, (ts_text){text->bytes, text->length}, width);
    ts_buffer_clear(text);
}

static void row(const ts_ratio_told *told, ts_page *page, const ts_ratio_teeth *t, double unit)
{
    ts_buffer text;
    open(page, &text);
    ts_buffer_add(&text, "    ");
    add_teeth(&text, told, t);
    ts_page_left(page, (ts_text){text.bytes, text.length}, 24);
    ts_buffer_clear(&text);
    ts_page_short(&text, ts_rational_value(told->wish->wanted) * (1.0 + t->error), 7);
    cell(page, &text, 12);
    add_error(&text, t);
    cell(page, &text, 12);
    ts_buffer_fixed(&text, (double)t->weight / unit, 2);
    cell(page, &text, 8);
    if (told->wish->sharing) {
        ts_buffer_integer(&text, t->shared);
        cell(page, &text, 8);
    }
    if (told->wish->train == TS_RATIO_IDLER) {
        ts_buffer_integer(&text, t->idlers);
        cell(page, &text, 8);
    }
    if (told->wish->centre.a_w > 0.0) {
        ts_buffer_fixed(&text, ts_ratio_shift(&told->wish->centre, t->z[0], t->z[1]), 4);
        cell(page, &text, 10);
    }
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
    ts_page_line_end(page);
}

static void list(const ts_ratio_told *told, ts_page *page, const char *name,
                 const ts_ratio_list *all)
{
    const double unit = (double)told->facts->lightest.items[0].weight;
    if (all->count == 0)
        return;
    ts_page_heading(page, name);
    head(told, page);
    for (size_t i = 0; i < all->count; i++)
        row(told, page, &all->items[i], unit);
}

static void counts(const ts_ratio_told *told, ts_page *page)
{
    const ts_ratio_facts *f = told->facts;
    ts_buffer             text;
    ts_page_heading(page, "How many there are");
    open(page, &text);
    add_count(&text, told, f->inside);
    ts_buffer_print(&text, " lie%s within it; ", f->inside == 1 ? "s" : "");
    ts_buffer_integer(&text, (int64_t)f->hunting);
    ts_buffer_add(&text, f->hunting == 1 ? " hunts" : " hunt");
    ts_buffer_add(&text,
                  told->wish->train == TS_RATIO_PAIR
                      ? " (no common divisor: every tooth meets every tooth)."
                      : " in both meshes (no common divisor: every tooth meets every tooth).");
    if (told->wish->centre.a_w > 0.0) {
        ts_buffer_add(&text, "  Of those that hunt, ");
        ts_buffer_integer(&text, (int64_t)f->too_far);
        ts_buffer_add(&text, " more would not meet at that centre distance with x_1+x_2 from ");
        ts_page_short(&text, told->wish->centre.x_least, 3);
        ts_buffer_add(&text, " to ");
        ts_page_short(&text, told->wish->centre.x_most, 3);
        ts_buffer_add(&text, ".");
    }
    send(page, &text);
}

/* ---- facts of number theory -------------------------------------------------------------------
 */

/* "56/24 shares 8: ..." */
static void shares(const ts_ratio_told *told, ts_page *page)
{
    const int a = told->written[0], b = told->written[1];
    const int g = a != 0 ? (int)ts_gcd((uint64_t)a, (uint64_t)b) : 1;
    ts_buffer text;
    if (g == 1 || told->wish->train != TS_RATIO_PAIR)
        return;
    open(page, &text);
    ts_buffer_print(&text,
                    "%d/%d shares %d: a tooth of either gear meets only every %dth of the other, "
                    "and the same two meet again after %d turns of the driver in place of %d.",
                    a, b, g, g, a / g, a);
    send(page, &text);
}

/* Whether one pair alone can have exactly this ratio. */
static void exact(const ts_ratio_told *told, ts_page *page)
{
    const ts_ratio_wish *w  = told->wish;
    const ts_rational    r  = w->wanted;
    const int64_t        lo = r.over < r.under ? r.over : r.under;
    const int64_t        hi = r.over < r.under ? r.under : r.over;
    ts_buffer            text;
    if (w->train != TS_RATIO_PAIR)
        return;
    open(page, &text);
    ts_buffer_add(&text, "Teeth without a common divisor are their ratio in lowest terms, so ");
    add_fraction(&text, r);
    ts_buffer_add(&text, " itself is the only hunting pair of exactly this ratio");
    if (lo < w->z_least) {
        ts_buffer_add(&text, ", and ");
        ts_buffer_integer(&text, lo);
        ts_buffer_print(&text, " teeth are fewer than %d: no hunting pair has it exactly.",
                        w->z_least);
    } else if (hi > w->z_most) {
        ts_buffer_add(&text, ", and ");
        ts_buffer_integer(&text, hi);
        ts_buffer_print(&text, " teeth are more than %d: no hunting pair has it exactly.",
                        w->z_most);
    } else {
        ts_buffer_add(&text, ", and it can be had.");
    }
    send(page, &text);
}

static void add_kept(const ts_ratio_told *told, ts_buffer *text, bool driver)
{
    const ts_ratio_wish *w    = told->wish;
    const int            kept = told->written[driver ? 1 : 0];
    const int            z = ts_ratio_nearest_wheel(w->wanted, kept, driver, w->z_least, w->z_most);
    if (z == 0)
        return;
    const double ratio = driver ? (double)z / kept : (double)kept / z;
    ts_buffer_print(text,
                    driver ? "With %d kept, the nearest hunting pair is %d/%d, "
                           : "with %d kept, %d/%d, ",
                    kept, driver ? z : kept, driver ? kept : z);
    add_percent(text, ratio / ts_rational_value(w->wanted) - 1.0);
    ts_buffer_add(text, driver ? " off; " : " off.");
}

/* Two meshes may each hunt although the outer wheels share a divisor. */
static void add_idler(const ts_ratio_told *told, ts_buffer *text)
{
    const uint64_t a = (uint64_t)told->written[0], b = (uint64_t)told->written[1];
    for (int z = told->wish->z_least; z <= told->wish->z_most; z++) {
        if (ts_gcd((uint64_t)z, a) != 1 || ts_gcd((uint64_t)z, b) != 1)
            continue;
        ts_buffer_print(text,
                        "  Over an idler of %d teeth %d/%d is exact and both meshes hunt; the "
                        "sense is then kept.",
                        z, told->written[0], told->written[1]);
        return;
    }
}

static void kept(const ts_ratio_told *told, ts_page *page)
{
    ts_buffer text;
    if (told->wish->train != TS_RATIO_PAIR || told->written[0] == 0 ||
        ts_gcd((uint64_t)told->written[0], (uint64_t)told->written[1]) == 1)
        return;
    open(page, &text);
    add_kept(told, &text, true);
    add_kept(told, &text, false);
    add_idler(told, &text);
    send(page, &text);
}

static void add_nearer(const ts_ratio_facts *f, ts_buffer *text)
{
    const uint64_t shown = f->nearer_count < TS_RATIO_NEARER ? f->nearer_count : TS_RATIO_NEARER;
    for (uint64_t i = 0; i < shown; i++) {
        ts_buffer_add(text, i > 0 ? ", " : "");
        add_fraction(text, f->nearer[i]);
    }
    if (f->nearer_count > shown)
        ts_buffer_add(text, " and so on");
}

/* Why no other hunting pair is nearer. */
static void proof(const ts_ratio_told *told, ts_page *page)
{
    const ts_ratio_facts *f = told->facts;
    const ts_ratio_wish  *w = told->wish;
    ts_buffer             text;
    open(page, &text);
    if (!f->has_nearest) {
        ts_buffer_print(&text, "No two tooth numbers from %d to %d are without a common divisor.",
                        w->z_least, w->z_most);
        send(page, &text);
        return;
    }
    ts_buffer_add(&text, "Of all that hunt, ");
    add_teeth(&text, told, &f->nearest);
    ts_buffer_add(&text, " is nearest (");
    add_error(&text, &f->nearest);
    ts_buffer_add(&text, ").  ");
    if (w->train != TS_RATIO_PAIR) {
        ts_buffer_add(&text, "It was found by looking at every one.");
    } else if (f->nearer_count == 0) {
        ts_buffer_print(&text,
                        "The Stern-Brocot tree has no ratio of whole numbers up to %d that is "
                        "nearer, hunting or not.",
                        w->z_most);
    } else {
        ts_buffer_print(&text,
                        "Of ratios in lowest terms with numbers up to %d, the Stern-Brocot "
                        "tree has ",
                        w->z_most);
        ts_buffer_integer(&text, (int64_t)f->nearer_count);
        ts_buffer_add(&text, " nearer: ");
        add_nearer(f, &text);
        ts_buffer_print(&text,
                        ".  Each asks for fewer than %d teeth on a gear; with more, its teeth are "
                        "a multiple and share it.",
                        w->z_least);
    }
    send(page, &text);
}

static void facts(const ts_ratio_told *told, ts_page *page)
{
    ts_page_heading(page, "Why no other");
    shares(told, page);
    exact(told, page);
    kept(told, page);
    proof(told, page);
}

/* ---- what was assumed --------------------------------------------------------------------------
 */

static void assumed(const ts_ratio_told *told, ts_page *page)
{
    ts_page_heading(page, "Assumptions");
    ts_buffer text;
    if (told->tolerance_assumed) {
        open(page, &text);
        ts_buffer_add(&text, "tolerance = 1 %: what most speed bands leave; common practice, no "
                             "source");
        send(page, &text);
    }
    if (told->teeth_assumed) {
        open(page, &text);
        ts_buffer_add(&text, "teeth = 17..97: 17 is free of undercut at 20 deg without profile "
                             "shift (textbook), 97 is as large as a box takes; common practice, "
                             "no source");
        send(page, &text);
    }
    if (told->angle_assumed) {
        open(page, &text);
        ts_buffer_add(&text, "pressure angle = 20 deg: ISO 53; x_1+x_2 from -0.5 to 1.5: common "
                             "practice, no source");
        send(page, &text);
    }
    open(page, &text);
    ts_buffer_add(&text, "Mass is the sum of the squares of the tooth numbers, which is the mass "
                         "of full gears of one module and one face, over that of the lightest.");
    send(page, &text);
}

void ts_ratio_page(const ts_ratio_told *told, ts_page *page)
{
    ts_page_tone(page, TS_TONE_STRONG);
    ts_buffer_add(page->out, "Tooth numbers for a ratio");
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_page_line_end(page);
    ts_page_tone(page, TS_TONE_FAINT);
    ts_page_wrap(page, told->caution, 0, 0);
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_page_line_end(page);
    asked(told, page);
    counts(told, page);
    list(told, page, "Closest first", &told->facts->closest);
    list(told, page, "Lightest first", &told->facts->lightest);
    facts(told, page);
    assumed(told, page);
}
