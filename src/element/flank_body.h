/* element/flank_body.h: is a gear described well enough to say how its flank rubs?
 *
 * What scuffing and micropitting both ask of one gear.
 */
#ifndef TS_ELEMENT_FLANK_BODY_H
#define TS_ELEMENT_FLANK_BODY_H

#include <stdbool.h>

typedef struct ts_flank_body {
    double E, nu; /* Pa, 1                                                       */
    double B_M;   /* J/(m2.K.s^0.5)  thermal contact coefficient                 */
    double Ra;    /* m  roughness of the flank                                   */
    double C_a;   /* m  tip relief, 0: none                                      */
} ts_flank_body;

/* NULL, or what is missing or out of its range: a noun phrase about both gears. */
const char *ts_flank_body_fault(const ts_flank_body *body);

/* What both methods ask of a mesh besides: its width (m), who drives (1 or 2), the tolerance class
 * and the lubrication factors.  The same answer. */
const char *ts_flank_mesh_fault(double b, int driver, int grade, double X_S, double X_L);

/* least < value <= most; false for NaN. */
static inline bool ts_is_above(double value, double least, double most)
{
    return value > least && value <= most;
}

#endif
