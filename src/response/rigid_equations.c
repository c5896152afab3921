/* response/rigid_equations.c: which torques pass through a rigid train while it is started? */
#include "response/rigid_parts.h"

#include <math.h>

enum { TURNS_MOST = 64 };

double ts_torque_curve_at(const ts_torque_curve *curve, double w)
{
    size_t i = 1;

    if (curve->count == 0)
        return 0.0;
    if (curve->count == 1)
        return curve->T[0];
    while (i + 1 < curve->count && w > curve->w[i])
        i++;
    const double share = (w - curve->w[i - 1]) / (curve->w[i] - curve->w[i - 1]);
    return curve->T[i - 1] + share * (curve->T[i] - curve->T[i - 1]);
}

/* ---- what does not depend on the acceleration -------------------------------------------------
 */

static double bearing_torque(const ts_start_shaft *shaft, double w)
{
    const double root = cbrt(shaft->ratio * w);

    return fmax(shaft->oil_slow, shaft->oil_fast * root * root);
}

/* A step of CVODE may try a speed just below 0, of which a power has none. */
static double oil_torque(const ts_start_shaft *shaft, double w)
{
    return bearing_torque(shaft, w) + ts_shaft_drag_at(&shaft->drag, shaft->ratio * fmax(w, 0.0));
}

double ts_start_bearing_drag(const ts_rigid_start *start, uint32_t spool, double w)
{
    double T = 0.0;

    for (uint32_t s = 0; s < start->shaft_count; s++)
        if (start->shafts[s].spool == spool)
            T += start->shafts[s].ratio * bearing_torque(&start->shafts[s], w);
    return T;
}

double ts_start_drag(const ts_rigid_start *start, uint32_t spool, ts_drag_kind kind, double w)
{
    double T = 0.0;

    for (uint32_t s = 0; s < start->shaft_count; s++) {
        const ts_start_shaft *shaft = &start->shafts[s];
        if (shaft->spool == spool)
            T += shaft->ratio * ts_shaft_drag_of(&shaft->drag, kind, shaft->ratio * w);
    }
    return T;
}

/* What only takes never drives, wherever the last line of its curve goes. */
static double braking(const ts_torque_curve *curve, double w)
{
    return fmax(0.0, ts_torque_curve_at(curve, w));
}

static double starter_torque(const ts_cranking *c, uint32_t pad, double w)
{
    return c->cut ? 0.0 : fmax(0.0, ts_torque_curve_at(&c->start->pads[pad].drive, w));
}

static void lay_pad(ts_cranking *c, uint32_t i, double w, const double *y)
{
    const ts_start_pad *pad = &c->start->pads[i];

    if (!pad->starter || (pad->coupled && c->cut)) {
        c->drive[i] = 0.0;
        c->pad[i]   = braking(&pad->load, w);
    } else {
        c->drive[i] = starter_torque(c, i, c->engaged[i] ? w : y[c->start->spool_count + i]);
        c->pad[i]   = c->engaged[i] ? -c->drive[i] : 0.0;
        if (!c->engaged[i])
            return;
    }
    c->fixed[pad->shaft] += c->pad[i];
    c->mass[pad->shaft] += pad->J;
}

/* At the speeds of y; that of `spool` is w. */
static void lay(ts_cranking *c, const double *y, uint32_t spool, double w)
{
    const ts_rigid_start *start = c->start;

    for (uint32_t s = 0; s < start->shaft_count; s++) {
        const ts_start_shaft *shaft = &start->shafts[s];
        c->fixed[s] = oil_torque(shaft, shaft->spool == spool ? w : y[shaft->spool]);
        c->mass[s]  = shaft->J;
    }
    for (uint32_t p = 0; p < start->pad_count; p++) {
        const ts_start_shaft *shaft = &start->shafts[start->pads[p].shaft];
        lay_pad(c, p, shaft->ratio * (shaft->spool == spool ? w : y[shaft->spool]), y);
    }
}

/* ---- torques from the free ends inwards -------------------------------------------------------
 */

/* N.m at the driver for T at the driven shaft: what is lost is lost of what enters. */
static double at_driver(double T, double ratio, double loss)
{
    return T > 0.0 ? T * ratio / (1.0 - loss) : T * ratio * (1.0 - loss);
}

/* T and slope of every shaft of a spool at its acceleration; the spool's own are in its shaft. */
static uint32_t sum_up(ts_cranking *c, uint32_t spool, double alpha)
{
    const ts_start_shaft *shafts = c->start->shafts;
    uint32_t              root   = TS_NO_DRIVER;

    for (uint32_t s = 0; s < c->start->shaft_count; s++) {
        c->slope[s] = c->mass[s] * shafts[s].ratio;
        c->T[s]     = shafts[s].spool == spool ? c->fixed[s] + c->slope[s] * alpha : c->T[s];
    }
    for (uint32_t s = c->start->shaft_count; s-- > 0;) {
        if (shafts[s].spool != spool)
            continue;
        const uint32_t up = shafts[s].driver;
        if (up == TS_NO_DRIVER) {
            root = s;
            continue;
        }
        const double ratio = shafts[s].ratio / shafts[up].ratio;
        const double more  = at_driver(c->T[s], ratio, shafts[s].loss);
        c->T[up] += more;
        c->slope[up] += c->T[s] > 0.0 ? c->slope[s] * ratio / (1.0 - shafts[s].loss)
                                      : c->slope[s] * ratio * (1.0 - shafts[s].loss);
    }
    return root;
}

/* The train's torque grows with the acceleration in straight pieces, one for each way in which
 * power may flow through the meshes, so Newton's steps end on the right one. */
static bool accelerate(ts_cranking *c, uint32_t spool)
{
    double alpha = c->alpha[spool];

    if (!isfinite(alpha))
        alpha = 0.0;
    for (int turn = 0; turn < TURNS_MOST; turn++) {
        const uint32_t root = sum_up(c, spool, alpha);
        const double   off  = c->gas[spool] - c->T[root];
        const double   next = alpha + off / c->slope[root];
        const double   size = fabs(c->gas[spool]) + fabs(c->fixed[root]) +
                            fabs(c->slope[root] * alpha) + fabs(c->T[root]);
        if (!isfinite(next))
            return false;
        if (fabs(off) <= 1e-15 * size || fabs(next - alpha) <= 1e-15 * fabs(alpha)) {
            c->alpha[spool] = next;
            (void)sum_up(c, spool, next);
            return true;
        }
        alpha = next;
    }
    c->alpha[spool] = alpha;
    return true;
}

double ts_cranking_resists(ts_cranking *c, uint32_t spool, double w, const double *y)
{
    lay(c, y, spool, w);
    const uint32_t root = sum_up(c, spool, 0.0);
    return c->T[root];
}

/* ---- the spools -------------------------------------------------------------------------------
 */

double ts_cranking_follows(const ts_cranking *c, uint32_t spool, double w)
{
    const ts_start_spool *one = &c->start->spools[spool], *core = &c->start->spools[c->cranked];

    if (c->phase == TS_PHASE_STARTS)
        return one->idle * w / core->idle;
    return one->idle +
           (one->beyond - one->idle) * (w - core->idle) / (c->start->beyond - core->idle);
}

/* Beyond idle its own air takes what lets it turn at the speed that it tends to. */
static void settle_drags(ts_cranking *c, const double *y)
{
    const ts_rigid_start *start = c->start;

    for (uint32_t k = 0; k < start->spool_count; k++) {
        const ts_start_spool *one = &start->spools[k];
        if (k == c->cranked || !(one->air > 0.0))
            continue;
        const double w     = ts_cranking_follows(c, k, y[c->cranked]);
        const double blown = w / one->idle;
        c->drag[k]         = fmax(0.0, one->air - ts_cranking_resists(c, k, w, y) * start->theta /
                                                      (start->delta * blown * blown));
    }
}

static double gas_torque(const ts_cranking *c, uint32_t spool, const double *y)
{
    const ts_rigid_start *start = c->start;
    const ts_start_spool *one   = &start->spools[spool];

    if (spool == c->cranked) {
        const double w = y[spool] / sqrt(start->theta);
        return start->delta *
               (c->lit ? ts_torque_curve_at(&one->lit, w) : -braking(&one->unlit, w));
    }
    const double blown = ts_cranking_follows(c, spool, y[c->cranked]) / one->idle;
    const double own   = y[spool] / one->idle;
    /* T/delta as a function of n/sqrt(theta), as of the cranked one; squares of both speeds. */
    return start->delta / start->theta *
           (one->air * blown * fabs(blown) - c->drag[spool] * own * fabs(own));
}

/* The control gives the fuel for the acceleration that it wants. */
static bool be_governed(ts_cranking *c)
{
    const uint32_t k = c->cranked;

    c->alpha[k] = c->phase == TS_PHASE_GAINS ? c->start->rate : 0.0;
    c->gas[k]   = c->T[sum_up(c, k, c->alpha[k])];
    return isfinite(c->gas[k]);
}

static void be_still(ts_cranking *c, uint32_t spool)
{
    for (uint32_t s = 0; s < c->start->shaft_count; s++)
        if (c->start->shafts[s].spool == spool)
            c->T[s] = 0.0;
    for (uint32_t p = 0; p < c->start->pad_count; p++)
        if (c->start->shafts[c->start->pads[p].shaft].spool == spool)
            c->pad[p] = 0.0;
}

bool ts_cranking_solve(ts_cranking *c, const double *y)
{
    const ts_rigid_start *start = c->start;

    if (c->phase != TS_PHASE_STARTS)
        settle_drags(c, y);
    lay(c, y, TS_NO_DRIVER, 0.0);
    for (uint32_t k = 0; k < start->spool_count; k++) {
        if (k == c->cranked && c->phase != TS_PHASE_STARTS) {
            if (!be_governed(c))
                return false;
            continue;
        }
        c->gas[k] = gas_torque(c, k, y);
        if (c->stands[k]) {
            c->alpha[k] = 0.0;
            c->moves[k] = c->gas[k] - c->T[sum_up(c, k, 0.0)];
            be_still(c, k);
        } else if (!accelerate(c, k)) {
            return false;
        }
    }
    for (uint32_t p = 0; p < start->pad_count; p++) {
        const ts_start_shaft *shaft = &start->shafts[start->pads[p].shaft];
        if (!start->pads[p].starter || c->engaged[p])
            c->pad[p] += start->pads[p].J * shaft->ratio * c->alpha[shaft->spool];
    }
    return true;
}

static double taken_by_pads(const ts_cranking *c, const double *y)
{
    double sum = 0.0;

    for (uint32_t p = 0; p < c->start->pad_count; p++) {
        const ts_start_pad   *pad   = &c->start->pads[p];
        const ts_start_shaft *shaft = &c->start->shafts[pad->shaft];
        const double          w     = shaft->ratio * y[shaft->spool];
        if (!pad->starter || (pad->coupled && c->cut))
            sum += (c->pad[p] - pad->J * shaft->ratio * c->alpha[shaft->spool]) * w;
    }
    return sum;
}

bool ts_cranking_slope(ts_cranking *c, const double *y, double *dy)
{
    const ts_rigid_start *start  = c->start;
    const uint32_t        n      = start->spool_count;
    double               *energy = &dy[n + start->pad_count];

    if (!ts_cranking_solve(c, y))
        return false;
    for (int i = 0; i < TS_START_ENERGIES; i++)
        energy[i] = 0.0;
    for (uint32_t k = 0; k < n; k++) {
        dy[k] = c->alpha[k];
        energy[TS_START_BY_GASES] += c->stands[k] ? 0.0 : c->gas[k] * y[k];
    }
    for (uint32_t p = 0; p < start->pad_count; p++) {
        const ts_start_pad   *pad   = &start->pads[p];
        const ts_start_shaft *shaft = &start->shafts[pad->shaft];
        dy[n + p]                   = 0.0;
        if (!pad->starter)
            continue;
        dy[n + p] = c->engaged[p] ? shaft->ratio * c->alpha[shaft->spool] : c->drive[p] / pad->J;
        energy[TS_START_BY_STARTERS] +=
            c->drive[p] * (c->engaged[p] ? shaft->ratio * y[shaft->spool] : y[n + p]);
    }
    energy[TS_START_IN_PADS] = taken_by_pads(c, y);
    for (uint32_t s = 0; s < start->shaft_count; s++) {
        const ts_start_shaft *shaft = &start->shafts[s];
        const double          w     = shaft->ratio * y[shaft->spool];
        energy[TS_START_IN_OIL] += oil_torque(shaft, y[shaft->spool]) * w;
        if (shaft->driver != TS_NO_DRIVER)
            energy[TS_START_IN_MESHES] += (at_driver(c->T[s], 1.0, shaft->loss) - c->T[s]) * w;
    }
    for (uint32_t i = 0; i < n + start->pad_count + TS_START_ENERGIES; i++)
        if (!isfinite(dy[i]))
            return false;
    return true;
}

double ts_cranking_kinetic(const ts_cranking *c, const double *y)
{
    const ts_rigid_start *start = c->start;
    double                sum   = 0.0;

    for (uint32_t s = 0; s < start->shaft_count; s++) {
        const double w = start->shafts[s].ratio * y[start->shafts[s].spool];
        sum += start->shafts[s].J * w * w / 2.0;
    }
    for (uint32_t p = 0; p < start->pad_count; p++) {
        const ts_start_shaft *shaft = &start->shafts[start->pads[p].shaft];
        const double          w =
            start->pads[p].starter ? y[start->spool_count + p] : shaft->ratio * y[shaft->spool];
        sum += start->pads[p].J * w * w / 2.0;
    }
    return sum;
}
