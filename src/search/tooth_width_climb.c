/* search/tooth_width_climb.c: in which order are widths tried? */
#include "search/tooth_width_parts.h"

#include <math.h>
#include <string.h>

/* A gear is tried wider by 1, 2, 4 ... steps, up to this, for the sake of those near to it. */
static const double exchange_most = 0.004; /* m */
/* Fine steps are first taken together, and what of that is too much is taken back. */
static const double stride_usual = 0.0005; /* m */

/* ---- up -------------------------------------------------------------------------------------- */

static bool push_gear(ts_sizing *s, uint32_t gear, long steps)
{
    if (s->w[gear] >= steps)
        return false;
    s->w[gear] = steps;
    return true;
}

/* More common width of a mesh. */
static bool push(ts_sizing *s, uint32_t m, long stride)
{
    const ts_mesh *mesh   = &s->rig->train->meshes[m];
    const long     common = ts_sizing_common(s, m);
    const long     wanted = common + stride < s->most[m] ? common + stride : s->most[m];
    const bool     driver = push_gear(s, mesh->driver, wanted);

    return push_gear(s, mesh->driven, wanted) || driver;
}

/* A mesh that can be no wider may still be helped: by a gear that overhangs its mate, where it is
 * the root that fails, and by those that load the same gear, since they share its wear and bend its
 * teeth to the other side. */
static bool help(ts_sizing *s, uint32_t m, long stride)
{
    const ts_mesh          *mesh     = &s->rig->train->meshes[m];
    const ts_mesh_strength *strength = &s->rig->teeth->strength[m];
    const uint32_t          gear     = strength->gear == 0 ? mesh->driver : mesh->driven;
    const double            m_n      = s->rig->motion->meshes[m].pair.in.m_n;
    const long reach = ts_sizing_common(s, m) + (long)ceil(fmin(2.0 * m_n / s->step, 1e6));
    bool       wider = false;

    if (strength->stress == TS_RATED_BENDING && s->w[gear] < reach)
        return push_gear(s, gear, s->w[gear] + stride < reach ? s->w[gear] + stride : reach);
    for (uint32_t n = 0; n < s->rig->train->mesh_count; n++)
        if (n != m && ts_sizing_free(s, n) && ts_sizing_touches(s, n, gear))
            wider = push(s, n, stride) || wider;
    return wider;
}

static bool push_all(ts_sizing *s, long stride, bool (*what)(ts_sizing *s, uint32_t m, long stride))
{
    bool wider = false;

    for (uint32_t m = 0; m < s->rig->train->mesh_count; m++)
        if (ts_sizing_free(s, m) && !ts_sizing_holds(s, m))
            wider = what(s, m, stride) || wider;
    return wider;
}

/* The gears of a mesh that is given up stay as wide as it may be. */
static void give_up(ts_sizing *s, uint32_t m)
{
    const uint32_t gears[2] = {s->rig->train->meshes[m].driver, s->rig->train->meshes[m].driven};

    s->plan->meshes[m].state = TS_MESH_TOO_WEAK;
    for (int g = 0; g < 2; g++)
        if (s->floor_steps[gears[g]] < s->most[m])
            s->floor_steps[gears[g]] = s->most[m];
}

static ts_status widen(ts_sizing *s, long stride)
{
    while (push_all(s, stride, push) || push_all(s, stride, help)) {
        const ts_status status = ts_sizing_rate(s);
        if (status != TS_OK)
            return status;
    }
    for (uint32_t m = 0; m < s->rig->train->mesh_count; m++)
        if (ts_sizing_free(s, m) && !ts_sizing_holds(s, m))
            give_up(s, m);
    return TS_OK;
}

/* ---- down ------------------------------------------------------------------------------------ */

/* Takes back so many steps of a gear, at most to its floor, if everything still holds. */
static ts_status narrow(ts_sizing *s, uint32_t gear, long stride, bool *narrower)
{
    const long before = s->w[gear], floor = s->floor_steps[gear];

    s->w[gear]             = before - stride > floor ? before - stride : floor;
    const ts_status status = ts_sizing_rate(s);
    *narrower              = status == TS_OK && ts_sizing_all_hold(s);
    if (!*narrower)
        s->w[gear] = before;
    return status;
}

/* Takes back all that is not needed, in growing and then in shrinking strides: the last one that is
 * refused is a single step.  *any becomes true when something was taken back. */
static ts_status narrow_far(ts_sizing *s, uint32_t gear, bool *any)
{
    for (long stride = 1; stride > 0 && s->w[gear] > s->floor_steps[gear];) {
        bool            narrower;
        const ts_status status = narrow(s, gear, stride, &narrower);
        if (status != TS_OK)
            return status;
        stride = narrower ? 2 * stride : stride / 2;
        *any   = *any || narrower;
    }
    return TS_OK;
}

static ts_status trim(ts_sizing *s)
{
    for (bool any = true; any;) {
        any = false;
        for (size_t i = 0; i < s->plan->gear_count; i++) {
            const ts_status status = narrow_far(s, s->order[i], &any);
            if (status != TS_OK)
                return status;
        }
    }
    return TS_OK;
}

/* ---- to and fro ------------------------------------------------------------------------------ */

static double mass_of(const ts_sizing *s)
{
    double mass = 0.0;

    for (size_t i = 0; i < s->plan->gear_count; i++) {
        const uint32_t gear = s->plan->gears[i].gear;
        if (s->w[gear] > 0)
            mass += ts_sizing_gear_mass(s, gear, ts_sizing_gear(s, gear));
    }
    return mass;
}

static bool are_mates(const ts_sizing *s, uint32_t a, uint32_t b)
{
    for (uint32_t m = 0; m < s->rig->train->mesh_count; m++)
        if (ts_sizing_free(s, m) && ts_sizing_touches(s, m, a) && ts_sizing_touches(s, m, b))
            return true;
    return false;
}

/* A gear feels its mates and what else loads these. */
static bool are_near(const ts_sizing *s, uint32_t a, uint32_t b)
{
    if (a == b || are_mates(s, a, b))
        return a != b;
    for (size_t i = 0; i < s->plan->gear_count; i++) {
        const uint32_t between = s->plan->gears[i].gear;
        if (between != a && between != b && are_mates(s, a, between) && are_mates(s, between, b))
            return true;
    }
    return false;
}

/* May that gear have so many steps by `face to diameter` of its meshes? */
static bool may_be(const ts_sizing *s, uint32_t gear, long steps)
{
    for (uint32_t m = 0; m < s->rig->train->mesh_count; m++) {
        const ts_mesh *mesh = &s->rig->train->meshes[m];
        if (!ts_sizing_free(s, m) || !ts_sizing_touches(s, m, gear))
            continue;
        const uint32_t mate = mesh->driver == gear ? mesh->driven : mesh->driver;
        if (steps > s->most[m] && s->w[mate] > s->most[m])
            return false;
    }
    return true;
}

/* Makes a gear wider and those near to it as narrow as that allows; keeps it when it is lighter. */
static ts_status exchange(ts_sizing *s, uint32_t gear, long more, bool *lighter)
{
    const size_t gears  = s->rig->train->gear_count;
    const double before = mass_of(s);
    bool         any    = false;

    memcpy(s->kept, s->w, gears * sizeof *s->w);
    s->w[gear] += more;
    for (size_t i = 0; i < s->plan->gear_count; i++) {
        const ts_status status =
            are_near(s, gear, s->order[i]) ? narrow_far(s, s->order[i], &any) : TS_OK;
        if (status != TS_OK)
            return status;
    }
    /* What was taken back was taken back with all holding. */
    *lighter = any && mass_of(s) < before * (1.0 - 1e-12);
    if (!*lighter)
        memcpy(s->w, s->kept, gears * sizeof *s->w);
    return TS_OK;
}

static ts_status exchange_all(ts_sizing *s, bool *lighter)
{
    *lighter = false;
    for (size_t i = 0; i < s->plan->gear_count; i++) {
        const uint32_t gear = s->order[i];
        if (s->w[gear] == 0)
            continue;
        for (long more = 1; (double)more * s->step <= exchange_most; more *= 2) {
            bool            better = false;
            const ts_status status =
                may_be(s, gear, s->w[gear] + more) ? exchange(s, gear, more, &better) : TS_OK;
            if (status != TS_OK)
                return status;
            *lighter = *lighter || better;
        }
    }
    return TS_OK;
}

ts_status ts_sizing_climb(ts_sizing *s)
{
    const long stride  = s->step < stride_usual ? (long)(stride_usual / s->step) : 1;
    ts_status  status  = widen(s, stride);
    bool       lighter = true;

    while (status == TS_OK && lighter) {
        status = trim(s);
        if (status == TS_OK)
            status = exchange_all(s, &lighter);
    }
    return status == TS_OK ? ts_sizing_rate(s) : status;
}
