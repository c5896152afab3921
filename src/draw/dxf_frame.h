/* draw/dxf_frame.h: what stands before and behind the shapes of a DXF file. */
#ifndef TS_DRAW_DXF_FRAME_H
#define TS_DRAW_DXF_FRAME_H

#include "draw/dxf.h"

/* Handles, by which records name each other. */
enum { TS_DXF_MODEL_SPACE = 0x1F, TS_DXF_PAPER_SPACE = 0x1B, TS_DXF_FIRST_SHAPE = 0x100 };

/* Header with the extents in units of the file, classes, tables and blocks. */
void ts_dxf_head(const ts_dxf *dxf, double left, double low, double right, double high);
void ts_dxf_foot(ts_buffer *out);

#endif
