/* response/elastic_parts.h: the equations of an elastic train.  For src/response alone. */
#ifndef TS_RESPONSE_ELASTIC_PARTS_H
#define TS_RESPONSE_ELASTIC_PARTS_H

#include "response/elastic_train.h"

typedef enum ts_bond_state {
    TS_BOND_TRAILING = -1, /* trailing flanks touch, or the clutch drives */
    TS_BOND_APART    = 0,
    TS_BOND_LEADING  = 1, /* leading flanks touch; a shaft always */
    TS_BOND_BROKEN   = 2
} ts_bond_state;

typedef enum ts_stop_state { TS_STOP_NONE, TS_STOP_SLIPS, TS_STOP_STANDS } ts_stop_state;

/* The state y: q of all bodies, then v of all bodies.  Beside it three energies. */
enum { TS_STATE_DAMPED, TS_STATE_STOPPED, TS_STATE_WORK, TS_STATE_ENERGIES };

typedef struct ts_moving {
    const ts_elastic_train *train;
    ts_bond_state          *state;  /* [bond] */
    double                 *offset; /* [bond] where a clutch last engaged */
    ts_stop_state           stop;
    double                  friction; /* N.m/s, growth of the friction */
    double                  sense;    /* +1 or -1, in which the body that stops slips */
    uint32_t                bad;      /* body whose equation gave no number */
} ts_moving;

/* Stretch beyond the play, and its rate; both 0 of a bond that does not touch. */
double ts_bond_press(const ts_moving *m, uint32_t bond, const double *y, double *rate);
/* Force along the bond; 0 where it does not touch. */
double ts_bond_force(const ts_moving *m, uint32_t bond, const double *y);
double ts_bond_stretch(const ts_moving *m, uint32_t bond, const double *y);
double ts_bond_speed(const ts_moving *m, uint32_t bond, const double *y);

/* N.m that bonds and outside put on the body that stops. */
double ts_stop_torque(const ts_moving *m, const double *y);
double ts_stop_friction(const ts_moving *m, double t);

/* s until a pulse has risen; 0: it has, to a hair. */
double ts_pulse_left(const ts_torque_pulse *one, double t);
/* Real and imaginary part of A e^(-d t) e^(i (w t + p)) of every pulse, as if it had risen. */
void ts_pulses_at(const ts_moving *m, double t, double *pulse);
/* W that torques from outside put in at t, v being the speeds off the steady state. */
double ts_moving_power(const ts_moving *m, double t, const double *v);

double ts_moving_kinetic(const ts_moving *m, const double *y); /* gained over the steady state */
double ts_moving_strain(const ts_moving *m, const double *y);

#endif
