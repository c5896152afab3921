/* draw/dxf_box.h: the wall of a box about the gears of a measured face, in a DXF file. */
#ifndef TS_DRAW_DXF_BOX_H
#define TS_DRAW_DXF_BOX_H

#include "draw/dxf.h"
#include "draw/face.h"

/* Of the drive `d`, as the face sees it, its engine axis `aside` m to the right of 0.  TS_NO_MEMORY
 * or TS_OK. */
ts_status ts_dxf_box(const ts_face *face, uint32_t d, double aside, ts_dxf *dxf);

#endif
