/* rating/iso6336/remark.h: where does a rating leave the range of the standard? */
#ifndef TS_RATING_REMARK_H
#define TS_RATING_REMARK_H

#include <stdbool.h>
#include <stdint.h>

typedef enum ts_remark_kind {
    /* the mesh */
    TS_REMARK_PRESSURE_ANGLE,
    TS_REMARK_HELIX_ANGLE,
    TS_REMARK_CONTACT_RATIO_HIGH,
    TS_REMARK_CONTACT_RATIO_LOW,
    TS_REMARK_SHIFT_SUM,
    TS_REMARK_SHIFT_ORDER,
    TS_REMARK_UNDERCUT,
    TS_REMARK_THIN_TEETH,
    TS_REMARK_NOT_ON_FILLET,
    TS_REMARK_NOTCH_RANGE,
    TS_REMARK_INTERNAL_ROOT,
    TS_REMARK_RING_HELD,
    TS_REMARK_RELIEF_UNUSED,
    TS_REMARK_HELIX_ENDS,
    TS_REMARK_VISCOSITY,
    TS_REMARK_FLANK_ROUGH,
    TS_REMARK_FILLET_ROUGH,
    TS_REMARK_HARDNESS_UNKNOWN,
    TS_REMARK_HARDNESS_RANGE,
    TS_REMARK_STATIC_BELOW_LONG,
    TS_REMARK_DEEP_TOOTH,
    TS_REMARK_RELIEF_UNEVEN,
    /* the load case */
    TS_REMARK_LOAD_LOW,
    TS_REMARK_LOAD_SEPARATES,
    TS_REMARK_LOAD_HIGH,
    TS_REMARK_RESONANCE,
    TS_REMARK_INTERMEDIATE,
    TS_REMARK_H_LIMITED,
    TS_REMARK_F_LIMITED,
    TS_REMARK_FACE_PART,
    TS_REMARK_CYCLES,
    TS_REMARK_STRESS_RATIO,
    TS_REMARK_K_GAMMA,
    TS_REMARK_NO_LOAD,
    TS_REMARK_COUNT
} ts_remark_kind;

typedef uint64_t ts_remarks; /* a set of them */

#define TS_REMARK(kind) ((ts_remarks)1 << (kind))

typedef struct ts_remark_text {
    const char *name;   /* "resonance": for JSON and for waivers                */
    const char *says;   /* one sentence without a full stop                      */
    const char *clause; /* standard and clause                                   */
} ts_remark_text;

/* kind < TS_REMARK_COUNT */
const ts_remark_text *ts_remark_text_of(ts_remark_kind kind);

static inline bool ts_remarks_have(ts_remarks remarks, ts_remark_kind kind)
{
    return (remarks & TS_REMARK(kind)) != 0;
}

#endif
