/* Which answer holds most often under the same samples? */
#include "report/arrange_report.h"

#include <math.h>

#define INDENT 4

static bool is_asked(const ts_arrange_told *told)
{
    return told->robust != NULL && told->robust->samples.study != NULL;
}

static void add_percent(ts_buffer *out, double share)
{
    ts_page_short(out, 100.0 * share, 3);
    ts_buffer_add(out, " %");
}

static void cell(ts_page *page, ts_buffer *text, int width)
{
    ts_page_right(page, (ts_text){text->bytes, text->length}, width);
    ts_buffer_clear(text);
}

static void send(ts_page *page, ts_buffer *text)
{
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, text, INDENT, INDENT);
}

/* ---- the table ------------------------------------------------------------------------------- */

static void head(ts_page *page)
{
    ts_page_tone(page, TS_TONE_FAINT);
    ts_page_left(page, TS_TEXT("    answer"), 12);
    ts_page_right(page, TS_TEXT("holds"), 9);
    ts_page_right(page, TS_TEXT("95 % sure"), 18);
    ts_page_right(page, TS_TEXT("lightest that holds"), 21);
    ts_page_left(page, TS_TEXT("   refused most often by"), 24);
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_page_line_end(page);
}

static void worst(ts_page *page, const ts_sampled_answer *of, uint64_t count, ts_buffer *text)
{
    if (of->rule == NULL) {
        ts_buffer_add(text, "nothing");
    } else {
        ts_buffer_print(text, "%s at %s, ", of->rule, of->address);
        add_percent(text, (double)of->hits / (double)count);
    }
    ts_buffer_print(page->out, "   %.*s", (int)text->length,
                    text->bytes != NULL ? text->bytes : "");
    ts_buffer_clear(text);
}

static void row(const ts_arrange_told *told, ts_page *page, size_t answer)
{
    const ts_sampled_answers *s  = &told->robust->samples;
    const ts_sampled_answer  *of = &s->answers[answer];
    ts_buffer                 text;

    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_buffer_integer(&text, (int64_t)answer + 1);
    ts_page_left(page, (ts_text){text.bytes, text.length}, 12 - INDENT);
    ts_buffer_clear(&text);
    if (of->refusal != NULL) {
        ts_buffer_print(page->out, "    takes no samples: %s", of->refusal);
    } else if (s->count == 0) {
        ts_buffer_add(page->out, "    none was computed before the end");
    } else {
        add_percent(&text, of->hold.share);
        cell(page, &text, 9);
        add_percent(&text, of->hold.low);
        ts_buffer_add(&text, " to ");
        add_percent(&text, of->hold.high);
        cell(page, &text, 18);
        add_percent(&text, (double)of->lightest / (double)s->count);
        cell(page, &text, 21);
        worst(page, of, s->count, &text);
    }
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
    ts_page_line_end(page);
}

/* ---- what follows from it -------------------------------------------------------------------- */

#define TS_LUCK_MOST                                                                               \
    0.025 /* beyond it a difference is not told as one; common practice, no source */

/* An answer against the one beside: samples in which only one of the two holds.  False: none. */
static bool compare(const ts_arrange_told *told, ts_page *page, size_t answer)
{
    const ts_sampled_answers *s  = &told->robust->samples;
    const ts_sampled_answer  *of = &s->answers[answer];
    ts_buffer                 text;

    if (of->gains + of->loses == 0)
        return false;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text,
                    "Answer %zu against answer %zu: it alone holds in %zu samples, the other alone "
                    "in %zu: ",
                    answer + 1, s->beside + 1, (size_t)of->gains, (size_t)of->loses);
    ts_buffer_add(&text, of->luck > TS_LUCK_MOST ? "so few may be chance, which alone makes "
                         : of->gains > of->loses ? "it holds more often; chance alone makes "
                                                 : "it holds less often; chance alone makes ");
    ts_buffer_add(&text, "a difference like that in ");
    add_percent(&text, of->luck);
    ts_buffer_add(&text, " of such studies.");
    send(page, &text);
    return true;
}

static void compare_all(const ts_arrange_told *told, ts_page *page)
{
    const ts_sampled_answers *s    = &told->robust->samples;
    size_t                    same = 0;
    ts_buffer                 text;

    for (size_t i = 0; i < told->result->count; i++) {
        const size_t answer = s->order[i];
        if (answer != s->beside && s->answers[answer].refusal == NULL)
            same += compare(told, page, answer) ? 0 : 1;
    }
    if (same == 0)
        return;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text, "%zu other%s in the same samples as answer %zu.", same,
                    same == 1 ? " holds" : "s hold", s->beside + 1);
    send(page, &text);
}

static bool is_tied(const ts_arrange_told *told)
{
    const ts_sampled_answers *s = &told->robust->samples;

    return told->result->count > 1 && s->answers[s->order[1]].refusal == NULL &&
           s->answers[s->order[0]].states[TS_SAMPLE_HOLDS] ==
               s->answers[s->order[1]].states[TS_SAMPLE_HOLDS];
}

static void best(const ts_arrange_told *told, ts_page *page)
{
    const ts_sampled_answers *s    = &told->robust->samples;
    const size_t              most = s->order[0];
    ts_buffer                 text;

    if (s->answers[most].refusal != NULL)
        return;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text, "Answer %zu holds ", most + 1);
    ts_buffer_add(&text,
                  is_tied(told) ? "as often as any, and is the lightest that does" : "most often");
    if (most != s->beside) {
        const double kg = told->verdicts[most].account.sum;
        ts_buffer_add(&text, ": ");
        ts_arrange_sum(told, page, kg, &text);
        ts_buffer_add(&text, ", ");
        ts_arrange_regret(told, page, kg, &text);
        ts_buffer_add(&text, " over the lightest");
    }
    ts_buffer_print(&text, ". In %zu of the samples none of these holds.", (size_t)s->none);
    send(page, &text);
}

void ts_sampled_answers_page(const ts_arrange_told *told, ts_page *page)
{
    if (!is_asked(told))
        return;
    const ts_sampled_answers *s = &told->robust->samples;
    ts_buffer                 text;

    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text, "Under the same %zu samples of %s", (size_t)s->count, s->study);
    ts_page_heading(page, text.failed ? "" : text.bytes);
    ts_buffer_clear(&text);
    if (s->count < s->due) {
        ts_buffer_print(&text, "Ended before all %zu were computed.", (size_t)s->due);
        send(page, &text);
    } else {
        ts_buffer_close(&text);
    }
    head(page);
    for (size_t i = 0; i < told->result->count; i++)
        row(told, page, s->order[i]);
    if (s->count == 0)
        return;
    best(told, page);
    compare_all(told, page);
}

/* ---- JSON ------------------------------------------------------------------------------------ */

static void chance_json(ts_json *json, const char *key, ts_chance chance)
{
    ts_json_key(json, key);
    ts_json_object(json);
    ts_json_number_at(json, "share", chance.share);
    ts_json_number_at(json, "low", chance.low);
    ts_json_number_at(json, "high", chance.high);
    ts_json_end(json, '}');
}

static void integer_at(ts_json *json, const char *key, uint64_t value)
{
    ts_json_key(json, key);
    ts_json_integer(json, (int64_t)value);
}

static void string_at(ts_json *json, const char *key, const char *value)
{
    ts_json_key(json, key);
    if (value != NULL)
        ts_json_string(json, value);
    else
        ts_json_null(json);
}

static void answer_json(ts_json *json, size_t answer, const ts_sampled_answer *of)
{
    ts_json_object(json);
    integer_at(json, "answer", answer);
    string_at(json, "refusal", of->refusal);
    integer_at(json, "holds", of->states[TS_SAMPLE_HOLDS]);
    integer_at(json, "does_not_hold", of->states[TS_SAMPLE_DOES_NOT_HOLD]);
    integer_at(json, "not_computable", of->states[TS_SAMPLE_NOT_COMPUTABLE]);
    integer_at(json, "not_understood", of->states[TS_SAMPLE_NOT_UNDERSTOOD]);
    chance_json(json, "chance", of->hold);
    integer_at(json, "lightest", of->lightest);
    integer_at(json, "alone", of->gains);
    integer_at(json, "other_alone", of->loses);
    chance_json(json, "alone_of_both", of->better);
    ts_json_number_at(json, "by_chance", of->luck);
    string_at(json, "rule", of->rule);
    string_at(json, "address", of->address);
    integer_at(json, "hits", of->hits);
    ts_json_end(json, '}');
}

void ts_sampled_answers_json(const ts_arrange_told *told, ts_json *json)
{
    ts_json_key(json, "samples");
    if (!is_asked(told)) {
        ts_json_null(json);
        return;
    }
    const ts_sampled_answers *s = &told->robust->samples;
    ts_json_object(json);
    string_at(json, "study", s->study);
    string_at(json, "sha256", s->sha256);
    integer_at(json, "seed", s->seed);
    integer_at(json, "due", s->due);
    integer_at(json, "count", s->count);
    integer_at(json, "none", s->none);
    integer_at(json, "beside", s->beside);
    ts_json_key(json, "answers");
    ts_json_array(json);
    for (size_t i = 0; i < told->result->count; i++)
        answer_json(json, s->order[i], &s->answers[s->order[i]]);
    ts_json_end(json, ']');
    ts_json_end(json, '}');
}
