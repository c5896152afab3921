/* element/rack_cutter.h: a slow second way to the shape of a tooth: cut it, roll by roll. */
#ifndef TS_TEST_RACK_CUTTER_H
#define TS_TEST_RACK_CUTTER_H

#include "element/tooth_outline.h"

/* The rack that cuts a spur gear, and how near its tooth comes to a point of the gear (m) over the
 * whole roll: 0 on the cut surface, negative where the tool has cut the point away. */
typedef struct rack_cutter {
    double r;     /* rolling circle = reference circle                            */
    double datum; /* height of the rack's datum line above the gear's axis        */
    double module;
    double alpha; /* pressure angle                                               */
    double depth; /* dedendum of the gear = addendum of the tool                  */
    double rho;   /* tip round of the tool                                        */
} rack_cutter;

rack_cutter rack_cutter_of(const ts_cylindrical_frame *frame, const ts_cylindrical_gear *gear);
double      rack_cutter_clearance(const rack_cutter *cutter, ts_outline_point point);

#endif
