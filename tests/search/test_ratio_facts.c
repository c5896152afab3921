/* Are all tooth numbers for a ratio found, counted once, and is none nearer than the nearest? */
#include "support/close.h"

#include "element/cylindrical_pair.h"
#include "search/ratio_facts.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static uint64_t state;

static int64_t roll(int64_t least, int64_t most)
{
    state = state * 6364136223846793005u + 1442695040888963407u;
    return least + (int64_t)((state >> 33) % (uint64_t)(most - least + 1));
}

/* Numbers here are small enough for plain products. */
static bool inside(const ts_ratio_wish *w, int64_t over, int64_t under)
{
    return over * w->low.under >= w->low.over * under &&
           over * w->high.under <= w->high.over * under;
}

static double far_off(const ts_ratio_wish *w, int64_t over, int64_t under)
{
    return fabs((double)over / (double)under - (double)w->wanted.over / (double)w->wanted.under);
}

static ts_ratio_wish random_wish(ts_ratio_train train, int span)
{
    ts_ratio_wish w     = {.train = train, .room = 8, .sharing = roll(0, 1) == 1};
    const int64_t share = roll(2, 60);
    w.z_least           = (int)roll(5, 30);
    w.z_most            = w.z_least + (int)roll(0, span);
    w.wanted            = ts_rational_of(roll(1, 400), roll(1, 200));
    w.low               = ts_rational_of(w.wanted.over * (share - 1), w.wanted.under * share);
    w.high              = ts_rational_of(w.wanted.over * (share + 1), w.wanted.under * share);
    return w;
}

static uint64_t gcd(int a, int b)
{
    return ts_gcd((uint64_t)a, (uint64_t)b);
}

static bool count_up(void *context, const ts_ratio_teeth *t)
{
    assert_true(t->z[0] > 0);
    ++*(uint64_t *)context;
    return true;
}

static void pairs_are_those_of_plain_loops(void **unused)
{
    (void)unused;
    state = 1;
    for (int round = 0; round < 300; round++) {
        const ts_ratio_wish w = random_wish(TS_RATIO_PAIR, 90);
        ts_ratio_facts      f;
        uint64_t            all = 0, hunt = 0, listed = 0, visited = 0;
        double              best  = INFINITY;
        int64_t             light = INT64_MAX;
        for (int a = w.z_least; a <= w.z_most; a++)
            for (int b = w.z_least; b <= w.z_most; b++) {
                if (!inside(&w, b, a))
                    continue;
                all++;
                hunt += gcd(a, b) == 1;
                if (gcd(a, b) != 1 && !w.sharing)
                    continue;
                listed++;
                best  = fmin(best, far_off(&w, b, a));
                light = light < a * a + b * b ? light : a * a + b * b;
            }
        ts_ratio_find(&w, &f, count_up, &visited);
        assert_int_equal(f.inside, all);
        assert_int_equal(f.hunting, hunt);
        assert_int_equal(visited, listed);
        assert_int_equal(f.closest.count, listed < 8 ? listed : 8);
        if (listed == 0)
            continue;
        assert_close(far_off(&w, f.closest.items[0].z[1], f.closest.items[0].z[0]), best, 1e-12);
        assert_int_equal(f.lightest.items[0].weight, light);
    }
}

static void nearest_is_nearest_and_what_is_nearer_is_complete(void **unused)
{
    (void)unused;
    state = 2;
    for (int round = 0; round < 200; round++) {
        const ts_ratio_wish w = random_wish(TS_RATIO_PAIR, 90);
        ts_ratio_facts      f;
        double              best   = INFINITY;
        uint64_t            nearer = 0;
        ts_ratio_find(&w, &f, NULL, NULL);
        for (int a = w.z_least; a <= w.z_most; a++)
            for (int b = w.z_least; b <= w.z_most; b++)
                if (gcd(a, b) == 1)
                    best = fmin(best, far_off(&w, b, a));
        assert_int_equal(f.has_nearest, isfinite(best));
        if (!f.has_nearest)
            continue;
        assert_close(far_off(&w, f.nearest.z[1], f.nearest.z[0]), best, 1e-12);
        for (int a = 1; a <= w.z_most; a++)
            for (int b = 1; b <= w.z_most; b++)
                nearer += gcd(a, b) == 1 &&
                          ts_ratio_compare(llabs(b * w.wanted.under - w.wanted.over * a), a,
                                           f.nearest.miss, f.nearest.under) < 0;
        assert_int_equal(f.nearer_count, nearer);
        for (size_t i = 0; i < nearer && i < TS_RATIO_NEARER; i++)
            assert_true(f.nearer[i].over < w.z_least || f.nearer[i].under < w.z_least);
    }
}

static void idlers_are_those_of_plain_loops(void **unused)
{
    (void)unused;
    state = 3;
    for (int round = 0; round < 60; round++) {
        const ts_ratio_wish w = random_wish(TS_RATIO_IDLER, 40);
        ts_ratio_facts      f;
        uint64_t            all = 0, hunt = 0;
        for (int a = w.z_least; a <= w.z_most; a++)
            for (int i = w.z_least; i <= w.z_most; i++)
                for (int b = w.z_least; b <= w.z_most; b++)
                    if (inside(&w, b, a)) {
                        all++;
                        hunt += gcd(a, i) == 1 && gcd(i, b) == 1;
                    }
        ts_ratio_find(&w, &f, NULL, NULL);
        assert_int_equal(f.inside, all);
        assert_int_equal(f.hunting, hunt);
        for (size_t k = 0; k < f.closest.count; k++) {
            const int *z = f.closest.items[k].z;
            assert_int_equal(gcd(z[0], z[1]), 1);
            assert_int_equal(gcd(z[1], z[2]), 1);
        }
    }
}

static void clusters_are_those_of_plain_loops(void **unused)
{
    (void)unused;
    state = 4;
    for (int round = 0; round < 12; round++) {
        const ts_ratio_wish w = random_wish(TS_RATIO_TWO, 20);
        ts_ratio_facts      f;
        uint64_t            all = 0, hunt = 0;
        double              best = INFINITY;
        for (int a = w.z_least; a <= w.z_most; a++)
            for (int b = w.z_least; b <= w.z_most; b++)
                for (int c = w.z_least; c <= w.z_most; c++)
                    for (int d = w.z_least; d <= w.z_most; d++) {
                        if (!inside(&w, (int64_t)b * d, (int64_t)a * c))
                            continue;
                        all++;
                        if (gcd(a, b) != 1 || gcd(c, d) != 1)
                            continue;
                        hunt++;
                        best = fmin(best, far_off(&w, (int64_t)b * d, (int64_t)a * c));
                    }
        ts_ratio_find(&w, &f, NULL, NULL);
        assert_int_equal(f.inside, all);
        assert_int_equal(f.hunting, hunt);
        if (hunt > 0) {
            assert_close(far_off(&w, (int64_t)f.nearest.z[1] * f.nearest.z[3],
                                 (int64_t)f.nearest.z[0] * f.nearest.z[2]),
                         best, 1e-12);
        }
    }
}

static void comparison_is_that_of_exact_products(void **unused)
{
    (void)unused;
    state = 5;
    for (int round = 0; round < 20000; round++) {
        const int64_t a = roll(1, 3000), b = roll(1, 3000), c = roll(1, 3000), d = roll(1, 3000);
        const int     want = (a * d > c * b) - (a * d < c * b);
        assert_int_equal(ts_ratio_compare(a, b, c, d), want);
    }
    /* Neighbours far beyond what a product of 64 bits could tell apart. */
    assert_int_equal(ts_ratio_compare(INT64_MAX, INT64_MAX - 1, INT64_MAX - 1, INT64_MAX - 2), -1);
    assert_int_equal(ts_ratio_compare(0, 7, 0, 5), 0);
}

/* The textbook case of the rule: 56/24 shares 8; 55/24 is 1.8 % off. */
static void kept_driver_asks_for_55_teeth(void **unused)
{
    (void)unused;
    assert_int_equal(ts_ratio_nearest_wheel(ts_rational_of(56, 24), 24, true, 17, 97), 55);
    assert_int_equal(ts_ratio_nearest_wheel(ts_rational_of(56, 24), 56, false, 17, 97), 25);
    assert_int_equal(ts_ratio_nearest_wheel(ts_rational_of(1, 1), 6, true, 6, 6), 0);
}

/* The nearest fraction to 1.234 with terms up to 40 is 37/30 (bank: comb-stern-brocot-1.234). */
static void decimal_of_the_bank_has_its_pair(void **unused)
{
    (void)unused;
    ts_ratio_facts      f;
    const ts_ratio_wish w = {.wanted  = ts_rational_of(1234, 1000),
                             .low     = ts_rational_of(1200, 1000),
                             .high    = ts_rational_of(1300, 1000),
                             .z_least = 17,
                             .z_most  = 40,
                             .room    = 1};
    ts_ratio_find(&w, &f, NULL, NULL);
    assert_int_equal(f.nearest.z[0], 30);
    assert_int_equal(f.nearest.z[1], 37);
    assert_int_equal(f.nearer_count, 0);
}

/* Other code: the pair that the check solves.  a_w 91 mm, m 2 mm, 21 and 67 teeth. */
static void sum_of_shifts_is_that_of_the_solved_pair(void **unused)
{
    (void)unused;
    const ts_ratio_centre     c  = {.a_w = 0.091, .m_n = 0.002, .alpha = 0.3490658503988659};
    ts_cylindrical_pair_input in = {.z_1     = 21,
                                    .z_2     = 67,
                                    .m_n     = c.m_n,
                                    .alpha_n = c.alpha,
                                    .b_1     = 0.02,
                                    .b_2     = 0.02,
                                    .a_w     = c.a_w,
                                    .shift   = TS_SHIFT_REST_2,
                                    .rack    = {.h_aPs = 1.0, .h_fPs = 1.25, .rho_fPs = 0.38}};
    ts_cylindrical_pair       pair;
    (void)ts_cylindrical_pair_solve(&in, &pair, NULL);
    assert_close(ts_ratio_shift(&c, 21, 67), pair.sum_x, 1e-10);
    assert_true(isnan(ts_ratio_shift(&c, 90, 90)));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pairs_are_those_of_plain_loops),
        cmocka_unit_test(nearest_is_nearest_and_what_is_nearer_is_complete),
        cmocka_unit_test(idlers_are_those_of_plain_loops),
        cmocka_unit_test(clusters_are_those_of_plain_loops),
        cmocka_unit_test(comparison_is_that_of_exact_products),
        cmocka_unit_test(kept_driver_asks_for_55_teeth),
        cmocka_unit_test(decimal_of_the_bank_has_its_pair),
        cmocka_unit_test(sum_of_shifts_is_that_of_the_solved_pair),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
