/* Does the rigid train of a start, standing still in a condition, resist with the torques that the
 * power flow has by other code?  Does every example come to idle? */
#include "response/drive_start.h"
#include "response/rigid_parts.h"
#include "support/close.h"
#include "support/read_file.h"
#include "support/solved_file.h"

typedef struct rig {
    solved_file    file;
    ts_text        text;
    ts_mass        mass;
    ts_drive_start start;
    ts_cranking    c;
    double         y[32];
} rig;

static double *zeros(ts_arena *arena, size_t count)
{
    double *list = TS_TAKE(arena, double, count + 1);
    for (size_t i = 0; i <= count; i++)
        list[i] = 0.0;
    return list;
}

static void open(rig *it, const char *path)
{
    it->text = read_file(path);
    solved_file_open(&it->file, it->text, false);
    assert_int_equal(it->file.status, TS_OK);
    assert_int_equal(ts_mass_prepare(&it->file.drive, &it->file.power, it->file.arena, &it->mass),
                     TS_OK);
    ts_mass_solve(&it->file.drive, &it->mass, NULL);
}

static void start(rig *it)
{
    const double           *none = zeros(it->file.arena, it->file.train.shaft_count);
    const ts_start_question ask  = {.drive    = &it->file.drive,
                                    .mass     = &it->mass,
                                    .oil_slow = none,
                                    .oil_fast = none,
                                    .ambient  = 288.15,
                                    .nu_ratio = 1.0,
                                    .beyond   = TS_NOWHERE};
    assert_int_equal(ts_drive_start_run(&ask, it->file.arena, &it->start), TS_OK);
    assert_null(it->start.missing);
}

static void shut(rig *it)
{
    solved_file_close(&it->file);
    free_file(it->text);
}

/* The train as it stands, with its starters engaged or not. */
static void lay_cranking(rig *it, bool engaged)
{
    const ts_rigid_start *s     = &it->start.start;
    ts_arena             *arena = it->file.arena;
    it->c         = (ts_cranking){.start = s, .cranked = it->start.spool, .cut = !engaged};
    it->c.engaged = TS_TAKE(arena, bool, s->pad_count + 1);
    it->c.stands  = TS_TAKE(arena, bool, s->spool_count + 1);
    for (uint32_t p = 0; p < s->pad_count; p++)
        it->c.engaged[p] = engaged && s->pads[p].starter;
    it->c.pad   = zeros(arena, s->pad_count);
    it->c.drive = zeros(arena, s->pad_count);
    it->c.fixed = zeros(arena, s->shaft_count);
    it->c.mass  = zeros(arena, s->shaft_count);
    it->c.T     = zeros(arena, s->shaft_count);
    it->c.slope = zeros(arena, s->shaft_count);
}

/* The starter by `drives` alone, as the power flow has it; no oil, which the power flow leaves out.
 */
static void leave_out(rig *it)
{
    for (size_t a = 0; a < it->file.drive.accessory_count; a++)
        it->file.drive.accessories[a].curve_count = 0;
    for (size_t k = 0; k < it->file.drive.spool_count; k++)
        it->file.drive.spools[k].oil_drag.standing = TS_ABSENT;
}

static void compare(const char *path)
{
    rig it;
    open(&it, path);
    leave_out(&it);
    start(&it);
    const ts_power *power = &it.file.power;
    const uint32_t  spool = it.start.spool;
    for (uint32_t c = 0; c < 3; c++) { /* crank, light-off, ground idle */
        lay_cranking(&it, c < 2);
        const double w = it.file.drive.conditions[c].speed[spool].value;
        const double T = power->spool[(size_t)c * power->spool_count + spool].T;
        assert_close(ts_cranking_resists(&it.c, spool, w, it.y), T, 1e-9);
        for (uint32_t s = 0; s < it.file.train.shaft_count; s++)
            if (it.file.train.shafts[s].spool == spool)
                assert_close_abs(it.c.T[s], power->T[c * it.file.train.shaft_count + s],
                                 1e-9 * fabs(T));
    }
    shut(&it);
}

static const char *const examples[] = {"examples/trainer.yaml", "examples/bizjet.yaml",
                                       "examples/medium.yaml", "examples/large.yaml"};

static void a_condition_is_resisted_as_the_power_flow_says(void **state)
{
    (void)state;
    for (int i = 0; i < 4; i++)
        compare(examples[i]);
}

static void every_example_comes_to_idle(void **state)
{
    (void)state;
    for (int i = 0; i < 4; i++) {
        rig it;
        open(&it, examples[i]);
        start(&it);
        assert_int_equal(it.start.run.outcome, TS_START_IDLE);
        assert_true(it.start.run.energy.balance < 1e-7);
        shut(&it);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_condition_is_resisted_as_the_power_flow_says),
        cmocka_unit_test(every_example_comes_to_idle),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
