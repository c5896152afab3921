/* rating/iso10300/bevel_remark.c: what is said when bevels leave the range of the standard? */
#include "rating/iso10300/bevel_remark.h"

#define FROM_MEMORY " (from memory)"
#define PART_1      "ISO 10300-1:2014, clause "
#define PART_2      "ISO 10300-2:2014, clause "
#define PART_3      "ISO 10300-3:2014, clause "

static const ts_bevel_remark_text texts[TS_BEVEL_REMARK_COUNT] = {
    [TS_BEVEL_REMARK_SPIRAL_ANGLE] =
        {"spiral-angle",
         "the mean spiral angle is above 45 degrees; confirm the result by experience",
         PART_1 "1" FROM_MEMORY},
    [TS_BEVEL_REMARK_PRESSURE_ANGLE] =
        {"pressure-angle",
         "the normal pressure angle is above 30 degrees; confirm the result by experience",
         PART_1 "1" FROM_MEMORY},
    [TS_BEVEL_REMARK_FACE_WIDTH] =
        {"face-width",
         "the face is wider than 13 mean normal modules; confirm the result by experience",
         PART_1 "1" FROM_MEMORY},
    [TS_BEVEL_REMARK_CONTACT_RATIO_HIGH] = {"contact-ratio-high",
                                            "the virtual transverse contact ratio is 2 or more",
                                            PART_1 "1" FROM_MEMORY},
    [TS_BEVEL_REMARK_CONTACT_RATIO_LOW] =
        {"contact-ratio-low",
         "the virtual transverse contact ratio is below 1; the spiral alone keeps teeth in contact",
         PART_1 "1" FROM_MEMORY},
    [TS_BEVEL_REMARK_UNDERCUT]    = {"undercut",
                                     "a tooth is undercut; the critical section may lie elsewhere",
                                     PART_3 "6.4.1" FROM_MEMORY},
    [TS_BEVEL_REMARK_NOTCH_RANGE] = {"notch-range", "the notch parameter q_s is outside 1 to 8",
                                     PART_3 "6.4.2" FROM_MEMORY},
    [TS_BEVEL_REMARK_MODULE_LARGE] =
        {"module-large",
         "the mean normal module is above 7.5 mm; no size factor of the flank is computed",
         PART_2 "6.5" FROM_MEMORY},
    [TS_BEVEL_REMARK_CUTTER_UNKNOWN] =
        {"cutter-unknown",
         "the cutter radius is not given; curved teeth get no credit for spreading the load",
         PART_1 "8.5" FROM_MEMORY},
    [TS_BEVEL_REMARK_HARDENING_UNUSED] =
        {"hardening-unused",
         "a soft gear runs with a hard one; its work hardening counts only where Z_W is given",
         PART_2 "8.3" FROM_MEMORY},
    [TS_BEVEL_REMARK_VISCOSITY]   = {"viscosity",
                                     "the viscosity at 40 degrees is outside 10 to 500 mm2/s",
                                     PART_2 "8.2" FROM_MEMORY},
    [TS_BEVEL_REMARK_FLANK_ROUGH] = {"flank-rough", "the flank roughness is outside 0.5 to 20 um",
                                     PART_2 "8.2" FROM_MEMORY},
    [TS_BEVEL_REMARK_FILLET_ROUGH] =
        {"fillet-rough", "the fillet is rougher than 40 um; its factor is that of 40 um",
         PART_3 "6.5" FROM_MEMORY},
    [TS_BEVEL_REMARK_NOT_STEEL] =
        {"not-steel",
         "a modulus is far from that of steel, for which the stiffness of the teeth stands",
         PART_1 "9" FROM_MEMORY},
    [TS_BEVEL_REMARK_LOAD_LOW] =
        {"load-low", "the specific load is below 100 N/mm; stiffness and resonance are uncertain",
         PART_1 "9" FROM_MEMORY},
    [TS_BEVEL_REMARK_RESONANCE] = {"resonance",
                                   "the mesh runs in its main resonance; keep away or analyse it",
                                   PART_1 "7.6.3" FROM_MEMORY},
    [TS_BEVEL_REMARK_INTERMEDIATE] =
        {"intermediate", "the mesh runs between resonance and free running; analyse it further",
         PART_1 "7.6.5" FROM_MEMORY},
    [TS_BEVEL_REMARK_SUPERCRITICAL] =
        {"supercritical",
         "the mesh runs above its resonance, which was placed with discs for its wheels",
         PART_1 "7.6.4" FROM_MEMORY},
    [TS_BEVEL_REMARK_CONTACT_SHARING] =
        {"contact-sharing", "one pair of teeth carries everything; K_Halpha is at its limit",
         PART_1 "9.4" FROM_MEMORY},
    [TS_BEVEL_REMARK_BENDING_SHARING] =
        {"bending-sharing", "one pair of teeth carries everything; K_Falpha is at its limit",
         PART_1 "9.4" FROM_MEMORY},
    [TS_BEVEL_REMARK_CYCLES]  = {"cycles",
                                 "the life is beyond 1e10 cycles; the last line is carried on",
                                 PART_2 "8.4" FROM_MEMORY},
    [TS_BEVEL_REMARK_NO_LOAD] = {"no-load",
                                 "the mesh carries nothing; load factors are not computed",
                                 PART_1 "5" FROM_MEMORY},
};

const ts_bevel_remark_text *ts_bevel_remark_text_of(ts_bevel_remark_kind kind)
{
    return &texts[kind];
}
