/* quantity/marked_number.c: which number was meant when signs stand between its digits? */
#include "quantity/marked_number.h"

#include <string.h>

static bool is_digit(ts_text text, size_t at)
{
    return at < text.length && text.at[at] >= '0' && text.at[at] <= '9';
}

/* The sign between two digits at `at`, as people part thousands: its bytes, or 0. */
static size_t mark_at(ts_text text, size_t at)
{
    static const char *const marks[] = {
        " ",
        ",",
        "'",
        "_",
        "\xC2\xA0",     /* no-break space     */
        "\xE2\x80\x89", /* thin space         */
        "\xE2\x80\xAF", /* narrow no-break    */
        "\xE2\x80\x99", /* right single quote */
    };
    for (size_t i = 0; i < sizeof marks / sizeof marks[0]; i++) {
        const size_t length = strlen(marks[i]);
        if (text.length - at > length && memcmp(text.at + at, marks[i], length) == 0 &&
            is_digit(text, at + length))
            return length;
    }
    return 0;
}

/* Copies the digits from `at` on and returns where they end. */
static size_t take_digits(ts_text text, size_t at, char **to)
{
    for (; is_digit(text, at); at++)
        *(*to)++ = text.at[at];
    return at;
}

ts_marked_number ts_read_marked_number(ts_text text)
{
    ts_marked_number m  = {.marks = 0};
    char            *to = m.plain;
    size_t           at = 0;
    if (text.length > TS_MARKED_MOST)
        text.length = TS_MARKED_MOST;
    if (at < text.length && (text.at[at] == '+' || text.at[at] == '-'))
        *to++ = text.at[at++];
    /* What begins with a zero has no thousands. */
    const size_t first = at;
    at                 = take_digits(text, at, &to);
    m.thousands        = at > first && at - first <= 3 && text.at[first] != '0';
    for (size_t mark = mark_at(text, at); mark > 0; mark = mark_at(text, at)) {
        const size_t group = at + mark;
        at                 = take_digits(text, group, &to);
        m.thousands        = m.thousands && at - group == 3;
        m.marks++;
    }
    m.length    = at;
    m.thousands = m.thousands && m.marks > 0;
    m.pointed   = at < text.length && text.at[at] == '.' && is_digit(text, at + 1);
    if (at < text.length)
        memcpy(to, text.at + at, text.length - at);
    return m;
}
