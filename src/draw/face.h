/* draw/face.h: the face of the drive on the sheet: where every axis, gear and body comes to stand.
 */
#ifndef TS_DRAW_FACE_H
#define TS_DRAW_FACE_H

#include "draw/scene.h"
#include "element/tooth_outline.h"

typedef struct ts_face_gear {
    bool           solved; /* tip and outline are known; else the pitch circle alone              */
    double         r;      /* m, pitch circle (bevels: outer pitch circle)                        */
    double         r_tip;  /* m; the pitch circle's when not solved                               */
    double         phase;  /* rad, of the middle of tooth 0 from 12:00, ccw as seen from behind   */
    int            plane;  /* 0 that of the box input's gear; a step lies one plane further       */
    ts_tooth_shape shape;  /* count 0: no teeth are drawn at this scale                           */
} ts_face_gear;

typedef struct ts_face_shaft {
    bool     shown;  /* a box shaft with a known position                                       */
    ts_point at;     /* on the sheet, px                                                        */
    double   r_gear; /* px, largest tip circle                                                  */
    double   r_main; /* px, pitch circle of its main gear                                       */
    double   r_body[2]; /* px, by ts_face_side; 0: no body, or of unknown size                   */
    double   r_all;    /* px, largest of these and the wall of the box                            */
    double   r_number; /* px, of the circle with its number                                       */
} ts_face_shaft;

typedef struct ts_face {
    ts_scene      *scene;
    bool           front; /* seen from the front: x is mirrored, letters are not */
    bool           ribbons;
    ts_area        picture; /* what the machine may fill        */
    ts_area        column;  /* beside it; w 0: none             */
    ts_area        rail;    /* below it                         */
    ts_point       engine;  /* the engine axis on the sheet, px */
    double         px;      /* px a metre                       */
    ts_face_gear  *gears;   /* [gear]                           */
    ts_face_shaft *shafts;  /* [shaft]                          */
} ts_face;

/* Works out gears and phases, scale and positions.  face->scene, front, picture must be set. */
ts_status ts_face_lay_out(ts_face *face);

/* The shafts at the scale and about the engine axis that the face has, once measured. */
void ts_face_place(ts_face *face);
/* Tells the sheet the scale of the face. */
void ts_face_say_scale(ts_face *face);

/* The first part of that: gears with their phases, and shafts with their radii, all in metres. */
ts_status ts_face_measure(ts_face *face);
/* The outlines of the gears, as finely as face->px asks. */
void ts_face_trace_gears(ts_face *face);

/* From metres as in model/train.h to the sheet. */
ts_point ts_face_point(const ts_face *face, double x, double y);
/* A point at `clock` (rad from behind) and radius (m) about the engine axis. */
ts_point ts_face_clock_point(const ts_face *face, double clock, double radius);
/* The sense as it is seen in this view: +1 ccw, -1 cw, 0 not known. */
int ts_face_sense(const ts_face *face, uint32_t shaft);
/* "Power at take-off" at the top of the column beside the picture; returns where it goes on. */
double ts_face_head_column(const ts_face *face, const char *what);
/* Which side of the box is nearer to the viewer. */
ts_face_side ts_face_near(const ts_face *face);

/* Index of the mesh in which this shaft drives by a bevel, or TS_NOWHERE. */
uint32_t ts_bevel_mesh_from(const ts_train *train, uint32_t shaft);

/* A point of the cowl line between its points `index` - 1 and `index`: the radius grows evenly with
 * the clock angle, the shorter way round (as in check/cowl.h). */
ts_point ts_face_cowl_point(const ts_face *face, size_t index, double share);

/* `share` of the way from a to b. */
ts_point ts_between(ts_point a, ts_point b, double share);
/* Between hub and box of a drive, at a share of the way along its radial shaft. */
ts_point ts_face_along_tower(const ts_face *face, uint32_t tower, double share);

/* ---- what is drawn, from the back to the front ---- */
void ts_face_draw_engine(const ts_face *face);
void ts_face_draw_boxes(const ts_face *face);
void ts_face_draw_gears(const ts_face *face);
void ts_face_draw_hub(const ts_face *face);
void ts_face_draw_towers(const ts_face *face);
void ts_face_draw_bodies(const ts_face *face);
void ts_face_draw_senses(const ts_face *face);
void ts_face_draw_numbers(const ts_face *face);

/* Arrow round `at` of radius px, its middle at `middle` (rad, y downwards). */
void ts_draw_sense_arrow(ts_canvas *canvas, ts_point at, double radius, double middle, int sense);
/* The circle with a shaft's number. */
void ts_draw_number_circle(ts_canvas *canvas, ts_point at, double radius, uint32_t number);

#endif
