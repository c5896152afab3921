/* rating/iso6336/remark.c: what is said when a rating leaves the range of the standard? */
#include "rating/iso6336/remark.h"

#define FROM_MEMORY " (from memory)"
#define PART_1      "ISO 6336-1:2019, clause "
#define PART_2      "ISO 6336-2:2019, clause "
#define PART_3      "ISO 6336-3:2019, clause "

static const ts_remark_text texts[TS_REMARK_COUNT] = {
    [TS_REMARK_PRESSURE_ANGLE] =
        {"pressure-angle",
         "the normal pressure angle is outside 15 to 25 degrees; confirm the result by experience",
         PART_2 "1" FROM_MEMORY},
    [TS_REMARK_HELIX_ANGLE] =
        {"helix-angle", "the helix angle is above 30 degrees; confirm the result by experience",
         PART_2 "1" FROM_MEMORY},
    [TS_REMARK_CONTACT_RATIO_HIGH] = {"contact-ratio-high",
                                      "the transverse contact ratio is above 2.5",
                                      PART_1 "1" FROM_MEMORY},
    [TS_REMARK_CONTACT_RATIO_LOW] =
        {"contact-ratio-low",
         "the transverse contact ratio is below 1.2; the mesh stiffness may be 10 % less",
         PART_1 "9.3.2" FROM_MEMORY},
    [TS_REMARK_SHIFT_SUM] =
        {"shift-sum", "the sum of profile shifts is outside -0.5 to 2; the stiffness is a guess",
         PART_1 "9.3.1" FROM_MEMORY},
    [TS_REMARK_SHIFT_ORDER] =
        {"shift-order",
         "the pinion has less profile shift than the wheel; the stiffness was not fitted to that",
         PART_1 "9.3.1" FROM_MEMORY},
    [TS_REMARK_UNDERCUT] = {"undercut",
                            "a tooth is undercut; the critical section may lie elsewhere",
                            PART_3 "6.1" FROM_MEMORY},
    [TS_REMARK_THIN_TEETH] =
        {"thin-teeth",
         "teeth may be made more than 0.05 modules thinner; the root is rated as thin as that",
         PART_3 "6" FROM_MEMORY},
    [TS_REMARK_NOT_ON_FILLET] =
        {"not-on-fillet",
         "the tangent at the root does not touch the fillet of the rack's tip round",
         PART_3 "6.1" FROM_MEMORY},
    [TS_REMARK_NOTCH_RANGE] = {"notch-range", "the notch parameter q_s is outside 1 to 8",
                               PART_3 "7.2" FROM_MEMORY},
    [TS_REMARK_INTERNAL_ROOT] =
        {"internal-root",
         "the root of the internal gear is taken as cut by the rack; no pinion cutter is given",
         PART_3 "6.2" FROM_MEMORY},
    [TS_REMARK_RING_HELD] =
        {"ring-held",
         "the internal gear is taken as held fast, for neither its rim nor its inertia is given",
         PART_1 "6.5.9" FROM_MEMORY},
    [TS_REMARK_RELIEF_UNUSED] = {"relief-unused",
                                 "tip relief does not count at accuracy grade 6 and coarser",
                                 PART_1 "6.5.4" FROM_MEMORY},
    [TS_REMARK_HELIX_ENDS] =
        {"helix-ends",
         "helical teeth without relief are rated 1.2 times as loaded at the ends of contact (2019)",
         PART_2 "6.3" FROM_MEMORY},
    [TS_REMARK_VISCOSITY] = {"viscosity", "the viscosity at 40 degrees is outside 10 to 500 mm2/s",
                             PART_2 "12.3.1" FROM_MEMORY},
    [TS_REMARK_FLANK_ROUGH]  = {"flank-rough", "the flank roughness is outside 0.5 to 20 um",
                                PART_2 "12.3.3" FROM_MEMORY},
    [TS_REMARK_FILLET_ROUGH] = {"fillet-rough",
                                "the fillet is rougher than 40 um; its factor is that of 40 um",
                                PART_3 "14.3.1" FROM_MEMORY},
    [TS_REMARK_HARDNESS_UNKNOWN] =
        {"hardness-unknown",
         "the soft gear gets no credit for its hard mate, for its Brinell hardness is not given",
         PART_2 "13.2" FROM_MEMORY},
    [TS_REMARK_HARDNESS_RANGE] = {"hardness-range",
                                  "the Brinell hardness of the soft gear is outside 130 to 470",
                                  PART_2 "13.2" FROM_MEMORY},
    [TS_REMARK_STATIC_BELOW_LONG] =
        {"static-below-long",
         "the static strength came out below that of long life; the larger one is taken",
         PART_2 "5.4.3" FROM_MEMORY},
    [TS_REMARK_DEEP_TOOTH] =
        {"deep-tooth",
         "deep teeth (virtual contact ratio 2 and more) are credited for sharing load",
         PART_3 "10" FROM_MEMORY},
    [TS_REMARK_RELIEF_UNEVEN] =
        {"relief-uneven", "the tips are relieved by different amounts; the smaller one counts",
         "common practice, no source"},
    [TS_REMARK_LOAD_LOW] =
        {"load-low", "the specific load is below 100 N/mm; stiffness and resonance are uncertain",
         PART_1 "9.3.1" FROM_MEMORY},
    [TS_REMARK_LOAD_SEPARATES] = {"load-separates",
                                  "the specific load is below 50 N/mm; flanks may part and hammer",
                                  PART_1 "6.5.4" FROM_MEMORY},
    [TS_REMARK_LOAD_HIGH] =
        {"load-high", "the specific load is above 1600 N/mm; the stiffness was not checked there",
         PART_1 "9.3.1" FROM_MEMORY},
    [TS_REMARK_RESONANCE] = {"resonance",
                             "the mesh runs in its main resonance; keep away or analyse it further",
                             PART_1 "6.5.5" FROM_MEMORY},
    [TS_REMARK_INTERMEDIATE] =
        {"intermediate", "the mesh runs between resonance and free running; analyse it further",
         PART_1 "6.5.7" FROM_MEMORY},
    [TS_REMARK_H_LIMITED] = {"contact-sharing",
                             "one pair of teeth carries everything; K_Halpha is at its limit",
                             PART_1 "8.3.4" FROM_MEMORY},
    [TS_REMARK_F_LIMITED] = {"bending-sharing",
                             "one pair of teeth carries everything; K_Falpha is at its limit",
                             PART_1 "8.3.4" FROM_MEMORY},
    [TS_REMARK_FACE_PART] = {"face-part", "only a part of the face carries; K_Hbeta is 2 or more",
                             PART_1 "7.4.1" FROM_MEMORY},
    [TS_REMARK_CYCLES] = {"cycles", "the life is beyond 1e10 cycles; the last line is carried on",
                          PART_2 "11.3" FROM_MEMORY},
    [TS_REMARK_STRESS_RATIO] = {"stress-ratio", "the stress ratio is outside -1.2 to 0",
                                PART_3 "annex B" FROM_MEMORY},
    [TS_REMARK_K_GAMMA]      = {"mesh-load-factor",
                                "the edition of 2006 has no mesh load factor; it counts all the same",
                                "ISO 6336-1:2006, clause 4" FROM_MEMORY},
    [TS_REMARK_NO_LOAD] = {"no-load", "the mesh carries nothing; load factors are not computed",
                           PART_1 "4" FROM_MEMORY},
};

const ts_remark_text *ts_remark_text_of(ts_remark_kind kind)
{
    return &texts[kind];
}
