/* How do gears swing across their planes, and which waves do their own teeth meet? */
#include "report/check_page.h"
#include "report/json_quantity.h"
#include "report/whirl_report.h"

#include <math.h>

enum { INDENT = 2, NAME = 34, TEETH = 5, SHAPE = 10, HERTZ = 8, AT = 22, APART = 9 };
enum { SHOWN = 5 }; /* numbers of nodal diameters in a row */

static const char *shape_of(const ts_web_item *item)
{
    if (item->bevel)
        return "cone";
    return item->light ? "web" : "solid";
}

static void cell(ts_page *page, ts_buffer *text, int width)
{
    ts_page_right(page, (ts_text){text->bytes != NULL ? text->bytes : "", text->length}, width);
    ts_buffer_clear(text);
}

static void hertz(ts_buffer *text, double f)
{
    ts_buffer_fixed(text, f, 0);
}

static void frequency_row(const ts_web_item *item, ts_page *page, ts_buffer *text)
{
    ts_buffer_fill(page->out, ' ', INDENT);
    if (item->missing != NULL) {
        ts_buffer_print(text, "%s: not computed: %s is not known", item->name, item->missing);
        ts_page_wrap_made(page, text, INDENT, INDENT);
        ts_buffer_open(text, page->out->allocator);
        return;
    }
    ts_page_left(page, ts_text_of(item->name), NAME);
    ts_buffer_print(text, "%d", item->z);
    cell(page, text, TEETH);
    ts_page_right(page, ts_text_of(shape_of(item)), SHAPE);
    for (int n = 0; n < SHOWN; n++) {
        if (n < item->count)
            hertz(text, item->f[n]);
        else
            ts_buffer_add(text, "-");
        cell(page, text, HERTZ);
    }
    ts_page_line_end(page);
}

static void frequencies(const ts_webs *webs, ts_page *page, ts_buffer *text)
{
    ts_page_heading(page, "Gears across their planes");
    ts_page_tone(page, TS_TONE_FAINT);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_left(page, ts_text_of("gear on the shaft; Hz"), NAME);
    ts_page_right(page, ts_text_of("z"), TEETH);
    ts_page_right(page, ts_text_of("shape"), SHAPE);
    for (int n = 0; n < SHOWN; n++) {
        ts_buffer_print(text, "n = %d", n);
        cell(page, text, HERTZ);
    }
    ts_page_line_end(page);
    ts_page_tone(page, TS_TONE_PLAIN);
    for (uint32_t i = 0; i < webs->count; i++)
        frequency_row(&webs->items[i], page, text);
    ts_buffer_add(text,
                  "n: nodal diameters. solid: a disc from shaft to roots; web: rim and web of the "
                  "file; cone: a bevel gear, of which the file tells no web, as a disc as thick as "
                  "its cone is long. Clamped at the shaft, which is too stiff for n = 0 and 1; -: "
                  "so far above twice the tooth frequency that nothing meets it.");
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, text, INDENT, INDENT);
    ts_buffer_open(text, page->out->allocator);
}

/* ---- what meets what ---------------------------------------------------------------------------
 */

static double clearance_of(const ts_webs *webs)
{
    const ts_measure limit = webs->drive->limits.web_clearance;

    return ts_measure_known(limit) ? limit.value : (double)NAN;
}

static void say_wave(ts_buffer *text, const ts_web_wave *wave)
{
    ts_buffer_add(text, "f");
    if (wave->n > 0)
        ts_buffer_print(text, " %s %d N", wave->sense > 0 ? "+" : "-", wave->n);
}

static bool is_within(const ts_webs *webs, const ts_web_wave *wave)
{
    return wave->k > 0 && fabs(wave->gap) < clearance_of(webs);
}

static bool is_nearest(const ts_webs *webs, uint32_t i, uint32_t c, const ts_web_wave *wave)
{
    const ts_web_wave nearest = ts_web_nearest(webs, i, c, wave->k);

    return wave->k > 0 && nearest.n == wave->n && nearest.sense == wave->sense;
}

static void meeting_row(const ts_webs *webs, uint32_t i, uint32_t c, const ts_web_wave *wave,
                        ts_page *page, ts_buffer *text)
{
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_left(page, ts_text_of(webs->items[i].name), NAME);
    ts_page_left(page, ts_text_of(webs->drive->conditions[c].name), AT);
    ts_buffer_print(text, "%d z N", wave->k);
    cell(page, text, HERTZ);
    hertz(text, wave->excitation);
    cell(page, text, HERTZ);
    say_wave(text, wave);
    cell(page, text, SHAPE);
    hertz(text, wave->frequency);
    cell(page, text, HERTZ);
    ts_buffer_fixed(text, 100.0 * wave->gap, 1);
    ts_buffer_add(text, " %");
    cell(page, text, APART);
    ts_page_line_end(page);
}

/* All within the clearance; where nobody knows that, the nearest of each k. */
static void meeting_rows(const ts_webs *webs, uint32_t i, uint32_t c, ts_page *page,
                         ts_buffer *text)
{
    const bool known = !isnan(clearance_of(webs));

    for (int k = 1; k <= TS_WEB_HARMONICS; k++)
        for (int w = 0; w < ts_web_wave_count(&webs->items[i]); w++) {
            const ts_web_wave wave = ts_web_wave_at(webs, i, c, w, k);
            if (known ? is_within(webs, &wave) : is_nearest(webs, i, c, &wave))
                meeting_row(webs, i, c, &wave, page, text);
        }
}

static void say_which(const ts_webs *webs, ts_buffer *text)
{
    if (isnan(clearance_of(webs)))
        ts_buffer_add(text, "`web clearance` is not known: of every condition the wave nearest to "
                            "the tooth frequency z N, and the one nearest to twice it, k z N = f "
                            "+- n N.");
    else {
        ts_buffer_add(text,
                      "Every wave to which the tooth frequency z N or twice it, k z N = f +- n N, "
                      "is nearer than `web clearance`, ");
        ts_buffer_fixed(text, 100.0 * clearance_of(webs), 1);
        ts_buffer_add(text, " %, in every condition; --json has all of them, and the nearest where "
                            "none is within that.");
    }
    ts_buffer_add(text, " + runs with the gear, - against it.");
}

static void meetings(const ts_webs *webs, ts_page *page, ts_buffer *text)
{
    ts_page_heading(page, "Teeth that meet a wave");
    ts_page_tone(page, TS_TONE_FAINT);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_left(page, ts_text_of("gear on the shaft; Hz"), NAME);
    ts_page_left(page, ts_text_of("in"), AT);
    ts_page_right(page, ts_text_of("teeth"), HERTZ + HERTZ);
    ts_page_right(page, ts_text_of("wave"), SHAPE + HERTZ);
    ts_page_right(page, ts_text_of("apart"), APART);
    ts_page_line_end(page);
    ts_page_tone(page, TS_TONE_PLAIN);
    for (uint32_t i = 0; i < webs->count; i++)
        for (uint32_t c = 0; c < webs->drive->condition_count; c++)
            meeting_rows(webs, i, c, page, text);
    say_which(webs, text);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, text, INDENT, INDENT);
    ts_buffer_open(text, page->out->allocator);
}

void ts_web_page(const ts_webs *webs, ts_page *page)
{
    ts_buffer text;

    if (webs->count == 0)
        return;
    ts_buffer_open(&text, page->out->allocator);
    frequencies(webs, page, &text);
    meetings(webs, page, &text);
    ts_buffer_close(&text);
}

/* ---- as JSON and in a report ------------------------------------------------------------------
 */

static void wave_json(const ts_webs *webs, uint32_t c, const ts_web_wave *wave, ts_json *json)
{
    ts_json_object(json);
    ts_json_string_at(json, "condition", webs->drive->conditions[c].name);
    ts_json_integer_at(json, "k", wave->k);
    ts_json_integer_at(json, "n", wave->n);
    ts_json_integer_at(json, "sense", wave->sense);
    ts_json_number_at(json, "excitation", wave->excitation);
    ts_json_number_at(json, "wave", wave->frequency);
    ts_json_number_at(json, "gap", wave->gap);
    ts_json_end(json, '}');
}

/* All within the clearance, and of each k the nearest, however far it is. */
static void waves_json(const ts_webs *webs, uint32_t i, uint32_t c, ts_json *json)
{
    for (int k = 1; k <= TS_WEB_HARMONICS; k++)
        for (int w = 0; w < ts_web_wave_count(&webs->items[i]); w++) {
            const ts_web_wave wave = ts_web_wave_at(webs, i, c, w, k);
            if (is_within(webs, &wave) || is_nearest(webs, i, c, &wave))
                wave_json(webs, c, &wave, json);
        }
}

void ts_web_json(const ts_webs *webs, const ts_answer *answer, ts_json *json)
{
    ts_json_key(json, "gears");
    ts_json_array(json);
    for (uint32_t i = 0; i < webs->count; i++) {
        const ts_web_item *item = &webs->items[i];
        ts_json_object(json);
        ts_json_string_at(json, "shaft", item->name);
        ts_json_node(json, answer, "at", item->node);
        ts_json_integer_at(json, "z", item->z);
        ts_json_string_at(json, "shape", shape_of(item));
        if (item->missing != NULL)
            ts_json_string_at(json, "because", item->missing);
        ts_json_key(json, "frequencies");
        ts_json_array(json);
        for (int n = 0; n < item->count; n++)
            ts_json_number(json, item->f[n]);
        ts_json_end(json, ']');
        ts_json_key(json, "nearest");
        ts_json_array(json);
        for (uint32_t c = 0; c < webs->drive->condition_count; c++)
            waves_json(webs, i, c, json);
        ts_json_end(json, ']');
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

void ts_web_cells(ts_chapter *chapter, const ts_webs *webs)
{
    static const ts_column columns[] = {{"gear on the shaft", false},
                                        {"z", true},
                                        {"shape", false},
                                        {"n = 0, Hz", true},
                                        {"n = 1", true},
                                        {"n = 2", true},
                                        {"n = 3", true},
                                        {"n = 4", true}};

    ts_manuscript_table(chapter->manuscript, "Gears across their planes", columns, 3 + SHOWN);
    for (uint32_t i = 0; i < webs->count; i++) {
        const ts_web_item *item = &webs->items[i];
        if (item->missing != NULL)
            continue;
        ts_chapter_word(chapter, item->name);
        ts_buffer_print(&chapter->cell, "%d", item->z);
        ts_chapter_cell(chapter);
        ts_chapter_word(chapter, shape_of(item));
        for (int n = 0; n < SHOWN; n++) {
            if (n < item->count)
                hertz(&chapter->cell, item->f[n]);
            else
                ts_buffer_add(&chapter->cell, "-");
            ts_chapter_cell(chapter);
        }
    }
}
