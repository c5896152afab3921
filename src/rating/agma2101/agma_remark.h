/* rating/agma2101/agma_remark.h: where does a rating leave the standard's range of validity?
 *
 * A rating carries its remarks as bits; each says a sentence and names the clause.  A result with a
 * remark stands, marked; what cannot be computed is NaN and told by `missing`.
 */
#ifndef TS_RATING_AGMA_REMARK_H
#define TS_RATING_AGMA_REMARK_H

#include <stdint.h>

typedef enum ts_agma_remark {
    /* of the pair */
    TS_AGMA_REMARK_CONTACT_RATIO,  /* eps_alpha >= 2                                            */
    TS_AGMA_REMARK_HELIX,          /* beta > 50 deg                                             */
    TS_AGMA_REMARK_INTERFERENCE,   /* contact begins below the end of the involute              */
    TS_AGMA_REMARK_POINTED,        /* a tooth ends in a point                                   */
    TS_AGMA_REMARK_NO_CLEARANCE,   /* a tip reaches the mate's root                             */
    TS_AGMA_REMARK_NO_BACKLASH,    /* the teeth are thicker than their spaces                   */
    TS_AGMA_REMARK_INTERNAL_J,     /* no Y_J for an internal gear                               */
    TS_AGMA_REMARK_LOW_OVERLAP,    /* helical with eps_beta <= 1                                */
    TS_AGMA_REMARK_ABOVE_FILLET,   /* the parabola touches past the end of the tip round        */
    TS_AGMA_REMARK_NO_SECTION,     /* no critical section                                       */
    TS_AGMA_REMARK_FACE_DIAMETER,  /* b/d_w1 > 2 with the empirical K_H                         */
    TS_AGMA_REMARK_FACE,           /* b > 40 in with the empirical K_H                          */
    TS_AGMA_REMARK_OVERHUNG,       /* overhung with the empirical K_H                           */
    TS_AGMA_REMARK_VERY_ACCURATE,  /* no curve of K_v                                           */
    TS_AGMA_REMARK_COARSE,         /* coarser than the curves of K_v                            */
    TS_AGMA_REMARK_THIN_RIM,       /* t_R < 0.5 h_t                                             */
    TS_AGMA_REMARK_RATIO,          /* Z_W beyond a ratio of 20                                  */
    TS_AGMA_REMARK_WHEEL_HARDNESS, /* Z_W outside 180 .. 400 HB                                 */
    TS_AGMA_REMARK_RELIABILITY,    /* outside the table of Y_Z                                  */
    /* of one case */
    TS_AGMA_REMARK_SPEED,       /* v beyond the curve of K_v                                    */
    TS_AGMA_REMARK_FEW_CYCLES,  /* below the lines of Y_N, Z_N                                  */
    TS_AGMA_REMARK_MANY_CYCLES, /* above 1e10                                                   */
    TS_AGMA_REMARK_HOT,         /* above 120 degC                                               */
    TS_AGMA_REMARK_COUNT
} ts_agma_remark;

#define TS_AGMA_REMARKED(remark) (UINT32_C(1) << (remark))

/* A sentence without a full stop, and the clause. */
const char *ts_agma_remark_says(ts_agma_remark remark);
const char *ts_agma_remark_clause(ts_agma_remark remark);

#endif
