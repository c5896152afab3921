/* draw/tooth_table.h: teeth, module, width, shift and tip circle of every cylindrical gear. */
#ifndef TS_DRAW_TOOTH_TABLE_H
#define TS_DRAW_TOOTH_TABLE_H

#include "draw/scene.h"

typedef struct ts_tooth_table {
    uint32_t *order; /* gears */
    size_t    count;
    size_t    columns;
    double    column; /* px, width of one          */
    double    head;   /* px, of numbers and names */
    double    height; /* px */
} ts_tooth_table;

ts_status ts_tooth_table_measure(ts_scene *scene, double width, ts_tooth_table *out);
void      ts_tooth_table_draw(ts_scene *scene, const ts_tooth_table *table, ts_area area);

#endif
