/* pump/windmill.c: down to which speed of its spool does an oil pump pack still feed? */
#include "pump/windmill.h"

#include "pump/drive_pumps_parts.h"

#include <math.h>

static const double two_pi = 6.28318530717958647693;

double ts_pack_spool_speed(const ts_oil_units *units, const ts_pack *pack, double share)
{
    const ts_pumps        *told    = pack->told;
    const ts_pack_element *element = &pack->elements[0];

    if (pack->missing != NULL || !(element->V_g > 0.0) || !(share > 0.0))
        return (double)NAN;
    const ts_units_desk desk = {units, NULL};
    ts_film_law         law;
    if (ts_units_oil(&desk, told->node, &law) != NULL)
        return (double)NAN;
    const double eta = ts_film_viscosity(&law, units->drive->oil.feed.value, NULL);
    const double Q   = told->flow.value * sqrt(share) / (1.0 - told->air.value);
    const double n   = (two_pi * Q / element->V_g + told->slip.value * share * element->dp / eta) /
                     element->filling.value;
    const uint32_t shaft = units->motion->train->pads[pack->pad].shaft;
    return n / fabs(ts_rational_value(units->motion->shafts[shaft].ratio));
}
