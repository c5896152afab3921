/* How are tooth numbers for a ratio written as JSON, by docs/schema/ratio.schema.json? */
#include "report/ratio_report.h"

#include "base/json_writer.h"

#include <math.h>

static void integer(ts_json *json, const char *key, int64_t value)
{
    ts_json_key(json, key);
    ts_json_integer(json, value);
}

static void number(ts_json *json, const char *key, double value)
{
    ts_json_key(json, key);
    if (isfinite(value))
        ts_json_number(json, value);
    else
        ts_json_null(json);
}

static void string(ts_json *json, const char *key, const char *value)
{
    ts_json_key(json, key);
    ts_json_string(json, value);
}

static void fraction(ts_json *json, const char *key, ts_rational r)
{
    ts_json_key(json, key);
    ts_json_object(json);
    integer(json, "over", r.over);
    integer(json, "under", r.under);
    ts_json_end(json, '}');
}

static void teeth(ts_json *json, const ts_ratio_told *told, const ts_ratio_teeth *t)
{
    const ts_ratio_centre *c = &told->wish->centre;
    ts_json_object(json);
    ts_json_key(json, "teeth");
    ts_json_array(json);
    for (int i = 0; i < 4 && t->z[i] != 0; i++)
        ts_json_integer(json, t->z[i]);
    ts_json_end(json, ']');
    number(json, "error", t->error);
    integer(json, "shared", t->shared);
    integer(json, "weight", t->weight);
    if (told->wish->train == TS_RATIO_IDLER)
        integer(json, "idlers", t->idlers);
    if (c->a_w > 0.0)
        number(json, "sum_x", ts_ratio_shift(c, t->z[0], t->z[1]));
    ts_json_end(json, '}');
}

static void list(ts_json *json, const ts_ratio_told *told, const char *key,
                 const ts_ratio_list *all)
{
    ts_json_key(json, key);
    ts_json_array(json);
    for (size_t i = 0; i < all->count; i++)
        teeth(json, told, &all->items[i]);
    ts_json_end(json, ']');
}

typedef struct pair_writer {
    ts_json             *json;
    const ts_ratio_told *told;
} pair_writer;

static bool write_pair(void *context, const ts_ratio_teeth *t)
{
    const pair_writer *w = context;
    teeth(w->json, w->told, t);
    return !w->json->out->failed;
}

/* Every one of them; of clusters there are too many, and their number is told. */
static void all_of(ts_json *json, const ts_ratio_told *told)
{
    ts_ratio_facts again;
    pair_writer    writer = {json, told};
    if (told->wish->train == TS_RATIO_TWO)
        return;
    ts_json_key(json, "all");
    ts_json_array(json);
    ts_ratio_find(told->wish, &again, write_pair, &writer);
    ts_json_end(json, ']');
}

static void nearest(ts_json *json, const ts_ratio_told *told)
{
    const ts_ratio_facts *f = told->facts;
    ts_json_key(json, "nearest");
    if (f->has_nearest)
        teeth(json, told, &f->nearest);
    else
        ts_json_null(json);
    if (told->wish->train != TS_RATIO_PAIR)
        return;
    integer(json, "nearer_count", (int64_t)f->nearer_count);
    ts_json_key(json, "nearer");
    ts_json_array(json);
    for (size_t i = 0; i < f->nearer_count && i < TS_RATIO_NEARER; i++) {
        ts_json_object(json);
        integer(json, "over", f->nearer[i].over);
        integer(json, "under", f->nearer[i].under);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

void ts_ratio_json(const ts_ratio_told *told, ts_buffer *out)
{
    static const char *const trains[] = {"pair", "idler", "cluster"};
    const ts_ratio_wish     *w        = told->wish;
    const ts_ratio_facts    *f        = told->facts;
    ts_json                  json;
    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    string(&json, "tool", "towershaft");
    string(&json, "version", told->version);
    string(&json, "caution", told->caution);
    string(&json, "train", trains[w->train]);
    fraction(&json, "wanted", w->wanted);
    fraction(&json, "low", w->low);
    fraction(&json, "high", w->high);
    integer(&json, "teeth_least", w->z_least);
    integer(&json, "teeth_most", w->z_most);
    integer(&json, "looked_at", (int64_t)f->looked_at);
    integer(&json, "inside", (int64_t)f->inside);
    integer(&json, "hunting", (int64_t)f->hunting);
    integer(&json, "centre_forbids", (int64_t)f->too_far);
    list(&json, told, "closest", &f->closest);
    list(&json, told, "lightest", &f->lightest);
    nearest(&json, told);
    all_of(&json, told);
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
