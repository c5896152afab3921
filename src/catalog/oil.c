/* catalog/oil.c: what are the oils of a public specification like? */
#include "catalog/oil.h"

static const ts_oil_row oils[] = {
#include "oil.inc"
};

const char *const ts_oil_keys[] = {
#include "oil_key.inc"
    NULL,
};

#define OIL_COUNT (sizeof oils / sizeof oils[0])

size_t ts_oil_count(void)
{
    return OIL_COUNT;
}

const ts_oil_row *ts_oil_at(size_t index)
{
    return &oils[index < OIL_COUNT ? index : 0];
}

const ts_oil_row *ts_oil_named(ts_text key)
{
    for (size_t i = 0; i < OIL_COUNT; i++)
        if (ts_text_is(key, oils[i].key))
            return &oils[i];
    return NULL;
}
