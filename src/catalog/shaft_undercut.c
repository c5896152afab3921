/* catalog/shaft_undercut.c: how deep, wide and round are the undercuts of DIN 509, forms E and F?
 */
#include "catalog/shaft_undercut.h"

#include <math.h>

typedef struct undercut_row {
    const char *key;
    double      r, t_1, f, t_2, d_from, d_to;
    const char *source;
} undercut_row;

static const undercut_row undercuts[] = {
#include "shaft_undercut.inc"
};

const char *const ts_undercut_keys[] = {
#include "shaft_undercut_key.inc"
    NULL,
};

size_t ts_undercut_count(void)
{
    return sizeof undercuts / sizeof undercuts[0];
}

ts_undercut ts_undercut_at(size_t index)
{
    const undercut_row *row = &undercuts[index];

    return (ts_undercut){.key    = row->key,
                         .r      = row->r * 1e-3,
                         .t_1    = row->t_1 * 1e-3,
                         .f      = row->f * 1e-3,
                         .t_2    = row->t_2 * 1e-3,
                         .d_from = row->d_from * 1e-3,
                         .d_to   = row->d_to * 1e-3,
                         .source = row->source};
}
