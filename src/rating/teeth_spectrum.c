/* rating/teeth_spectrum.c: what do all conditions together do to every flank, and what sets a mesh?
 */
#include "rating/drive_teeth_parts.h"

#include <math.h>

static const ts_flank flanks[2] = {TS_FLANK_LEADING, TS_FLANK_TRAILING};

/* ---- one flank of one gear ------------------------------------------------------------------- */

/* Gathers what wears it.  False when a rating is missing. */
static bool gather(const ts_teeth_case *c, uint32_t gear, ts_flank flank, ts_rated_stress stress,
                   size_t *count)
{
    const ts_teeth_scratch *scratch = c->teeth->scratch;

    *count = 0;
    for (uint32_t i = scratch->first[gear]; i < scratch->first[gear + 1]; i++) {
        const uint32_t m    = scratch->mesh[i];
        const int      side = c->train->meshes[m].driver == gear ? 0 : 1;

        for (uint32_t condition = 0; condition < c->drive->condition_count; condition++) {
            const ts_mesh_case *one = ts_teeth_at(c, m, condition);
            const ts_mesh_load *load =
                &c->teeth->power->mesh[(size_t)condition * c->train->mesh_count + m];

            if (!one->loaded || load->flank[side] != flank)
                continue;
            if (one->missing != NULL || one->fault != NULL)
                return false;
            const ts_iso6336_gear_rating *g       = &one->rating.gear[side];
            const bool                    contact = stress == TS_RATED_CONTACT;

            scratch->wears[*count] =
                ts_wear_of(contact ? g->sigma_H : g->sigma_F, one->load.N_L[side],
                           contact ? &g->contact : &g->bending);
            scratch->places[*count] = (ts_flank_life){.mesh = m, .condition = (int32_t)condition};
            *count += 1;
        }
    }
    return true;
}

static ts_flank_life live(const ts_teeth_case *c, uint32_t gear, ts_flank flank,
                          ts_rated_stress stress)
{
    ts_flank_life out = {.S = (double)NAN, .condition = TS_EVERY_CONDITION};
    size_t        count;

    if (!gather(c, gear, flank, stress, &count))
        return out;
    out.S = INFINITY;
    if (count == 0)
        return out;
    const ts_iso6336_life life = ts_wear_life(c->teeth->scratch->wears, count, NULL);
    out                        = c->teeth->scratch->places[life.worst];
    out.S                      = life.S;
    out.share                  = life.share;
    return out;
}

static void live_all(const ts_teeth_case *c)
{
    for (uint32_t gear = 0; gear < c->train->gear_count; gear++) {
        if (c->teeth->scratch->first[gear] == c->teeth->scratch->first[gear + 1])
            continue;
        for (int f = 0; f < 2; f++)
            for (int s = TS_RATED_CONTACT; s <= TS_RATED_BENDING; s++)
                c->teeth->lives[ts_flank_life_of(gear, flanks[f], (ts_rated_stress)s)] =
                    live(c, gear, flanks[f], (ts_rated_stress)s);
    }
}

/* ---- one mesh -------------------------------------------------------------------------------- */

/* Does this mesh work on that flank of its gear in any condition? */
static bool works_on(const ts_teeth_case *c, uint32_t m, int side, ts_flank flank)
{
    for (uint32_t condition = 0; condition < c->drive->condition_count; condition++) {
        const ts_mesh_load *load =
            &c->teeth->power->mesh[(size_t)condition * c->train->mesh_count + m];

        if (ts_teeth_at(c, m, condition)->loaded && load->flank[side] == flank)
            return true;
    }
    return false;
}

/* NaN is worse than anything. */
static bool worse(double a, double b)
{
    return !isnan(b) && !(a >= b);
}

/* A place belongs to the mesh that wears it most; `all`: count those of others as well. */
static void weigh(const ts_teeth_case *c, uint32_t m, int side, ts_flank flank, bool all,
                  ts_mesh_strength *out)
{
    const ts_mesh *mesh = &c->train->meshes[m];
    const uint32_t gear = side == 0 ? mesh->driver : mesh->driven;

    for (int s = TS_RATED_CONTACT; s <= TS_RATED_BENDING; s++) {
        const ts_rated_stress stress  = (ts_rated_stress)s;
        const ts_flank_life   life    = c->teeth->lives[ts_flank_life_of(gear, flank, stress)];
        const bool            contact = stress == TS_RATED_CONTACT;
        double               *own     = contact ? &out->S_H[side] : &out->S_F[side];
        const double reserve = life.S / (contact ? c->teeth->S_Hmin : c->teeth->S_Fmin) - 1.0;

        if (worse(life.S, *own)) {
            *own                  = life.S;
            out->worn_by[side][s] = isnan(life.S) ? m : life.mesh;
        }
        if ((!all && life.mesh != m && !isnan(life.S)) || !worse(reserve, out->reserve))
            continue;
        out->reserve = reserve;
        out->gear    = side;
        out->flank   = flank;
        out->stress  = stress;
        out->life    = life;
    }
}

static void weigh_all(const ts_teeth_case *c, uint32_t m, bool all, ts_mesh_strength *out)
{
    for (int side = 0; side < 2; side++)
        for (int f = 0; f < 2; f++)
            if (works_on(c, m, side, flanks[f]))
                weigh(c, m, side, flanks[f], all, out);
}

/* The worse flank of each gear, for pitting and for bending. */
static void note_safeties(const ts_teeth_case *c, uint32_t m, int side, ts_rated_stress stress,
                          double S)
{
    const ts_mesh *mesh = &c->train->meshes[m];
    const uint32_t gear = side == 0 ? mesh->driver : mesh->driven;

    for (int f = 0; f < 2; f++) {
        const ts_flank_life *life = &c->teeth->lives[ts_flank_life_of(gear, flanks[f], stress)];
        size_t               count;

        if (!works_on(c, m, side, flanks[f]) || !(life->S <= S) || !isfinite(S) ||
            !gather(c, gear, flanks[f], stress, &count))
            continue;
        ts_teeth_note_safety(c, m, side, stress, count, S);
        return;
    }
}

static void note_mesh(const ts_teeth_case *c, uint32_t m)
{
    const ts_mesh_strength *strength = &c->teeth->strength[m];

    for (int side = 0; side < 2; side++) {
        note_safeties(c, m, side, TS_RATED_CONTACT, strength->S_H[side]);
        note_safeties(c, m, side, TS_RATED_BENDING, strength->S_F[side]);
    }
}

static void add_up_mesh(const ts_teeth_case *c, uint32_t m)
{
    ts_mesh_strength *out = &c->teeth->strength[m];

    out->reserve = out->S_H[0] = out->S_H[1] = out->S_F[0] = out->S_F[1] = INFINITY;
    out->times                                                           = INFINITY;
    weigh_all(c, m, false, out);
    if (isinf(out->reserve))
        weigh_all(c, m, true, out);
    if (isnan(out->reserve)) {
        out->times = (double)NAN;
        return;
    }
    if (isinf(out->reserve))
        return;
    const ts_mesh *mesh = &c->train->meshes[m];
    size_t         count;
    (void)gather(c, out->gear == 0 ? mesh->driver : mesh->driven, out->flank, out->stress, &count);
    out->times =
        1.0 / ts_wear_damage(c->teeth->scratch->wears, count,
                             out->stress == TS_RATED_CONTACT ? c->teeth->S_Hmin : c->teeth->S_Fmin);
}

void ts_teeth_add_up(const ts_teeth_case *c)
{
    live_all(c);
    for (uint32_t m = 0; m < c->train->mesh_count; m++) {
        add_up_mesh(c, m);
        if (c->workings != NULL)
            note_mesh(c, m);
    }
}
