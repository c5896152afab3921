/* How fast does every pad turn in every condition, and is that inside its band? */
#include "report/check_page.h"

#include <math.h>

#define NUMBER_WIDTH 3
#define NAME_LEAST   8
#define FACE_WIDTH   6
#define SENSE_WIDTH  4
#define LEAST_WIDTH  9
#define MOST_WIDTH   14 /* that is taken where there is room */

typedef struct column {
    int from, to; /* conditions shown in this block */
    int width;
    int name; /* columns of the names of pads */
} column;

static int head_width(int name)
{
    return NUMBER_WIDTH + 1 + name + 1 + FACE_WIDTH + SENSE_WIDTH;
}

/* As wide as the longest name, and at most a third of the page. */
static int name_width(const ts_answer *answer, const ts_page *page)
{
    int widest = NAME_LEAST;
    for (uint32_t p = 0; p < answer->train->pad_count; p++) {
        const int width = (int)ts_text_columns(ts_text_of(answer->train->pads[p].name));
        widest          = width > widest ? width : widest;
    }
    return widest < page->columns / 3 ? widest : page->columns / 3;
}

static bool misses(const ts_span *band, double n)
{
    return band->standing == TS_GIVEN && !(n >= band->low && n <= band->high);
}

static void heads(const ts_answer *answer, ts_page *page, column at)
{
    ts_page_tone(page, TS_TONE_FAINT);
    ts_page_right(page, TS_TEXT("no"), NUMBER_WIDTH);
    ts_buffer_add(page->out, " ");
    ts_page_left(page, TS_TEXT("pad"), at.name + 1);
    ts_page_left(page, TS_TEXT("face"), FACE_WIDTH);
    ts_page_left(page, TS_TEXT("turns"), SENSE_WIDTH + 1);
    for (int c = at.from; c < at.to; c++) {
        ts_page_right(page, ts_text_of(answer->drive->conditions[c].name), at.width - 1);
        ts_buffer_add(page->out, " ");
    }
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_page_line_end(page);
}

static void speeds(const ts_answer *answer, ts_page *page, column at, const ts_pad *pad)
{
    const ts_accessory *accessory =
        pad->accessory >= 0 ? &answer->drive->accessories[pad->accessory] : NULL;
    for (int c = at.from; c < at.to; c++) {
        const double n = answer->motion->speed[(size_t)c * answer->train->shaft_count + pad->shaft];
        const bool   miss = accessory != NULL && misses(&accessory->speed[c], n);
        if (miss)
            ts_page_tone(page, TS_TONE_REFUSE);
        ts_page_speed(page, n, at.width - 1);
        ts_buffer_add(page->out, miss ? "!" : " ");
        if (miss)
            ts_page_tone(page, TS_TONE_PLAIN);
    }
}

static void band_text(ts_page *page, const ts_span *band, ts_buffer *out)
{
    const ts_unit *unit = ts_kind_shown(TS_KIND_ROTATIONAL_SPEED, page->units);
    ts_buffer_clear(out);
    if (isfinite(band->low))
        ts_page_short(out, ts_from_si(band->low, unit), 6);
    ts_buffer_add(out, "..");
    if (isfinite(band->high))
        ts_page_short(out, ts_from_si(band->high, unit), 6);
}

/* Good until the buffer is used again. */
static ts_text band_shown(ts_page *page, const ts_span *band, ts_buffer *text)
{
    if (band->standing == TS_UNKNOWN)
        return TS_TEXT("?");
    if (band->standing != TS_GIVEN)
        return TS_TEXT("\xC2\xB7");
    band_text(page, band, text);
    return (ts_text){text->bytes != NULL ? text->bytes : "", text->length};
}

/* The second line of a pad: its band where it has one. */
static void bands(ts_page *page, column at, const ts_accessory *accessory)
{
    ts_buffer text;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_fill(page->out, ' ', (size_t)head_width(at.name) + 1);
    ts_page_tone(page, TS_TONE_FAINT);
    for (int c = at.from; c < at.to; c++) {
        ts_page_right(page, band_shown(page, &accessory->speed[c], &text), at.width - 1);
        ts_buffer_add(page->out, " ");
    }
    page->out->failed = page->out->failed || text.failed;
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_page_line_end(page);
    ts_buffer_close(&text);
}

static void row(const ts_answer *answer, ts_page *page, column at, const ts_pad *pad)
{
    ts_buffer number;
    ts_buffer_open(&number, page->out->allocator);
    ts_buffer_integer(&number, answer->train->shafts[pad->shaft].number);
    page->out->failed = page->out->failed || number.failed;
    ts_page_right(page, (ts_text){number.bytes != NULL ? number.bytes : "", number.length},
                  NUMBER_WIDTH);
    ts_buffer_close(&number);
    ts_buffer_add(page->out, " ");
    ts_page_left(page, ts_text_of(pad->name), at.name);
    ts_buffer_add(page->out, " ");
    ts_page_left(page, pad->face == TS_FRONT ? TS_TEXT("front") : TS_TEXT("rear"), FACE_WIDTH);
    ts_page_left(page, ts_pad_sense(answer->motion, pad) > 0 ? TS_TEXT("ccw") : TS_TEXT("cw"),
                 SENSE_WIDTH + 1);
    speeds(answer, page, at, pad);
    ts_page_line_end(page);
    if (pad->accessory >= 0)
        bands(page, at, &answer->drive->accessories[pad->accessory]);
}

static bool has_demand(const ts_answer *answer, const ts_accessory *accessory)
{
    for (size_t c = 0; c < answer->drive->condition_count; c++)
        if (accessory->speed[c].standing == TS_GIVEN || accessory->speed[c].standing == TS_UNKNOWN)
            return true;
    return false;
}

static void no_band(ts_page *page, const char *name)
{
    ts_buffer text;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text, "%s: the file states no speed band", name);
    ts_buffer_fill(page->out, ' ', 4);
    ts_page_wrap_made(page, &text, 8, 4);
}

/* Bands and names of conditions stand in full wherever one column of them fits the page. */
static int least_width(const ts_answer *answer, ts_page *page)
{
    size_t    widest = LEAST_WIDTH - 2;
    ts_buffer text;
    ts_buffer_open(&text, page->out->allocator);
    for (size_t c = 0; c < answer->drive->condition_count; c++) {
        size_t width = ts_text_columns(ts_text_of(answer->drive->conditions[c].name));
        widest       = width > widest ? width : widest;
        for (size_t a = 0; a < answer->drive->accessory_count; a++) {
            width =
                ts_text_columns(band_shown(page, &answer->drive->accessories[a].speed[c], &text));
            widest = width > widest ? width : widest;
        }
    }
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
    return (int)widest + 2;
}

void ts_speed_table(const ts_answer *answer, ts_page *page)
{
    const int count = (int)answer->drive->condition_count;
    if (count < 1)
        return;
    const int name  = name_width(answer, page);
    const int room  = page->columns - head_width(name) - 1;
    const int most  = least_width(answer, page);
    const int least = most < room ? most : room;
    int       fit   = room / least;
    fit             = fit > count ? count : fit;
    fit             = fit < 1 ? 1 : fit;
    /* Blocks of equal size rather than a last one with a single column. */
    const int blocks = (count + fit - 1) / fit, each = (count + blocks - 1) / blocks;
    int       width = room / each;
    width           = width > MOST_WIDTH && least <= MOST_WIDTH ? MOST_WIDTH : width;
    ts_page_heading(page, "Pad speeds, rpm (turns: facing the pad; below: the band; !: outside)");
    for (int from = 0; from < count; from += each) {
        const column at = {from, from + each < count ? from + each : count, width, name};
        if (from > 0)
            ts_page_line_end(page);
        heads(answer, page, at);
        for (uint32_t p = 0; p < answer->train->pad_count; p++)
            row(answer, page, at, &answer->train->pads[p]);
    }
    for (size_t a = 0; a < answer->drive->accessory_count; a++)
        if (!has_demand(answer, &answer->drive->accessories[a]))
            no_band(page, answer->drive->accessories[a].name);
}
