/* How safe are the teeth of every mesh over the whole life, and what sets that? */
#include "report/check_page.h"

#include "rating/iso6336/edition.h"

#include <math.h>

/* A mesh takes two lines, its name and below it the numbers, so that both fit a narrow page. */
#define INDENT       2
#define SAFETY_WIDTH 8
#define MARGIN_WIDTH 11
#define WORDS_AT     (INDENT + 4 * SAFETY_WIDTH + MARGIN_WIDTH + 2)

static void safety(ts_page *page, double S)
{
    if (isinf(S))
        ts_page_right(page, TS_TEXT("\xC2\xB7"), SAFETY_WIDTH);
    else
        ts_page_value(page, S, TS_KIND_NUMBER, 3, SAFETY_WIDTH);
}

static void margin(ts_page *page, double reserve, ts_buffer *text)
{
    if (isnan(reserve))
        ts_buffer_add(text, "?");
    else if (isinf(reserve))
        ts_buffer_add(text, "\xC2\xB7");
    else {
        ts_buffer_add(text, reserve < 0.0 ? "" : "+");
        ts_buffer_fixed(text, 100.0 * reserve, 1);
        ts_buffer_add(text, " %");
    }
    ts_page_right(page, (ts_text){text->bytes != NULL ? text->bytes : "", text->length},
                  MARGIN_WIDTH);
    page->out->failed = page->out->failed || text->failed;
    ts_buffer_clear(text);
}

/* "crank, other flank: bending of the pinion" */
static void set_by(const ts_answer *answer, ts_page *page, uint32_t m, ts_buffer *text)
{
    const ts_mesh_strength *strength = &answer->teeth->strength[m];
    const ts_flank_life    *life     = &strength->life;
    if (!isfinite(strength->reserve)) {
        ts_page_line_end(page);
        return;
    }
    const ts_mesh_load *load =
        &answer->power->mesh[(size_t)life->condition * answer->train->mesh_count + life->mesh];
    ts_buffer_print(text, "%s%s: %s of the %s", ts_answer_condition(answer, life->condition),
                    load->flow == TS_FLOW_INWARD ? ", other flank" : "",
                    ts_rated_stress_says(strength->stress),
                    ts_mesh_side_says(answer->train, m, strength->gear));
    page->out->failed = page->out->failed || text->failed;
    ts_buffer_add(page->out, "  ");
    if (!text->failed)
        ts_page_wrap(page, text->bytes, WORDS_AT, WORDS_AT);
    ts_buffer_clear(text);
}

static void row(const ts_answer *answer, ts_page *page, uint32_t m, ts_buffer *text)
{
    const ts_train         *train    = answer->train;
    const ts_mesh          *mesh     = &train->meshes[m];
    const ts_mesh_strength *strength = &answer->teeth->strength[m];
    ts_buffer_print(text, "%s > %s", train->shafts[mesh->driver_shaft].name,
                    train->shafts[mesh->driven_shaft].name);
    page->out->failed = page->out->failed || text->failed;
    if (!text->failed)
        ts_page_wrap(page, text->bytes, INDENT, 0);
    ts_buffer_clear(text);
    ts_buffer_fill(page->out, ' ', INDENT);
    safety(page, strength->S_H[0]);
    safety(page, strength->S_H[1]);
    safety(page, strength->S_F[0]);
    safety(page, strength->S_F[1]);
    margin(page, strength->reserve, text);
    set_by(answer, page, m, text);
}

static void heads(ts_page *page)
{
    static const char *const safeties[] = {"S_H1", "S_H2", "S_F1", "S_F2"};
    ts_page_tone(page, TS_TONE_FAINT);
    ts_buffer_add(page->out, "mesh\n");
    ts_buffer_fill(page->out, ' ', INDENT);
    for (int i = 0; i < 4; i++)
        ts_page_right(page, ts_text_of(safeties[i]), SAFETY_WIDTH);
    ts_page_right(page, TS_TEXT("margin"), MARGIN_WIDTH);
    ts_buffer_add(page->out, "  set by");
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_page_line_end(page);
}

static void heading(const ts_answer *answer, ts_page *page, ts_buffer *text)
{
    const ts_iso6336_year year =
        answer->drive->method.teeth.value == TS_TEETH_ISO_2006 ? TS_ISO6336_2006 : TS_ISO6336_2019;
    ts_buffer_print(text, "Tooth strength (%s), all conditions of the life together; least S_H ",
                    ts_iso6336_edition_of(year)->name);
    ts_page_short(text, answer->teeth->S_Hmin, 4);
    ts_buffer_add(text, ", S_F ");
    ts_page_short(text, answer->teeth->S_Fmin, 4);
    page->out->failed = page->out->failed || text->failed;
    ts_buffer_add(page->out, "\n");
    ts_page_tone(page, TS_TONE_STRONG);
    if (!text->failed)
        ts_page_wrap(page, text->bytes, INDENT, 0);
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_buffer_clear(text);
}

void ts_strength_table(const ts_answer *answer, ts_page *page)
{
    ts_buffer text;
    if (answer->teeth == NULL)
        return;
    ts_buffer_open(&text, page->out->allocator);
    heading(answer, page, &text);
    heads(page);
    for (uint32_t m = 0; m < answer->train->mesh_count; m++)
        if (answer->train->meshes[m].kind == TS_MESH_CYLINDRICAL)
            row(answer, page, m, &text);
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
}
