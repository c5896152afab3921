/* Do the series of an elastic train and SUNDIALS CVODE, by other code, see the same events at the
 * same times and come to the same end? */
#include "response/cvode_train.h"
#include "support/close.h"
#include "support/sequence.h"

enum { BODIES = 6, TRAINS = 100 };

typedef struct rig {
    ts_turning_body  bodies[BODIES];
    ts_bond          bonds[BODIES - 1];
    ts_torque_pulse  pulses[2];
    ts_elastic_train train;
} rig;

static double between(sequence *s, double low, double high)
{
    return low + (high - low) * (double)sequence_below(s, 1000001) / 1e6;
}

static void lay_bond(rig *it, sequence *s, uint32_t i)
{
    const uint64_t kind = sequence_below(s, 8);
    ts_bond        bond = {.kind   = kind < 5 ? TS_BOND_MESH : TS_BOND_SHAFT,
                           .a      = (uint32_t)sequence_below(s, i + 1),
                           .b      = i + 1,
                           .g_a    = 1.0,
                           .g_b    = 1.0,
                           .k      = pow(10.0, between(s, 4.0, 5.5)),
                           .breaks = (double)INFINITY};
    if (bond.kind == TS_BOND_MESH) {
        bond.g_a = between(s, 0.03, 0.1);
        bond.g_b = between(s, 0.03, 0.1);
        bond.k   = pow(10.0, between(s, 7.0, 8.5));
        bond.gap = between(s, 2e-5, 1.2e-4);
    } else if (kind == 7) {
        bond.kind = TS_BOND_CLUTCH;
    }
    const double J_a = it->bodies[bond.a].J, J_b = it->bodies[bond.b].J;
    bond.c = 2.0 * between(s, 0.0, 0.1) *
             sqrt(bond.k / (bond.g_a * bond.g_a / J_a + bond.g_b * bond.g_b / J_b));
    if (sequence_below(s, 3) == 0)
        bond.breaks = between(s, 300.0, 1200.0); /* more than they begin with */
    it->bonds[i]             = bond;
    it->bodies[bond.b].speed = it->bodies[bond.a].speed * bond.g_a / bond.g_b;
}

/* A tree of six bodies under torques, one of which stops, at once or by friction, or is left to
 * two pulses on others. */
static void lay(rig *it, sequence *s)
{
    *it = (rig){.train = {.until = 4e-3, .tolerance = 1e-12, .stops = TS_NO_BODY}};
    for (uint32_t i = 0; i < BODIES; i++)
        it->bodies[i] = (ts_turning_body){.J     = pow(10.0, between(s, -3.5, -1.5)),
                                          .speed = between(s, 100.0, 400.0),
                                          .slope = -between(s, 0.0, 0.2)};
    for (uint32_t i = 0; i + 1 < BODIES; i++) {
        lay_bond(it, s, i);
        const double T = between(s, 5.0, 80.0);
        it->bodies[it->bonds[i].a].torque += T;
        it->bodies[it->bonds[i].b].torque -= T * it->bonds[i].g_b / it->bonds[i].g_a;
        it->bodies[i + 1].q =
            (it->bonds[i].g_a * it->bodies[it->bonds[i].a].q -
             (it->bonds[i].kind == TS_BOND_CLUTCH ? -T : T) / it->bonds[i].g_a / it->bonds[i].k) /
            it->bonds[i].g_b;
    }
    const uint64_t what = sequence_below(s, 3);
    if (what < 2)
        it->train.stops = 1 + (uint32_t)sequence_below(s, BODIES - 1);
    it->train.ramp       = what == 1 ? between(s, 3e-4, 2e-3) : 0.0;
    it->pulses[0]        = (ts_torque_pulse){2, between(s, 100.0, 400.0), 200.0, 2500.0, -1.5, 0.0};
    it->pulses[1]        = (ts_torque_pulse){4, -between(s, 50.0, 100.0), 0.0, 0.0, 0.0, 5e-4};
    it->train.bodies     = it->bodies;
    it->train.body_count = BODIES;
    it->train.bonds      = it->bonds;
    it->train.bond_count = BODIES - 1;
    it->train.pulses     = it->pulses;
    it->train.pulse_count = what < 2 ? 0 : 2;
}

static void compare(const rig *it, size_t *kinds)
{
    ts_train_run one, two;
    ts_arena    *arena = ts_arena_open(NULL);

    ts_elastic_train_run(&it->train, arena, &one);
    cvode_train_run(&it->train, 1e-12, arena, &two);
    assert_int_equal(one.fault, TS_RUN_FINE);
    assert_int_equal(two.fault, TS_RUN_FINE);
    assert_int_equal(one.happened, two.happened);
    for (size_t i = 0; i < one.event_count; i++) {
        assert_int_equal(one.events[i].what, two.events[i].what);
        assert_int_equal(one.events[i].bond, two.events[i].bond);
        assert_close_abs(one.events[i].t, two.events[i].t, 1e-9);
        kinds[one.events[i].what]++;
    }
    for (uint32_t i = 0; i < it->train.body_count; i++)
        assert_close_abs(one.v[i], two.v[i], 1e-7 * it->bodies[i].speed);
    for (uint32_t i = 0; i < it->train.bond_count; i++)
        assert_true(fabs(one.peaks[i].before) >= fabs(two.peaks[i].before) * (1.0 - 1e-8));
    ts_arena_close(arena);
}

/* A torque that is stronger than the friction has grown turns the rotor round. */
static void lay_torn(rig *it)
{
    *it              = (rig){.train = {.until = 0.2, .tolerance = 1e-12, .ramp = 1.0}};
    it->bodies[0]    = (ts_turning_body){.J = 1.0, .speed = 10.0, .torque = -100.0};
    it->bodies[1]    = (ts_turning_body){.J = 1e-3, .speed = 10.0};
    it->bonds[0]     = (ts_bond){TS_BOND_SHAFT, 0, 1, 1.0, 1.0, 1e4, 0.0, 0.0, (double)INFINITY};
    it->train.bodies = it->bodies;
    it->train.body_count = 2;
    it->train.bonds      = it->bonds;
    it->train.bond_count = 1;
}

/* What has come to rest within its play is torn loose by the blow at its end. */
static void lay_struck(rig *it)
{
    lay_torn(it);
    it->train.until   = 0.02;
    it->train.ramp    = 1e-3;
    it->train.stops   = 1;
    it->bodies[0]     = (ts_turning_body){.J = 1.0, .speed = 10.0};
    it->bodies[1].q   = 0.04;
    it->bonds[0].kind = TS_BOND_MESH;
    it->bonds[0].gap  = 0.05;
}

static void both_routes_see_the_same(void **state)
{
    (void)state;
    sequence s                          = {20260725};
    size_t   kinds[TS_HAPPENS_SLIP + 1] = {0};

    for (int k = 0; k < TRAINS; k++) {
        rig it;
        lay(&it, &s);
        compare(&it, kinds);
    }
    rig torn;
    lay_torn(&torn);
    compare(&torn, kinds);
    assert_int_equal(kinds[TS_HAPPENS_SLIP], 1);
    lay_struck(&torn);
    compare(&torn, kinds);
    assert_true(kinds[TS_HAPPENS_SLIP] > 1);
    for (int k = 0; k <= TS_HAPPENS_SLIP; k++)
        assert_true(kinds[k] > 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(both_routes_see_the_same)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
