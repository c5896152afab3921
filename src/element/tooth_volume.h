/* element/tooth_volume.h: how much metal stands in the teeth of a cylindrical gear beyond its root
 * circle, and what does it add to the gear's inertia?
 *
 * Units     m; areas of one tooth in the transverse section, m2 and m4.
 * Method    Between its flanks a tooth is as thick as the involute says: exact integrals.  Below
 *           the involute its flanks are taken as radial, with the round of the rack's tip in both
 *           corners; held against the exact outline (element/tooth_outline.h) by a test: the area
 *           is within 2 % of it, the gear's mass within a tenth of that.
 * Ranges    External gears without undercut to speak of; NaN where the tip lies in the base circle.
 */
#ifndef TS_ELEMENT_TOOTH_VOLUME_H
#define TS_ELEMENT_TOOTH_VOLUME_H

#include "base/workings.h"

typedef struct ts_tooth_section {
    double r_b, r_f, r_F,
        r_a;      /* m    base, root, root form and tip radius; r_F not below r_b, r_f */
    double psi_b; /* rad  half of the tooth's angle at the base circle: s_t/d + inv    */
    double rho;   /* m    round in the corners at the root                             */
} ts_tooth_section;

typedef struct ts_tooth_area {
    double A; /* m2  of one tooth beyond the root circle               */
    double J; /* m4  its second moment about the axis of the gear      */
} ts_tooth_area;

ts_tooth_area ts_tooth_area_of(const ts_tooth_section *in, ts_workings *workings);

#endif
