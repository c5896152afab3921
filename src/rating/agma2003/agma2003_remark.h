/* rating/agma2003/agma2003_remark.h: where does a bevel rating by AGMA leave its range?
 *
 * A result with a remark stands, marked; what cannot be computed is NaN and told by `missing`.
 */
#ifndef TS_RATING_AGMA2003_REMARK_H
#define TS_RATING_AGMA2003_REMARK_H

#include <stdint.h>

typedef enum ts_agma2003_remark {
    /* of the pair */
    TS_AGMA2003_REMARK_FACE_LENGTH, /* b above 0.3 R_e or 10 m_et                              */
    TS_AGMA2003_REMARK_MODULE,      /* m_et above 50.8 mm                                      */
    TS_AGMA2003_REMARK_NO_CURVE,    /* accuracy outside Q_v 5 .. 11                            */
    TS_AGMA2003_REMARK_CUTTER,      /* cutter radius not given                                 */
    TS_AGMA2003_REMARK_MIXED,       /* soft wheel under a hard pinion without Z_W              */
    TS_AGMA2003_REMARK_HARDNESS,    /* Z_W beyond a hardness ratio of 1.7                      */
    TS_AGMA2003_REMARK_NO_Z_I,      /* geometry factor of the flank not given                  */
    TS_AGMA2003_REMARK_NO_Y_J,      /* geometry factor of a root not given                     */
    /* of one case */
    TS_AGMA2003_REMARK_SPEED,       /* v_et beyond the curve of K_v                            */
    TS_AGMA2003_REMARK_FEW_CYCLES,  /* below the lines of Z_NT and Y_NT                        */
    TS_AGMA2003_REMARK_MANY_CYCLES, /* above 1e10                                              */
    TS_AGMA2003_REMARK_HOT,         /* above 120 degC                                          */
    TS_AGMA2003_REMARK_NO_LOAD,
    TS_AGMA2003_REMARK_COUNT
} ts_agma2003_remark;

#define TS_AGMA2003_REMARKED(remark) (UINT32_C(1) << (remark))

const char *ts_agma2003_remark_says(ts_agma2003_remark remark);   /* a sentence without full stop */
const char *ts_agma2003_remark_clause(ts_agma2003_remark remark); /* standard and clause          */

#endif
