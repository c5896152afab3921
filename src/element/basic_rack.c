/* element/basic_rack.c: which rack defines the teeth, and does its root fit between the flanks? */
#include "element/basic_rack.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

const ts_basic_rack ts_basic_rack_A = {1.0, 1.25, 0.38};
const ts_basic_rack ts_basic_rack_B = {1.0, 1.25, 0.30};
const ts_basic_rack ts_basic_rack_C = {1.0, 1.25, 0.25};
const ts_basic_rack ts_basic_rack_D = {1.0, 1.40, 0.39};

/* Half the space at the root line is pi/4 - h_fPs*tan(alpha_n); a circle that touches the root line
 * and a flank meets the root line rho*tan(pi/4 - alpha_n/2) away from their corner (derived: both
 * tangents from the corner are equal).  Also ISO 53:1998, annex A. */
double ts_basic_rack_rho_most(const ts_basic_rack *rack, double alpha_n)
{
    const double half_space = pi / 4.0 - rack->h_fPs * tan(alpha_n);

    return half_space / tan(pi / 4.0 - alpha_n / 2.0);
}

ts_basic_rack ts_basic_rack_fitted(const ts_basic_rack *rack, double alpha_n)
{
    const double  most   = ts_basic_rack_rho_most(rack, alpha_n);
    ts_basic_rack fitted = *rack;

    if (fitted.rho_fPs > most)
        fitted.rho_fPs = most;
    return fitted;
}

/* A full root round computed here and handed back must be accepted: hence the few ulp. */
bool ts_basic_rack_possible(const ts_basic_rack *rack, double alpha_n)
{
    const double most = ts_basic_rack_rho_most(rack, alpha_n);

    return rack->h_aPs > 0.0 && rack->h_fPs > 0.0 && rack->rho_fPs >= 0.0 && most >= 0.0 &&
           rack->rho_fPs <= most * (1.0 + 1e-14) &&
           rack->rho_fPs * (1.0 - sin(alpha_n)) <= rack->h_fPs;
}
