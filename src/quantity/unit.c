/* quantity/unit.c: which units are there, and what does each measure? */
#include "base/assert.h"
#include "quantity/quantity.h"

#include <stdint.h>

typedef struct kind_row {
    const char *name;
    uint8_t     first; /* the SI unit of the kind; the others follow it */
    uint8_t     count;
    uint8_t     shown[2]; /* by ts_units */
} kind_row;

#include "unit_table.inc"

#define UNIT_COUNT (sizeof units / sizeof units[0])

_Static_assert(UNIT_COUNT <= UINT8_MAX, "kind_row keeps places of units in one byte");

size_t ts_unit_count(void)
{
    return UNIT_COUNT;
}

const ts_unit *ts_unit_at(size_t index)
{
    TS_ASSERT(index < UNIT_COUNT);
    return &units[index];
}

const ts_unit *ts_unit_named(ts_text name, ts_kind kind)
{
    const kind_row *row = &kinds[kind];
    for (size_t i = row->first; i < (size_t)row->first + row->count; i++) {
        if (ts_text_is(name, units[i].name))
            return &units[i];
    }
    return NULL;
}

const ts_unit *ts_unit_named_any(ts_text name)
{
    for (size_t i = 0; i < UNIT_COUNT; i++) {
        if (ts_text_is(name, units[i].name))
            return &units[i];
    }
    return NULL;
}

const char *ts_kind_name(ts_kind kind)
{
    TS_ASSERT(kind < TS_KIND_COUNT);
    return kinds[kind].name;
}

const ts_unit *ts_kind_si(ts_kind kind)
{
    TS_ASSERT(kind < TS_KIND_COUNT);
    return &units[kinds[kind].first];
}

const ts_unit *ts_kind_shown(ts_kind kind, ts_units system)
{
    TS_ASSERT(kind < TS_KIND_COUNT);
    return &units[kinds[kind].shown[system == TS_UNITS_US ? 1 : 0]];
}
