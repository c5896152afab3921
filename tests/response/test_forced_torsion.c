/* Does a shaken train swing as closed forms and a dense solution say, and does the torque of a
 * drive follow from what shakes it? */
#include "base/complex_pair.h"
#include "response/drive_forced.h"
#include "response/forced_torsion.h"
#include "study/twisting.h"
#include "support/close.h"
#include "support/read_file.h"

#include <math.h>

static const char *const examples[] = {"examples/trainer.yaml", "examples/bizjet.yaml",
                                       "examples/medium.yaml", "examples/large.yaml"};

/* derived: two discs on a damped spring, the second shaken by T cos(w t):
 * spring torque = k' J_1 T/((J_1 + J_2) k' - J_1 J_2 w^2), k' = k + i w c. */
static void two_discs_swing_as_their_closed_form(void **state)
{
    (void)state;
    const double          J_1 = 0.4, J_2 = 0.05, k = 8e3, c[] = {0.7}, T = 3.0;
    const ts_twist_body   bodies[]  = {{J_1, 0, 1.0}, {J_2, 1, 1.0}};
    const ts_twist_spring springs[] = {{0, 1, 1.0, 1.0, k}};
    const ts_twist_model  model     = {bodies, 2, springs, 1, 2};
    ts_arena             *arena     = ts_arena_open(NULL);
    ts_forced_tree        tree;
    const double          natural = sqrt(k * (J_1 + J_2) / (J_1 * J_2));
    assert_int_equal(ts_forced_tree_make(&model, c, arena, &tree), TS_TWIST_FINE);
    for (double r = 0.1; r < 3.0; r += 0.1) {
        const double           w  = r * natural;
        const ts_torsion_shake by = {.omega = w, .spring = TS_HELD, .body = 1, .T = T};
        double                 force, angle[2];
        assert_true(ts_forced_tree_shake(&tree, &by, &force, angle));
        const double complex k_c = ts_complex(k, w * c[0]);
        const double complex det = (J_1 + J_2) * k_c - J_1 * J_2 * w * w;
        assert_close(force, cabs(k_c * J_1 * T / det), 1e-12);
        assert_close(angle[0], cabs(k_c * T / det) / (w * w), 1e-12);
        assert_close(angle[1], cabs((k_c - J_1 * w * w) * T / det) / (w * w), 1e-12);
    }
    ts_arena_close(arena);
}

/* An error that turns very slowly moves bodies and loads nothing; one that is very fast finds them
 * standing: the spring takes k e. */
static void slow_errors_load_nothing_and_fast_ones_all_of_it(void **state)
{
    (void)state;
    const ts_twist_body   bodies[]  = {{2.0, 0, 1.0}, {0.01, 1, 1.0}, {0.02, 2, 1.0}};
    const ts_twist_spring springs[] = {{0, 1, 0.05, 0.08, 3e8}, {1, 2, 1.0, 1.0, 1e4}};
    const ts_twist_model  model     = {bodies, 3, springs, 2, 3};
    const double          c[]       = {0.0, 0.0};
    ts_arena             *arena     = ts_arena_open(NULL);
    ts_forced_tree        tree;
    double                force[2];
    assert_int_equal(ts_forced_tree_make(&model, c, arena, &tree), TS_TWIST_FINE);
    ts_torsion_shake by = {.omega = 1e-2, .spring = 0, .e = 1e-5, .body = TS_HELD};
    assert_true(ts_forced_tree_shake(&tree, &by, force, NULL));
    assert_true(force[0] < 1e-6 && force[1] < 1e-6);
    by.omega = 1e8;
    assert_true(ts_forced_tree_shake(&tree, &by, force, NULL));
    assert_close(force[0], 3e8 * 1e-5, 1e-6);
    assert_true(force[1] < 1e-6);
    ts_arena_close(arena);
}

/* Errors of springs and torques on bodies, each at a speed of its own. */
static ts_torsion_shake some_shake(size_t i)
{
    const bool error = i % 3 != 2;
    return (ts_torsion_shake){.omega  = 300.0 + 171.0 * (double)(i * i),
                              .spring = error ? (uint32_t)(i % 2) : TS_HELD,
                              .e      = 1e-5 * (double)(i + 1),
                              .body   = error ? TS_HELD : (uint32_t)(i % 3),
                              .T      = 2.0 + (double)i};
}

/* 1 to 8 shakes at once come, bit for bit, to what each comes to alone. */
static void shakes_abreast_do_not_feel_each_other(void **state)
{
    (void)state;
    const ts_twist_body   bodies[]  = {{2.0, 0, 1.0}, {0.01, 1, 1.0}, {0.02, 2, 1.0}};
    const ts_twist_spring springs[] = {{0, 1, 0.05, 0.08, 3e8}, {1, 2, 1.0, 1.0, 1e4}};
    const ts_twist_model  model     = {bodies, 3, springs, 2, 3};
    const double          c[]       = {900.0, 0.4};
    ts_arena             *arena     = ts_arena_open(NULL);
    ts_forced_tree        tree, alone;
    assert_int_equal(ts_forced_tree_make(&model, c, arena, &tree), TS_TWIST_FINE);
    assert_int_equal(ts_forced_tree_make(&model, c, arena, &alone), TS_TWIST_FINE);
    for (size_t count = 1; count <= TS_SHAKES_ABREAST; count++) {
        ts_torsion_shake shakes[TS_SHAKES_ABREAST];
        bool             computed[TS_SHAKES_ABREAST];
        for (size_t i = 0; i < count; i++)
            shakes[i] = some_shake(i + count);
        ts_forced_tree_shake_abreast(&tree, shakes, count, computed);
        for (size_t i = 0; i < count; i++) {
            double force[2];
            assert_true(ts_forced_tree_shake(&alone, &shakes[i], force, NULL));
            assert_true(computed[i]);
            for (size_t s = 0; s < 2; s++)
                assert_true(force[s] > 0.0 && force[s] == tree.forces[s].at[i]);
        }
    }
    ts_arena_close(arena);
}

/* An undamped train at its own frequency has no answer, and its neighbours have theirs. */
static void a_resonance_in_one_lane_spoils_no_other(void **state)
{
    (void)state;
    const ts_twist_body    bodies[]  = {{1.0, 0, 1.0}, {1.0, 1, 1.0}};
    const ts_twist_spring  springs[] = {{0, 1, 1.0, 1.0, 2.0}};
    const ts_twist_model   model     = {bodies, 2, springs, 1, 2};
    const double           c[]       = {0.0};
    const ts_torsion_shake shakes[]  = {
         {1.0, TS_HELD, 0.0, 1, 1.0}, {2.0, TS_HELD, 0.0, 1, 1.0}, {3.0, TS_HELD, 0.0, 1, 1.0}};
    ts_arena      *arena = ts_arena_open(NULL);
    ts_forced_tree tree;
    bool           computed[3];
    assert_int_equal(ts_forced_tree_make(&model, c, arena, &tree), TS_TWIST_FINE);
    ts_forced_tree_shake_abreast(&tree, shakes, 3, computed); /* omega^2 = k (1/J + 1/J) = 4 */
    assert_true(computed[0] && !computed[1] && computed[2]);
    /* k J_1 T/((J_1 + J_2) k - J_1 J_2 omega^2) */
    assert_close(tree.forces[0].at[0], 2.0 / 3.0, 1e-15);
    assert_close(tree.forces[0].at[2], 2.0 / 5.0, 1e-15);
    ts_arena_close(arena);
}

static void what_is_no_tree_is_refused(void **state)
{
    (void)state;
    const ts_twist_body   bodies[] = {{1.0, 0, 1.0}, {1.0, 1, 1.0}, {1.0, 2, 1.0}};
    const ts_twist_spring loop[]   = {
          {0, 1, 1.0, 1.0, 1e4}, {1, 2, 1.0, 1.0, 1e4}, {0, 2, 1.0, 1.0, 1e4}};
    const double   c[] = {1.0, 1.0, 1.0}, bad[] = {-1.0, (double)NAN, 0.0};
    ts_arena      *arena = ts_arena_open(NULL);
    ts_forced_tree tree;
    ts_twist_model model = {bodies, 3, loop, 3, 3};
    assert_int_equal(ts_forced_tree_make(&model, c, arena, &tree), TS_TWIST_BAD_LINK);
    model.spring_count = 1; /* one body hangs on nothing */
    assert_int_equal(ts_forced_tree_make(&model, c, arena, &tree), TS_TWIST_BAD_LINK);
    model.spring_count = 2;
    assert_int_equal(ts_forced_tree_make(&model, bad, arena, &tree), TS_TWIST_BAD_NUMBER);
    assert_int_equal(ts_forced_tree_make(&model, c, arena, &tree), TS_TWIST_FINE);
    ts_arena_close(arena);
}

/* ---- a drive ----------------------------------------------------------------------------------
 */

static ts_study *study_of(const char *path)
{
    const ts_text          file    = read_file(path);
    const ts_study_options options = {.today = 20000};
    ts_study              *study   = NULL;
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_equal(ts_study_read(study, path, file.at, file.length, &options), TS_OK);
    free_file(file);
    return study;
}

/* The same equations with all of their matrix, by elimination with pivots. */
static void solve_dense(size_t n, double complex *A, double complex *b)
{
    for (size_t i = 0; i < n; i++) {
        size_t best = i;
        for (size_t k = i + 1; k < n; k++)
            best = cabs(A[k * n + i]) > cabs(A[best * n + i]) ? k : best;
        for (size_t j = 0; j < n; j++) {
            const double complex kept = A[i * n + j];
            A[i * n + j]              = A[best * n + j];
            A[best * n + j]           = kept;
        }
        const double complex kept = b[i];
        b[i]                      = b[best];
        b[best]                   = kept;
        for (size_t k = i + 1; k < n; k++) {
            const double complex share = A[k * n + i] / A[i * n + i];
            for (size_t j = i; j < n; j++)
                A[k * n + j] -= share * A[i * n + j];
            b[k] -= share * b[i];
        }
    }
    for (size_t i = n; i-- > 0;) {
        for (size_t j = i + 1; j < n; j++)
            b[i] -= A[i * n + j] * b[j];
        b[i] /= A[i * n + i];
    }
}

static void every_tree_swings_as_its_dense_equations(void **state)
{
    (void)state;
    enum { MOST = 64 };
    static double complex A[MOST * MOST], b[MOST];
    for (size_t e = 0; e < 4; e++) {
        ts_study *study = study_of(examples[e]);
        for (size_t t = 0; t < study->twist.count; t++) {
            const ts_twist_model *model = &study->twist.items[t].model;
            const size_t          n     = model->body_count;
            double                c[MOST], force[MOST], angle[MOST];
            ts_forced_tree        tree;
            assert_true(n <= MOST);
            for (size_t i = 0; i < model->spring_count; i++)
                c[i] = ts_twist_damper(&study->twist.items[t], i, 0.07, 0.01);
            assert_int_equal(ts_forced_tree_make(model, c, study->arena, &tree), TS_TWIST_FINE);
            for (double w = 100.0; w < 1e5; w *= 3.0) {
                const ts_torsion_shake by = {.omega  = w,
                                             .spring = (uint32_t)(model->spring_count / 2),
                                             .e      = 1e-5,
                                             .body   = TS_HELD};
                for (size_t i = 0; i < n * n; i++)
                    A[i] = 0.0;
                for (size_t i = 0; i < n; i++) {
                    A[i * n + i] = -w * w * model->bodies[i].J;
                    b[i]         = 0.0;
                }
                for (size_t i = 0; i < model->spring_count; i++) {
                    const ts_twist_spring *s = &model->springs[i];
                    const double complex   k = ts_complex(s->k, w * c[i]);
                    const double           x = i == by.spring ? by.e : 0.0;
                    A[s->a * n + s->a] += k * s->g_a * s->g_a;
                    A[s->b * n + s->b] += k * s->g_b * s->g_b;
                    A[s->a * n + s->b] -= k * s->g_a * s->g_b;
                    A[s->b * n + s->a] -= k * s->g_a * s->g_b;
                    b[s->a] -= k * s->g_a * x;
                    b[s->b] += k * s->g_b * x;
                }
                solve_dense(n, A, b);
                assert_true(ts_forced_tree_shake(&tree, &by, force, angle));
                for (size_t i = 0; i < n; i++)
                    assert_close_abs(angle[i], cabs(b[i]),
                                     1e-9 * cabs(b[model->springs[by.spring].b]));
            }
        }
        ts_study_close(study);
    }
}

static void every_swing_is_the_root_of_its_squares(void **state)
{
    (void)state;
    for (size_t e = 0; e < 4; e++) {
        ts_study *study = study_of(examples[e]);
        for (size_t t = 0; t < study->twist.count; t++) {
            const ts_drive_forced *forced = &study->twist.forced[t];
            size_t                 here   = 0;
            assert_int_equal(forced->fault, TS_TWIST_FINE);
            for (uint32_t c = 0; c < forced->condition_count; c++)
                for (size_t i = 0; forced->here[c] && i < forced->twist->model.spring_count; i++) {
                    const ts_torque_swing *swing = ts_forced_spring(forced, c, i);
                    assert_true(isfinite(swing->swing) && isfinite(swing->mean));
                    assert_true(swing->most <= swing->swing * (1.0 + 1e-12));
                    assert_true(!(swing->most > 0.0) || swing->source.frequency > 0.0);
                    here++;
                }
            assert_true(here > 0);
        }
        ts_study_close(study);
    }
}

static bool meets_a_mode(const ts_twist_modes *modes, double frequency)
{
    for (size_t i = modes->rigid; i < modes->count; i++)
        if (fabs(frequency * 2.0 * acos(-1.0) / modes->omega[i] - 1.0) < 0.10)
            return true;
    return false;
}

/* What is near a natural frequency is a part of the whole: all of it where the whole is nearly one
 * source that is near, less by all of that source where it is not. */
static void what_meets_a_mode_is_a_part_of_the_swing(void **state)
{
    (void)state;
    size_t near_first = 0, far_first = 0;
    for (size_t e = 0; e < 4; e++) {
        ts_study *study = study_of(examples[e]);
        for (size_t t = 0; t < study->twist.count; t++) {
            const ts_drive_forced *forced = &study->twist.forced[t];
            const ts_twist_modes  *modes  = &forced->twist->modes;
            for (uint32_t c = 0; c < forced->condition_count; c++)
                for (size_t i = 0; forced->here[c] && i < forced->twist->model.spring_count; i++) {
                    const ts_torque_swing *all  = ts_forced_spring(forced, c, i);
                    const ts_torque_near  *near = &all->near;
                    if (!(all->most > 0.0))
                        continue;
                    assert_true(near->most <= near->swing * (1.0 + 1e-12));
                    assert_true((near->most > 0.0) == (near->mode != SIZE_MAX));
                    if (meets_a_mode(modes, all->source.frequency)) {
                        assert_same_double(near->most, all->most);
                        assert_same_double(near->source.frequency, all->source.frequency);
                        assert_true(near->swing <= all->swing * (1.0 + 1e-12));
                        near_first++;
                    } else {
                        assert_true(near->most <= all->most);
                        assert_true(hypot(near->swing, all->most) <= all->swing * (1.0 + 1e-12));
                        far_first++;
                    }
                }
        }
        ts_study_close(study);
    }
    assert_true(near_first > 20 && far_first > 20);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(two_discs_swing_as_their_closed_form),
        cmocka_unit_test(slow_errors_load_nothing_and_fast_ones_all_of_it),
        cmocka_unit_test(shakes_abreast_do_not_feel_each_other),
        cmocka_unit_test(a_resonance_in_one_lane_spoils_no_other),
        cmocka_unit_test(what_is_no_tree_is_refused),
        cmocka_unit_test(every_tree_swings_as_its_dense_equations),
        cmocka_unit_test(every_swing_is_the_root_of_its_squares),
        cmocka_unit_test(what_meets_a_mode_is_a_part_of_the_swing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
