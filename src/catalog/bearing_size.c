/* catalog/bearing_size.c: how large are standard rolling bearings, and what is inside of a generic
 * one? */
#include "catalog/bearing_size.h"

#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

typedef struct size_row {
    const char *series;
    double      d, D, B; /* mm */
} size_row;

static const size_row sizes[] = {
#include "bearing_size.inc"
};

typedef struct inside_row {
    const char *form, *series;
    double      ball, length, groove, fill;
} inside_row;

static const inside_row insides[] = {
#include "bearing_inside.inc"
};

#define SIZE_COUNT   (sizeof sizes / sizeof sizes[0])
#define INSIDE_COUNT (sizeof insides / sizeof insides[0])

static const char *const form_names[TS_BEARING_FORM_COUNT] = {
    [TS_BEARING_DEEP_GROOVE]        = "deep groove",
    [TS_BEARING_ANGULAR_CONTACT]    = "angular contact",
    [TS_BEARING_CYLINDRICAL_ROLLER] = "cylindrical roller",
};

const char *ts_bearing_form_name(ts_bearing_form form)
{
    return form_names[form];
}

bool ts_bearing_form_named(ts_text name, ts_bearing_form *form)
{
    for (int i = 0; i < TS_BEARING_FORM_COUNT; i++) {
        if (!ts_text_is(name, form_names[i]))
            continue;
        *form = (ts_bearing_form)i;
        return true;
    }
    return false;
}

size_t ts_bearing_size_count(void)
{
    return SIZE_COUNT;
}

ts_bearing_size ts_bearing_size_at(size_t index)
{
    const size_row *row = &sizes[index];

    return (ts_bearing_size){
        .series = row->series,
        .d      = row->d / 1000.0,
        .D      = row->D / 1000.0,
        .B      = row->B / 1000.0,
    };
}

bool ts_bearing_size_of(ts_text series, double d, ts_bearing_size *size)
{
    for (size_t i = 0; i < SIZE_COUNT; i++) {
        const ts_bearing_size row = ts_bearing_size_at(i);

        if (!ts_text_is(series, row.series) || !(fabs(row.d - d) < 1e-6))
            continue;
        *size = row;
        return true;
    }
    return false;
}

bool ts_bearing_size_from(const char *series, double bore, ts_bearing_size *size)
{
    const double least = 1000.0 * (bore - 1e-9);
    size_t       best  = SIZE_COUNT;

    for (size_t i = 0; i < SIZE_COUNT; i++)
        if (sizes[i].d >= least && (best == SIZE_COUNT || sizes[i].d < sizes[best].d) &&
            strcmp(sizes[i].series, series) == 0)
            best = i;
    if (best == SIZE_COUNT)
        return false;
    *size = ts_bearing_size_at(best);
    return true;
}

static const inside_row *inside_row_of(ts_bearing_form form, const char *series)
{
    for (size_t i = 0; i < INSIDE_COUNT; i++)
        if (strcmp(insides[i].form, form_names[form]) == 0 &&
            strcmp(insides[i].series, series) == 0)
            return &insides[i];
    return NULL;
}

bool ts_bearing_inside_of(ts_bearing_form form, const ts_bearing_size *size,
                          ts_bearing_inside *inside)
{
    const inside_row *row = inside_row_of(form, size->series);

    if (row == NULL)
        return false;
    const double D_w  = row->ball * (size->D - size->d);
    const double D_pw = (size->D + size->d) / 2.0;
    const double half = asin(D_w / D_pw); /* of the arc that one element takes */
    const double fill = row->fill;
    const double most =
        form == TS_BEARING_DEEP_GROOVE ? 1.0 + fill * pi / 180.0 / (2.0 * half) : fill * pi / half;
    const double groove = row->groove;

    *inside = (ts_bearing_inside){
        .Z    = (int)most,
        .D_w  = D_w,
        .L_we = row->length * size->B,
        .D_pw = D_pw,
        .f_i  = groove,
        .f_e  = groove,
    };
    return true;
}
