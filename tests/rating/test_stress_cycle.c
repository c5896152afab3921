/* Do the life lines run through their printed nodes, and back again? */
#include "rating/iso6336/stress_cycle.h"
#include "support/close.h"

static double Z_NT(ts_gear_class class, bool pitting, double N_L)
{
    const ts_life_nodes nodes = ts_life_nodes_contact(class, pitting);
    const ts_life_lines lines = ts_life_lines_of(&nodes, 0.85);

    return ts_life_factor(&lines, ts_cycles_of(N_L), TS_RATED_CONTACT, 0, NULL);
}

static double Y_NT(ts_gear_class class, double N_L)
{
    const ts_life_nodes nodes = ts_life_nodes_bending(class);
    const ts_life_lines lines = ts_life_lines_of(&nodes, 0.85);

    return ts_life_factor(&lines, ts_cycles_of(N_L), TS_RATED_BENDING, 0, NULL);
}

/* 1 GPa at N_ref. */
static ts_life_curve curve_of(const ts_life_nodes *nodes, double at_long, double sigma_stat)
{
    const ts_life_lines lines = ts_life_lines_of(nodes, at_long);

    return ts_life_curve_of(&lines, sigma_stat, 1.0e9);
}

/* ISO 6336-2, table of Z_NT (from memory; also bank case iso-znt-ynt). */
static void contact_lines_pass_their_nodes(void **state)
{
    (void)state;
    assert_close(Z_NT(TS_GEAR_CASE_HARDENED, false, 1e5), 1.6, 1e-14);
    assert_close(Z_NT(TS_GEAR_CASE_HARDENED, false, 5e7), 1.0, 1e-14);
    assert_close(Z_NT(TS_GEAR_CASE_HARDENED, false, 1e10), 0.85, 1e-14);
    assert_close(Z_NT(TS_GEAR_CASE_HARDENED, false, 1e7), 1.1294, 2e-4);
    assert_close(Z_NT(TS_GEAR_CASE_HARDENED, false, 1e9), 0.9122, 3e-4);
    assert_close(Z_NT(TS_GEAR_THROUGH_HARDENED, true, 6e5), 1.6, 1e-14);
    assert_close(Z_NT(TS_GEAR_THROUGH_HARDENED, true, 1e7), 1.3, 1e-14);
    assert_close(Z_NT(TS_GEAR_THROUGH_HARDENED, true, 1e9), 1.0, 1e-14);
    assert_close(Z_NT(TS_GEAR_NITRIDED, false, 1e5), 1.3, 1e-14);
    assert_close(Z_NT(TS_GEAR_NITRIDED, false, 2e6), 1.0, 1e-14);
    assert_close(Z_NT(TS_GEAR_NITROCARBURISED, false, 100.0), 1.1, 1e-14);
}

/* ISO 6336-3, table of Y_NT (from memory; also bank case iso-znt-ynt). */
static void bending_lines_pass_their_nodes(void **state)
{
    (void)state;
    assert_close(Y_NT(TS_GEAR_CASE_HARDENED, 1e3), 2.5, 1e-14);
    assert_close(Y_NT(TS_GEAR_CASE_HARDENED, 3e6), 1.0, 1e-14);
    assert_close(Y_NT(TS_GEAR_CASE_HARDENED, 1e5), 1.4757, 3e-4);
    assert_close(Y_NT(TS_GEAR_CASE_HARDENED, 1e9), 0.8901, 3e-4);
    assert_close(Y_NT(TS_GEAR_THROUGH_HARDENED, 1e4), 2.5, 1e-14);
    assert_close(Y_NT(TS_GEAR_NITRIDED, 1e3), 1.6, 1e-14);
    assert_close(Y_NT(TS_GEAR_NITROCARBURISED, 1e3), 1.1, 1e-14);
}

/* ISO 6336-2, 5.4.3 (from memory): the exponents 0.3705, 0.7686, 0.2791 and of ISO 6336-3 0.4037,
 * 0.2876 are one over the decades between the nodes. */
static void printed_exponents_are_those_of_the_nodes(void **state)
{
    (void)state;
    const struct {
        ts_life_nodes nodes;
        double        printed;
    } rows[] = {
        {ts_life_nodes_contact(TS_GEAR_CASE_HARDENED, false), 0.3705},
        {ts_life_nodes_contact(TS_GEAR_NITRIDED, false), 0.7686},
        {ts_life_nodes_bending(TS_GEAR_THROUGH_HARDENED), 0.4037},
        {ts_life_nodes_bending(TS_GEAR_CASE_HARDENED), 0.2876},
    };

    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const ts_life_curve curve = curve_of(&rows[i].nodes, 0.85, 1.6e9);
        assert_close(curve.lower / log10(1.6), rows[i].printed, 2e-4);
    }
    const ts_life_nodes pitting = ts_life_nodes_contact(TS_GEAR_CASE_HARDENED, true);
    const ts_life_curve curve   = curve_of(&pitting, 0.85, 1.6e9);
    assert_close(curve.lower / log10(1.6), 0.2791, 2e-4);
    assert_close(curve.sigma_mid, 1.3e9, 1e-13);
}

/* Every class, with and without endurance: cycles of the stress of N cycles are N. */
static void stress_and_cycles_are_inverse(void **state)
{
    (void)state;
    for (int i = 0; i < 4 * TS_GEAR_CLASS_COUNT; i++) {
        const ts_gear_class class     = (ts_gear_class)(i / 4);
        const bool            pitting = i % 2 == 1;
        const ts_rated_stress stress  = i % 4 < 2 ? TS_RATED_CONTACT : TS_RATED_BENDING;
        const ts_life_nodes   nodes   = stress == TS_RATED_CONTACT
                                            ? ts_life_nodes_contact(class, pitting)
                                            : ts_life_nodes_bending(class);
        const ts_life_lines   lines   = ts_life_lines_of(&nodes, 0.85);
        const ts_life_curve   curve   = ts_life_curve_of(&lines, 1.5e9, 0.9e9);

        for (double N = nodes.N_stat * 1.001; N < 1e11; N *= 1.7) {
            const ts_cycles        cycles   = ts_cycles_of(N);
            const ts_life_question question = {
                cycles, ts_life_factor(&lines, cycles, stress, 0, NULL), stress, 0};
            const double sigma = ts_life_curve_stress(&curve, &lines, &question, NULL);

            assert_close(ts_life_curve_cycles(&curve, sigma), N, 1e-9);
            assert_true(sigma <= curve.sigma_stat);
        }
    }
}

static void the_ends_of_a_curve_are_told(void **state)
{
    (void)state;
    const ts_life_nodes nodes   = ts_life_nodes_contact(TS_GEAR_CASE_HARDENED, false);
    const ts_life_curve falling = curve_of(&nodes, 0.85, 1.6e9);
    const ts_life_curve endures = curve_of(&nodes, 1.0, 1.6e9);
    const ts_life_curve raised  = curve_of(&nodes, 1.0, 0.8e9);

    assert_same_double(ts_life_curve_cycles(&falling, 1.7e9), 0.0);
    assert_close(ts_life_curve_cycles(&falling, 1.6e9), 1e5, 1e-12);
    assert_close(ts_life_curve_cycles(&falling, 0.85e9), 1e10, 1e-9);
    assert_same_double(ts_life_curve_cycles(&endures, 0.99e9), (double)INFINITY);
    assert_close(ts_life_curve_cycles(&endures, 1.0e9), 5e7, 1e-12);
    assert_nan(ts_life_curve_cycles(&falling, (double)NAN));
    assert_same_double(raised.sigma_stat, 1.0e9);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(contact_lines_pass_their_nodes),
        cmocka_unit_test(bending_lines_pass_their_nodes),
        cmocka_unit_test(printed_exponents_are_those_of_the_nodes),
        cmocka_unit_test(stress_and_cycles_are_inverse),
        cmocka_unit_test(the_ends_of_a_curve_are_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
