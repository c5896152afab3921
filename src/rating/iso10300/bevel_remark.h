/* rating/iso10300/bevel_remark.h: where does a bevel rating leave the range of the standard? */
#ifndef TS_RATING_BEVEL_REMARK_H
#define TS_RATING_BEVEL_REMARK_H

#include <stdbool.h>
#include <stdint.h>

typedef enum ts_bevel_remark_kind {
    /* the mesh */
    TS_BEVEL_REMARK_SPIRAL_ANGLE,
    TS_BEVEL_REMARK_PRESSURE_ANGLE,
    TS_BEVEL_REMARK_FACE_WIDTH,
    TS_BEVEL_REMARK_CONTACT_RATIO_HIGH,
    TS_BEVEL_REMARK_CONTACT_RATIO_LOW,
    TS_BEVEL_REMARK_UNDERCUT,
    TS_BEVEL_REMARK_NOTCH_RANGE,
    TS_BEVEL_REMARK_MODULE_LARGE,
    TS_BEVEL_REMARK_CUTTER_UNKNOWN,
    TS_BEVEL_REMARK_HARDENING_UNUSED,
    TS_BEVEL_REMARK_VISCOSITY,
    TS_BEVEL_REMARK_FLANK_ROUGH,
    TS_BEVEL_REMARK_FILLET_ROUGH,
    TS_BEVEL_REMARK_NOT_STEEL,
    /* the load case */
    TS_BEVEL_REMARK_LOAD_LOW,
    TS_BEVEL_REMARK_RESONANCE,
    TS_BEVEL_REMARK_INTERMEDIATE,
    TS_BEVEL_REMARK_SUPERCRITICAL,
    TS_BEVEL_REMARK_CONTACT_SHARING,
    TS_BEVEL_REMARK_BENDING_SHARING,
    TS_BEVEL_REMARK_CYCLES,
    TS_BEVEL_REMARK_NO_LOAD,
    TS_BEVEL_REMARK_COUNT
} ts_bevel_remark_kind;

typedef uint64_t ts_bevel_remarks; /* a set of them */

#define TS_BEVEL_REMARK(kind) ((ts_bevel_remarks)1 << (kind))

typedef struct ts_bevel_remark_text {
    const char *name;   /* "resonance": for JSON and for waivers */
    const char *says;   /* one sentence without a full stop       */
    const char *clause; /* standard and clause                    */
} ts_bevel_remark_text;

/* kind < TS_BEVEL_REMARK_COUNT */
const ts_bevel_remark_text *ts_bevel_remark_text_of(ts_bevel_remark_kind kind);

static inline bool ts_bevel_remarks_have(ts_bevel_remarks remarks, ts_bevel_remark_kind kind)
{
    return (remarks & TS_BEVEL_REMARK(kind)) != 0;
}

static inline ts_bevel_remarks ts_bevel_remark_when(bool holds, ts_bevel_remark_kind kind)
{
    return holds ? TS_BEVEL_REMARK(kind) : 0;
}

#endif
