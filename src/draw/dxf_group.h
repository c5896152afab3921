/* draw/dxf_group.h: layers and handles of a DXF file; a group is its code and, below it, its value.
 */
#ifndef TS_DRAW_DXF_GROUP_H
#define TS_DRAW_DXF_GROUP_H

#include "base/buffer.h"

typedef enum ts_dxf_layer {
    TS_DXF_CASING,     /* of the engine                                       */
    TS_DXF_COWL,       /* the cowl line                                       */
    TS_DXF_KEEP_OUT,   /* where nothing may stand                             */
    TS_DXF_ARC,        /* the arc on which the axes of a box stand            */
    TS_DXF_BOX,        /* wall of a box                                       */
    TS_DXF_AXIS,       /* centre lines                                        */
    TS_DXF_TIP,        /* gears, ISO 2203: tip circles and faces, full        */
    TS_DXF_PITCH,      /* pitch circles and lines, chain                      */
    TS_DXF_ROOT,       /* root circles, thin                                  */
    TS_DXF_BEVEL,      /* bevel gears                                         */
    TS_DXF_TOWER,      /* radial shafts                                       */
    TS_DXF_SHAFT,      /* shafts of a box, in section                         */
    TS_DXF_BODY_FRONT, /* envelopes of accessories on front pads              */
    TS_DXF_BODY_REAR,  /* ... on rear pads                                    */
    TS_DXF_WORDS,      /* numbers of shafts, what stands on their pads        */
    TS_DXF_SIZES,      /* dimensions                                          */
    TS_DXF_SHEET,      /* title, revision, hash, caution                      */
    TS_DXF_REFERENCE,  /* a mark of 100 mm to check the scale against         */
    TS_DXF_LAYERS
} ts_dxf_layer;

const char *ts_dxf_layer_name(ts_dxf_layer layer);

/* Name, colour, line type and width of a layer, as groups of its record. */
void ts_dxf_layer_record(ts_buffer *out, ts_dxf_layer layer);
/* `digits` hexadecimal digits, or for 0 as many as are needed. */
void ts_dxf_hex(ts_buffer *out, uint32_t value, int digits);
/* A group whose value is a handle. */
void ts_dxf_handle(ts_buffer *out, int code, uint32_t handle);

#endif
