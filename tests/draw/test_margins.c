/* The chart of reserves and the choice of a mesh: the worst thing is shown, and doubt is no pass.
 */
#include "draw/drawn.h"
#include "draw/margin_chart.h"
#include "draw/mesh_choice.h"
#include "support/close.h"

#include <string.h>

static ts_margin_rows gathered(drawn *it)
{
    ts_margin_rows rows;
    it->scene = ts_scene_of(&it->sample->subject, &it->options, it->arena);
    assert_int_equal(ts_margin_gather(&it->scene, &rows), TS_OK);
    return rows;
}

static const ts_margin_row *row_of(const ts_margin_rows *rows, const char *rule, ts_node node)
{
    for (size_t i = 0; i < rows->count; i++)
        if (strcmp(rows->items[i].rule, rule) == 0 && rows->items[i].node == node)
            return &rows->items[i];
    return NULL;
}

static void every_mesh_has_its_row_and_the_governing_condition(void **state)
{
    (void)state;
    drawn it;
    open_drawn(&it, TS_FIGURE_MARGINS);
    const ts_margin_rows rows = gathered(&it);
    const ts_margin_row *a    = row_of(&rows, "C9-tooth-contact", SAMPLE_MESH_A);
    const ts_margin_row *b    = row_of(&rows, "C9-tooth-contact", SAMPLE_MESH_B);
    assert_non_null(a);
    assert_non_null(b);
    assert_int_equal(a->least, SAMPLE_RED_LINE);
    assert_close(a->cells[SAMPLE_CRANK].margin, 2.4, 1e-15);
    assert_close(b->cells[SAMPLE_CRANK].margin, 2.5, 1e-15);
    ts_arena_close(it.arena);
}

/* With more rows than a sheet takes, bands share one row, but meshes do not. */
static void the_worst_thing_of_many_is_shown(void **state)
{
    (void)state;
    drawn it;
    open_drawn(&it, TS_FIGURE_MARGINS);
    ts_judgement list[40 + SAMPLE_JUDGEMENTS];
    for (int i = 0; i < 40; i++)
        list[i] = (ts_judgement){.rule      = "B2-speed-band",
                                 .node      = 300 + (ts_node)i,
                                 .condition = SAMPLE_IDLE,
                                 .margin    = 0.5 - 0.01 * ((7 * i) % 40),
                                 .passed    = true};
    memcpy(&list[40], it.sample->judgements, sizeof it.sample->judgements);
    it.sample->subject.judgements      = list;
    it.sample->subject.judgement_count = sizeof list / sizeof *list;
    const ts_margin_rows rows          = gathered(&it);
    const ts_margin_row *band          = row_of(&rows, "B2-speed-band", 0);
    assert_non_null(band);
    assert_int_equal(band->objects, 42);
    assert_close(band->cells[SAMPLE_IDLE].margin, 0.11, 1e-12); /* 0.5 - 0.01 * 39 */
    assert_int_equal(band->cells[SAMPLE_IDLE].node, 300 + 17);  /* 7 * 17 = 119 = 2 * 40 + 39 */
    assert_int_equal(band->least, SAMPLE_TAKE_OFF);
    assert_int_equal(band->cells[SAMPLE_TAKE_OFF].state, TS_MARGIN_SHORT);
    assert_non_null(row_of(&rows, "C9-tooth-contact", SAMPLE_MESH_A));
    assert_non_null(row_of(&rows, "C9-tooth-contact", SAMPLE_MESH_B));
    ts_arena_close(it.arena);
}

static void what_cannot_be_computed_is_no_pass(void **state)
{
    (void)state;
    drawn it;
    open_drawn(&it, TS_FIGURE_MARGINS);
    it.sample->findings[2].rule      = "H1-power-known";
    it.sample->findings[2].node      = 200 + SAMPLE_BREATHER;
    it.sample->findings[2].condition = SAMPLE_CRANK;
    it.sample->findings[2].state     = TS_NOT_COMPUTABLE;
    ts_margin_rows       rows        = gathered(&it);
    const ts_margin_row *row         = row_of(&rows, "H1-power-known", 0);
    assert_non_null(row);
    assert_int_equal(row->cells[SAMPLE_CRANK].state, TS_MARGIN_UNKNOWN);
    assert_int_equal(row->cells[SAMPLE_IDLE].state, TS_MARGIN_HOLDS);
    assert_int_equal(row->least, -1);
    /* The same judgement without such a finding is a failure. */
    it.sample->findings[2].state = TS_OPEN;
    rows                         = gathered(&it);
    row                          = row_of(&rows, "H1-power-known", 0);
    assert_int_equal(row->cells[SAMPLE_CRANK].state, TS_MARGIN_FAILS);
    ts_arena_close(it.arena);
}

static void a_condition_that_is_not_asked_about_stays_apart(void **state)
{
    (void)state;
    drawn it;
    open_drawn(&it, TS_FIGURE_MARGINS);
    it.sample->judgements[0].condition = SAMPLE_LIGHT_OFF; /* nothing is left of crank */
    it.sample->judgements[1].condition = SAMPLE_LIGHT_OFF;
    const ts_margin_rows rows          = gathered(&it);
    const ts_margin_row *row           = row_of(&rows, "B2-speed-band", 200 + SAMPLE_GENERATOR);
    assert_non_null(row);
    assert_int_equal(row->cells[SAMPLE_CRANK].state, TS_MARGIN_ABSENT);
    assert_int_equal(row->cells[SAMPLE_LIGHT_OFF].state, TS_MARGIN_HOLDS);
    assert_int_equal(rows.steady, 1); /* the body gap */
    ts_arena_close(it.arena);
}

static void the_scale_is_the_same_in_every_cell(void **state)
{
    (void)state;
    const ts_area one = {0.0, 0.0, 140.0, 40.0}, other = {500.0, 90.0, 140.0, 40.0};
    for (double margin = -0.3; margin < 0.8; margin += 0.05)
        assert_close_abs(ts_margin_x(other, margin) - ts_margin_x(one, margin), 500.0, 1e-9);
    assert_close_abs(ts_margin_x(one, -5.0), ts_margin_x(one, TS_MARGIN_LEAST), 1e-12);
    assert_close_abs(ts_margin_x(one, 5.0), ts_margin_x(one, TS_MARGIN_MOST), 1e-12);
    /* 0 stands at a quarter of -20 .. 60 %. */
    assert_close((ts_margin_x(one, 0.0) - ts_margin_x(one, TS_MARGIN_LEAST)) /
                     (ts_margin_x(one, TS_MARGIN_MOST) - ts_margin_x(one, TS_MARGIN_LEAST)),
                 0.25, 1e-12);
}

/* Conditions that do not fit side by side stand in bands under each other; none is lost. */
static void many_conditions_make_bands_and_a_cell_each(void **state)
{
    (void)state;
    enum { MANY = 30 };
    drawn it;
    open_drawn(&it, TS_FIGURE_MARGINS);
    ts_condition many[MANY];
    ts_judgement list[MANY];
    for (int c = 0; c < MANY; c++) {
        many[c] = it.sample->drive.conditions[c % SAMPLE_CONDITIONS];
        list[c] = (ts_judgement){.rule      = "C9-tooth-contact",
                                 .node      = SAMPLE_MESH_A,
                                 .condition = c,
                                 .symbol    = "S_H",
                                 .margin    = -0.5 + 0.05 * c,
                                 .passed    = c >= 10};
    }
    it.sample->drive.conditions        = many;
    it.sample->drive.condition_count   = MANY;
    it.sample->subject.judgements      = list;
    it.sample->subject.judgement_count = MANY;
    draw_it(&it);
    assert_int_equal(count_places(&it, TS_PLACE_CELL), MANY);
    for (uint32_t c = 0; c < MANY; c++)
        assert_non_null(find_place(&it, TS_PLACE_CELL, c));
    close_drawn(&it);
}

/* ---- which mesh -------------------------------------------------------------------------- */

/* The sample's meshes 2 .. are cylindrical; whichever carries most a width of face is chosen. */
static void the_mesh_with_the_highest_load_a_width_is_chosen(void **state)
{
    (void)state;
    drawn it;
    open_drawn(&it, TS_FIGURE_TEETH);
    it.sample->subject.judgement_count = 0; /* no teeth were judged */
    it.scene                           = ts_scene_of(&it.sample->subject, &it.options, it.arena);
    const uint32_t mesh                = ts_choose_mesh(&it.scene);
    assert_int_equal(it.scene.condition, SAMPLE_TAKE_OFF); /* the options ask for it */
    const double most = ts_mesh_line_load(&it.scene, mesh, SAMPLE_TAKE_OFF);
    assert_true(most > 0.0);
    for (uint32_t m = 0; m < it.sample->train.mesh_count; m++)
        if (it.sample->train.meshes[m].kind == TS_MESH_CYLINDRICAL)
            assert_true(ts_mesh_line_load(&it.scene, m, SAMPLE_TAKE_OFF) <= most);
    /* Without a condition, the one in which it carries most. */
    it.options.condition = -1;
    const uint32_t crank = it.sample->train.mesh_count * SAMPLE_CRANK;
    it.sample->power.mesh[crank + SAMPLE_MESH_B - 500].F_t = 1e6;
    it.scene = ts_scene_of(&it.sample->subject, &it.options, it.arena);
    assert_int_equal(ts_choose_mesh(&it.scene), SAMPLE_MESH_B - 500);
    assert_int_equal(it.scene.condition, SAMPLE_CRANK);
    ts_arena_close(it.arena);
}

/* Judged teeth go before loads: whoever opens the picture wants the mesh that governs. */
static void the_mesh_with_the_least_reserve_is_chosen(void **state)
{
    (void)state;
    drawn it;
    open_drawn(&it, TS_FIGURE_TEETH);
    it.options.condition = -1;
    it.scene             = ts_scene_of(&it.sample->subject, &it.options, it.arena);
    assert_int_equal(ts_choose_mesh(&it.scene), SAMPLE_MESH_A - 500);
    assert_int_equal(it.scene.condition, SAMPLE_RED_LINE);
    it.options.condition = SAMPLE_CRANK;
    for (size_t i = 0; i < SAMPLE_JUDGEMENTS; i++)
        if (it.sample->judgements[i].node == SAMPLE_MESH_B &&
            it.sample->judgements[i].condition == SAMPLE_CRANK)
            it.sample->judgements[i].margin = -0.3;
    it.scene = ts_scene_of(&it.sample->subject, &it.options, it.arena);
    assert_int_equal(ts_choose_mesh(&it.scene), SAMPLE_MESH_B - 500);
    assert_int_equal(it.scene.condition, SAMPLE_CRANK);
    ts_arena_close(it.arena);
}

static void the_mesh_that_is_asked_for_is_taken(void **state)
{
    (void)state;
    drawn it;
    open_drawn(&it, TS_FIGURE_ROOT);
    it.options.mesh = SAMPLE_MESH_A;
    it.scene        = ts_scene_of(&it.sample->subject, &it.options, it.arena);
    assert_int_equal(it.sample->train.meshes[SAMPLE_MESH_A - 500].kind, TS_MESH_CYLINDRICAL);
    assert_int_equal(ts_choose_mesh(&it.scene), SAMPLE_MESH_A - 500);
    it.options.mesh = 500; /* a bevel mesh */
    assert_int_equal(it.sample->train.meshes[0].kind, TS_MESH_BEVEL);
    assert_int_equal(ts_choose_mesh(&it.scene), TS_NOWHERE);
    ts_arena_close(it.arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_mesh_has_its_row_and_the_governing_condition),
        cmocka_unit_test(the_worst_thing_of_many_is_shown),
        cmocka_unit_test(what_cannot_be_computed_is_no_pass),
        cmocka_unit_test(a_condition_that_is_not_asked_about_stays_apart),
        cmocka_unit_test(the_scale_is_the_same_in_every_cell),
        cmocka_unit_test(many_conditions_make_bands_and_a_cell_each),
        cmocka_unit_test(the_mesh_with_the_highest_load_a_width_is_chosen),
        cmocka_unit_test(the_mesh_with_the_least_reserve_is_chosen),
        cmocka_unit_test(the_mesh_that_is_asked_for_is_taken),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
