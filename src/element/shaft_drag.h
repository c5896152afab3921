/* element/shaft_drag.h: what do seals, air and the oil at its teeth ask of a shaft that turns?
 *
 * Each law of the losses, taken at one temperature of the oil, is a power of the speed; the
 * coefficients are those that the laws give (oil/drive_heat.h).  Oil in bearings stands apart.
 *
 * Units     SI; n >= 0 in rad/s, of the shaft itself.
 */
#ifndef TS_ELEMENT_SHAFT_DRAG_H
#define TS_ELEMENT_SHAFT_DRAG_H

typedef struct ts_shaft_drag {
    double seal;        /* N.m, at any speed                                                   */
    double wind;        /* N.m/(rad/s)^1.8, of its gears                                       */
    double thrown;      /* N.m/(rad/s)^2, of jets whose flow grows with the speed ...          */
    double full;        /* rad/s ... up to this one, from which on it stays; INFINITY: ever    */
    double churn, rate; /* N.m, s: churn exp(rate n), of teeth that dip                        */
} ts_shaft_drag;

typedef enum ts_drag_kind { TS_DRAG_SEAL, TS_DRAG_AIR, TS_DRAG_TEETH, TS_DRAG_KINDS } ts_drag_kind;

/* N.m, of one kind and of all. */
double ts_shaft_drag_of(const ts_shaft_drag *drag, ts_drag_kind kind, double n);
double ts_shaft_drag_at(const ts_shaft_drag *drag, double n);

#endif
