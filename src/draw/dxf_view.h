/* draw/dxf_view.h: the views of a drive that have a true size, as DXF. */
#ifndef TS_DRAW_DXF_VIEW_H
#define TS_DRAW_DXF_VIEW_H

#include "draw/dxf.h"
#include "draw/scene.h"

/* Behind, front, pads, unrolled and float; TS_NOT_UNDERSTOOD for every other figure. */
ts_status ts_draw_dxf(ts_scene *scene, ts_buffer *out);

/* The shapes and words of each. */
ts_status ts_dxf_face(ts_scene *scene, bool front, ts_dxf *dxf);
ts_status ts_dxf_pads(ts_scene *scene, ts_dxf *dxf);
ts_status ts_dxf_strips(ts_scene *scene, ts_dxf *dxf);
ts_status ts_dxf_sections(ts_scene *scene, ts_dxf *dxf);

#endif
