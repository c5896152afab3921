/* draw/float_shape.h: the parts of a take-off as bodies of revolution, for its section.
 *
 * Units     m; t counts from the apex of the pitch cones along the gear's axis towards the gear.
 */
#ifndef TS_DRAW_FLOAT_SHAPE_H
#define TS_DRAW_FLOAT_SHAPE_H

#include "element/bevel_blank.h"
#include "rating/drive_float.h"

enum { TS_FLOAT_RING_MOST = 8 };

/* One half of a section: a closed outline. */
typedef struct ts_float_ring {
    double t[TS_FLOAT_RING_MOST], r[TS_FLOAT_RING_MOST];
    int    count;
} ts_float_ring;

typedef struct ts_float_parts {
    const ts_line *stub;  /* bears bevel 1, or stands in for what would; NULL: no such line */
    const ts_line *inner; /* of the radial shaft; NULL                                      */
    ts_bevel_pair  pair;
    ts_bevel_blank blank;
    ts_float_ring  teeth[2], body[2];
    double         t_back[2];  /* behind the body of each gear                             */
    double         r_rotor[2]; /* inside and outside of the rotor; made up                 */
    double         d_bore;     /* of bevel 1 on the rotor                                  */
    double         t_spline;   /* where the spline of the stub begins, behind its bearing  */
    double         t_end;      /* of the stub                                              */
    double         t_radial;   /* of the gearshaft on the radial shaft                     */
    double         D, L_e;     /* spline: pitch diameter, engaged length as built          */
    double         d_s, b_s;   /* spurs: pitch diameter, narrow face                       */
    double         b_idler;    /* the wide face                                            */
} ts_float_parts;

void ts_float_parts_of(const ts_floats *floats, const ts_drive_float *item, ts_float_parts *parts);

/* t of a place x of the line that bears gear 0 or 1 of the pair. */
double ts_float_along(const ts_float_parts *parts, const ts_line *line, int gear, double x);

/* A plain tube. */
ts_float_ring ts_float_tube(double t_1, double t_2, double d_i, double d_o);

#endif
