/* element/flank_body.c: is a gear described well enough to say how its flank rubs? */
#include "element/flank_body.h"

#include <stddef.h>

const char *ts_flank_body_fault(const ts_flank_body *body)
{
    if (!ts_is_above(body->E, 1e6, 1e13) || !(body->nu >= 0.0 && body->nu < 0.5))
        return "modulus and Poisson's ratio of both gears";
    if (!ts_is_above(body->B_M, 1e-3, 1e7))
        return "the thermal contact coefficient of both gears";
    if (!ts_is_above(body->Ra, 1e-12, 1e-3))
        return "the roughness of both flanks";
    return body->C_a >= 0.0 && body->C_a < 1e-2
               ? NULL
               : "the tip relief of both gears, 0 where there is none";
}

const char *ts_flank_mesh_fault(double b, int driver, int grade, double X_S, double X_L)
{
    if (!ts_is_above(b, 1e-9, 1e6))
        return "a face width above 0";
    if (driver != 1 && driver != 2)
        return "which gear drives, 1 or 2";
    if (grade < 0 || grade > 12)
        return "a tolerance class from 0 to 12";
    return ts_is_above(X_S, 1e-6, 10.0) && ts_is_above(X_L, 1e-6, 100.0)
               ? NULL
               : "the lubrication factors X_S and X_L";
}
