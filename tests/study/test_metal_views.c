/* Do the public headers tell of shafts, bearings and necks what check says?  No inner header is
 * used here. */
#include "support/close.h"
#include "support/read_file.h"

#include "towershaft/towershaft.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static ts_study *study_of(const char *path)
{
    const ts_text          file    = read_file(path);
    const ts_study_options options = {.today = 20000};
    ts_study              *study;

    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_equal(ts_study_read(study, path, file.at, file.length, &options), TS_OK);
    free_file(file);
    return study;
}

static void every_shaft_and_bearing_is_told(void **state)
{
    (void)state;
    ts_study *study    = study_of("examples/large.yaml");
    size_t    bearings = 0;
    double    shortest = (double)INFINITY;

    assert_true(ts_study_line_count(study) > 10);
    for (size_t i = 0; i < ts_study_line_count(study); i++) {
        const ts_line_view line = ts_study_line(study, i);
        assert_non_null(line.name);
        assert_null(line.missing);
        assert_true(line.length > 0.0);
        assert_true(isnan(line.S_F) || line.S_F > 1.0);
        for (size_t k = 0; k < line.bearings; k++, bearings++) {
            const ts_bearing_view one = ts_study_bearing(study, i, k);
            assert_null(one.missing);
            assert_true(one.outside > one.bore && one.bore > 0.0);
            assert_true(one.S_0 > 1.0 && one.n_dm > 0.0 && one.chosen);
            shortest = fmin(shortest, one.life);
        }
        assert_null(ts_study_bearing(study, i, line.bearings).place);
    }
    assert_true(bearings > 20);
    /* All together last less than the first of them to go. */
    assert_true(ts_study_bearing_set_life(study) < shortest);
    assert_null(ts_study_line(study, ts_study_line_count(study)).name);
    ts_study_close(study);
}

/* m, of the one designed neck, as its file has it. */
static double told_diameter(void)
{
    static const char word[] = "neck: {diameter: ";
    const ts_text     text   = read_file("examples/trainer.yaml");
    const char       *at     = strstr(text.at, word);
    assert_non_null(at);
    const double mm = strtod(at + sizeof word - 1, NULL);
    free_file(text);
    return mm * 1e-3;
}

static void necks_are_told_stated_and_designed(void **state)
{
    (void)state;
    ts_study *study    = study_of("examples/trainer.yaml");
    size_t    designed = 0, stated = 0, i = 0;

    for (; ts_study_neck(study, i).of != NULL; i++) {
        const ts_neck_view neck = ts_study_neck(study, i);
        assert_true(neck.must_pass < neck.breaks_least && neck.breaks_least < neck.breaks_most &&
                    neck.breaks_most < neck.way_bears);
        if (!neck.designed) {
            assert_true(isnan(neck.diameter) && isnan(neck.early) && isnan(neck.balance));
            stated++;
            continue;
        }
        designed++;
        assert_string_equal(neck.of, "hydraulic pump");
        assert_close(neck.diameter, told_diameter(), 1e-12);
        assert_true(neck.early > 0.0 && neck.early < 1e-3 && neck.late < neck.early);
        assert_true(neck.balance > neck.diameter);
    }
    assert_int_equal(i, 2);
    assert_int_equal(designed, 1);
    assert_int_equal(stated, 1);
    ts_study_close(study);
}

static void a_study_without_a_drive_tells_nothing(void **state)
{
    (void)state;
    ts_study *study;

    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_equal(ts_study_line_count(study), 0);
    assert_null(ts_study_line(study, 0).name);
    assert_null(ts_study_bearing(study, 0, 0).place);
    assert_null(ts_study_neck(study, 0).of);
    assert_true(isnan(ts_study_bearing_set_life(study)));
    ts_study_close(study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_shaft_and_bearing_is_told),
        cmocka_unit_test(necks_are_told_stated_and_designed),
        cmocka_unit_test(a_study_without_a_drive_tells_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
