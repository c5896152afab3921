/* rating/agma2003/agma2003_remark.c: what is said where AGMA's bevel rating ends? */
#include "rating/agma2003/agma2003_remark.h"

#include "rating/agma2003/agma2003_step.h"

typedef struct remark_row {
    const char *says, *clause;
} remark_row;

#define CLAUSE(what) AGMA2003 ", " what " (from memory)"

static const remark_row rows[TS_AGMA2003_REMARK_COUNT] = {
    [TS_AGMA2003_REMARK_FACE_LENGTH] =
        {"the face is longer than 0.3 of the outer cone distance or than 10 modules",
         CLAUSE("load distribution factor")},
    [TS_AGMA2003_REMARK_MODULE]   = {"the size factor ends at an outer module of 50.8 mm",
                                     CLAUSE("size factor for bending")},
    [TS_AGMA2003_REMARK_NO_CURVE] = {"the dynamic factor has curves for Q_v 5 to 11 (A_v 12 to 6); "
                                     "finer gears are rated by the finest",
                                     CLAUSE("dynamic factor")},
    [TS_AGMA2003_REMARK_CUTTER] =
        {"the cutter radius is not given; curved teeth get no credit for spreading the load",
         CLAUSE("lengthwise curvature factor")},
    [TS_AGMA2003_REMARK_MIXED] =
        {"a soft gear runs with a hard one; its work hardening counts only where Z_W is given",
         CLAUSE("hardness ratio factor")},
    [TS_AGMA2003_REMARK_HARDNESS] =
        {"the pinion is more than 1.7 times as hard as the wheel; the factor is that of 1.7",
         CLAUSE("hardness ratio factor")},
    [TS_AGMA2003_REMARK_NO_Z_I] =
        {"contact is not rated: the standard takes Z_I from charts and it is not given",
         CLAUSE("geometry factors")},
    [TS_AGMA2003_REMARK_NO_Y_J] =
        {"a root is not rated: the standard takes Y_J from charts and it is not given",
         CLAUSE("geometry factors")},
    [TS_AGMA2003_REMARK_SPEED]      = {"the speed is beyond the curve of the dynamic factor",
                                       CLAUSE("dynamic factor")},
    [TS_AGMA2003_REMARK_FEW_CYCLES] = {"the life is below the lines; their first value is taken",
                                       CLAUSE("stress cycle factors")},
    [TS_AGMA2003_REMARK_MANY_CYCLES] =
        {"the life is beyond 1e10 cycles; the last line is carried on",
         CLAUSE("stress cycle factors")},
    [TS_AGMA2003_REMARK_HOT]     = {"the teeth are hotter than 120 degC; steel may lose its temper",
                                    CLAUSE("temperature factor")},
    [TS_AGMA2003_REMARK_NO_LOAD] = {"the mesh carries nothing", CLAUSE("scope")},
};

const char *ts_agma2003_remark_says(ts_agma2003_remark remark)
{
    return rows[remark].says;
}

const char *ts_agma2003_remark_clause(ts_agma2003_remark remark)
{
    return rows[remark].clause;
}
