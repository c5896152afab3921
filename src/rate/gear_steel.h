/* rate/gear_steel.h: what is the tooth made of?  For gear pairs and bevel pairs alike. */
#ifndef TS_RATE_GEAR_STEEL_H
#define TS_RATE_GEAR_STEEL_H

#include "catalog/gear_material.h"
#include "rate/rate_desk.h"

typedef struct ts_rated_steel {
    bool             from_row; /* `row` is a row of the catalogue                                */
    ts_gear_material row;
    ts_gear_class class;
    bool   classed;  /* does the file say how it is hardened?                                    */
    double hardness; /* HV, of normalised steel HBW; NaN: not known                              */
    double sigma_Hlim, sigma_Flim, yield, HB; /* NaN: not known                                  */
    double E, nu, rho;
} ts_rated_steel;

/* The steel of gear 0 or 1 by the keys of the record, in the open section. */
void ts_rate_gear_steel(ts_rate_desk *desk, int gear, ts_rated_steel *steel);
/* Is it as hard as the line of its grade asks for?  Harder is a remark, for the
 * value at the end of the line holds; softer is refused where the line is level, for nothing says
 * what such a steel bears. */
void ts_rate_judge_hardness(ts_rate_desk *desk, const char *rule, double hardness,
                            const ts_gear_material *row, const ts_gear_strength *strength);
/* Names what a rating by ISO 6336-5 lacks of it. */
void ts_rate_need_steel(ts_rate_desk *desk, int gear, const ts_rated_steel *steel);

#endif
