/* draw/value_table.h: a ruled table of quantities: words, symbol, unit, and a number a column. */
#ifndef TS_DRAW_VALUE_TABLE_H
#define TS_DRAW_VALUE_TABLE_H

#include "draw/scene.h"

enum { TS_VALUE_COLUMNS = 4 };

typedef struct ts_value_row {
    const char *words;
    const char *symbol, *subscript; /* the subscript may be NULL; so may the symbol           */
    const char *unit;               /* may be NULL                                            */
    const char *value[TS_VALUE_COLUMNS]; /* NULL: nothing; of one column only the first       */
} ts_value_row;

typedef struct ts_value_table {
    const char         *title;                   /* over the words                       */
    const char         *heads[TS_VALUE_COLUMNS]; /* NULL: the column has no heading      */
    size_t              columns;
    double              column; /* px, width of one column of numbers */
    const ts_value_row *rows;
    size_t              count;
} ts_value_table;

double ts_value_table_height(const ts_value_table *table);
void   ts_value_table_draw(ts_scene *scene, const ts_value_table *table, ts_area area);

/* Numbers as texts that live as long as the arena; "not known" for NaN.
 * Lengths: um or 0.0001 in; angles in degrees; ratios with so many decimals. */
const char *ts_value_length(ts_scene *scene, double si);
const char *ts_value_angle(ts_scene *scene, double rad);
const char *ts_value_ratio(ts_scene *scene, double value, int decimals);
const char *ts_value_count(ts_scene *scene, int64_t count);

#endif
