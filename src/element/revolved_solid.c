/* element/revolved_solid.c: how large is a body of revolution, and how hard to spin and to tilt?
 */
#include "element/revolved_solid.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

typedef struct integrals {
    double V, M, Q, P; /* of 1, z, z^2 and r^2/2 over the body */
} integrals;

/* What lies between the edge from a to b and the axis, negative where z falls. */
static void add_edge(integrals *sum, ts_section_point a, ts_section_point b)
{
    const double h  = b.z - a.z;
    const double aa = a.r * a.r, ab = a.r * b.r, bb = b.r * b.r;
    const double one = (aa + ab + bb) / 3.0;
    const double some =
        (aa + 2.0 * ab + 3.0 * bb) / 12.0; /* weighted with the way along the edge */
    const double more = (aa + 3.0 * ab + 6.0 * bb) / 30.0; /* ... and with its square */

    sum->V += pi * h * one;
    sum->M += pi * h * (a.z * one + h * some);
    sum->Q += pi * h * (a.z * a.z * one + 2.0 * a.z * h * some + h * h * more);
    sum->P += pi * h * (aa * aa + aa * ab + aa * bb + ab * bb + bb * bb) / 10.0;
}

ts_solid ts_revolve(const ts_section_point *points, size_t count)
{
    integrals sum = {0};

    for (size_t i = 0; count >= 3 && i < count; i++)
        add_edge(&sum, points[i], points[i + 1 < count ? i + 1 : 0]);
    if (sum.V < 0.0)
        sum = (integrals){-sum.V, -sum.M, -sum.Q, -sum.P};
    const double z = sum.V > 0.0 ? sum.M / sum.V : 0.0;
    return (ts_solid){.V = sum.V, .z = z, .I_z = sum.P, .I_x = 0.5 * sum.P + sum.Q - sum.V * z * z};
}

ts_solid ts_ring_solid(const ts_ring *ring)
{
    /* From its own end, so that a place far away does not cost digits of I_x. */
    const ts_section_point corners[] = {
        {0.0, ring->r_1}, {0.0, ring->R_1}, {ring->h, ring->R_2}, {ring->h, ring->r_2}};
    ts_solid solid = ts_revolve(corners, 4);

    solid.z += ring->z;
    return solid;
}

double ts_solid_tilting(const ts_solid *solid, double at)
{
    return solid->I_x + solid->V * (solid->z - at) * (solid->z - at);
}

ts_solid ts_solid_sum(ts_solid a, ts_solid b)
{
    const double V = a.V + b.V;
    const double z = V > 0.0 ? (a.V * a.z + b.V * b.z) / V : 0.0;

    return (ts_solid){.V   = V,
                      .z   = z,
                      .I_z = a.I_z + b.I_z,
                      .I_x = ts_solid_tilting(&a, z) + ts_solid_tilting(&b, z)};
}
