/* Are the bounds of a floating take-off bounds, and do the three schemes stop where they must? */
#include "base/counter_random.h"
#include "support/close.h"
#include "support/read_file.h"

#include "study/study.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static ts_study *study_with(const char *const changes[][2], size_t count)
{
    ts_text file = read_file("tests/check/base.yaml");
    char   *text = malloc(file.length + 1);
    assert_non_null(text);
    memcpy(text, file.at, file.length);
    text[file.length] = 0;
    free_file(file);
    for (size_t i = 0; i < count; i++) {
        char *at = strstr(text, changes[i][0]);
        assert_non_null(at);
        const size_t before = (size_t)(at - text), old = strlen(changes[i][0]);
        const size_t rest = strlen(text) - before - old, more = strlen(changes[i][1]);
        char        *next = malloc(before + more + rest + 1);
        assert_non_null(next);
        memcpy(next, text, before);
        memcpy(next + before, changes[i][1], more);
        memcpy(next + before + more, at + old, rest + 1);
        free(text);
        text = next;
    }
    const ts_study_options options = {.today = 20000};
    ts_study              *study   = NULL;
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_equal(ts_study_read(study, "base.yaml", text, strlen(text), &options), TS_OK);
    free(text);
    return study;
}

static const char *const moved[][2] = {
    {"axial travel: -0.2..0.7 mm", "axial travel: -0.1..0.5 mm, radial travel: -0.03..0.05 mm"},
    {"float: splined stub\n      slide: -2..2 mm", "float: fixed bevel"},
    {"gears: {module: 2 mm, pressure angle: 25 deg}",
     "gears: {module: 2 mm, pressure angle: 25 deg, temperatures: {gears: -40..120 degC, "
     "casing above gears: -25..5 K, expansion of gears: 11.5 ppm/K, expansion of casing: 23 "
     "ppm/K}}"},
};

typedef struct drawn {
    double s, r, turn, j, theta, dtheta;
} drawn;

static double between(uint64_t place, uint32_t number, double low, double high)
{
    double pair[2];
    ts_random_pair(7, place, number, pair);
    return low + (high - low) * pair[0];
}

static drawn draw(uint64_t i)
{
    const double pi = 3.14159265358979323846;
    return (drawn){.s      = between(i, 0, -0.1e-3, 0.5e-3),
                   .r      = between(i, 1, 0.0, 0.05e-3),
                   .turn   = between(i, 2, 0.0, 2.0 * pi),
                   .j      = between(i, 3, 0.17e-3, 0.23e-3),
                   .theta  = between(i, 4, 233.15, 393.15),
                   .dtheta = between(i, 5, -25.0, 5.0)};
}

/* Written apart from the program: the play of one position, from the moves of both apexes. */
static double play_of(const ts_study *study, const drawn *at, double *along, double *ratio)
{
    const ts_drive_float *item = &study->floats.items[0];
    const ts_mesh_motion *turn = &study->motion.meshes[item->mesh];
    const double          d_1 = turn->bevel.delta_1, d_2 = turn->bevel.delta_2;
    const ts_line        *line = NULL;
    for (uint32_t l = 0; line == NULL && l < study->lines.count; l++)
        if (study->lines.lines[l].kind == TS_LINE_INNER)
            line = &study->lines.lines[l];
    double L_2 = turn->bevel.R_m * cos(d_2);
    for (int k = 0; k < line->bearing_count; k++)
        if (line->bearings[k].locates)
            L_2 += line->bearings[k].x - line->gears[0].x;
    const double e = 23e-6 * (at->theta + at->dtheta - 293.15) - 11.5e-6 * (at->theta - 293.15);
    /* rear side: forward (s < 0) goes to the apex */
    const double c = -at->s * sin(d_1) + at->r * cos(at->turn) * cos(d_1) - e * L_2 * sin(d_2);
    *along         = at->s * cos(d_1) + at->r * cos(at->turn) * sin(d_1);
    *ratio         = ts_bevel_moved_ratio(&item->seat, c);
    return at->j - 2.0 * c * sin(turn->bevel.in.alpha_n);
}

static void drawn_positions_stay_inside_the_bounds(void **state)
{
    (void)state;
    ts_study              *study  = study_with(moved, 3);
    const ts_float_option *option = &study->floats.items[0].options[TS_FLOAT_FIXED_BEVEL];
    double                 least = INFINITY, most = -INFINITY, eps = INFINITY;
    assert_null(study->floats.items[0].missing);
    assert_true(option->chosen);
    for (uint64_t i = 0; i < 100000; i++) {
        const drawn  at = draw(i);
        double       along, ratio;
        const double j = play_of(study, &at, &along, &ratio);
        assert_true(j >= option->j[0] - 1e-15 && j <= option->j[1] + 1e-15);
        assert_true(along >= option->shift[0] - 1e-15 && along <= option->shift[1] + 1e-15);
        assert_true(ratio >= option->eps - 1e-12);
        least = fmin(least, j);
        most  = fmax(most, j);
        eps   = fmin(eps, ratio);
    }
    /* ... and they are not wide: samples come near both ends */
    assert_true(least - option->j[0] < 0.1 * (option->j[1] - option->j[0]));
    assert_true(option->j[1] - most < 0.1 * (option->j[1] - option->j[0]));
    assert_true(eps - option->eps < 0.05);
    ts_study_close(study);
}

static void the_ends_of_the_bounds_are_met(void **state)
{
    (void)state;
    ts_study              *study  = study_with(moved, 3);
    const ts_float_option *option = &study->floats.items[0].options[TS_FLOAT_FIXED_BEVEL];
    double                 least = INFINITY, most = -INFINITY, along, ratio;
    for (int i = 0; i < 64; i++) {
        const drawn  at = {.s      = (i & 1) ? -0.1e-3 : 0.5e-3,
                           .r      = 0.05e-3,
                           .turn   = (i & 2) ? 0.0 : 3.14159265358979323846,
                           .j      = (i & 4) ? 0.17e-3 : 0.23e-3,
                           .theta  = (i & 8) ? 233.15 : 393.15,
                           .dtheta = (i & 16) ? -25.0 : 5.0};
        const double j  = play_of(study, &at, &along, &ratio);
        least           = fmin(least, j);
        most            = fmax(most, j);
    }
    assert_close(option->j[0], least, 1e-12);
    assert_close(option->j[1], most, 1e-12);
    ts_study_close(study);
}

/* At the travel at which it binds nothing is left of the play; at the other stop one pair. */
static void a_fixed_bevel_stops_where_its_play_and_its_ratio_end(void **state)
{
    (void)state;
    ts_study              *study   = study_with(moved, 3);
    const ts_drive_float  *item    = &study->floats.items[0];
    const ts_float_option *option  = &item->options[TS_FLOAT_FIXED_BEVEL];
    const double           delta_1 = study->motion.meshes[item->mesh].bevel.delta_1;
    const double           alpha_n = study->motion.meshes[item->mesh].bevel.in.alpha_n;

    assert_int_equal(option->cause[0], TS_FLOAT_BINDS);
    const double further = item->s[0] - option->stop[0];
    assert_close_abs(option->j[0] - 2.0 * further * sin(delta_1) * sin(alpha_n), 0.0, 1e-15);
    assert_true(option->apart[1] > option->stop[1]);
    assert_true(isinf(option->apart[0]));
    ts_study_close(study);
}

static void a_longer_travel_only_uses_up_what_slides(void **state)
{
    (void)state;
    static const char *const longer[][2] = {
        {"axial travel: -0.2..0.7 mm", "axial travel: -0.2..1.7 mm"}};
    ts_study              *shorts = study_with(longer, 0), *longs = study_with(longer, 1);
    const ts_float_option *a = &shorts->floats.items[0].options[TS_FLOAT_SPLINED_STUB];
    const ts_float_option *b = &longs->floats.items[0].options[TS_FLOAT_SPLINED_STUB];

    assert_true(a->chosen && b->chosen);
    assert_close(a->j[0], b->j[0], 1e-15);
    assert_close(a->left, 1.3e-3, 1e-12);
    assert_close(b->left, 0.3e-3, 1e-12);
    assert_close(a->engaged - b->engaged, 1e-3, 1e-12);
    assert_close(a->stop[1], 2e-3, 1e-12);
    ts_study_close(shorts);
    ts_study_close(longs);
}

/* Only the fixed bevel has no part more, and only the spur adds a mesh. */
static void the_schemes_cost_what_they_add(void **state)
{
    (void)state;
    ts_study              *study = study_with(moved, 0);
    const ts_float_option *o     = study->floats.items[0].options;

    assert_int_equal(o[TS_FLOAT_FIXED_BEVEL].parts, 0);
    assert_same_double(o[TS_FLOAT_FIXED_BEVEL].m, 0.0);
    assert_true(o[TS_FLOAT_SPLINED_STUB].m > 0.0);
    assert_true(o[TS_FLOAT_WIDE_SPUR].m > o[TS_FLOAT_SPLINED_STUB].m);
    assert_int_equal(o[TS_FLOAT_WIDE_SPUR].meshes, 1);
    assert_int_equal(o[TS_FLOAT_SPLINED_STUB].meshes, 0);
    assert_true(o[TS_FLOAT_WIDE_SPUR].F_r > o[TS_FLOAT_FIXED_BEVEL].F_r);
    ts_study_close(study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(drawn_positions_stay_inside_the_bounds),
        cmocka_unit_test(the_ends_of_the_bounds_are_met),
        cmocka_unit_test(a_fixed_bevel_stops_where_its_play_and_its_ratio_end),
        cmocka_unit_test(a_longer_travel_only_uses_up_what_slides),
        cmocka_unit_test(the_schemes_cost_what_they_add),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
