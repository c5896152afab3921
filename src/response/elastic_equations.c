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

/* ---- what comes from outside ------------------------------------------------------------------
 */

double ts_pulse_left(const ts_torque_pulse *one, double t)
{
    return t < one->rise * (1.0 - 1e-12) ? one->rise - t : 0.0;
}

static double pulse_torque(const ts_torque_pulse *one, double t)
{
    const double risen = ts_pulse_left(one, t) > 0.0 ? t / one->rise : 1.0;

    return risen * one->A * exp(-one->decay * t) * cos(one->omega * t + one->phase);
}

void ts_pulses_at(const ts_moving *m, double t, double *pulse)
{
    for (size_t i = 0; i < m->train->pulse_count; i++) {
        const ts_torque_pulse *one  = &m->train->pulses[i];
        const double           size = one->A * exp(-one->decay * t);
        pulse[2 * i]                = size * cos(one->omega * t + one->phase);
        pulse[2 * i + 1]            = size * sin(one->omega * t + one->phase);
    }
}

double ts_moving_power(const ts_moving *m, double t, const double *v)
{
    const ts_elastic_train *train = m->train;
    double                  power = 0.0;

    for (uint32_t i = 0; i < train->body_count; i++)
        power += outside_torque(&train->bodies[i], v[i]) * (train->bodies[i].speed + v[i]);
    for (size_t i = 0; i < train->pulse_count; i++) {
        const uint32_t body = train->pulses[i].body;
        power += pulse_torque(&train->pulses[i], t) * (train->bodies[body].speed + v[body]);
    }
    return power;
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
