/* Are torsional modes those of closed forms, and do those of a drive satisfy statics spring by
 * spring? */
#include "element/round_torsion.h"
#include "response/torsion.h"
#include "study/twisting.h"
#include "support/close.h"
#include "support/read_file.h"
#include "towershaft/twist.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

static const char *const examples[] = {"examples/trainer.yaml", "examples/bizjet.yaml",
                                       "examples/medium.yaml", "examples/large.yaml"};

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

/* ---- closed forms -----------------------------------------------------------------------------
 */

/* derived: equal discs on equal shafts, free: omega_i = 2 sqrt(k/J) sin(i pi/(2 n)). */
static void a_free_chain_of_equal_discs_has_its_closed_form(void **state)
{
    (void)state;
    enum { N = 40 };
    ts_twist_body   bodies[N];
    ts_twist_spring springs[N - 1];
    ts_twist_modes  modes;
    ts_arena       *arena = ts_arena_open(NULL);
    for (uint32_t i = 0; i < N; i++)
        bodies[i] = (ts_twist_body){0.01, i, 1.0};
    for (uint32_t i = 0; i + 1 < N; i++)
        springs[i] = (ts_twist_spring){i, i + 1, 1.0, 1.0, 5e4};
    const ts_twist_model model = {bodies, N, springs, N - 1, N};
    assert_int_equal(ts_twist_solve(&model, arena, &modes), TS_TWIST_FINE);
    assert_int_equal(modes.rigid, 1);
    assert_same_double(modes.omega[0], 0.0);
    for (size_t i = 1; i < N; i++)
        assert_close(modes.omega[i], 2.0 * sqrt(5e4 / 0.01) * sin((double)i * pi / (2.0 * N)),
                     1e-11);
    assert_true(modes.residual < 1e-12);
    ts_arena_close(arena);
}

/* ---- a train of finite elements ---------------------------------------------------------------
 */

typedef struct part {
    double L, d; /* m */
} part;

static const double solid_rho = 7830.0, solid_G = 206e9 / 2.6, solid_bore = 0.006;

static double solid_inertia(part one)
{
    return solid_rho * ts_torsion_J(one.d, solid_bore, NULL) * one.L;
}

/* CalculiX 2.20, 20-node bricks (tools/torsion_oracle.py): two geared rotors, one with a branch to
 * either side of its gear.  Discs as bodies, shafts as springs with half of themselves at each end,
 * as a drive has them. */
static void a_geared_branched_train_twists_as_finite_elements(void **state)
{
    (void)state;
    const part discs[] = {
        {0.020, 0.120}, {0.020, 0.080}, {0.020, 0.110}, {0.020, 0.100}, {0.015, 0.090}};
    const part      shafts[]  = {{0.300, 0.018}, {0.260, 0.016}, {0.220, 0.014}};
    const uint32_t  ends[][2] = {{0, 1}, {2, 3}, {2, 4}};
    ts_twist_body   bodies[5];
    ts_twist_spring springs[4] = {{1, 2, 0.040, 0.055, 2e8}};

    for (uint32_t i = 0; i < 5; i++)
        bodies[i] = (ts_twist_body){solid_inertia(discs[i]), i, 1.0};
    for (int i = 0; i < 3; i++) {
        const double J = ts_torsion_J(shafts[i].d, solid_bore, NULL);
        springs[i + 1] = (ts_twist_spring){ends[i][0], ends[i][1], 1.0, 1.0,
                                           ts_torsion_of_twist(1.0, shafts[i].L, solid_G, J, NULL)};
        for (int end = 0; end < 2; end++)
            bodies[ends[i][end]].J += solid_inertia(shafts[i]) / 2.0;
    }
    const ts_twist_model model = {bodies, 5, springs, 4, 5};
    ts_arena            *arena = ts_arena_open(NULL);
    ts_twist_modes       modes;
    assert_int_equal(ts_twist_solve(&model, arena, &modes), TS_TWIST_FINE);

    const ts_text file  = read_file("tests/reference/calculix/geared_train.tsv");
    int           count = 0;
    for (const char *at = file.at; *at != '\0'; at = strchr(at, '\n') + 1) {
        char      *end;
        const long mode = strtol(at, &end, 10);
        if (*at == '#' || mode == 0)
            continue;
        assert_close(modes.omega[mode] / (2.0 * pi) / strtod(end, NULL), 1.0, 0.01);
        count++;
    }
    assert_int_equal(count, 4);
    free_file(file);
    ts_arena_close(arena);
}

/* derived: the squares of both frequencies of three discs have the sum S and the product P below; a
 * very soft spring beside a very stiff one keeps its digits, for the frequency comes from energies.
 */
static void a_soft_spring_beside_a_stiff_one_keeps_its_digits(void **state)
{
    (void)state;
    const ts_twist_body   bodies[]  = {{2.0, 0, 1.0}, {1e-4, 1, 1.0}, {3.0, 2, 1.0}};
    const ts_twist_spring springs[] = {{0, 1, 1.0, 1.0, 1e9}, {1, 2, 1.0, 1.0, 1e2}};
    const ts_twist_model  model     = {bodies, 3, springs, 2, 3};
    ts_twist_modes        modes;
    ts_arena             *arena = ts_arena_open(NULL);
    assert_int_equal(ts_twist_solve(&model, arena, &modes), TS_TWIST_FINE);
    const double S    = 1e9 * (1.0 / 2.0 + 1.0 / 1e-4) + 1e2 * (1.0 / 1e-4 + 1.0 / 3.0);
    const double P    = 1e9 * 1e2 * (2.0 + 1e-4 + 3.0) / (2.0 * 1e-4 * 3.0);
    const double slow = 2.0 * P / (S + sqrt(S * S - 4.0 * P));
    assert_close(modes.omega[1], sqrt(slow), 1e-9);
    assert_close(modes.omega[2], sqrt(S - slow), 1e-12);
    ts_arena_close(arena);
}

/* derived: two trees that share nothing have a free turning each; a tree that is held has none. */
static void every_loose_tree_turns_freely_and_a_held_one_does_not(void **state)
{
    (void)state;
    const ts_twist_body bodies[] = {
        {1.0, 0, 1.0}, {2.0, 1, 1.0}, {1.0, 2, 1.0}, {0.5, 3, 1.0}, {4.0, 4, 1.0}};
    const ts_twist_spring springs[] = {
        {0, 1, 0.04, 0.02, 1e7}, {2, 3, 1.0, 1.0, 100.0}, {4, TS_HELD, 1.0, 0.0, 900.0}};
    const ts_twist_model model = {bodies, 5, springs, 3, 5};
    ts_twist_modes       modes;
    ts_arena            *arena = ts_arena_open(NULL);
    assert_int_equal(ts_twist_solve(&model, arena, &modes), TS_TWIST_FINE);
    assert_int_equal(modes.rigid, 2);
    assert_close(modes.shape[0] / modes.shape[1], 0.5, 1e-14); /* by the radii */
    assert_close(modes.omega[2], 15.0, 1e-12);                 /* sqrt(900/4)  */
    assert_close(modes.omega[3], sqrt(100.0 * 3.0), 1e-12);
    ts_arena_close(arena);
}

/* derived: a ring of gears whose ratios do not close cannot turn without a stretch. */
static void a_loop_whose_ratios_do_not_close_is_not_free(void **state)
{
    (void)state;
    const ts_twist_body bodies[]  = {{1.0, 0, 1.0}, {1.0, 1, 1.0}, {1.0, 2, 1.0}};
    ts_twist_spring     springs[] = {
            {0, 1, 1.0, 2.0, 1e4}, {1, 2, 1.0, 3.0, 1e4}, {0, 2, 1.0, 6.0, 1e4}};
    const ts_twist_model model = {bodies, 3, springs, 3, 3};
    ts_twist_modes       modes;
    ts_arena            *arena = ts_arena_open(NULL);
    assert_int_equal(ts_twist_solve(&model, arena, &modes), TS_TWIST_FINE);
    assert_int_equal(modes.rigid, 1);
    springs[2].g_b = 5.0;
    assert_int_equal(ts_twist_solve(&model, arena, &modes), TS_TWIST_FINE);
    assert_int_equal(modes.rigid, 0);
    assert_true(modes.omega[0] > 0.0);
    ts_arena_close(arena);
}

static void what_cannot_be_solved_is_named(void **state)
{
    (void)state;
    ts_twist_body        bodies[] = {{1.0, 0, 1.0}, {0.0, 1, 1.0}};
    ts_twist_spring      spring   = {0, 1, 1.0, 1.0, 1e4};
    const ts_twist_model model    = {bodies, 2, &spring, 1, 2};
    ts_twist_modes       modes;
    ts_arena            *arena = ts_arena_open(NULL);
    assert_int_equal(ts_twist_solve(&model, arena, &modes), TS_TWIST_NO_INERTIA);
    bodies[1].J = (double)NAN;
    assert_int_equal(ts_twist_solve(&model, arena, &modes), TS_TWIST_BAD_NUMBER);
    bodies[1].J = 1.0;
    spring.k    = 0.0;
    assert_int_equal(ts_twist_solve(&model, arena, &modes), TS_TWIST_BAD_NUMBER);
    spring.k = 1e4;
    spring.b = 7;
    assert_int_equal(ts_twist_solve(&model, arena, &modes), TS_TWIST_BAD_LINK);
    spring.b = 1;
    assert_int_equal(ts_twist_solve(&model, arena, &modes), TS_TWIST_FINE);
    ts_arena_close(arena);
}

/* ---- drives -----------------------------------------------------------------------------------
 */

/* A second route: Holzer's pass from the free ends inwards.  A body that hangs on one spring only
 * hands the torque of its inertia, omega^2 J theta, to that spring, whose stretch must then be that
 * torque over its stiffness; what is left at the spool must vanish. */
static void check_holzer(const ts_drive_twist *twist, size_t mode)
{
    const size_t  n = twist->model.body_count, m = twist->model.spring_count;
    const double *shape = &twist->modes.shape[mode * n];
    const double  w2    = twist->modes.omega[mode] * twist->modes.omega[mode];
    double        torque[200], size = 0.0;
    for (size_t i = 0; i < n; i++) {
        torque[i] = w2 * twist->model.bodies[i].J * shape[i];
        size      = fmax(size, fabs(torque[i]));
    }
    bool done[200] = {false};
    for (size_t round = 0; round < m; round++)
        for (size_t k = m; k-- > 0;) {
            const ts_twist_spring *s     = &twist->model.springs[k];
            bool                   waits = done[k];
            for (size_t o = 0; o < m && !waits; o++)
                waits = o != k && !done[o] &&
                        (twist->model.springs[o].a == s->b || twist->model.springs[o].b == s->b);
            if (waits)
                continue;
            const double force = torque[s->b] / s->g_b;
            assert_close_abs(s->k * (s->g_b * shape[s->b] - s->g_a * shape[s->a]), force,
                             1e-6 * (fabs(force) + size / fmax(s->g_a, s->g_b)));
            torque[s->a] += s->g_a * force;
            done[k] = true;
        }
    assert_close_abs(torque[0], 0.0, 1e-6 * size);
}

static void a_holzer_pass_through_every_drive_leaves_no_torque_at_the_spool(void **state)
{
    (void)state;
    for (size_t e = 0; e < 4; e++) {
        ts_study       *study = study_of(examples[e]);
        ts_arena       *arena = ts_arena_open(NULL);
        ts_twist_answer twist;
        assert_int_equal(ts_study_twist(study, arena, &twist), TS_OK);
        for (size_t i = 0; i < twist.count; i++) {
            assert_null(twist.items[i].missing);
            assert_int_equal(twist.items[i].fault, TS_TWIST_FINE);
            assert_int_equal(twist.items[i].modes.rigid, 1);
            for (size_t mode = 1; mode < twist.items[i].modes.count; mode++)
                check_holzer(&twist.items[i], mode);
        }
        ts_arena_close(arena);
        ts_study_close(study);
    }
}

/* derived: turning as a whole, every part goes by its exact ratio to the spool; so radii and ratios
 * of the model are those of the teeth. */
static void turning_as_a_whole_goes_by_the_exact_ratios(void **state)
{
    (void)state;
    for (size_t e = 0; e < 4; e++) {
        ts_study       *study = study_of(examples[e]);
        ts_arena       *arena = ts_arena_open(NULL);
        ts_twist_answer twist;
        assert_int_equal(ts_study_twist(study, arena, &twist), TS_OK);
        for (size_t i = 0; i < twist.count; i++)
            for (size_t b = 0; b < twist.items[i].model.body_count; b++)
                assert_close(twist.items[i].modes.shape[b] / twist.items[i].modes.shape[0],
                             twist.items[i].parts[b].ratio, 1e-10);
        ts_arena_close(arena);
        ts_study_close(study);
    }
}

/* derived: the inertia of the model seen from the spool is that of the mass statement and the
 * spool's own. */
static void the_model_has_the_inertia_of_the_mass_statement(void **state)
{
    (void)state;
    ts_study       *study = study_of("examples/bizjet.yaml");
    ts_arena       *arena = ts_arena_open(NULL);
    ts_twist_answer twist;
    assert_int_equal(ts_study_twist(study, arena, &twist), TS_OK);
    assert_int_equal(twist.count, 3); /* hp running and cranked, lp */
    for (size_t i = 0; i < twist.count; i++) {
        const ts_drive_twist   *one  = &twist.items[i];
        const ts_spool_inertia *seen = &study->mass.spools[study->drive.drive[one->drive].spool];
        double                  J    = 0.0;
        for (size_t b = 0; b < one->model.body_count; b++)
            J += one->model.bodies[b].J * one->parts[b].ratio * one->parts[b].ratio;
        assert_close(J, seen->own + (one->cranked ? seen->cranked.value : seen->J.value), 1e-12);
    }
    ts_arena_close(arena);
    ts_study_close(study);
}

/* derived: inertia added anywhere lowers no frequency's rank, stiffness raises none: here a starter
 * that is engaged slows the first mode. */
static void an_engaged_starter_slows_the_first_mode(void **state)
{
    (void)state;
    ts_study          *study   = study_of("examples/large.yaml");
    const ts_mode_view running = ts_study_mode(study, "hp", false, 1);
    const ts_mode_view cranked = ts_study_mode(study, "hp", true, 1);
    assert_true(cranked.frequency < running.frequency);
    assert_same_double(ts_study_mode(study, "hp", false, 0).frequency, 0.0);
    assert_nan(ts_study_mode(study, "hp", false, 9999).frequency);
    assert_nan(ts_study_mode(study, "no such spool", false, 1).frequency);
    assert_true(strlen(running.moves) > 0 && running.strain > 0.0 && running.strain <= 1.0);
    ts_study_close(study);
}

static void a_spool_without_inertia_is_said_to_lack_it(void **state)
{
    (void)state;
    ts_study       *study = study_of("examples/bizjet.yaml");
    ts_arena       *arena = ts_arena_open(NULL);
    ts_twist_answer twist;
    study->drive.spools[1].inertia = (ts_measure){(double)NAN, 0, TS_UNKNOWN};
    assert_int_equal(ts_study_twist(study, arena, &twist), TS_OK);
    assert_null(twist.items[0].missing);
    assert_non_null(twist.items[2].missing);
    assert_string_equal(twist.items[2].lacks, "lp");
    ts_arena_close(arena);
    ts_study_close(study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_geared_branched_train_twists_as_finite_elements),
        cmocka_unit_test(a_free_chain_of_equal_discs_has_its_closed_form),
        cmocka_unit_test(a_soft_spring_beside_a_stiff_one_keeps_its_digits),
        cmocka_unit_test(every_loose_tree_turns_freely_and_a_held_one_does_not),
        cmocka_unit_test(a_loop_whose_ratios_do_not_close_is_not_free),
        cmocka_unit_test(what_cannot_be_solved_is_named),
        cmocka_unit_test(a_holzer_pass_through_every_drive_leaves_no_torque_at_the_spool),
        cmocka_unit_test(turning_as_a_whole_goes_by_the_exact_ratios),
        cmocka_unit_test(the_model_has_the_inertia_of_the_mass_statement),
        cmocka_unit_test(an_engaged_starter_slows_the_first_mode),
        cmocka_unit_test(a_spool_without_inertia_is_said_to_lack_it),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
