/* draw/dxf_pads.c: the faces that bear pads in true size: the rear ones as seen from behind, and
 * beside them, about an engine axis of their own, the front ones as seen from the front. */
#include "draw/dxf_box.h"
#include "draw/dxf_view.h"
#include "draw/face.h"
#include "draw/pad_faces.h"

#include <math.h>

#define GAP 0.06 /* m, between both faces */

typedef struct pad_plan {
    ts_scene      *scene;
    const ts_face *face;
    ts_dxf        *dxf;
    ts_face_side   side;
    double         aside; /* m, of the engine axis to the right of the first */
} pad_plan;

static ts_point axis_of(const pad_plan *plan, uint32_t shaft)
{
    const ts_shaft_motion *at = &plan->scene->motion->shafts[shaft];
    return (ts_point){plan->aside + (plan->side == TS_FRONT ? -at->x : at->x), at->y};
}

static void cross(const pad_plan *plan, ts_point at, double arm)
{
    ts_dxf_line(plan->dxf, TS_DXF_AXIS, (ts_point){at.x - arm, at.y}, (ts_point){at.x + arm, at.y});
    ts_dxf_line(plan->dxf, TS_DXF_AXIS, (ts_point){at.x, at.y - arm}, (ts_point){at.x, at.y + arm});
}

/* How far what is drawn of a face reaches to the left and the right of the engine axis. */
static void reach(const pad_plan *plan, double *left, double *right)
{
    *left  = -0.02;
    *right = 0.02;
    for (uint32_t s = 0; s < plan->scene->train->shaft_count; s++) {
        const ts_face_shaft *shaft = &plan->face->shafts[s];
        if (!shaft->shown)
            continue;
        const double x = axis_of(plan, s).x - plan->aside, r = shaft->r_all;
        *left  = fmin(*left, x - r);
        *right = fmax(*right, x + r);
    }
}

static void put_length(const pad_plan *plan, ts_buffer *out, double metres)
{
    const bool us = plan->scene->units == TS_UNITS_US;
    ts_buffer_fixed(out, metres * (us ? 1.0 / 0.0254 : 1e3), us ? 4 : 3);
}

/* Number and name of a pad, and how far it lies to the right of and over the engine axis. */
static void words_of(const pad_plan *plan, uint32_t p, double letters)
{
    const ts_pad  *pad  = &plan->scene->train->pads[p];
    const ts_point at   = axis_of(plan, pad->shaft);
    ts_buffer     *line = ts_canvas_line(&plan->scene->canvas);
    ts_buffer_print(line, "%u %s", plan->scene->train->shafts[pad->shaft].number, pad->name);
    ts_dxf_text(plan->dxf, TS_DXF_WORDS, (ts_point){at.x, at.y - 1.8 * letters}, letters,
                TS_DXF_MIDDLE, line->bytes);
    line = ts_canvas_line(&plan->scene->canvas);
    ts_buffer_add(line, "right ");
    put_length(plan, line, at.x - plan->aside);
    ts_buffer_add(line, "  up ");
    put_length(plan, line, at.y);
    ts_dxf_text(plan->dxf, TS_DXF_SIZES, (ts_point){at.x, at.y - 3.4 * letters}, 0.8 * letters,
                TS_DXF_MIDDLE, line->bytes);
}

static void draw_face(const pad_plan *plan)
{
    const ts_train    *train = plan->scene->train;
    const ts_dxf_layer layer = plan->side == TS_FRONT ? TS_DXF_BODY_FRONT : TS_DXF_BODY_REAR;
    for (uint32_t p = 0; p < train->pad_count; p++) {
        const ts_pad *pad = &train->pads[p];
        if (pad->face != plan->side || !ts_pad_shown(plan->scene, p))
            continue;
        const double r      = plan->face->shafts[pad->shaft].r_body[plan->side];
        const double spline = ts_pad_spline_radius(plan->scene, p);
        ts_dxf_circle(plan->dxf, layer, axis_of(plan, pad->shaft), r);
        if (spline > 0.0)
            ts_dxf_circle(plan->dxf, TS_DXF_SHAFT, axis_of(plan, pad->shaft), spline);
        cross(plan, axis_of(plan, pad->shaft), 1.1 * fmax(r, 0.02));
    }
    cross(plan, (ts_point){plan->aside, 0.0}, 0.02);
}

static ts_status draw_walls(const pad_plan *plan)
{
    ts_status status = TS_OK;
    for (uint32_t d = 0; status == TS_OK && d < plan->scene->drive->drive_count; d++)
        status = ts_dxf_box(plan->face, d, plan->aside, plan->dxf);
    return status;
}

ts_status ts_dxf_pads(ts_scene *scene, ts_dxf *dxf)
{
    ts_face  faces[2];
    pad_plan plans[2];
    double   past = 0.0;
    for (int i = 0; i < 2; i++) {
        const ts_face_side side = i == 0 ? TS_REAR : TS_FRONT;
        double             left, right;
        faces[i]               = (ts_face){.scene = scene, .front = side == TS_FRONT};
        const ts_status status = ts_face_measure(&faces[i]);
        if (status != TS_OK)
            return status;
        plans[i] = (pad_plan){.scene = scene, .face = &faces[i], .dxf = dxf, .side = side};
        reach(&plans[i], &left, &right);
        plans[i].aside = i == 0 ? 0.0 : past + GAP - left;
        past           = plans[i].aside + right;
        if (draw_walls(&plans[i]) != TS_OK)
            return TS_NO_MEMORY;
        draw_face(&plans[i]);
    }
    const double letters = ts_dxf_letters(dxf);
    for (int i = 0; i < 2; i++)
        for (uint32_t p = 0; p < scene->train->pad_count; p++)
            if (scene->train->pads[p].face == plans[i].side && ts_pad_shown(scene, p))
                words_of(&plans[i], p, letters);
    return TS_OK;
}
