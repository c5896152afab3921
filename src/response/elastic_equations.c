/* response/elastic_equations.c: which torques act in an elastic train, and what do they do?
 */
#include "response/elastic_parts.h"

#include <math.h>

double ts_bond_stretch(const ts_moving *m, uint32_t bond, const double *y)
{
    const ts_bond *b = &m->train->bonds[bond];

    return b->g_a * y[b->a] - b->g_b * y[b->b];
}

double ts_bond_speed(const ts_moving *m, uint32_t bond, const double *y)
{
    const ts_bond *b = &m->train->bonds[bond];
    const double  *v = &y[m->train->body_count];

    return b->g_a * v[b->a] - b->g_b * v[b->b];
}

double ts_bond_press(const ts_moving *m, uint32_t bond, const double *y, double *rate)
{
    const ts_bond *b = &m->train->bonds[bond];

    *rate = 0.0;
    if (m->state[bond] == TS_BOND_BROKEN || m->state[bond] == TS_BOND_APART)
        return 0.0;
    const double s = ts_bond_stretch(m, bond, y) - m->offset[bond];
    *rate          = ts_bond_speed(m, bond, y);
    return m->state[bond] == TS_BOND_TRAILING ? s + b->gap : s;
}

double ts_bond_force(const ts_moving *m, uint32_t bond, const double *y)
{
    const ts_bond *b = &m->train->bonds[bond];
    double         rate;
    const double   press = ts_bond_press(m, bond, y, &rate);

    return b->k * press + b->c * rate;
}

/* ---- the body that stops ----------------------------------------------------------------------
 */

static double outside_torque(const ts_turning_body *body, double v)
{
    return body->torque + body->slope * v;
}

double ts_stop_torque(const ts_moving *m, const double *y)
{
    const ts_elastic_train *train = m->train;
    double T = outside_torque(&train->bodies[train->stops], y[train->body_count + train->stops]);

    for (uint32_t i = 0; i < train->bond_count; i++) {
        const ts_bond *b = &train->bonds[i];
        if (b->a == train->stops)
            T -= b->g_a * ts_bond_force(m, i, y);
        else if (b->b == train->stops)
            T += b->g_b * ts_bond_force(m, i, y);
    }
    return T;
}

double ts_stop_friction(const ts_moving *m, double t)
{
    return m->friction * t;
}

/* ---- motion -----------------------------------------------------------------------------------
 */

static double add_bonds(const ts_moving *m, const double *y, double *torque)
{
    const ts_elastic_train *train = m->train;
    double                  heat  = 0.0;

    for (uint32_t i = 0; i < train->bond_count; i++) {
        const ts_bond *b = &train->bonds[i];
        double         rate;
        const double   press = ts_bond_press(m, i, y, &rate);
        const double   F     = b->k * press + b->c * rate;
        torque[b->a] -= b->g_a * F;
        torque[b->b] += b->g_b * F;
        heat += b->c * rate * rate;
    }
    return heat;
}

bool ts_moving_slope(ts_moving *m, double t, const double *y, double *dy)
{
    const ts_elastic_train *train = m->train;
    const uint32_t          n     = train->body_count;
    double                 *dv = &dy[n], *energy = &dy[2 * (size_t)n];
    double                  work = 0.0, stopped = 0.0;

    for (uint32_t i = 0; i < n; i++) {
        dy[i] = y[n + i];
        dv[i] = outside_torque(&train->bodies[i], y[n + i]);
        work += dv[i] * (train->bodies[i].speed + y[n + i]);
    }
    energy[TS_STATE_DAMPED] = add_bonds(m, y, dv);
    if (m->stop == TS_STOP_SLIPS) {
        const double w = train->bodies[train->stops].speed + y[n + train->stops];
        const double T = m->sense * ts_stop_friction(m, t);
        dv[train->stops] -= T;
        stopped = T * w;
    }
    if (m->stop == TS_STOP_STANDS)
        dv[train->stops] = 0.0;
    energy[TS_STATE_STOPPED] = stopped;
    energy[TS_STATE_WORK]    = work;
    for (uint32_t i = 0; i < n; i++) {
        dv[i] /= train->bodies[i].J;
        if (!isfinite(dv[i]) || !isfinite(dy[i])) {
            m->bad = i;
            return false;
        }
    }
    return isfinite(work) && isfinite(energy[TS_STATE_DAMPED]) && isfinite(stopped);
}

double ts_bond_torque_rate(const ts_moving *m, uint32_t bond, const double *y)
{
    const ts_bond *b = &m->train->bonds[bond];

    if (m->state[bond] == TS_BOND_BROKEN || m->state[bond] == TS_BOND_APART)
        return 0.0;
    return b->g_b * b->k * ts_bond_speed(m, bond, y);
}

/* ---- energies ---------------------------------------------------------------------------------
 */

double ts_moving_kinetic(const ts_moving *m, const double *y)
{
    const ts_elastic_train *train = m->train;
    double                  sum   = 0.0;

    for (uint32_t i = 0; i < train->body_count; i++) {
        const double v = y[train->body_count + i];
        sum += train->bodies[i].J * v * (train->bodies[i].speed + v / 2.0);
    }
    return sum;
}

double ts_moving_strain(const ts_moving *m, const double *y)
{
    double sum = 0.0;

    for (uint32_t i = 0; i < m->train->bond_count; i++) {
        double       rate;
        const double press = ts_bond_press(m, i, y, &rate);
        sum += m->train->bonds[i].k * press * press / 2.0;
    }
    return sum;
}
