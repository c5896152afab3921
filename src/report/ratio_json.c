/* How are tooth numbers for a ratio written as JSON, by docs/schema/ratio.schema.json? */
#include "report/ratio_report.h"

#include "base/json_writer.h"

#include <math.h>

static void fraction(ts_json *json, const char *key, ts_rational r)
{
    ts_json_key(json, key);
    ts_json_object(json);
    ts_json_integer_at(json, "over", r.over);
    ts_json_integer_at(json, "under", r.under);
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
    ts_json_number_at(json, "error", t->error);
    ts_json_integer_at(json, "shared", t->shared);
    ts_json_integer_at(json, "weight", t->weight);
    if (told->wish->train == TS_RATIO_IDLER)
        ts_json_integer_at(json, "idlers", t->idlers);
    if (c->a_w > 0.0)
        ts_json_number_at(json, "sum_x", ts_ratio_shift(c, t->z[0], t->z[1]));
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
    ts_json_integer_at(json, "nearer_count", (int64_t)f->nearer_count);
    ts_json_key(json, "nearer");
    ts_json_array(json);
    for (size_t i = 0; i < f->nearer_count && i < TS_RATIO_NEARER; i++) {
        ts_json_object(json);
        ts_json_integer_at(json, "over", f->nearer[i].over);
        ts_json_integer_at(json, "under", f->nearer[i].under);
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
    ts_json_string_at(&json, "tool", "towershaft");
    ts_json_string_at(&json, "version", told->version);
    ts_json_string_at(&json, "caution", told->caution);
    ts_json_string_at(&json, "train", trains[w->train]);
    fraction(&json, "wanted", w->wanted);
    fraction(&json, "low", w->low);
    fraction(&json, "high", w->high);
    ts_json_integer_at(&json, "teeth_least", w->z_least);
    ts_json_integer_at(&json, "teeth_most", w->z_most);
    ts_json_integer_at(&json, "looked_at", (int64_t)f->looked_at);
    ts_json_integer_at(&json, "inside", (int64_t)f->inside);
    ts_json_integer_at(&json, "hunting", (int64_t)f->hunting);
    ts_json_integer_at(&json, "centre_forbids", (int64_t)f->too_far);
    list(&json, told, "closest", &f->closest);
    list(&json, told, "lightest", &f->lightest);
    nearest(&json, told);
    all_of(&json, told);
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
