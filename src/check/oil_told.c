/* check/oil_told.c: which values of the oil does a rule wait for? */
#include "check/oil_told.h"

#include "model/field.h"

#include <string.h>

typedef struct oil_value {
    ts_oil_need need;
    const char *key;
    size_t      offset;
} oil_value;

static const oil_value values[] = {
    {TS_NEEDS_FEED, "feed", offsetof(ts_oil, feed)},
    {TS_NEEDS_VISCOSITY, "viscosity at 40", offsetof(ts_oil, nu_40)},
    {TS_NEEDS_VISCOSITY, "viscosity at 100", offsetof(ts_oil, nu_100)},
    {TS_NEEDS_BEARING_RISE, "bearing rise", offsetof(ts_oil, bearing_rise)},
    {TS_NEEDS_DENSITY, "density", offsetof(ts_oil, rho_15)},
    {TS_NEEDS_RISE, "rise", offsetof(ts_oil, rise)},
};

static const ts_measure *value_at(const ts_oil *oil, size_t offset)
{
    return (const ts_measure *)(const void *)((const char *)oil + offset);
}

static const char *example_of(const char *key)
{
    for (size_t i = 0; i < ts_table_oil.field_count; i++)
        if (strcmp(ts_table_oil.fields[i].key, key) == 0)
            return ts_table_oil.fields[i].example;
    return "a value";
}

static void ask(ts_check *check, const ts_measure *value, const char *key, int32_t condition)
{
    const bool  apart   = condition != TS_EVERY_CONDITION;
    ts_finding *finding = ts_not_computable(
        check, value->node, TS_EVERY_CONDITION, "`%s` of the oil%s%s", apart ? "feed at" : key,
        apart ? " in " : "", apart ? ts_condition_name(check, condition) : "");

    ts_remedy(check, finding, "state it, such as %s%s", example_of(key),
              apart ? ", or leave this condition out of `feed at`, and it is `feed`"
                    : ", or leave the key out: its default is then told as an assumption");
}

/* Is any condition that is asked fed at `feed`? */
static bool is_used(const ts_check *check, const ts_measure *feed,
                    bool (*asked)(const ts_check *check, uint32_t condition))
{
    for (uint32_t c = 0; c < check->drive->condition_count; c++)
        if ((asked == NULL || asked(check, c)) &&
            ts_oil_feed(&check->drive->oil, c).node == feed->node)
            return true;
    return false;
}

static bool single_feeds_are_told(ts_check *check,
                                  bool (*asked)(const ts_check *check, uint32_t condition))
{
    const ts_oil *oil  = &check->drive->oil;
    bool          told = true;

    for (uint32_t c = 0; oil->feed_at != NULL && c < check->drive->condition_count; c++)
        if (oil->feed_at[c].standing == TS_UNKNOWN && (asked == NULL || asked(check, c))) {
            ask(check, &oil->feed_at[c], "feed", (int32_t)c);
            told = false;
        }
    return told;
}

bool ts_oil_is_told(ts_check *check, unsigned needs,
                    bool (*asked)(const ts_check *check, uint32_t condition))
{
    bool told = true;

    for (size_t i = 0; i < sizeof values / sizeof values[0]; i++) {
        const ts_measure *value = value_at(&check->drive->oil, values[i].offset);
        const bool        feed  = values[i].need == TS_NEEDS_FEED;

        if ((needs & (unsigned)values[i].need) == 0 || value->standing != TS_UNKNOWN ||
            (feed && !is_used(check, value, asked)))
            continue;
        ask(check, value, values[i].key, TS_EVERY_CONDITION);
        told = false;
    }
    if ((needs & TS_NEEDS_FEED) != 0)
        told = single_feeds_are_told(check, asked) && told;
    return told;
}

bool ts_oil_lacks(const ts_check *check, unsigned needs)
{
    const ts_oil *oil = &check->drive->oil;

    for (size_t i = 0; i < sizeof values / sizeof values[0]; i++)
        if ((needs & (unsigned)values[i].need) != 0 &&
            value_at(oil, values[i].offset)->standing == TS_UNKNOWN)
            return true;
    for (size_t c = 0; (needs & TS_NEEDS_FEED) != 0 && c < check->drive->condition_count; c++)
        if (ts_oil_feed(oil, c).standing == TS_UNKNOWN)
            return true;
    return false;
}
