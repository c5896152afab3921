/* bank/bind_torsion.c: published cases about torsional vibration. */
#include "bank/bank_case.h"
#include "element/round_torsion.h"
#include "response/forced_torsion.h"
#include "response/torsion.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

static double inertia(ts_case *c, const char *name)
{
    return ts_case_given(c, name, TS_KIND_INERTIA);
}

static double spring(ts_case *c, const char *name)
{
    return ts_case_given(c, name, TS_KIND_TORSIONAL_STIFFNESS);
}

static double length(ts_case *c, const char *name)
{
    return ts_case_given(c, name, TS_KIND_LENGTH);
}

typedef struct train {
    ts_twist_body   bodies[400];
    ts_twist_spring springs[400];
    ts_twist_model  model;
    ts_arena       *arena;
    ts_twist_modes  modes;
} train;

static void add_body(train *t, double J, uint32_t at, double factor)
{
    t->bodies[t->model.body_count++] = (ts_twist_body){J, at, factor};
    if (at >= t->model.coordinate_count)
        t->model.coordinate_count = at + 1;
}

static void add_spring(train *t, uint32_t a, uint32_t b, double g_b, double k)
{
    t->springs[t->model.spring_count++] = (ts_twist_spring){a, b, 1.0, g_b, k};
}

static bool solve(train *t)
{
    t->model.bodies  = t->bodies;
    t->model.springs = t->springs;
    t->arena         = ts_arena_open(NULL);
    return t->arena != NULL && ts_twist_solve(&t->model, t->arena, &t->modes) == TS_TWIST_FINE;
}

static double angle(const train *t, size_t mode, size_t body)
{
    return t->modes.shape[mode * t->model.body_count + body];
}

static void three_discs(ts_case *c)
{
    train t = {0};
    add_body(&t, inertia(c, "J1"), 0, 1.0);
    add_body(&t, inertia(c, "J2"), 1, 1.0);
    add_body(&t, inertia(c, "J3"), 2, 1.0);
    add_spring(&t, 0, 1, 1.0, spring(c, "K1"));
    add_spring(&t, 1, 2, 1.0, spring(c, "K2"));
    if (solve(&t)) {
        ts_case_computed(c, "omega1", t.modes.omega[1], TS_KIND_ROTATIONAL_SPEED);
        ts_case_computed(c, "omega2", t.modes.omega[2], TS_KIND_ROTATIONAL_SPEED);
        for (size_t i = 0; i < 3; i++)
            ts_case_listed(c, "mode1", angle(&t, 1, i) / angle(&t, 1, 0), TS_KIND_NUMBER);
        for (size_t mode = 1; mode < 3; mode++) {
            double changes = 0.0;
            for (size_t i = 0; i < 2; i++)
                changes += angle(&t, mode, i) * angle(&t, mode, i + 1) < 0.0 ? 1.0 : 0.0;
            ts_case_listed(c, "sign_changes", changes, TS_KIND_NUMBER);
        }
    }
    ts_arena_close(t.arena);
}

/* Holzer's column at a trial speed is what a torque on the last disc makes swing, for a first disc
 * that swings by 1 rad: the torque that is left over is the one that must be put on it. */
static void holzer_at(ts_case *c, train *t, ts_forced_tree *tree, double omega, const char *trial)
{
    const ts_torsion_shake shake = {
        .omega = omega, .spring = TS_HELD, .body = (uint32_t)t->model.body_count - 1, .T = 1.0};
    double torque[2], swing[3];

    if (!ts_forced_tree_shake(tree, &shake, torque, swing))
        return;
    for (int i = 1; i < 3; i++)
        ts_case_computed_as(c, swing[i] / swing[0], TS_KIND_ANGLE, "theta%d_%s", i + 1, trial);
    ts_case_computed_as(c, torque[1] / swing[0], TS_KIND_TORQUE, "T2_%s", trial);
    ts_case_computed_as(c, shake.T / swing[0], TS_KIND_TORQUE, "T3_%s", trial);
}

static void holzer(ts_case *c)
{
    train          t           = {0};
    const double   undamped[2] = {0.0, 0.0};
    ts_forced_tree tree;

    add_body(&t, inertia(c, "J1"), 0, 1.0);
    add_body(&t, inertia(c, "J2"), 1, 1.0);
    add_body(&t, inertia(c, "J3"), 2, 1.0);
    add_spring(&t, 0, 1, 1.0, spring(c, "K1"));
    add_spring(&t, 1, 2, 1.0, spring(c, "K2"));
    if (solve(&t) && ts_forced_tree_make(&t.model, undamped, t.arena, &tree) == TS_TWIST_FINE) {
        holzer_at(c, &t, &tree, 20.0, "w20");
        holzer_at(c, &t, &tree, 40.0, "w40");
    }
    ts_arena_close(t.arena);
}

static double shaft_of(ts_case *c, const char *d, const char *L, const char *G)
{
    return ts_torsion_of_twist(1.0, length(c, L), ts_case_given(c, G, TS_KIND_STRESS),
                               ts_torsion_J(length(c, d), 0.0, NULL), NULL);
}

static void two_discs(ts_case *c)
{
    train        t = {0};
    const double k = shaft_of(c, "d", "L", "G");
    add_body(&t, inertia(c, "Ip1"), 0, 1.0);
    add_body(&t, inertia(c, "Ip2"), 1, 1.0);
    add_spring(&t, 0, 1, 1.0, k);
    ts_case_computed(c, "kt", k, TS_KIND_TORSIONAL_STIFFNESS);
    if (solve(&t)) {
        ts_case_computed(c, "omega_n", t.modes.omega[1], TS_KIND_ROTATIONAL_SPEED);
        ts_case_computed(c, "amplitude_ratio", angle(&t, 1, 1) / angle(&t, 1, 0), TS_KIND_NUMBER);
    }
    ts_arena_close(t.arena);
}

/* Motor and pump on two shafts behind a rigid mesh without inertia: in series. */
static void motor_and_pump(ts_case *c)
{
    train        t = {0};
    const double n = ts_case_given(c, "ratio", TS_KIND_NUMBER), k_A = shaft_of(c, "dA", "LA", "C");
    const double k_B = shaft_of(c, "dB", "LB", "C") / (n * n);
    add_body(&t, inertia(c, "IA"), 0, 1.0);
    add_body(&t, inertia(c, "IB"), 1, 1.0 / n);
    add_spring(&t, 0, 1, 1.0, 1.0 / (1.0 / k_A + 1.0 / k_B));
    if (solve(&t)) {
        ts_case_computed(c, "f", t.modes.omega[1] / (2.0 * pi), TS_KIND_FREQUENCY);
        /* Where the line from one end to the other passes through 0, on the equivalent shaft of the
         * motor's thickness. */
        const double equivalent = length(c, "LA") * (1.0 + k_A / k_B);
        const double there = angle(&t, 1, 1) * n, here = angle(&t, 1, 0);
        ts_case_computed(c, "node_from_motor_equiv", equivalent * here / (here - there),
                         TS_KIND_LENGTH);
    }
    ts_arena_close(t.arena);
}

static void reduced_and_not(ts_case *c)
{
    train        t = {0};
    const double n = (double)ts_case_whole(c, "zp") / (double)ts_case_whole(c, "zg");
    add_body(&t, inertia(c, "J1"), 0, 1.0);
    add_body(&t, inertia(c, "Jp"), 1, 1.0);
    add_body(&t, inertia(c, "Jg"), 1, -n);
    add_body(&t, inertia(c, "J2"), 2, 1.0);
    add_spring(&t, 0, 1, 1.0, spring(c, "k1"));
    t.springs[t.model.spring_count++] = (ts_twist_spring){1, 2, -n, 1.0, spring(c, "k2")};
    if (solve(&t)) {
        ts_case_computed(c, "omega1", t.modes.omega[1], TS_KIND_ROTATIONAL_SPEED);
        ts_case_computed(c, "omega2", t.modes.omega[2], TS_KIND_ROTATIONAL_SPEED);
        ts_case_computed(c, "far_end_ratio_mode1", angle(&t, 1, 3) / angle(&t, 1, 0),
                         TS_KIND_NUMBER);
    }
    ts_arena_close(t.arena);
}

static void star(ts_case *c)
{
    train     t     = {0};
    const int given = ts_case_whole(c, "arms");
    if (given < 1 || given > 99)
        ts_case_spoil(c, "is not between 1 and 99", "arms");
    const uint32_t arms = (uint32_t)given;
    add_body(&t, inertia(c, "Jc"), 0, 1.0);
    for (uint32_t i = 1; i <= arms; i++) {
        add_body(&t, inertia(c, "J"), i, 1.0);
        add_spring(&t, 0, i, 1.0, spring(c, "k"));
    }
    if (solve(&t)) {
        ts_case_computed(c, "omega_degenerate", t.modes.omega[1], TS_KIND_ROTATIONAL_SPEED);
        ts_case_computed(c, "omega_degenerate_again", t.modes.omega[2], TS_KIND_ROTATIONAL_SPEED);
        ts_case_computed(c, "omega_umbrella", t.modes.omega[arms], TS_KIND_ROTATIONAL_SPEED);
    }
    ts_arena_close(t.arena);
}

static double disc(ts_case *c, const char *M, const char *r)
{
    return ts_case_given(c, M, TS_KIND_MASS) * pow(length(c, r), 2.0) / 2.0;
}

static void four_discs(ts_case *c)
{
    train        t = {0};
    const double n = length(c, "r2") / length(c, "r3");
    add_body(&t, disc(c, "M1", "r1"), 0, 1.0);
    add_body(&t, disc(c, "M2", "r2"), 1, 1.0);
    add_body(&t, disc(c, "M3", "r3"), 1, -n);
    add_body(&t, disc(c, "M4", "r4"), 2, 1.0);
    add_spring(&t, 0, 1, 1.0, shaft_of(c, "d1", "L1", "G"));
    t.springs[t.model.spring_count++] =
        (ts_twist_spring){1, 2, -n, 1.0, shaft_of(c, "d2", "L2", "G")};
    if (solve(&t)) {
        ts_case_computed(c, "omega1", t.modes.omega[1], TS_KIND_ROTATIONAL_SPEED);
        ts_case_computed(c, "omega2", t.modes.omega[2], TS_KIND_ROTATIONAL_SPEED);
        ts_case_computed(c, "rigid_body_speed_ratio", angle(&t, 0, 3) / angle(&t, 0, 0),
                         TS_KIND_NUMBER);
    }
    ts_arena_close(t.arena);
}

/* A heavy shaft as a chain of equal slices, half of each at either of its ends. */
static void heavy_shaft(ts_case *c)
{
    enum { SLICES = 300 };
    train        t = {0};
    const double d = length(c, "d"), L = length(c, "L"), G = ts_case_given(c, "G", TS_KIND_STRESS);
    const double I     = ts_torsion_J(d, 0.0, NULL);
    const double slice = ts_case_given(c, "rho", TS_KIND_DENSITY) * I * L / SLICES;
    const double k     = G * I * SLICES / L;
    for (uint32_t i = 0; i < SLICES; i++) {
        add_body(&t, i + 1 < SLICES ? slice : slice / 2.0, i, 1.0);
        if (i == 0)
            t.springs[t.model.spring_count++] = (ts_twist_spring){0, TS_HELD, 1.0, 0.0, k};
        else
            add_spring(&t, i - 1, i, 1.0, k);
    }
    add_body(&t, inertia(c, "Jd"), SLICES - 1, 1.0);
    if (solve(&t)) {
        ts_case_computed(c, "omega1", t.modes.omega[0], TS_KIND_ROTATIONAL_SPEED);
        ts_case_computed(c, "omega2", t.modes.omega[1], TS_KIND_ROTATIONAL_SPEED);
    }
    ts_arena_close(t.arena);
}

static void gear_pair(ts_case *c)
{
    train t = {0};
    add_body(&t, inertia(c, "J1"), 0, 1.0);
    add_body(&t, inertia(c, "J2"), 1, 1.0);
    t.springs[t.model.spring_count++] = (ts_twist_spring){
        0, 1, length(c, "rb1"), length(c, "rb2"), ts_case_given(c, "c_mesh", TS_KIND_STIFFNESS)};
    if (solve(&t)) {
        const double omega = t.modes.omega[1];
        ts_case_computed(c, "omega", omega, TS_KIND_ROTATIONAL_SPEED);
        ts_case_computed(c, "n1_resonance_rpm", omega / (double)ts_case_whole(c, "z1"),
                         TS_KIND_ROTATIONAL_SPEED);
    }
    ts_arena_close(t.arena);
}

static const ts_binding bindings[] = {
    {"tor-thomson-12-4-1-modes", three_discs},
    {"tor-thomson-12-4-1-holzer-table", holzer},
    {"tor-tiwari-2-1-two-disc", two_discs},
    {"tor-geared-pump-third-speed", motor_and_pump},
    {"tor-geared-motor-pump-1500-500", motor_and_pump},
    {"tor-geared-three-dof-reduction", reduced_and_not},
    {"tor-branched-star-three-arms", star},
    {"tor-geared-four-disc-homework", four_discs},
    {"tor-continuous-shaft-end-disc", heavy_shaft},
    {"tor-gear-pair-mesh-resonance", gear_pair},
};
TS_BINDINGS(bindings);
