/* rating/drive_shims.c: where must every bevel gear stand, and which shims bring it there? */
#include "rating/drive_shims.h"

#include "element/bevel_blank.h"

#include <math.h>

#define COUNT(list) (sizeof(list) / sizeof(list)[0])

/* m, thickest first; common practice, no source */
static const double steps[] = {100e-6, 50e-6, 25e-6};

/* A move of 1 along the axis into mesh takes this much normal backlash; out of it adds as much. */
static double play_of(double delta, double alpha_n)
{
    return ts_bevel_play_taken(ts_bevel_closing(1.0, 0.0, delta), alpha_n);
}

static void choose_step(ts_bevel_shims *one, ts_measure tolerance)
{
    const double k = fabs(one->shims[0].k_j) + fabs(one->shims[1].k_j);

    one->chosen = ts_measure_known(tolerance) && tolerance.value > 0.0;
    one->step   = steps[one->chosen ? COUNT(steps) - 1 : 1];
    for (size_t i = COUNT(steps); one->chosen && i-- > 0;)
        if (0.5 * k * steps[i] <= tolerance.value)
            one->step = steps[i];
    one->j_step = 0.5 * k * one->step;
    one->chosen = one->chosen && one->j_step <= tolerance.value;
}

static void choose_range(ts_shim *shim, double step)
{
    const double off[3] = {TS_SHIM_SEAT, TS_SHIM_BEARING, TS_SHIM_CROWN};
    double       sum = 0.0, squares = 0.0;

    for (size_t i = 0; i < COUNT(off); i++) {
        sum += off[i];
        squares += off[i] * off[i];
    }
    shim->stack    = sum;
    shim->likely   = sqrt(squares);
    shim->range[0] = TS_SHIM_NOMINAL - step * ceil(sum / step - 1e-9);
    shim->range[1] = TS_SHIM_NOMINAL + step * ceil(sum / step - 1e-9);
}

/* What the file tells of the bevels of a take-off; those of a box have no such words. */
static const ts_take_off *take_off_of(const ts_drive *drive, const ts_mesh *mesh)
{
    for (size_t d = 0; d < drive->drive_count; d++)
        if (&drive->drive[d].take_off.bevels == mesh->bevels)
            return &drive->drive[d].take_off;
    return NULL;
}

static void find_play(const ts_take_off *told, const ts_floats *floats, ts_bevel_shims *one)
{
    one->j_bn[0] = one->j_bn[1] = one->j_all[0] = one->j_all[1] = NAN;
    if (told == NULL || !ts_measure_known(told->backlash))
        return;
    const double t = ts_measure_known(told->tolerance) ? told->tolerance.value : 0.0;
    one->j_bn[0]   = told->backlash.value - t;
    one->j_bn[1]   = told->backlash.value + t;
    for (uint32_t d = 0; floats != NULL && d < floats->count; d++) {
        const ts_drive_float  *item   = &floats->items[d];
        const ts_float_option *option = ts_float_chosen(item);
        if (item->mesh != one->mesh || item->missing != NULL || option == NULL)
            continue;
        one->j_all[0] = option->j[0];
        one->j_all[1] = option->j[1];
    }
}

static void solve_one(const ts_drive *drive, const ts_motion *motion, const ts_floats *floats,
                      ts_bevel_shims *one)
{
    const ts_mesh        *mesh     = &motion->train->meshes[one->mesh];
    const ts_mesh_motion *turn     = &motion->meshes[one->mesh];
    const ts_take_off    *told     = take_off_of(drive, mesh);
    const double          delta[2] = {turn->bevel.delta_1, turn->bevel.delta_2};
    ts_bevel_blank        blank;

    one->missing = !turn->solved               ? "the geometry of their cones"
                   : turn->teeth_fault != NULL ? "the size of their teeth"
                                               : NULL;
    if (one->missing != NULL)
        return;
    ts_bevel_blank_solve(&turn->bevel, &turn->teeth, &blank, NULL);
    for (int i = 0; i < 2; i++) {
        ts_shim *shim = &one->shims[i];
        shim->gear    = i == 0 ? mesh->driver : mesh->driven;
        shim->t_xo    = blank.t_xo[i];
        shim->t_xi    = blank.t_xi[i];
        shim->k_j     = play_of(delta[i], turn->alpha_wn);
    }
    choose_step(one, told != NULL ? told->tolerance : (ts_measure){.standing = TS_ABSENT});
    for (int i = 0; i < 2; i++)
        choose_range(&one->shims[i], one->step);
    find_play(told, floats, one);
}

ts_status ts_shims_solve(const ts_drive *drive, const ts_motion *motion, const ts_floats *floats,
                         ts_arena *arena, ts_shim_plan *out)
{
    const ts_train *train = motion->train;

    *out = (ts_shim_plan){TS_TAKE(arena, ts_bevel_shims, train->mesh_count), 0};
    if (out->items == NULL)
        return TS_NO_MEMORY;
    for (uint32_t m = 0; m < train->mesh_count; m++)
        if (train->meshes[m].kind == TS_MESH_BEVEL) {
            out->items[out->count].mesh = m;
            solve_one(drive, motion, floats, &out->items[out->count++]);
        }
    return TS_OK;
}
