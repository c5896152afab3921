/* rating/line_catalog.c: which generic bearings are there, and what does each bear? */
#include "rating/drive_lines_parts.h"

#include <math.h>
#include <string.h>

static bool list_bores(ts_lines_catalog *catalog, ts_arena *arena)
{
    catalog->bores = TS_TAKE(arena, double, catalog->size_count);
    if (catalog->bores == NULL)
        return false;
    for (size_t i = 0; i < catalog->size_count; i++) {
        const double d  = catalog->sizes[i].d;
        size_t       at = catalog->bore_count; /* from the end, for they rise in the table */
        while (at > 0 && catalog->bores[at - 1] > d - 1e-9)
            at--;
        if (at < catalog->bore_count && catalog->bores[at] < d + 1e-9)
            continue;
        for (size_t k = catalog->bore_count++; k > at; k--)
            catalog->bores[k] = catalog->bores[k - 1];
        catalog->bores[at] = d;
    }
    return true;
}

static bool list_sizes(ts_lines_catalog *catalog, ts_arena *arena)
{
    static const char *const series[TS_LINE_SERIES] = {"19", "10", "02", "03"};

    catalog->at     = TS_TAKE(arena, size_t, catalog->bore_count * TS_LINE_SERIES);
    catalog->series = TS_TAKE(arena, int, catalog->size_count);
    if (catalog->at == NULL || catalog->series == NULL)
        return false;
    for (size_t i = 0; i < catalog->bore_count * TS_LINE_SERIES; i++)
        catalog->at[i] = catalog->size_count;
    size_t b = 0; /* sizes of a series stand by rising bore in the table, so the next is near */
    for (size_t i = 0; i < catalog->size_count; i++) {
        size_t s = 0;
        while (fabs(catalog->bores[b] - catalog->sizes[i].d) > 1e-9)
            b = b + 1 < catalog->bore_count ? b + 1 : 0;
        while (s < TS_LINE_SERIES && strcmp(catalog->sizes[i].series, series[s]) != 0)
            s++;
        catalog->series[i] = s < TS_LINE_SERIES ? (int)s : -1;
        if (s < TS_LINE_SERIES)
            catalog->at[b * TS_LINE_SERIES + s] = i;
    }
    return true;
}

/* Insertion: the series of the table rise by themselves. */
static bool order_by_bulk(ts_lines_catalog *catalog, ts_arena *arena)
{
    double *bulk = TS_TAKE(arena, double, catalog->size_count);

    catalog->by_bulk = TS_TAKE(arena, size_t, catalog->size_count);
    if (bulk == NULL || catalog->by_bulk == NULL)
        return false;
    for (size_t i = 0; i < catalog->size_count; i++) {
        const ts_bearing_size *size = &catalog->sizes[i];
        size_t                 at   = i;

        bulk[i] = ts_line_bulk(size->d, size->D, size->B);
        for (; at > 0 && bulk[catalog->by_bulk[at - 1]] > bulk[i]; at--)
            catalog->by_bulk[at] = catalog->by_bulk[at - 1];
        catalog->by_bulk[at] = i;
    }
    return true;
}

ts_lines_catalog *ts_lines_catalog_open(ts_arena *arena)
{
    ts_lines_catalog *catalog = TS_TAKE(arena, ts_lines_catalog, 1);

    if (catalog == NULL)
        return NULL;
    catalog->size_count = ts_bearing_size_count();
    catalog->sizes      = TS_TAKE(arena, ts_bearing_size, catalog->size_count);
    catalog->generic    = TS_TAKE(arena, ts_line_generic, catalog->size_count * TS_MAKES);
    if (catalog->sizes == NULL || catalog->generic == NULL)
        return NULL;
    for (size_t i = 0; i < catalog->size_count; i++)
        catalog->sizes[i] = ts_bearing_size_at(i);
    return list_bores(catalog, arena) && list_sizes(catalog, arena) && order_by_bulk(catalog, arena)
               ? catalog
               : NULL;
}

double ts_lines_bore_near(const ts_lines_catalog *catalog, double d, bool up)
{
    double best = (double)NAN;

    for (size_t i = 0; i < catalog->bore_count; i++) {
        if (up && catalog->bores[i] >= d - 1e-9)
            return catalog->bores[i];
        if (!up && catalog->bores[i] <= d + 1e-9)
            best = catalog->bores[i];
    }
    return best;
}

const size_t *ts_lines_sizes_at(const ts_lines_catalog *catalog, double bore)
{
    for (size_t b = 0; b < catalog->bore_count; b++)
        if (fabs(catalog->bores[b] - bore) < 1e-6)
            return &catalog->at[b * TS_LINE_SERIES];
    return NULL;
}

size_t ts_lines_size_of(const ts_lines_catalog *catalog, int series, double bore)
{
    const size_t *sizes = ts_lines_sizes_at(catalog, bore);

    return sizes == NULL ? catalog->size_count : sizes[series];
}

const ts_line_generic *ts_lines_generic(ts_lines_catalog *catalog, size_t size, ts_line_make make)
{
    static const ts_bearing_form forms[] = {TS_BEARING_DEEP_GROOVE, TS_BEARING_ANGULAR_CONTACT,
                                            TS_BEARING_ANGULAR_CONTACT,
                                            TS_BEARING_CYLINDRICAL_ROLLER};
    ts_line_generic             *one     = &catalog->generic[size * TS_MAKES + make];

    if (one->tried)
        return one;
    one->tried  = true;
    one->series = catalog->sizes[size].series;
    one->bearing =
        (ts_bearing){.form  = forms[make],
                     .rows  = ts_line_rows_of(make),
                     .alpha = forms[make] == TS_BEARING_ANGULAR_CONTACT ? TS_LINE_ANGLE : 0.0,
                     .d     = catalog->sizes[size].d,
                     .D     = catalog->sizes[size].D,
                     .C_r   = (double)NAN,
                     .C_0r  = (double)NAN};
    one->sound = ts_bearing_inside_of(forms[make], &catalog->sizes[size], &one->bearing.inside) &&
                 ts_bearing_prepare(&one->bearing, &one->ability, NULL) == TS_BEARING_FINE;
    return one;
}
