/* Does the flat train say the same as the tree of the file? */
#include "model/opened_drive.h"
#include "support/close.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

static opened_drive o;
static ts_train     train;

static void build(void)
{
    assert_int_equal(o.status, TS_OK);
    assert_int_equal(ts_train_build(&o.drive, o.arena, o.list, &train), TS_OK);
}

static uint32_t shaft_at(const char *address)
{
    const ts_node node = node_at(&o, address);
    for (uint32_t s = 0; s < train.shaft_count; s++) {
        if (train.shafts[s].node == node)
            return s;
    }
    fail_msg("no shaft stands at %s", address);
    return TS_NOWHERE;
}

static const ts_mesh *mesh_of(uint32_t shaft)
{
    assert_true(train.shafts[shaft].mesh < train.mesh_count);
    return &train.meshes[train.shafts[shaft].mesh];
}

/* ---- the tree ------------------------------------------------------------------------------- */

static void every_shaft_stands_after_its_driver(void **state)
{
    (void)state;
    open_sample(&o);
    build();
    assert_int_equal(train.shaft_count, 2 + 2 + 8 + 4);
    for (uint32_t s = 0; s < train.shaft_count; s++) {
        const ts_shaft *shaft = &train.shafts[s];
        if (shaft->kind == TS_SHAFT_SPOOL) {
            assert_int_equal(shaft->mesh, TS_NOWHERE);
            continue;
        }
        assert_int_equal(mesh_of(s)->driven_shaft, s);
        assert_true(mesh_of(s)->driver_shaft < s);
        assert_int_equal(train.gears[mesh_of(s)->driver].shaft, mesh_of(s)->driver_shaft);
        assert_int_equal(train.gears[mesh_of(s)->driven].shaft, s);
        assert_int_equal(train.shafts[mesh_of(s)->driver_shaft].spool, shaft->spool);
    }
    close_drive(&o);
}

static void meshes_stand_in_the_order_of_the_shafts_they_drive(void **state)
{
    (void)state;
    open_sample(&o);
    build();
    for (uint32_t m = 1; m < train.mesh_count; m++)
        assert_true(train.meshes[m].driven_shaft > train.meshes[m - 1].driven_shaft);
    close_drive(&o);
}

static void shaft_is_driven_by_the_last_step_unless_it_says_otherwise(void **state)
{
    (void)state;
    open_sample(&o);
    build();
    const uint32_t stepped = shaft_at("drive/hp/box/anticlockwise/1");
    const uint32_t next    = shaft_at("drive/hp/box/anticlockwise/2");
    const ts_gear *driver  = &train.gears[mesh_of(next)->driver];
    assert_int_equal(driver->shaft, stepped);
    assert_int_equal(driver->role, TS_GEAR_STEP);
    assert_int_equal(driver->teeth.value, 27);

    const uint32_t named = shaft_at("drive/lp/box/clockwise/3"); /* from: step, of two */
    assert_int_equal(train.gears[mesh_of(named)->driver].step, 1);
    assert_int_equal(train.gears[mesh_of(named)->driver].teeth.value, 23);

    const uint32_t branch = shaft_at("drive/hp/box/anticlockwise/2/branch/1");
    assert_int_equal(mesh_of(branch)->driver_shaft, next);
    const uint32_t second = shaft_at("drive/hp/box/anticlockwise/2/branch/2");
    assert_int_equal(mesh_of(second)->driver_shaft, branch);
    assert_int_equal(train.gears[mesh_of(second)->driver].role, TS_GEAR_MAIN);
    close_drive(&o);
}

static void bevels_join_spool_tower_and_input(void **state)
{
    (void)state;
    open_sample(&o);
    build();
    const uint32_t tower = shaft_at("drive/hp/tower shaft");
    const uint32_t input = shaft_at("drive/hp/box/input");
    assert_int_equal(mesh_of(tower)->kind, TS_MESH_BEVEL);
    assert_int_equal(mesh_of(tower)->driver_shaft, shaft_at("spools/hp"));
    assert_int_equal(mesh_of(input)->driver_shaft, tower);
    assert_int_equal(train.gears[mesh_of(input)->driver].teeth.value, 37);
    assert_int_equal(train.gears[mesh_of(input)->driven].teeth.value, 41);
    assert_ptr_equal(mesh_of(input)->bevels, &o.drive.drive[0].box.bevels);
    assert_close(mesh_of(tower)->loss.value, 0.01, 1e-15);
    close_drive(&o);
}

/* ---- gears ---------------------------------------------------------------------------------- */

static void module_of_the_box_serves_gears_without_their_own(void **state)
{
    (void)state;
    open_sample(&o);
    build();
    const uint32_t end        = shaft_at("drive/lp/box/clockwise/2");
    double         modules[3] = {0};
    for (uint32_t g = 0; g < train.gear_count; g++) {
        if (train.gears[g].shaft == end)
            modules[train.gears[g].step] = train.gears[g].m_n.value;
    }
    assert_close(modules[0], 0.0018, 1e-15);
    assert_close(modules[1], 0.0018, 1e-15);
    assert_close(modules[2], 0.0015, 1e-15);
    close_drive(&o);
}

static void hands_alternate_from_mesh_to_mesh(void **state)
{
    (void)state;
    open_sample(&o);
    build();
    for (uint32_t m = 0; m < train.mesh_count; m++) {
        const int driver = train.gears[train.meshes[m].driver].hand;
        const int driven = train.gears[train.meshes[m].driven].hand;
        assert_int_equal(driver, -driven);
    }
    /* hp: spur box, spiral bevels; the file says left at the spool */
    assert_int_equal(train.gears[mesh_of(shaft_at("drive/hp/tower shaft"))->driver].hand, -1);
    assert_int_equal(train.gears[mesh_of(shaft_at("drive/hp/box/clockwise/1"))->driver].hand, 0);
    /* lp: helical box whose input is right-handed, straight bevels */
    assert_int_equal(train.gears[mesh_of(shaft_at("drive/lp/tower shaft"))->driver].hand, 0);
    assert_int_equal(train.gears[mesh_of(shaft_at("drive/lp/box/clockwise/1"))->driver].hand, 1);
    close_drive(&o);
}

static void step_gear_has_the_hand_of_its_shaft(void **state)
{
    (void)state;
    open_sample(&o);
    build();
    const uint32_t end = shaft_at("drive/lp/box/clockwise/2");
    for (uint32_t g = 0; g < train.gear_count; g++) {
        if (train.gears[g].shaft == end)
            assert_int_equal(train.gears[g].hand, 1);
    }
    close_drive(&o);
}

/* ---- numbers, names, ways ------------------------------------------------------------------- */

static void assert_shaft(const char *address, uint32_t number, const char *name, ts_way way)
{
    const ts_shaft *shaft = &train.shafts[shaft_at(address)];
    assert_int_equal(shaft->number, number);
    assert_string_equal(shaft->name, name);
    assert_int_equal(shaft->way, way);
}

static void numbers_run_along_the_arc_and_then_the_branches(void **state)
{
    (void)state;
    open_sample(&o);
    build();
    assert_shaft("drive/hp/box/clockwise/3", 1, "hydraulic pump", TS_WAY_CLOCKWISE);
    assert_shaft("drive/hp/box/clockwise/2", 2, "idler 2", TS_WAY_CLOCKWISE);
    assert_shaft("drive/hp/box/clockwise/1", 3, "fuel pump + oil pump pack", TS_WAY_CLOCKWISE);
    assert_shaft("drive/hp/box/input", 4, "hp box input", TS_WAY_NONE);
    assert_shaft("drive/hp/box/anticlockwise/1", 5, "idler 5", TS_WAY_ANTICLOCKWISE);
    assert_shaft("drive/hp/box/anticlockwise/2", 6, "breather", TS_WAY_ANTICLOCKWISE);
    assert_shaft("drive/hp/box/anticlockwise/2/branch/1", 7, "idler 7", TS_WAY_ANTICLOCKWISE);
    assert_shaft("drive/lp/box/clockwise/3", 9, "hand crank", TS_WAY_CLOCKWISE);
    assert_shaft("drive/lp/box/clockwise/2", 10, "far end", TS_WAY_CLOCKWISE);
    assert_shaft("drive/lp/box/input", 12, "lp box input", TS_WAY_NONE);
    assert_shaft("spools/lp", 0, "lp spool", TS_WAY_NONE);
    assert_shaft("drive/lp/tower shaft", 0, "lp tower shaft", TS_WAY_NONE);
    close_drive(&o);
}

static void ways_change_places_when_the_file_looks_from_the_front(void **state)
{
    (void)state;
    open_variant(&o, "sight: from behind", "sight: from front");
    build();
    /* Seen from behind, the file's clockwise branch lies anticlockwise: its end is the last. */
    assert_shaft("drive/hp/box/clockwise/3", 6, "hydraulic pump", TS_WAY_ANTICLOCKWISE);
    assert_shaft("drive/hp/box/anticlockwise/2", 1, "breather", TS_WAY_CLOCKWISE);
    assert_shaft("drive/hp/box/input", 3, "hp box input", TS_WAY_NONE);
    close_drive(&o);
}

static void only_box_input_goes_without_its_spool(void **state)
{
    (void)state;
    open_sample(&o);
    o.drive.drive_count = 1; /* as if lp were not tapped */
    assert_int_equal(ts_train_build(&o.drive, o.arena, o.list, &train), TS_OK);
    assert_string_equal(train.shafts[shaft_at("drive/hp/box/input")].name, "box input");
    assert_int_equal(train.shafts[shaft_at("spools/lp")].drive, TS_NOWHERE);
    close_drive(&o);
}

/* ---- pads ----------------------------------------------------------------------------------- */

static void pads_stand_in_the_order_of_the_numbers(void **state)
{
    (void)state;
    static const char *const expected[] = {
        "hydraulic pump", "fuel pump",    "oil pump pack", "starter", "breather",
        "cover",          "hand turning", "hand crank",    "open",    "control alternator",
    };
    open_sample(&o);
    build();
    assert_int_equal(train.pad_count, sizeof expected / sizeof expected[0]);
    for (uint32_t p = 0; p < train.pad_count; p++) {
        const ts_pad *pad = &train.pads[p];
        assert_string_equal(pad->name, expected[p]);
        assert_int_equal(train.shafts[pad->shaft].pad[pad->face], p);
    }
    close_drive(&o);
}

/* ---- drives made in memory ------------------------------------------------------------------ */

static void assert_refused(const char *code)
{
    assert_int_equal(ts_train_build(&o.drive, o.arena, o.list, &train), TS_NOT_UNDERSTOOD);
    assert_non_null(message_of(&o, code));
    close_drive(&o);
}

static void impossible_drives_are_refused(void **state)
{
    (void)state;
    open_sample(&o);
    o.drive.drive[0].box.clockwise[1].from = (ts_pick){3, 0, TS_GIVEN};
    assert_refused("missing-step");
    open_sample(&o);
    o.drive.drive[0].spool = -1;
    assert_refused("unknown-spool");
    open_sample(&o);
    o.drive.drive[0].box.clockwise[1].front = o.drive.drive[0].box.clockwise[0].front;
    assert_refused("pad-used-twice");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_shaft_stands_after_its_driver),
        cmocka_unit_test(meshes_stand_in_the_order_of_the_shafts_they_drive),
        cmocka_unit_test(shaft_is_driven_by_the_last_step_unless_it_says_otherwise),
        cmocka_unit_test(bevels_join_spool_tower_and_input),
        cmocka_unit_test(module_of_the_box_serves_gears_without_their_own),
        cmocka_unit_test(hands_alternate_from_mesh_to_mesh),
        cmocka_unit_test(step_gear_has_the_hand_of_its_shaft),
        cmocka_unit_test(numbers_run_along_the_arc_and_then_the_branches),
        cmocka_unit_test(ways_change_places_when_the_file_looks_from_the_front),
        cmocka_unit_test(only_box_input_goes_without_its_spool),
        cmocka_unit_test(pads_stand_in_the_order_of_the_numbers),
        cmocka_unit_test(impossible_drives_are_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
