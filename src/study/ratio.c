/* Which tooth numbers give a ratio that was written down? */
#include "towershaft/ratio.h"

#include "quantity/quantity.h"
#include "report/ratio_report.h"
#include "study/outlet.h"
#include "study/study.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define ANSWERS_USUAL 5
#define TEETH_USUAL   "17..97"
#define RATIO_MOST    100

/* ---- whole numbers and decimals, exactly ------------------------------------------------------
 */

/* "2.333" as 2333/1000; false when it is no decimal above 0 of nine digits at most. */
static bool read_decimal(ts_text text, ts_rational *out)
{
    int64_t over = 0, under = 1;
    size_t  digits = 0;
    bool    point  = false;
    for (size_t i = 0; i < text.length; i++) {
        const char c = text.at[i];
        if (c == '.' && !point) {
            point = true;
            continue;
        }
        if (c < '0' || c > '9' || ++digits > 9)
            return false;
        over = 10 * over + (c - '0');
        under *= point ? 10 : 1;
    }
    if (digits == 0 || over == 0)
        return false;
    *out = ts_rational_of(over, under);
    return true;
}

static ts_text trimmed(ts_text text)
{
    while (text.length > 0 && text.at[0] == ' ')
        text = (ts_text){text.at + 1, text.length - 1};
    while (text.length > 0 && text.at[text.length - 1] == ' ')
        text.length--;
    return text;
}

/* Both sides of a sign; false when it does not stand there. */
static bool split(const char *text, const char *sign, ts_text *left, ts_text *right)
{
    const char *at = strstr(text, sign);
    if (at == NULL)
        return false;
    *left  = trimmed((ts_text){text, (size_t)(at - text)});
    *right = trimmed(ts_text_of(at + strlen(sign)));
    return true;
}

/* ---- the wish ----------------------------------------------------------------------------------
 */

typedef struct asking {
    ts_study               *study;
    const ts_ratio_options *options;
    ts_ratio_wish           wish;
    ts_ratio_told           told;
} asking;

static bool refuse(asking *a, const char *says, const char *expected)
{
    ts_study_say(a->study, "no-ratio", says, expected, NULL);
    return false;
}

static bool fits(ts_rational r)
{
    return ts_rational_valid(r) && r.over <= 1000000000 && r.under <= 1000000000;
}

static bool read_span(asking *a, ts_text low, ts_text high)
{
    ts_ratio_wish *w = &a->wish;
    if (!read_decimal(low, &w->low) || !read_decimal(high, &w->high) ||
        ts_ratio_compare(w->low.over, w->low.under, w->high.over, w->high.under) > 0)
        return refuse(a, "the ratio is no span of two numbers", "such as 2.3..2.4");
    if (a->options->tolerance != NULL)
        return refuse(a, "a span has its tolerance in itself", "a ratio such as 2.35");
    const ts_rational left  = ts_rational_over(w->low, (ts_rational){2, 1});
    const ts_rational right = ts_rational_over(w->high, (ts_rational){2, 1});
    const int64_t     g     = (int64_t)ts_gcd((uint64_t)left.under, (uint64_t)right.under);
    /* Nine digits each: no product here reaches 2^63. */
    w->wanted = ts_rational_of(left.over * (right.under / g) + right.over * (left.under / g),
                               left.under / g * right.under);
    a->told.tolerance = (double)NAN;
    return fits(w->wanted) ||
           refuse(a, "the middle of the span has too many digits", "ends of four decimals at most");
}

/* "0.5 %" as 1/200. */
static bool read_tolerance(asking *a, ts_rational *out)
{
    const char *given = a->options->tolerance != NULL ? a->options->tolerance : "1 %";
    ts_text     text  = trimmed(ts_text_of(given));
    const bool  share = text.length > 0 && text.at[text.length - 1] == '%';
    text.length -= share ? 1 : 0;
    text = trimmed(text);
    if (text.length == 1 && text.at[0] == '0')
        *out = (ts_rational){0, 1};
    else if (!read_decimal(text, out))
        return refuse(a, "the tolerance cannot be read", "a share such as 0.5 %");
    if (share)
        *out = ts_rational_over(*out, (ts_rational){100, 1});
    if (out->over * 2 > out->under || out->under > 1000000)
        return refuse(a, "the tolerance is out of range", "at most 50 %, in steps of 0.0001 %");
    a->told.tolerance         = ts_rational_value(*out);
    a->told.tolerance_assumed = a->options->tolerance == NULL;
    return true;
}

static bool read_wanted(asking *a)
{
    const char    *text = a->options->wanted;
    ts_ratio_wish *w    = &a->wish;
    ts_rational    share, over, under = {1, 1};
    ts_text        left = trimmed(ts_text_of(text)), right;
    if (split(text, "..", &left, &right))
        return read_span(a, left, right);
    const bool fraction = split(text, "/", &left, &right) || split(text, ":", &left, &right);
    if (!read_decimal(left, &over) || (fraction && !read_decimal(right, &under)))
        return refuse(a, "the ratio cannot be read",
                      "driven over driving teeth, such as 56/24, 2.333 or 2.3..2.4");
    w->wanted = ts_rational_over(over, under);
    if (!fits(w->wanted))
        return refuse(a, "the ratio has too many digits", "nine digits at most");
    if (fraction && over.under == 1 && under.under == 1) {
        a->told.written[0] = over.over <= TS_RATIO_TEETH ? (int)over.over : 0;
        a->told.written[1] = under.over <= TS_RATIO_TEETH ? (int)under.over : 0;
    }
    if (!read_tolerance(a, &share))
        return false;
    const ts_rational r = w->wanted; /* below 2^30 each, with shares below 2^21 */
    w->low  = ts_rational_of(r.over * (share.under - share.over), r.under * share.under);
    w->high = ts_rational_of(r.over * (share.under + share.over), r.under * share.under);
    return true;
}

static bool in_range(asking *a)
{
    const double r = ts_rational_value(a->wish.wanted);
    return (r <= RATIO_MOST && r * RATIO_MOST >= 1.0) ||
           refuse(a, "the ratio is out of range", "from 1/100 to 100");
}

static bool read_teeth(asking *a)
{
    const char *given = a->options->teeth != NULL ? a->options->teeth : TEETH_USUAL;
    ts_text     left, right;
    ts_rational low, high;
    if (!split(given, "..", &left, &right) || !read_decimal(left, &low) ||
        !read_decimal(right, &high) || low.under != 1 || high.under != 1 || low.over < 4 ||
        high.over > TS_RATIO_TEETH || low.over > high.over)
        return refuse(a, "the span of teeth cannot be read",
                      "two whole numbers from 4 to 400, such as 17..97");
    a->wish.z_least       = (int)low.over;
    a->wish.z_most        = (int)high.over;
    a->told.teeth_assumed = a->options->teeth == NULL;
    for (int i = 0; i < 2; i++)
        if (a->told.written[i] < low.over || a->told.written[i] > high.over)
            a->told.written[0] = a->told.written[1] = 0;
    return true;
}

static bool read_train(asking *a)
{
    static const char *const names[] = {"pair", "idler", "cluster"};
    const char              *given   = a->options->train != NULL ? a->options->train : "pair";
    for (int i = 0; i < 3; i++)
        if (strcmp(given, names[i]) == 0) {
            a->wish.train = (ts_ratio_train)i;
            return a->wish.train != TS_RATIO_TWO ||
                   a->wish.z_most - a->wish.z_least < TS_RATIO_CLUSTER ||
                   refuse(a, "the span of teeth is too wide for a cluster",
                          "160 different tooth numbers at most");
        }
    return refuse(a, "there is no such train", "pair, idler or cluster");
}

static bool read_measure(asking *a, const char *text, ts_kind kind, double *out)
{
    ts_quantity_fault fault;
    if (ts_quantity_parse(ts_text_of(text), kind, out, NULL, &fault) && *out > 0.0)
        return true;
    return refuse(
        a, kind == TS_KIND_ANGLE ? "the pressure angle cannot be read" : "a length cannot be read",
        kind == TS_KIND_ANGLE ? "an angle such as 20 deg" : "a length such as 90 mm");
}

static bool read_centre(asking *a)
{
    const ts_ratio_options *o = a->options;
    ts_ratio_centre        *c = &a->wish.centre;
    if (o->centre == NULL && o->module == NULL && o->pressure_angle == NULL)
        return true;
    if (o->centre == NULL || o->module == NULL || a->wish.train != TS_RATIO_PAIR)
        return refuse(a, "a centre distance and a module go together, for a pair",
                      "both, such as 90 mm and 1.5 mm");
    if (!read_measure(a, o->centre, TS_KIND_LENGTH, &c->a_w) ||
        !read_measure(a, o->module, TS_KIND_LENGTH, &c->m_n) ||
        !read_measure(a, o->pressure_angle != NULL ? o->pressure_angle : "20 deg", TS_KIND_ANGLE,
                      &c->alpha))
        return false;
    a->told.angle_assumed = o->pressure_angle == NULL;
    c->x_least            = -0.5;
    c->x_most             = 1.5;
    return (c->alpha > 0.1 && c->alpha < 0.8) ||
           refuse(a, "the pressure angle is out of range", "from 6 deg to 45 deg");
}

/* ---- the answer -------------------------------------------------------------------------------
 */

static ts_status tell(asking *a, const ts_ratio_facts *facts, const ts_page_options *shown,
                      const ts_sink *sink)
{
    ts_buffer out;
    a->told.wish    = &a->wish;
    a->told.facts   = facts;
    a->told.caution = ts_caution();
    a->told.version = ts_version();
    ts_buffer_open(&out, a->study->allocator);
    ts_page page = ts_outlet_page(shown, &out);
    if (a->options->json)
        ts_ratio_json(&a->told, &out);
    else
        ts_ratio_page(&a->told, &page);
    const ts_status status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}

ts_status ts_ratio_write(ts_study *study, const ts_ratio_options *options,
                         const ts_page_options *page, bool *found, const ts_sink *sink)
{
    asking          a = {.study = study, .options = options};
    const ts_status status =
        ts_study_begin(study, options->wanted, options->wanted, strlen(options->wanted));
    *found = false;
    if (status != TS_OK)
        return status;
    a.wish.sharing = options->sharing;
    a.wish.room    = options->answers > 0 ? options->answers : ANSWERS_USUAL;
    if (a.wish.room > TS_RATIO_ROOM)
        a.wish.room = TS_RATIO_ROOM;
    if (!read_wanted(&a) || !in_range(&a) || !read_teeth(&a) || !read_train(&a) || !read_centre(&a))
        return TS_NOT_UNDERSTOOD;
    ts_ratio_facts facts;
    ts_ratio_find(&a.wish, &facts, NULL, NULL);
    *found = facts.closest.count > 0;
    return tell(&a, &facts, page, sink);
}
