/* Are samples the same from whatever end they are drawn, and do they go together as told? */
#include "sample/correlation.h"
#include "sample/design.h"
#include "sample/estimate.h"
#include "support/close.h"

#include <stdlib.h>
#include <string.h>

#define NONE ((double)INFINITY)

static const ts_sample_law laws[3] = {
    {TS_LAW_NORMAL, 10.0, 2.0, -NONE, NONE, 0.0},
    {TS_LAW_UNIFORM, 0.0, 0.0, 1.0, 3.0, 0.0},
    {TS_LAW_WHOLE, 0.0, 0.0, 31.0, 34.0, 0.0},
};
static const double   asis[3]  = {9.0, 2.5, 33.0};
static const unsigned steps[3] = {3, 2, 4};

static ts_design design_of(ts_design_method method)
{
    return (ts_design){method, 100, 5, laws, asis, steps, NULL, 3};
}

static void counts_are_those_of_the_method(void **state)
{
    (void)state;
    static const uint64_t rows[] = {100, 10, 24, 500};

    for (int m = 0; m < 4; m++) {
        const ts_design design = design_of((ts_design_method)m);
        assert_int_equal(ts_design_rows(&design), rows[m]);
    }
    ts_design            huge = design_of(TS_DESIGN_SWEEP);
    static unsigned      thousand[64];
    static ts_sample_law many[64];
    for (int k = 0; k < 64; k++)
        thousand[k] = 1000;
    huge.count = 64;
    huge.steps = thousand;
    huge.laws  = many;
    assert_true(ts_design_rows(&huge) == UINT64_MAX);
}

static void one_at_a_time_moves_one_value_and_leaves_the_others(void **state)
{
    (void)state;
    const ts_design design   = design_of(TS_DESIGN_ONE_AT_A_TIME);
    size_t          moves[3] = {0};

    for (uint64_t row = 0; row < 10; row++) {
        double       values[3];
        unsigned     step;
        const size_t moved = ts_design_moves(&design, row, &step);
        ts_design_row(&design, row, values);
        for (size_t k = 0; k < 3; k++)
            if (k != moved)
                assert_true(memcmp(&values[k], &asis[k], sizeof values[k]) == 0);
        if (row == 0)
            assert_true(moved == SIZE_MAX);
        else
            moves[moved]++;
    }
    for (size_t k = 0; k < 3; k++)
        assert_int_equal(moves[k], steps[k]);
}

static void a_sweep_has_every_combination_once(void **state)
{
    (void)state;
    const ts_design design = design_of(TS_DESIGN_SWEEP);
    double          rows[24][3];

    for (uint64_t row = 0; row < 24; row++) {
        ts_design_row(&design, row, rows[row]);
        for (uint64_t other = 0; other < row; other++)
            assert_true(memcmp(rows[row], rows[other], sizeof rows[row]) != 0);
    }
}

/* The blocks of one lot: A, B, and A with one column of B each. */
static void lots_exchange_one_column_at_a_time(void **state)
{
    (void)state;
    const ts_design design = design_of(TS_DESIGN_SHARES);

    for (uint64_t lot = 0; lot < 100; lot++) {
        double rows[5][3];
        for (uint64_t b = 0; b < 5; b++)
            ts_design_row(&design, lot * 5 + b, rows[b]);
        for (size_t k = 0; k < 3; k++)
            for (size_t v = 0; v < 3; v++)
                assert_memory_equal(&rows[2 + k][v], &rows[k == v ? 1 : 0][v], sizeof(double));
        assert_memory_not_equal(&rows[0][0], &rows[1][0], sizeof(double));
    }
}

/* Spearman's correlation of two normal values with Pearson's r is 6/pi asin(r/2): K. Pearson, On
 * further methods of determining correlation (1907), from memory. */
static void correlated_values_have_the_rank_correlation_of_normal_ones(void **state)
{
    (void)state;
    enum { COUNT = 20000 };
    const double r[4] = {1.0, -0.6, -0.6, 1.0};
    double       root[4];
    double      *ranks = malloc(4 * COUNT * sizeof *ranks), *a = malloc(2 * COUNT * sizeof *a);
    ts_design    design = design_of(TS_DESIGN_RANDOM);

    assert_true(ts_correlation_root(r, 2, root));
    design.count = 2;
    design.root  = root;
    for (uint64_t i = 0; i < COUNT; i++) {
        double values[2];
        ts_design_row(&design, i, values);
        a[i]         = values[0];
        a[COUNT + i] = values[1];
    }
    /* five standard errors of a rank correlation, 1/sqrt(n) */
    assert_close_abs(ts_rank_correlation(a, a + COUNT, COUNT, ranks), 6.0 / acos(-1.0) * asin(-0.3),
                     5.0 / sqrt(COUNT));
    free(ranks);
    free(a);
}

static void a_root_times_itself_is_the_matrix_and_none_is_found_where_none_is(void **state)
{
    (void)state;
    const double r[9]    = {1.0, 0.5, 0.3, 0.5, 1.0, -0.2, 0.3, -0.2, 1.0};
    const double none[9] = {1.0, 0.9, 0.9, 0.9, 1.0, -0.9, 0.9, -0.9, 1.0};
    double       root[9];

    assert_true(ts_correlation_root(r, 3, root));
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++) {
            double sum = 0.0;
            for (int k = 0; k < 3; k++)
                sum += root[3 * i + k] * root[3 * j + k];
            assert_close_abs(sum, r[3 * i + j], 1e-15);
        }
    assert_false(ts_correlation_root(none, 3, root));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(counts_are_those_of_the_method),
        cmocka_unit_test(one_at_a_time_moves_one_value_and_leaves_the_others),
        cmocka_unit_test(a_sweep_has_every_combination_once),
        cmocka_unit_test(lots_exchange_one_column_at_a_time),
        cmocka_unit_test(correlated_values_have_the_rank_correlation_of_normal_ones),
        cmocka_unit_test(a_root_times_itself_is_the_matrix_and_none_is_found_where_none_is),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
