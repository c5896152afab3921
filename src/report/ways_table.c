/* What became of every way to drive a box, and what can nothing weigh less than that is driven so?
 */
#include "report/arrange_report.h"

#include <math.h>

enum { INDENT = 4, WAYS_SHOWN = 12, GAP = 2 };

/* "hp, 1.500 mm, 35 teeth, bevels 31/36 and 25/56" */
static void way(const ts_arrange_told *told, const ts_page *page, const ts_pair_record *pair,
                ts_buffer *out)
{
    const ts_arrange_problem *p      = &told->problem->problem;
    const ts_arrange_choice  *choice = &p->boxes[pair->box].choices[pair->choice];
    ts_take_off_taken         taken;

    if (p->box_count > 1)
        ts_buffer_print(out, "%s box, ", p->boxes[pair->box].name);
    ts_page_value_text(page, out, told->problem->m_n[choice->module], TS_KIND_LENGTH, 4);
    ts_buffer_print(out, " %s, %u teeth", ts_kind_shown(TS_KIND_LENGTH, page->units)->name,
                    (unsigned)choice->z_in);
    if (!ts_arrange_take_off(told, pair->box, choice->take_off, &taken))
        return;
    ts_buffer_print(out, ", bevels %u/%u and %u/%u, shaft ", (unsigned)taken.spool.teeth[0],
                    (unsigned)taken.spool.teeth[1], (unsigned)taken.box.teeth[0],
                    (unsigned)taken.box.teeth[1]);
    ts_page_value_text(page, out, taken.outside, TS_KIND_LENGTH, 3);
}

static bool is_driven_so(const ts_arrangement *answer, const ts_pair_record *pair)
{
    const ts_arranged_box *box = &answer->boxes[pair->box];
    return box->present && box->choice == pair->choice;
}

/* "answers 1, 3", or "nothing below 10.656 kg". */
static void answers(const ts_arrange_told *told, const ts_page *page, const ts_pair_record *pair,
                    ts_buffer *out)
{
    const ts_arrange_result *r     = told->result;
    size_t                   count = 0, told_so_far = 0;
    for (size_t i = 0; i < r->count; i++)
        count += is_driven_so(&r->answers[i], pair) ? 1 : 0;
    for (size_t i = 0; i < r->count; i++)
        if (is_driven_so(&r->answers[i], pair))
            ts_buffer_print(out, "%s%zu",
                            told_so_far++ > 0 ? ", "
                            : count > 1       ? "answers "
                                              : "answer ",
                            i + 1);
    if (count > 0)
        return;
    ts_buffer_add(out, "nothing");
    if (r->count == 0 || !isfinite(r->bound))
        return;
    ts_buffer_add(out, " below ");
    ts_arrange_sum(told, page, r->bound, out);
}

static void end(const ts_arrange_told *told, const ts_page *page, const ts_pair_record *pair,
                ts_buffer *out)
{
    switch (pair->end) {
    case TS_PAIR_NO_WAY:
        ts_buffer_add(out, "cannot meet every demand");
        break;
    case TS_PAIR_BY_BOUND:
        ts_buffer_add(out, "closed: what it can weigh least is no less than what was found");
        break;
    case TS_PAIR_OPEN:
        ts_buffer_add(out, "open");
        break;
    default:
        ts_buffer_print(out, "%zu beginnings: ", (size_t)pair->labels.made);
        answers(told, page, pair, out);
        break;
    }
}

static int widest_way(const ts_arrange_told *told, const ts_page *page, size_t count)
{
    int widest = 0;
    for (size_t i = 0; i < count; i++) {
        ts_buffer text;
        ts_buffer_open(&text, page->out->allocator);
        way(told, page, &told->result->pairs[i], &text);
        const int here    = (int)ts_text_columns((ts_text){text.bytes, text.length});
        widest            = here > widest ? here : widest;
        page->out->failed = page->out->failed || text.failed;
        ts_buffer_close(&text);
    }
    return widest;
}

static void row(const ts_arrange_told *told, ts_page *page, const ts_pair_record *pair, int width)
{
    ts_buffer text;
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_buffer_open(&text, page->out->allocator);
    way(told, page, pair, &text);
    ts_page_left(page, (ts_text){text.bytes, text.length}, width + GAP);
    ts_buffer_clear(&text);
    if (isfinite(pair->bound))
        ts_arrange_kg(page, pair->bound, &text);
    else
        ts_buffer_add(&text, "-");
    ts_page_right(page, (ts_text){text.bytes, text.length}, 11);
    ts_buffer_fill(page->out, ' ', GAP);
    ts_buffer_clear(&text);
    end(told, page, pair, &text);
    const int used = INDENT + width + GAP + 11 + GAP;
    ts_page_wrap_made(page, &text, used, used);
}

/* In the order of the search: of each box those of the least bounds first. */
void ts_ways_table(const ts_arrange_told *told, ts_page *page)
{
    const ts_arrange_result *r     = told->result;
    const size_t             count = r->pair_count < WAYS_SHOWN ? r->pair_count : WAYS_SHOWN;
    const int                width = widest_way(told, page, count);
    if (count == 0)
        return;
    ts_page_tone(page, TS_TONE_FAINT);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_left(page, TS_TEXT("way"), width + GAP);
    ts_page_right(page, TS_TEXT("none below"), 11);
    ts_buffer_add(page->out, "  what became of it");
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_page_line_end(page);
    for (size_t i = 0; i < count; i++)
        row(told, page, &r->pairs[i], width);
    if (count < r->pair_count)
        ts_buffer_print(page->out, "    and %zu more; --json lists every one\n",
                        r->pair_count - count);
}
