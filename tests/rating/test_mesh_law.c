/* Does the table of a mesh say what the rating of the drive says? */
#include "support/close.h"
#include "support/read_file.h"

#include "rating/mesh_law.h"
#include "study/study.h"

#include <math.h>
#include <string.h>

enum { CONDITIONS_MOST = 40 };

/* A study whose drive is given other faces, and a table of one of its meshes. */
typedef struct bench {
    ts_study    *study;
    ts_arena    *arena;
    ts_mesh_rig *rig;
    ts_mesh_law  law;
    double       omega[CONDITIONS_MOST], force[CONDITIONS_MOST];
    ts_law_load  load;
    uint32_t     mesh;
} bench;

static void read_study(bench *b, const char *path)
{
    const ts_text          file    = read_file(path);
    const ts_study_options options = {.today = 20000};
    assert_int_equal(ts_study_open(NULL, &b->study), TS_OK);
    assert_int_equal(ts_study_read(b->study, path, file.at, file.length, &options), TS_OK);
    free_file(file);
}

static void find_mesh(bench *b, const char *driver, const char *driven)
{
    const ts_train *train = &b->study->train;
    for (uint32_t m = 0; m < train->mesh_count; m++) {
        b->mesh = m;
        if (strcmp(train->shafts[train->meshes[m].driver_shaft].name, driver) == 0 &&
            strcmp(train->shafts[train->meshes[m].driven_shaft].name, driven) == 0)
            return;
    }
    fail_msg("%s does not drive %s", driver, driven);
}

/* Speeds and forces of the mesh as the drive has them. */
static void take_loads(bench *b)
{
    const ts_study *s    = b->study;
    const ts_mesh  *mesh = &s->train.meshes[b->mesh];
    for (size_t c = 0; c < s->drive.condition_count; c++) {
        const ts_mesh_load *load = &s->power.mesh[c * s->train.mesh_count + b->mesh];
        b->omega[c]              = s->motion.speed[c * s->train.shaft_count + mesh->driver_shaft];
        b->force[c]              = load->F_t * (double)load->flow;
    }
    b->load.condition_count = s->drive.condition_count;
    b->load.force           = b->force;
}

static void open_bench(bench *b, const char *path, const char *driver, const char *driven)
{
    *b = (bench){.study = NULL};
    read_study(b, path);
    find_mesh(b, driver, driven);
    take_loads(b);
    const ts_study *s    = b->study;
    const ts_mesh  *mesh = &s->train.meshes[b->mesh];
    b->arena             = ts_arena_open(NULL);
    assert_non_null(b->arena);
    assert_int_equal(ts_mesh_rig_open(&s->drive, s->train.shafts[mesh->driver_shaft].drive,
                                      b->arena, NULL, &b->rig),
                     TS_OK);
    b->law.ln_damage =
        ts_arena_take(b->arena, ts_mesh_law_size(s->drive.condition_count), sizeof(float));
    b->law.w_most =
        ts_arena_take(b->arena, s->drive.condition_count * TS_LAW_PLACES, sizeof(double));
    const ts_law_pair pair = {.z_1     = (int)s->train.gears[mesh->driver].teeth.value,
                              .z_2     = (int)s->train.gears[mesh->driven].teeth.value,
                              .m_n     = s->train.gears[mesh->driver].m_n.value,
                              .omega_1 = b->omega};
    assert_int_equal(ts_mesh_law_make(b->rig, &pair, &b->law), TS_OK);
}

static void close_bench(bench *b)
{
    ts_mesh_rig_close(b->rig);
    ts_arena_close(b->arena);
    ts_study_close(b->study);
}

/* In steps of 1 um, far finer than any drawing. */
static double least_width(const bench *b)
{
    double low = 0.1e-3, high = 0.5;
    assert_true(ts_mesh_law_bears(&b->law, &b->load, high));
    while (high - low > 1e-6) {
        const double middle = 0.5 * (low + high);
        if (ts_mesh_law_bears(&b->law, &b->load, middle))
            high = middle;
        else
            low = middle;
    }
    return high;
}

/* What is left of the mesh when every gear of the drive has that face. */
static double reserve_at(const bench *b, double face)
{
    ts_study *s = b->study;
    for (uint32_t g = 0; g < s->train.gear_count; g++) {
        if (s->train.gears[g].role != TS_GEAR_BEVEL)
            s->train.gears[g].face.value = face;
    }
    assert_int_equal(ts_motion_solve(&s->drive, &s->motion, s->diagnostics, NULL), TS_OK);
    assert_int_equal(ts_power_solve(&s->drive, &s->power, NULL), TS_OK);
    ts_teeth_solve(&s->drive, &s->teeth, NULL);
    return s->teeth.strength[b->mesh].reserve;
}

/* An idler passes on what it gets, so that its two flanks are loaded alike. */
static void width_of_the_table_just_bears_the_load_of_the_drive(void **state)
{
    (void)state;
    static const struct {
        const char *path, *driver, *driven;
        bool        reversed[2];
    } meshes[] = {
        {"examples/bizjet.yaml", "idler 2", "generator + breather", {true, false}},
        {"examples/bizjet.yaml", "lp box input", "hydraulic pump 2", {false, false}},
        {"examples/large.yaml", "lp box input", "standby generator", {false, false}},
    };
    for (size_t i = 0; i < sizeof meshes / sizeof meshes[0]; i++) {
        bench b;
        open_bench(&b, meshes[i].path, meshes[i].driver, meshes[i].driven);
        assert_null(b.law.fault);
        memcpy(b.load.reversed, meshes[i].reversed, sizeof b.load.reversed);
        const double face = least_width(&b);
        /* One condition alone asks for no more than all of them, and mostly for nearly as much. */
        const double alone = ts_mesh_law_least(&b.law, &b.load);
        assert_true(alone <= face && alone > 0.6 * face);
        assert_false(ts_mesh_law_bears(&b.law, &b.load, alone * (1.0 - 1e-6)));
        const double reserve = reserve_at(&b, face);
        /* The tolerance of the helix is that of a face of 8 modules, which is wider. */
        if (!(reserve >= 0.0 && reserve < 0.05))
            fail_msg("%s: reserve %g at %g mm", meshes[i].driven, reserve, face * 1e3);
        close_bench(&b);
    }
}

static void heavier_load_never_needs_less_width(void **state)
{
    (void)state;
    bench b;
    open_bench(&b, "examples/bizjet.yaml", "idler 2", "generator + breather");
    double before = 0.0;
    for (int i = 0; i < 40; i++) {
        const double face = least_width(&b);
        assert_true(face >= before);
        before = face;
        for (size_t c = 0; c < b.load.condition_count; c++)
            b.force[c] *= 1.07;
    }
    assert_true(before > 3e-2); /* 1.07^39 is 14, from 4 mm on */
    close_bench(&b);
}

static void loads_on_both_flanks_need_no_less_width(void **state)
{
    (void)state;
    bench b;
    open_bench(&b, "examples/bizjet.yaml", "idler 2", "generator + breather");
    const double one_way = least_width(&b);
    b.load.reversed[0] = b.load.reversed[1] = true;
    assert_true(least_width(&b) >= one_way);
    close_bench(&b);
}

/* derived: the wear of one flank does not count for the other, so that a load that is turned round
 * in some conditions needs no more width than when it is not */
static void flanks_wear_apart(void **state)
{
    (void)state;
    bench b;
    open_bench(&b, "examples/bizjet.yaml", "lp box input", "hydraulic pump 2");
    const double together = least_width(&b);
    for (size_t c = 0; c < b.load.condition_count; c += 2)
        b.force[c] = -b.force[c];
    assert_true(least_width(&b) <= together);
    close_bench(&b);
}

static void pair_that_cannot_run_has_a_fault(void **state)
{
    (void)state;
    bench b;
    open_bench(&b, "examples/bizjet.yaml", "lp box input", "hydraulic pump 2");
    const ts_law_pair few = {.z_1 = 9, .z_2 = 40, .m_n = 2e-3, .omega_1 = b.omega};
    assert_int_equal(ts_mesh_law_make(b.rig, &few, &b.law), TS_OK);
    assert_non_null(b.law.fault);
    assert_false(ts_mesh_law_bears(&b.law, &b.load, 0.1));
    const ts_law_pair fine = {.z_1 = 35, .z_2 = 57, .m_n = 2e-3, .omega_1 = b.omega};
    assert_int_equal(ts_mesh_law_make(b.rig, &fine, &b.law), TS_OK);
    assert_null(b.law.fault);
    close_bench(&b);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(width_of_the_table_just_bears_the_load_of_the_drive),
        cmocka_unit_test(heavier_load_never_needs_less_width),
        cmocka_unit_test(loads_on_both_flanks_need_no_less_width),
        cmocka_unit_test(flanks_wear_apart),
        cmocka_unit_test(pair_that_cannot_run_has_a_fault),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
