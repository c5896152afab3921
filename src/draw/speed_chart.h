/* draw/speed_chart.h: the speed band of every pad against the travel of its spool. */
#ifndef TS_DRAW_SPEED_CHART_H
#define TS_DRAW_SPEED_CHART_H

#include "draw/scene.h"

ts_status ts_draw_speed_chart(ts_scene *scene);

/* ---- between the parts of the figure ---- */

/* One speed of one pad against its band. */
typedef struct ts_speed_mark {
    uint32_t condition;
    double   speed;   /* rad/s of the pad; NaN: not known                                    */
    double   reserve; /* to the nearer end of the band, capacity/demand - 1; INFINITY: no end */
    bool     missed;
} ts_speed_mark;

/* One band, and every condition that demands exactly it; the least reserve first. */
typedef struct ts_speed_lane {
    double         low, high; /* rad/s of the pad; infinite: open; NaN: the file says unknown */
    ts_speed_mark *marks;
    size_t         count;
    size_t         lines; /* of numbers: all that are missed, at least one */
} ts_speed_lane;

typedef struct ts_speed_row {
    uint32_t       pad;
    double         ratio; /* pad speed over spool speed, not negative */
    ts_speed_lane *lanes;
    size_t         count;
    double         height; /* px */
} ts_speed_row;

/* All pads of one spool on one axis of its speed. */
typedef struct ts_speed_section {
    ts_scene     *scene;
    uint32_t      shaft; /* of the spool */
    ts_speed_row *rows;
    size_t        count;
    double        least, most;     /* rad/s of the spool, ends of the axis               */
    bool          rest;            /* some condition has the spool at rest               */
    bool          upright;         /* names of conditions are written upright: too many  */
    double        head;            /* px, of axis and names                              */
    double        height;          /* px, of all of it                                   */
    ts_area       chart;           /* on the sheet: the rows, without head               */
    double        name, numbers;   /* px, widths of the columns beside the chart       */
    double        condition, band; /* px, of these parts of the numbers             */
} ts_speed_section;

ts_status ts_speed_gather(ts_scene *scene, uint32_t spool_shaft, ts_speed_section *out);

/* Sets the columns of all sections and, between them, the place of the charts; the canvas must be
 * open. */
void ts_speed_measure_columns(ts_speed_section *sections, size_t count);
/* "rear, 0.41049 of hp spool"; "take-off (and 2)"; "6000 .. 7000": appended. */
void ts_speed_add_place(const ts_speed_section *section, const ts_speed_row *row, ts_buffer *line);
void ts_speed_add_condition(const ts_speed_section *section, const ts_speed_lane *lane,
                            size_t index, ts_buffer *line);
void ts_speed_add_band(const ts_speed_section *section, const ts_speed_lane *lane, size_t index,
                       ts_buffer *line);

/* x of a speed of the spool on the sheet, held between the ends of the axis. */
double ts_speed_x(const ts_speed_section *section, double spool_speed);
void   ts_speed_draw_axis(const ts_speed_section *section);
/* Height that the names over the axis take. */
double ts_speed_measure_head(ts_speed_section *section);
void   ts_speed_draw_lane(const ts_speed_section *section, const ts_speed_row *row,
                          const ts_speed_lane *lane, ts_area area);

#endif
