/* draw/unrolled.h: the arc laid flat, seen from outside with the front up. */
#ifndef TS_DRAW_UNROLLED_H
#define TS_DRAW_UNROLLED_H

#include "draw/scene.h"

ts_status ts_draw_unrolled(ts_scene *scene);

/* ---- between the parts of the figure ---- */

typedef struct ts_strip_shaft {
    uint32_t shaft;
    double   s;         /* m along the arc, growing with the clock angle; right on the sheet */
    double   r_gear;    /* m, largest tip circle                                             */
    double   r_body[2]; /* m, by ts_face_side; 0: none                                       */
    double   length[2]; /* m                                                                 */
} ts_strip_shaft;

typedef struct ts_strip_gear {
    uint32_t gear;
    uint32_t shaft; /* index into the shafts of the strip            */
    int      plane; /* 0 the foremost                                */
    double   r;     /* m, pitch circle                               */
    double   r_tip; /* m; the pitch circle's when the tip is unknown */
    double   face;  /* m; NaN: unknown                               */
} ts_strip_gear;

enum { TS_STRIP_PLANES = 16 };

/* One box. */
typedef struct ts_strip {
    ts_scene             *scene;
    const ts_spool_drive *drive;
    uint32_t              index;  /* of the drive                                    */
    ts_strip_shaft       *shafts; /* by s                                            */
    size_t                shaft_count;
    size_t                unplaced; /* shafts without a position                       */
    ts_strip_gear        *gears;
    size_t                gear_count;
    int                   planes;
    double plane_z[TS_STRIP_PLANES]; /* m from the front face to the middle of each */
    double depth;                    /* m, between the pad faces                        */
    bool   depth_known;
    double left, right;   /* m, everything that is drawn                */
    double ahead, behind; /* m, longest bodies before and behind the box */
    double R;             /* m, radius of the arc                            */
    /* On the sheet. */
    double   px;     /* px a metre               */
    ts_point origin; /* s = 0 on the front face  */
    ts_area  area;
} ts_strip;

ts_status ts_strip_gather(ts_scene *scene, uint32_t drive, ts_strip *out);

ts_point ts_strip_point(const ts_strip *strip, double s,
                        double z); /* z rearwards from the front face */
void     ts_strip_draw_box(const ts_strip *strip);
void     ts_strip_draw_bodies(const ts_strip *strip);
void     ts_strip_write_pads(const ts_strip *strip); /* what stands on every pad, in words */
/* NULL when there is no pad on that face. */
const ts_pad *ts_strip_pad(const ts_strip *strip, const ts_strip_shaft *one, int side);
/* The body on the sheet; its width is 0 when radius or length is not known. */
ts_area ts_strip_body(const ts_strip *strip, const ts_strip_shaft *one, int side);
void    ts_strip_draw_gaps(const ts_strip *strip);
void    ts_strip_draw_scale(const ts_strip *strip);
/* Distance of the axes of two shafts in the face plane less two radii, m; the true one, not that
 * of the arc laid flat. */
double ts_strip_gap(const ts_strip *strip, size_t a, double r_a, size_t b, double r_b);

#endif
