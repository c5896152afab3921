/* What does motion say of a file, and where does it point when the file contradicts itself? */
#include "support/close.h"
#include "support/solved_file.h"

#include <string.h>

#define HEAD(sight, turns, clock)                                                                  \
    "towershaft: 1\n"                                                                              \
    "title: as small as it gets\n"                                                                 \
    "sight: " sight "\n"                                                                           \
    "conditions: {cruise: {hp: 20000 rpm, hours: 1000 h}}\n"                                       \
    "spools: {hp: {turns: " turns "}}\n"                                                           \
    "accessories: {pump: {for: engine, turns: cw, power: {cruise: 10 kW}}}\n"                      \
    "drive:\n"                                                                                     \
    "  hp:\n"                                                                                      \
    "    take-off:\n"                                                                              \
    "      bevels: {teeth: [43, 46], module: 2.4 mm, spiral: 35 deg, face: 16 mm}\n"               \
    "    tower shaft: {clock: \"" clock "\", length: 330 mm, outside: 26 mm}\n"                    \
    "    box:\n"                                                                                   \
    "      arc: {radius: 330 mm, clock: \"" clock "\"}\n"                                          \
    "      bevels: {teeth: [37, 41], module: 2.5 mm, spiral: 35 deg, face: 18 mm}\n"               \
    "      gears: {module: 2 mm}\n"

static solved_file file;

static void contradiction_points_at_the_statement(void **state)
{
    (void)state;
    static const char text[] =
        HEAD("from behind", "ccw", "6:00") "      input: {teeth: 52, face: 20 mm}\n"
                                           "      clockwise:\n"
                                           "        - {teeth: 61, face: 18 mm, rear: pump}\n"
                                           "        - {teeth: 45, face: 18 mm, turns: ccw}\n";

    solved_file_open(&file, TS_TEXT(text), false);
    assert_int_equal(file.status, TS_NOT_UNDERSTOOD);
    assert_int_equal(ts_diagnostics_count(file.list), 1);
    const ts_diagnostic *said = ts_diagnostics_at(file.list, 0);

    assert_string_equal(said->code, "contradictory-senses");
    assert_int_equal(said->line, 19);
    assert_int_equal(said->column, 43);
    assert_non_null(strstr(said->says, "is said to turn ccw, but the train turns it cw: hp spool "
                                       "ccw, hp tower shaft cw, box input cw, pump ccw"));
    solved_file_close(&file);
}

static void overflow_points_at_the_shaft_where_it_begins(void **state)
{
    (void)state;
    /* Products of primes: nothing cancels, and 2^63 is passed at the sixth shaft. */
    static const char text[] =
        HEAD("from behind", "ccw",
             "6:00") "      input: {teeth: 1009, face: 20 mm}\n"
                     "      clockwise:\n"
                     "        - {teeth: 1013, face: 18 mm, step: {teeth: 1019, face: 9 mm}}\n"
                     "        - {teeth: 1021, face: 18 mm, step: {teeth: 1031, face: 9 mm}}\n"
                     "        - {teeth: 1033, face: 18 mm, step: {teeth: 1039, face: 9 mm}}\n"
                     "        - {teeth: 1049, face: 18 mm, step: {teeth: 1051, face: 9 mm}}\n"
                     "        - {teeth: 1061, face: 18 mm, step: {teeth: 1063, face: 9 mm}}\n"
                     "        - {teeth: 1069, face: 18 mm, step: {teeth: 1087, face: 9 mm}}\n"
                     "        - {teeth: 1091, face: 18 mm, step: {teeth: 1093, face: 9 mm}}\n";

    solved_file_open(&file, TS_TEXT(text), false);
    assert_int_equal(file.status, TS_NOT_UNDERSTOOD);
    assert_int_equal(ts_diagnostics_count(file.list), 1);
    assert_string_equal(ts_diagnostics_at(file.list, 0)->code, "ratio-overflow");
    /* derived: 46*41 times the wheels of shafts 1 to 5 is 0.24 * 2^63, to 6 it is 260 * 2^63 */
    assert_int_equal(ts_diagnostics_at(file.list, 0)->line, 23);
    solved_file_close(&file);
}

/* One machine, described by somebody behind it and by somebody in front of it. */
static void both_sights_describe_one_machine(void **state)
{
    (void)state;
    static const char behind[] = HEAD(
        "from behind", "ccw", "4:00") "      input: {teeth: 52, face: 20 mm}\n"
                                      "      clockwise:\n"
                                      "        - {teeth: 61, face: 18 mm, rear: pump, turns: ccw}\n"
                                      "        - {teeth: 40, face: 18 mm, toward: \"7:30\"}\n";
    static const char front[] = HEAD(
        "from front", "cw", "8:00") "      input: {teeth: 52, face: 20 mm}\n"
                                    "      anticlockwise:\n"
                                    "        - {teeth: 61, face: 18 mm, rear: pump, turns: cw}\n"
                                    "        - {teeth: 40, face: 18 mm, toward: \"4:30\"}\n";
    solved_file other;

    solved_file_open(&file, TS_TEXT(behind), false);
    solved_file_open(&other, TS_TEXT(front), false);
    assert_int_equal(file.status, TS_OK);
    assert_int_equal(other.status, TS_OK);
    assert_int_equal(file.train.shaft_count, other.train.shaft_count);
    for (uint32_t s = 0; s < file.train.shaft_count; s++) {
        const ts_shaft_motion *a = &file.motion.shafts[s], *b = &other.motion.shafts[s];

        assert_int_equal(a->sense, b->sense);
        assert_true(a->placed && b->placed);
        assert_close_abs(a->x, b->x, 1e-14);
        assert_close_abs(a->y, b->y, 1e-14);
    }
    for (uint32_t m = 0; m < file.train.mesh_count; m++)
        for (int i = 0; i < 3; i++)
            assert_close_abs(file.power.mesh[m].force[i], other.power.mesh[m].force[i],
                             1e-12 * file.power.mesh[m].F_t);
    assert_int_equal(ts_pad_sense(&file.motion, &file.train.pads[0]),
                     ts_pad_sense(&other.motion, &other.train.pads[0]));
    solved_file_close(&other);
    solved_file_close(&file);
}

/* 4:00 seen from behind lies to the right and below. */
static void clock_angles_are_seen_from_behind(void **state)
{
    (void)state;
    static const char text[] =
        HEAD("from behind", "ccw", "4:00") "      input: {teeth: 52, face: 20 mm, rear: pump}\n";

    solved_file_open(&file, TS_TEXT(text), false);
    assert_int_equal(file.status, TS_OK);
    const uint32_t input = solved_file_shaft(&file, "drive/hp/box/input");

    assert_close(file.motion.shafts[input].x, 0.33 * sqrt(0.75), 1e-14);
    assert_close(file.motion.shafts[input].y, -0.165, 1e-14);
    solved_file_close(&file);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(contradiction_points_at_the_statement),
        cmocka_unit_test(overflow_points_at_the_shaft_where_it_begins),
        cmocka_unit_test(both_sights_describe_one_machine),
        cmocka_unit_test(clock_angles_are_seen_from_behind),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
