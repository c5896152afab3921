/* How does a page for a terminal hold its columns? */
#include "report/page.h"

#include "base/text_wrap.h"

#include <math.h>
#include <string.h>

static const char *const level_names[] = {"refuse", "warn", "note"};
static const char *const state_names[] = {"open", "waived", "not computable"};

const char *ts_level_name(ts_level level)
{
    return level_names[level];
}

const char *ts_state_name(ts_state state)
{
    return state_names[state];
}

void ts_page_tone(ts_page *page, ts_tone tone)
{
    static const char *const codes[] = {"\033[0m",  "\033[1m",  "\033[2m",
                                        "\033[31m", "\033[33m", "\033[34m"};
    if (page->colour)
        ts_buffer_add(page->out, codes[tone]);
}

void ts_page_heading(ts_page *page, const char *text)
{
    ts_buffer_add(page->out, "\n");
    ts_page_tone(page, TS_TONE_STRONG);
    (void)ts_page_spread(page, ts_text_of(text), 2, 0);
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_buffer_add(page->out, "\n");
}

void ts_page_line_end(ts_page *page)
{
    ts_buffer *out = page->out;
    while (out->length > 0 && out->bytes[out->length - 1] == ' ')
        out->bytes[--out->length] = '\0';
    ts_buffer_add(out, "\n");
}

/* Bytes of the first `columns` columns. */
static size_t bytes_of_columns(ts_text text, size_t columns)
{
    size_t bytes = 0;
    while (bytes < text.length) {
        size_t next = bytes + 1;
        while (next < text.length && ((unsigned char)text.at[next] & 0xC0u) == 0x80u)
            next++;
        if (ts_text_columns((ts_text){text.at, next}) > columns)
            break;
        bytes = next;
    }
    return bytes;
}

/* The text, or its beginning and an ellipsis; returns the columns taken. */
static size_t fit(ts_page *page, ts_text text, int width, bool write)
{
    const size_t most = width > 0 ? (size_t)width : 0, whole = ts_text_columns(text);
    if (whole <= most) {
        if (write)
            ts_buffer_text(page->out, text);
        return whole;
    }
    const ts_text head = {text.at, bytes_of_columns(text, most > 0 ? most - 1 : 0)};
    if (write && most > 0) {
        ts_buffer_text(page->out, head);
        ts_buffer_add(page->out, "\xE2\x80\xA6");
    }
    return most > 0 ? ts_text_columns(head) + 1 : 0;
}

void ts_page_left(ts_page *page, ts_text text, int width)
{
    const size_t taken = fit(page, text, width, true);
    if (taken < (size_t)width)
        ts_buffer_fill(page->out, ' ', (size_t)width - taken);
}

void ts_page_right(ts_page *page, ts_text text, int width)
{
    const size_t taken = fit(page, text, width, false);
    if (taken < (size_t)width)
        ts_buffer_fill(page->out, ' ', (size_t)width - taken);
    fit(page, text, width, true);
}

size_t ts_page_spread(ts_page *page, ts_text text, int indent, int used)
{
    return ts_wrap_text(page->out, text,
                        (ts_wrap){(size_t)page->columns, (size_t)indent, (size_t)used});
}

void ts_page_wrap(ts_page *page, const char *text, int indent, int used)
{
    (void)ts_page_spread(page, ts_text_of(text), indent, used);
    ts_page_line_end(page);
}

void ts_page_wrap_made(ts_page *page, ts_buffer *made, int indent, int used)
{
    page->out->failed = page->out->failed || made->failed;
    if (!page->out->failed)
        ts_page_wrap(page, made->bytes != NULL ? made->bytes : "", indent, used);
    ts_buffer_close(made);
}

static ts_tone tone_of(const ts_finding *finding)
{
    if (finding->state != TS_OPEN)
        return TS_TONE_FAINT;
    return finding->level == TS_REFUSE ? TS_TONE_REFUSE
                                       : (finding->level == TS_WARN ? TS_TONE_WARN : TS_TONE_NOTE);
}

void ts_page_sign(ts_page *page, const ts_finding *finding)
{
    static const char *const open_signs[] = {"[X]", "[!]", "[i]"};
    const char              *sign         = finding->state == TS_OPEN ? open_signs[finding->level]
                                            : finding->state == TS_WAIVED ? "[/]"
                                                                          : "[?]";
    ts_page_tone(page, tone_of(finding));
    ts_buffer_add(page->out, sign);
    ts_page_tone(page, TS_TONE_PLAIN);
}

void ts_page_short(ts_buffer *out, double value, int digits)
{
    const size_t before = out->length;
    ts_buffer_significant(out, value, digits);
    if (out->failed || memchr(out->bytes + before, '.', out->length - before) == NULL ||
        memchr(out->bytes + before, 'e', out->length - before) != NULL)
        return;
    while (out->bytes[out->length - 1] == '0')
        out->length--;
    out->length -= out->bytes[out->length - 1] == '.';
    out->bytes[out->length] = '\0';
}

static void right(ts_page *page, ts_buffer *text, int width)
{
    page->out->failed = page->out->failed || text->failed;
    if (!text->failed)
        ts_page_right(page, (ts_text){text->bytes, text->length}, width);
    ts_buffer_close(text);
}

void ts_page_value_text(const ts_page *page, ts_buffer *out, double si, ts_kind kind, int digits)
{
    if (isnan(si))
        ts_buffer_add(out, "?");
    else if (si == 0.0)
        ts_buffer_add(out, "0");
    else
        ts_buffer_significant(out, ts_from_si(si, ts_kind_shown(kind, page->units)), digits);
}

void ts_page_value(ts_page *page, double si, ts_kind kind, int digits, int width)
{
    ts_buffer text;
    ts_buffer_open(&text, page->out->allocator);
    ts_page_value_text(page, &text, si, kind, digits);
    right(page, &text, width);
}

void ts_page_speed_text(const ts_page *page, ts_buffer *out, double si)
{
    const double rpm = ts_from_si(si, ts_kind_shown(TS_KIND_ROTATIONAL_SPEED, page->units));
    if (isnan(si))
        ts_buffer_add(out, "?");
    else if (fabs(rpm) >= 1000.0)
        ts_buffer_fixed(out, rpm, 0);
    else
        ts_page_short(out, rpm, 4);
}

void ts_page_speed(ts_page *page, double si, int width)
{
    ts_buffer text;
    ts_buffer_open(&text, page->out->allocator);
    ts_page_speed_text(page, &text, si);
    right(page, &text, width);
}
