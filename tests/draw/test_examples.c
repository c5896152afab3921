/* The pictures of the four examples and of all planted traps: words apart and on the sheet, leaders
 * that do not cross, every shaft and pad drawn, findings marked. */
/* ctest: timeout=1200 cost=40 */
#include "draw/drawn.h"

#include "check/outcome.h"
#include "draw/target.h"
#include "support/case_count.h"
#include "support/read_file.h"
#include "support/solved_file.h"

#include <dirent.h>
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

typedef struct judged {
    solved_file        file;
    ts_mass            mass;
    ts_drive_twist     twist;
    ts_drive_start     start;
    ts_teeth           teeth;
    ts_necks           necks;
    ts_select          select;
    ts_lines           lines;
    ts_floats          floats;
    ts_effects         effects;
    ts_check_outcome   outcome;
    ts_drawing_subject subject;
    ts_text            text;
} judged;

static void look_at_necks(judged *it)
{
    const ts_drive *drive = &it->file.drive;

    assert_int_equal(ts_teeth_prepare(drive, &it->file.power, it->file.arena, &it->teeth), TS_OK);
    assert_int_equal(ts_necks_prepare(drive, &it->file.train, it->file.arena, &it->necks), TS_OK);
    assert_int_equal(
        ts_select_prepare(drive, &it->teeth, &it->necks, 0, it->file.arena, &it->select), TS_OK);
    ts_teeth_solve(drive, &it->teeth, NULL);
    ts_necks_solve(drive, &it->necks, NULL);
    ts_select_gather(&it->select, NULL);
    ts_select_solve(&it->select, NULL);
}

static void look_at_float(judged *it)
{
    const ts_drive *drive = &it->file.drive;

    assert_int_equal(
        ts_lines_prepare(drive, &it->file.power, NULL, NULL, it->file.arena, &it->lines), TS_OK);
    assert_int_equal(
        ts_floats_prepare(drive, &it->file.power, &it->lines, NULL, it->file.arena, &it->floats),
        TS_OK);
    ts_lines_solve(drive, &it->lines, NULL);
    ts_floats_solve(drive, &it->floats, NULL);
}

static void open_judged(judged *it, const char *path)
{
    it->text = read_file(path);
    solved_file_open(&it->file, it->text, false);
    assert_int_equal(it->file.status, TS_OK);
    assert_int_equal(ts_mass_prepare(&it->file.drive, &it->file.power, it->file.arena, &it->mass),
                     TS_OK);
    ts_mass_solve(&it->file.drive, &it->mass, NULL);
    look_at_necks(it);
    look_at_float(it);
    double *mesh_k = TS_TAKE(it->file.arena, double, it->file.train.mesh_count);
    for (uint32_t m = 0; m < it->file.train.mesh_count; m++)
        mesh_k[m] = (double)NAN;
    const ts_twist_question asked = {&it->file.drive, &it->mass, mesh_k, 0, false};
    assert_int_equal(ts_drive_twist_solve(&asked, it->file.arena, &it->twist), TS_OK);
    const uint32_t shafts = it->file.train.shaft_count;
    double        *oil    = TS_TAKE(it->file.arena, double, shafts);
    for (uint32_t s = 0; s < shafts; s++)
        oil[s] = 0.0;
    const ts_start_question begun = {.drive    = &it->file.drive,
                                     .mass     = &it->mass,
                                     .oil_slow = oil,
                                     .oil_fast = oil,
                                     .ambient  = 288.15,
                                     .nu_ratio = 1.0,
                                     .samples  = 200};
    assert_int_equal(ts_drive_start_run(&begun, it->file.arena, &it->start), TS_OK);
    const ts_check_subject subject = {.source = &it->file.source,
                                      .drive  = &it->file.drive,
                                      .train  = &it->file.train,
                                      .motion = &it->file.motion,
                                      .power  = &it->file.power,
                                      .today  = INT32_MIN};
    assert_int_equal(ts_check_prepare(&subject, it->file.arena, &it->outcome), TS_OK);
    assert_int_equal(ts_check_run(&subject, it->file.arena, NULL, &it->outcome), TS_OK);
    assert_int_equal(ts_effects_prepare(&it->file.drive, &it->file.motion, &it->select,
                                        it->file.arena, &it->effects),
                     TS_OK);
    assert_int_equal(ts_effects_each(&it->effects, it->file.arena), TS_OK);
    it->subject         = (ts_drawing_subject){.drive           = &it->file.drive,
                                               .train           = &it->file.train,
                                               .motion          = &it->file.motion,
                                               .power           = &it->file.power,
                                               .select          = &it->select,
                                               .floats          = &it->floats,
                                               .mass            = &it->mass,
                                               .twists          = &it->twist,
                                               .twist_count     = 1,
                                               .start           = &it->start,
                                               .source          = &it->file.source,
                                               .findings        = it->outcome.findings,
                                               .finding_count   = it->outcome.finding_count,
                                               .judgements      = it->outcome.judgements,
                                               .judgement_count = it->outcome.judgement_count,
                                               .file            = path};
    it->subject.effects = &it->effects;
    it->subject.failure = it->effects.failure_count / 2; /* the jam of some shaft */
    it->subject.failed  = "half way down the list";
}

static void close_judged(judged *it)
{
    solved_file_close(&it->file);
    free_file(it->text);
}

static void assert_words_apart(const ts_canvas *canvas, const char *path, int figure)
{
    const ts_area sheet = {0.0, 0.0, canvas->width, canvas->height};
    for (size_t i = 0; i < canvas->places.count; i++) {
        const ts_place *a = &canvas->places.items[i];
        if (a->kind == TS_PLACE_TEXT)
            assert_true(ts_area_holds(sheet, a->area));
        if (a->cut)
            fail_msg("%s, figure %d: the text at %d, %d is cut", path, figure, (int)a->area.x,
                     (int)a->area.y);
        for (size_t j = i + 1; j < canvas->places.count; j++) {
            const ts_place *b = &canvas->places.items[j];
            if (a->kind == TS_PLACE_LEADER && b->kind == TS_PLACE_LEADER && a->of != b->of)
                assert_false(ts_lines_cross(a->a, a->b, b->a, b->b));
            if (a->kind != TS_PLACE_TEXT || b->kind != TS_PLACE_TEXT)
                continue;
            if (ts_areas_meet(ts_area_inset(a->area, 3.5), ts_area_inset(b->area, 3.5)))
                fail_msg("%s, figure %d: words meet at %d, %d and %d, %d", path, figure,
                         (int)a->area.x, (int)a->area.y, (int)b->area.x, (int)b->area.y);
        }
    }
}

static size_t count_of(const ts_canvas *canvas, ts_place_kind kind)
{
    size_t count = 0;
    for (size_t i = 0; i < canvas->places.count; i++)
        count += canvas->places.items[i].kind == kind;
    return count;
}

static size_t box_shafts(const ts_train *train)
{
    size_t count = 0;
    for (uint32_t s = 0; s < train->shaft_count; s++)
        count += train->shafts[s].kind == TS_SHAFT_BOX;
    return count;
}

static size_t cylindrical_gears(const ts_train *train)
{
    size_t count = 0;
    for (uint32_t g = 0; g < train->gear_count; g++)
        count += train->gears[g].role != TS_GEAR_BEVEL;
    return count;
}

static size_t designed_necks(const ts_select *select)
{
    size_t count = 0;
    for (uint32_t n = 0; n < select->necks->count; n++)
        count += select->necks->items[n].designed;
    return count;
}

static size_t placed_pads(const judged *it)
{
    size_t count = 0;
    for (uint32_t p = 0; p < it->file.train.pad_count; p++)
        count += it->file.motion.shafts[it->file.train.pads[p].shaft].placed;
    return count;
}

static void assert_all_drawn(const judged *it, const ts_canvas *canvas, int figure)
{
    const ts_train *train = &it->file.train;
    size_t          busy  = 0;
    for (uint32_t p = 0; p < train->pad_count; p++)
        busy += train->pads[p].use == TS_PAD_ACCESSORY;
    if (figure == TS_FIGURE_SPEEDS)
        assert_int_equal(count_of(canvas, TS_PLACE_ROW), busy);
    else if (figure == TS_FIGURE_PADS)
        assert_int_equal(count_of(canvas, TS_PLACE_ROW), placed_pads(it));
    else if (figure == TS_FIGURE_MODES)
        assert_int_equal(count_of(canvas, TS_PLACE_ROW), 5);
    else if (figure == TS_FIGURE_INTERFERENCE)
        assert_int_equal(count_of(canvas, TS_PLACE_ROW), 1);
    else if (figure == TS_FIGURE_CAMPBELL || figure == TS_FIGURE_REACH ||
             figure == TS_FIGURE_SEIZURE || figure == TS_FIGURE_JOLT || figure == TS_FIGURE_PLAY)
        assert_int_equal(count_of(canvas, TS_PLACE_ROW), 0); /* nothing was computed for them */
    else if (figure == TS_FIGURE_START)
        assert_int_equal(count_of(canvas, TS_PLACE_ROW),
                         it->start.missing == NULL && it->start.run.trace.count >= 2 ? 2 : 0);
    else if (figure == TS_FIGURE_NECKS)
        assert_int_equal(count_of(canvas, TS_PLACE_ROW), designed_necks(&it->select));
    else if (figure == TS_FIGURE_SELECTIVITY)
        assert_int_equal(count_of(canvas, TS_PLACE_ROW), it->select.count);
    else if (figure == TS_FIGURE_STOPS)
        assert_int_equal(count_of(canvas, TS_PLACE_ROW), busy);
    else if (figure == TS_FIGURE_FLOAT)
        assert_true(count_of(canvas, TS_PLACE_ROW) <= it->file.drive.drive_count);
    else if (figure == TS_FIGURE_MASS)
        assert_true(count_of(canvas, TS_PLACE_ROW) > 15);
    else if (figure == TS_FIGURE_MARGINS)
        assert_true(count_of(canvas, TS_PLACE_CELL) >= it->file.drive.condition_count);
    else if (figure == TS_FIGURE_WIDTHS)
        assert_int_equal(count_of(canvas, TS_PLACE_CELL), cylindrical_gears(train));
    else
        assert_int_equal(count_of(canvas, TS_PLACE_NUMBER),
                         figure == TS_FIGURE_TEETH || figure == TS_FIGURE_ROOT ? 2
                                                                               : box_shafts(train));
}

static bool is_written(const ts_canvas *canvas, const char *text, size_t times)
{
    size_t count = 0;
    for (size_t i = 0; i < canvas->places.count; i++) {
        const ts_place *place = &canvas->places.items[i];
        count += place->kind == TS_PLACE_TEXT && strcmp(place->text, text) == 0;
    }
    return count >= times;
}

static void assert_symbols_uncovered(const ts_canvas *canvas, const char *path)
{
    for (size_t i = 0; i < canvas->places.count; i++)
        for (size_t j = 0; j < canvas->places.count; j++) {
            const ts_place *a = &canvas->places.items[i], *b = &canvas->places.items[j];
            if (a->kind == TS_PLACE_TEXT && b->kind == TS_PLACE_SYMBOL &&
                ts_areas_meet(ts_area_inset(a->area, 2.0), b->area))
                fail_msg("%s: `%s` covers a symbol", path, a->text);
        }
}

/* Words keep clear of the cowl line, wherever they stand. */
static void assert_cowl_uncovered(const ts_canvas *canvas, const char *path, int figure)
{
    for (size_t i = 0; i < canvas->places.count; i++)
        for (size_t j = 0; j < canvas->places.count; j++) {
            const ts_place *a = &canvas->places.items[i], *b = &canvas->places.items[j];
            if (a->kind == TS_PLACE_TEXT && b->kind == TS_PLACE_WALL &&
                ts_line_meets_area(b->a, b->b, ts_area_inset(a->area, 2.0)))
                fail_msg("%s, figure %d: `%s` stands on the cowl line", path, figure, a->text);
        }
}

/* What is drawn and found fault with has a tag, or stands in one with others. */
static void assert_findings_tagged(const judged *it, const ts_scene *scene, const char *path)
{
    const ts_canvas *canvas = &scene->canvas;
    for (size_t i = 0; i < it->outcome.finding_count; i++) {
        const ts_target target = ts_finding_target(scene, &it->outcome.findings[i]);
        bool            tagged = target.kind == TS_TARGET_NONE;
        for (size_t p = 0; p < canvas->places.count && !tagged; p++) {
            const ts_place *tag = &canvas->places.items[p];
            tagged =
                tag->kind == TS_PLACE_TAG &&
                ts_target_same(target, ts_finding_target(scene, &it->outcome.findings[tag->of]));
        }
        if (!tagged)
            fail_msg("%s: finding #%zu has no tag", path, i + 1);
    }
}

/* However short a body is, its mass stands on the sheet. */
static void assert_masses_told(const judged *it, ts_scene *scene, const char *path)
{
    const ts_train *train = &it->file.train;
    char            texts[64][40];
    size_t          count = 0;
    for (uint32_t p = 0; p < train->pad_count; p++) {
        if (train->pads[p].accessory < 0)
            continue;
        const ts_accessory *what = &it->file.drive.accessories[train->pads[p].accessory];
        if (!ts_measure_known(what->body.radius) || !ts_measure_known(what->body.length) ||
            !ts_measure_known(what->mass) || !it->file.motion.shafts[train->pads[p].shaft].placed)
            continue;
        ts_buffer *line = ts_canvas_line(&scene->canvas);
        ts_add_shown(line, scene, what->mass.value, TS_KIND_MASS);
        snprintf(texts[count++], sizeof texts[0], "%s", line->bytes);
    }
    assert_true(count > 2);
    for (size_t i = 0; i < count; i++) {
        size_t times = 0;
        for (size_t j = 0; j < count; j++)
            times += strcmp(texts[i], texts[j]) == 0;
        if (!is_written(&scene->canvas, texts[i], times))
            fail_msg("%s: %s is not written for every body", path, texts[i]);
    }
}

static void look_at(const char *path)
{
    judged it;
    open_judged(&it, path);
    for (int figure = 0; figure < TS_FIGURE_COUNT; figure++) {
        ts_draw_options options = usual_options;
        options.figure          = (ts_figure)figure;
        options.condition       = figure % 2 ? 0 : -1;
        options.units           = figure % 2 ? TS_UNITS_METRIC : TS_UNITS_US;
        ts_arena *arena         = ts_arena_open(NULL);
        ts_scene  scene         = ts_scene_of(&it.subject, &options, arena);
        assert_int_equal(ts_canvas_open(&scene.canvas, &options, arena), TS_OK);
        assert_int_equal(ts_draw_figure(&scene), TS_OK);
        assert_words_apart(&scene.canvas, path, figure);
        assert_all_drawn(&it, &scene.canvas, figure);
        assert_symbols_uncovered(&scene.canvas, path);
        assert_cowl_uncovered(&scene.canvas, path, figure);
        if (figure == TS_FIGURE_BEHIND || figure == TS_FIGURE_FRONT)
            assert_findings_tagged(&it, &scene, path);
        if (figure == TS_FIGURE_UNROLLED)
            assert_masses_told(&it, &scene, path);
        ts_canvas_close(&scene.canvas);
        ts_arena_close(arena);
    }
    close_judged(&it);
}

static void pictures_of_the_examples_hold_everything_apart(void **state)
{
    (void)state;
    look_at("examples/trainer.yaml");
    look_at("examples/bizjet.yaml");
    look_at("examples/medium.yaml");
    look_at("examples/large.yaml");
}

static void pictures_of_the_traps_hold_everything_apart(void **state)
{
    (void)state;
    DIR   *folder = opendir("examples/traps");
    size_t count  = 0;
    assert_non_null(folder);
    for (const struct dirent *entry = readdir(folder); entry; entry = readdir(folder)) {
        char path[300];
        if (!strstr(entry->d_name, ".yaml") || count++ % TS_CASES(1, 5) != 0)
            continue;
        snprintf(path, sizeof path, "examples/traps/%s", entry->d_name);
        look_at(path);
    }
    closedir(folder);
    assert_true(count >= 12);
}

/* The trap plants one fault at one place; its finding must be marked on the picture. */
static void the_finding_of_a_trap_is_marked_where_it_is(void **state)
{
    (void)state;
    judged it;
    open_judged(&it, "examples/traps/trainer_body_clash.yaml");
    ts_draw_options options = usual_options;
    ts_arena       *arena   = ts_arena_open(NULL);
    ts_scene        scene   = ts_scene_of(&it.subject, &options, arena);
    assert_int_equal(ts_canvas_open(&scene.canvas, &options, arena), TS_OK);
    assert_int_equal(ts_draw_figure(&scene), TS_OK);
    assert_true(it.outcome.finding_count > 0);
    assert_true(count_of(&scene.canvas, TS_PLACE_TAG) > 0);
    ts_canvas_close(&scene.canvas);
    ts_arena_close(arena);
    close_judged(&it);
}

/* A box is marked at the shaft through which its power enters. */
static void finding_about_a_box_is_marked_at_its_input(void **state)
{
    (void)state;
    judged it;
    open_judged(&it, "examples/bizjet.yaml");
    ts_draw_options options = usual_options;
    ts_arena       *arena   = ts_arena_open(NULL);
    ts_scene        scene   = ts_scene_of(&it.subject, &options, arena);
    size_t          found   = 0;
    for (size_t i = 0; i < it.outcome.finding_count; i++) {
        const ts_finding *finding = &it.outcome.findings[i];
        if (strcmp(finding->rule, "D5-box-underside") != 0)
            continue;
        const ts_target target = ts_finding_target(&scene, finding);
        assert_int_equal(target.kind, TS_TARGET_SHAFT);
        assert_string_equal(it.file.train.shafts[target.index].name, "lp box input");
        found++;
    }
    assert_int_equal(found, 1);
    ts_arena_close(arena);
    close_judged(&it);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pictures_of_the_examples_hold_everything_apart),
        cmocka_unit_test(pictures_of_the_traps_hold_everything_apart),
        cmocka_unit_test(finding_about_a_box_is_marked_at_its_input),
        cmocka_unit_test(the_finding_of_a_trap_is_marked_where_it_is),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
