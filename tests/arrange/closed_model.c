/* arrange/closed_model.c: what does a mesh need, when two short formulas say it? */
#include "arrange/closed_model.h"

#include <math.h>

/* Y0 and Y1: the usual fit of the Lewis factor for full-depth teeth of 20 degrees (from memory). */
static double bending(const closed_model *k, double m, uint32_t z, bool reversed)
{
    const double Y    = k->Y0 - k->Y1 / (double)z;
    const double rate = reversed ? 1.0 / k->reversed_rate : 1.0;
    return Y > 0.0 ? k->K_bend * rate / (m * Y) : (double)INFINITY;
}

static double width(void *context, const ts_arrange_mesh *mesh)
{
    const closed_model *k  = context;
    const double        m  = k->modules[mesh->module];
    const double        zi = (double)mesh->z_inner, zj = (double)mesh->z_outer;
    const double        contact = k->K_cont * (zi + zj) / (zi * zj * m);
    const double        inner   = bending(k, m, mesh->z_inner, mesh->reversed_inner);
    const double        outer   = bending(k, m, mesh->z_outer, mesh->reversed_outer);
    double              force   = 0.0;

    for (size_t c = 0; c < mesh->condition_count; c++)
        force = fmax(force, fabs(mesh->force[c]));
    return force * fmax(contact, fmax(inner, outer));
}

/* The least over all mates, either way round, for mates that are loaded on one flank. */
static void least(void *context, const ts_arrange_gear *gear, double *per_newton)
{
    static const double newton = 1.0;
    ts_arrange_mesh     mesh   = {.module = gear->module, .force = &newton, .condition_count = 1};
    double              found  = (double)INFINITY;

    for (size_t i = 0; i < gear->mate_count; i++) {
        mesh.z_inner        = gear->z;
        mesh.z_outer        = gear->mates[i];
        mesh.reversed_inner = gear->reversed;
        mesh.reversed_outer = false;
        found               = fmin(found, width(context, &mesh));
        mesh.z_inner        = gear->mates[i];
        mesh.z_outer        = gear->z;
        mesh.reversed_inner = false;
        mesh.reversed_outer = gear->reversed;
        found               = fmin(found, width(context, &mesh));
    }
    for (size_t c = 0; c < gear->condition_count; c++)
        per_newton[c] = found;
}

static double gear_mass(void *context, uint32_t module, uint32_t z, double b)
{
    const closed_model *k = context;
    const double        d = k->modules[module] * (double)z;
    return k->density * d * d * b;
}

ts_arrange_model closed_model_of(closed_model *model)
{
    return (ts_arrange_model){.context      = model,
                              .width        = width,
                              .proportional = true,
                              .least        = least,
                              .gear_mass    = gear_mass};
}
