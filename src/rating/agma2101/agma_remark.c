/* rating/agma2101/agma_remark.c: what is said where the standard ends? */
#include "rating/agma2101/agma_remark.h"

#include "rating/agma2101/agma_step.h"

#include <stddef.h>

typedef struct remark_row {
    const char *says, *clause;
} remark_row;

#define SCOPE     "ANSI/AGMA 2101-D04, clause 1, and AGMA 908-B89, clause 1 (clauses from memory)"
#define CLAUSE(n) "ANSI/AGMA 2101-D04, clause " n " (clause from memory)"

static const remark_row rows[TS_AGMA_REMARK_COUNT] = {
    [TS_AGMA_REMARK_CONTACT_RATIO] =
        {"the standard ends below a transverse contact ratio of 2; the whole load is put on one "
         "tooth, at its tip",
         SCOPE},
    [TS_AGMA_REMARK_HELIX] = {"the standard ends at a helix angle of 50 deg", SCOPE},
    [TS_AGMA_REMARK_INTERFERENCE] =
        {"contact begins below the end of the involute: interference, or undercut in the active "
         "flank",
         SCOPE},
    [TS_AGMA_REMARK_POINTED]      = {"a tooth ends in a point", SCOPE},
    [TS_AGMA_REMARK_NO_CLEARANCE] = {"a tip reaches the root of its mate", SCOPE},
    [TS_AGMA_REMARK_NO_BACKLASH]  = {"the mesh has no backlash at this centre distance", SCOPE},
    [TS_AGMA_REMARK_INTERNAL_J] =
        {"AGMA 908 gives no bending factor for an internal gear; it must be given",
         "AGMA 908-B89, clause 5 (clause from memory)"},
    [TS_AGMA_REMARK_LOW_OVERLAP] =
        {"helical with an overlap ratio up to 1: the root is judged with the load at the tip and "
         "without the help of a slanting load line",
         "AGMA 908-B89, clause 5 (recalled, doubted: docs/method/agma2101.md)"},
    [TS_AGMA_REMARK_ABOVE_FILLET] =
        {"the inscribed parabola touches past the end of the tool's tip round, where the flank has "
         "begun; the round is carried on",
         "AGMA 908-B89, clause 5 (clause from memory)"},
    [TS_AGMA_REMARK_NO_SECTION] =
        {"a root has no critical section: the tooth is cut through, or the load acts below its "
         "base circle",
         "AGMA 908-B89, clause 5 (clause from memory)"},
    [TS_AGMA_REMARK_FACE_DIAMETER] =
        {"the empirical load distribution ends at a face width of twice the pinion's diameter",
         CLAUSE("15")},
    [TS_AGMA_REMARK_FACE]     = {"the empirical load distribution ends at a face width of 1.016 m",
                                 CLAUSE("15")},
    [TS_AGMA_REMARK_OVERHUNG] = {"the empirical load distribution holds for gears between bearings",
                                 CLAUSE("15")},
    [TS_AGMA_REMARK_VERY_ACCURATE] =
        {"more accurate than the curves of the dynamic factor (A_v 6, Q_v 11): 1.11 is taken, the "
         "upper end of what the standard grants",
         CLAUSE("8")},
    [TS_AGMA_REMARK_COARSE] = {"coarser than the curves of the dynamic factor (A_v 12, Q_v 5)",
                               CLAUSE("8")},
    [TS_AGMA_REMARK_THIN_RIM] =
        {"the rim is thinner than half the tooth height, where the curve of K_B ends",
         CLAUSE("5 and annex B")},
    [TS_AGMA_REMARK_RATIO] = {"the hardness ratio factor is held at its value for a ratio of 20",
                              CLAUSE("14")},
    [TS_AGMA_REMARK_WHEEL_HARDNESS] =
        {"the hardness ratio factor is drawn for wheels of 180 to 400 HB", CLAUSE("14")},
    [TS_AGMA_REMARK_RELIABILITY] = {"the table of the reliability factor goes from 0.5 to 0.9999",
                                    CLAUSE("18")},
    [TS_AGMA_REMARK_SPEED] =
        {"the pitch line runs faster than the curve of the dynamic factor goes", CLAUSE("8")},
    [TS_AGMA_REMARK_FEW_CYCLES] =
        {"below 1000 cycles in bending or 10 000 in contact the lines are level; yielding must be "
         "judged by itself",
         CLAUSE("17")},
    [TS_AGMA_REMARK_MANY_CYCLES] = {"above 1e10 cycles the lines are carried on", CLAUSE("17")},
    [TS_AGMA_REMARK_HOT] =
        {"above 120 degC the standard leaves the temperature factor to the designer; the rule of "
         "AGMA 2003 is taken",
         CLAUSE("19")},
};

const char *ts_agma_remark_says(ts_agma_remark remark)
{
    return rows[remark].says;
}

const char *ts_agma_remark_clause(ts_agma_remark remark)
{
    return rows[remark].clause;
}
