/* The face views: everything is there, nothing covers anything, leaders do not cross. */
#include "draw/drawn.h"
#include "draw/face.h"
#include "support/close.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>

#include <cmocka.h>

static const ts_figure faces[] = {TS_FIGURE_BEHIND, TS_FIGURE_FRONT, TS_FIGURE_POWER};

static void every_box_shaft_has_its_number_its_column_and_a_leader(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof faces / sizeof *faces; i++) {
        drawn it;
        open_drawn(&it, faces[i]);
        draw_it(&it);
        size_t shafts = 0;
        for (uint32_t s = 0; s < it.sample->train.shaft_count; s++) {
            if (it.sample->train.shafts[s].kind != TS_SHAFT_BOX)
                continue;
            shafts++;
            assert_non_null(find_place(&it, TS_PLACE_NUMBER, s));
            assert_non_null(find_place(&it, TS_PLACE_CELL, s));
            assert_non_null(find_place(&it, TS_PLACE_LEADER, s));
        }
        assert_int_equal(shafts, 12);
        assert_int_equal(count_places(&it, TS_PLACE_NUMBER), 12);
        close_drawn(&it);
    }
}

static void a_leader_ends_over_the_column_of_its_own_shaft(void **state)
{
    (void)state;
    drawn it;
    open_drawn(&it, TS_FIGURE_BEHIND);
    draw_it(&it);
    size_t ends = 0;
    for (size_t i = 0; i < it.scene.canvas.places.count; i++) {
        const ts_place *piece = &it.scene.canvas.places.items[i];
        if (piece->kind != TS_PLACE_LEADER)
            continue;
        const ts_place *cell = find_place(&it, TS_PLACE_CELL, piece->of);
        if (piece->b.y < cell->area.y - 0.01)
            continue;
        assert_true(piece->b.x > cell->area.x && piece->b.x < cell->area.x + cell->area.w);
        ends++;
    }
    assert_int_equal(ends, 12);
    close_drawn(&it);
}

static size_t count_crossings(const drawn *it)
{
    const ts_places *places = &it->scene.canvas.places;
    size_t           count  = 0;
    for (size_t i = 0; i < places->count; i++)
        for (size_t j = i + 1; j < places->count; j++) {
            const ts_place *a = &places->items[i], *b = &places->items[j];
            count += a->kind == TS_PLACE_LEADER && b->kind == TS_PLACE_LEADER && a->of != b->of &&
                     ts_lines_cross(a->a, a->b, b->a, b->b);
        }
    return count;
}

static void no_leader_crosses_another(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof faces / sizeof *faces; i++) {
        drawn it;
        open_drawn(&it, faces[i]);
        draw_it(&it);
        assert_int_equal(count_crossings(&it), 0);
        close_drawn(&it);
    }
}

/* The box of the sample turned round the engine in steps: wherever it stands, leaders part. */
static void no_leader_crosses_another_wherever_the_box_stands(void **state)
{
    (void)state;
    for (int step = 0; step < 12; step++) {
        drawn it;
        open_drawn(&it, TS_FIGURE_BEHIND);
        for (uint32_t s = 2; s < it.sample->train.shaft_count; s++) {
            ts_shaft_motion *one = &it.sample->motion.shafts[s];
            one->clock += step * M_PI / 6.0;
            one->x = one->radius * sin(one->clock);
            one->y = one->radius * cos(one->clock);
        }
        draw_it(&it);
        assert_int_equal(count_crossings(&it), 0);
        close_drawn(&it);
    }
}

static void the_check_for_crossings_sees_one(void **state)
{
    (void)state;
    assert_true(
        ts_lines_cross((ts_point){0, 0}, (ts_point){2, 2}, (ts_point){0, 2}, (ts_point){2, 0}));
    assert_false(
        ts_lines_cross((ts_point){0, 0}, (ts_point){2, 2}, (ts_point){0, 1}, (ts_point){1, 2}));
}

static void the_front_view_mirrors_places_and_keeps_heights(void **state)
{
    (void)state;
    drawn behind, front;
    open_drawn(&behind, TS_FIGURE_BEHIND);
    open_drawn(&front, TS_FIGURE_FRONT);
    draw_it(&behind);
    draw_it(&front);
    const ts_place *b1 = find_place(&behind, TS_PLACE_NUMBER, 4);
    const ts_place *f1 = find_place(&front, TS_PLACE_NUMBER, 4);
    for (uint32_t s = 5; s < behind.sample->train.shaft_count; s++) {
        const ts_place *b  = find_place(&behind, TS_PLACE_NUMBER, s);
        const ts_place *f  = find_place(&front, TS_PLACE_NUMBER, s);
        const double    bx = b->area.x + 0.5 * b->area.w - b1->area.x - 0.5 * b1->area.w;
        const double    fx = f->area.x + 0.5 * f->area.w - f1->area.x - 0.5 * f1->area.w;
        assert_true(fabs(bx + fx) < 1e-6);
        assert_true(fabs(b->area.y - f->area.y) < 1e-6);
    }
    close_drawn(&behind);
    close_drawn(&front);
}

/* "5" stands right of "7" for who looks from where the file looks, and left of it for the other. */
static void the_dial_reads_what_the_file_says_from_both_sides(void **state)
{
    (void)state;
    for (int sight = TS_FROM_BEHIND; sight <= TS_FROM_FRONT; sight++)
        for (int view = TS_FROM_BEHIND; view <= TS_FROM_FRONT; view++) {
            drawn it;
            open_drawn(&it, view == TS_FROM_FRONT ? TS_FIGURE_FRONT : TS_FIGURE_BEHIND);
            it.sample->drive.sight.value = sight;
            draw_it(&it);
            const ts_place *five  = find_place(&it, TS_PLACE_HOUR, 5);
            const ts_place *seven = find_place(&it, TS_PLACE_HOUR, 7);
            assert_non_null(five);
            assert_non_null(seven);
            assert_int_equal(five->area.x > seven->area.x, sight == view);
            close_drawn(&it);
        }
}

/* Clockwise from behind is anticlockwise from the front. */
static void the_clock_of_a_place_is_that_of_the_file(void **state)
{
    (void)state;
    drawn it;
    open_drawn(&it, TS_FIGURE_BEHIND);
    it.scene = ts_scene_of(&it.sample->subject, &it.options, it.arena);
    assert_close(ts_scene_dial(&it.scene, 1.25), 1.25, 1e-15);
    it.sample->drive.sight.value = TS_FROM_FRONT;
    assert_close(ts_scene_dial(&it.scene, 1.25), -1.25, 1e-15);
    ts_arena_close(it.arena);
}

static ts_face lay_out(drawn *it, bool front)
{
    ts_face face = {.scene = &it->scene, .front = front, .picture = {0, 0, 1000, 700}};
    it->scene    = ts_scene_of(&it->sample->subject, &it->options, it->arena);
    assert_int_equal(ts_canvas_open(&it->scene.canvas, &it->options, it->arena), TS_OK);
    assert_int_equal(ts_face_lay_out(&face), TS_OK);
    return face;
}

/* Half a pitch apart on the line of centres: derived from what interleaving means. */
static void teeth_of_mating_gears_interleave(void **state)
{
    (void)state;
    drawn it;
    open_drawn(&it, TS_FIGURE_BEHIND);
    const ts_face face   = lay_out(&it, false);
    size_t        meshes = 0;
    for (uint32_t m = 0; m < it.sample->train.mesh_count; m++) {
        const ts_mesh *mesh = &it.sample->train.meshes[m];
        if (mesh->kind != TS_MESH_CYLINDRICAL)
            continue;
        const ts_shaft_motion *a    = &it.sample->motion.shafts[mesh->driver_shaft];
        const ts_shaft_motion *b    = &it.sample->motion.shafts[mesh->driven_shaft];
        const double           line = atan2(b->y - a->y, b->x - a->x);
        const double           z_1  = (double)it.sample->train.gears[mesh->driver].teeth.value;
        const double           z_2  = (double)it.sample->train.gears[mesh->driven].teeth.value;
        /* Pitches from the middle of a tooth to the line of centres, each in its own sense. */
        const double u_1 = (line - 0.5 * M_PI - face.gears[mesh->driver].phase) * z_1 / 2.0 / M_PI;
        const double u_2 = (line + 0.5 * M_PI - face.gears[mesh->driven].phase) * z_2 / 2.0 / M_PI;
        /* The flanks run the same way there, so the sum of both must be half a pitch. */
        const double apart = u_1 + u_2 - 0.5;
        assert_true(fabs(apart - round(apart)) < 1e-9);
        meshes++;
    }
    assert_int_equal(meshes, 10);
    close_drawn(&it);
}

static bool inside(const ts_face_gear *gear, const ts_shaft_motion *axis, double x, double y)
{
    const size_t size = ts_gear_outline_size(&gear->shape);
    bool         odd  = false;
    for (size_t i = 0, j = size - 1; i < size; j = i++) {
        const ts_outline_point at = {axis->x, axis->y};
        const ts_outline_point p  = ts_gear_outline_at(&gear->shape, i, gear->phase, at);
        const ts_outline_point q  = ts_gear_outline_at(&gear->shape, j, gear->phase, at);
        if ((p.y > y) != (q.y > y) && x < (q.x - p.x) * (y - p.y) / (q.y - p.y) + p.x)
            odd = !odd;
    }
    return odd;
}

/* No point of one outline lies inside of its mate: the drawn teeth do not cut into each other. */
static void drawn_outlines_do_not_overlap(void **state)
{
    (void)state;
    drawn it;
    open_drawn(&it, TS_FIGURE_BEHIND);
    it.options.width   = 4000.0;
    const ts_face face = lay_out(&it, false);
    for (uint32_t m = 0; m < it.sample->train.mesh_count; m++) {
        const ts_mesh *mesh = &it.sample->train.meshes[m];
        if (mesh->kind != TS_MESH_CYLINDRICAL)
            continue;
        const ts_face_gear    *a = &face.gears[mesh->driver], *b = &face.gears[mesh->driven];
        const ts_shaft_motion *p  = &it.sample->motion.shafts[mesh->driver_shaft];
        const ts_shaft_motion *q  = &it.sample->motion.shafts[mesh->driven_shaft];
        const ts_outline_point at = {p->x, p->y};
        assert_true(a->shape.count > 0);
        for (size_t i = 0; i < ts_gear_outline_size(&a->shape); i++) {
            ts_outline_point one = ts_gear_outline_at(&a->shape, i, a->phase, at);
            /* Chords of a tenth of a px are not the curve: draw the point in by 0.2 px. */
            const double r = hypot(one.x - p->x, one.y - p->y), in = 0.2 / face.px / r;
            one.x -= in * (one.x - p->x);
            one.y -= in * (one.y - p->y);
            if (hypot(one.x - q->x, one.y - q->y) < b->r_tip)
                assert_false(inside(b, q, one.x, one.y));
        }
    }
    close_drawn(&it);
}

static const ts_place *ribbon_into(const drawn *it, uint32_t driven_shaft)
{
    return find_place(it, TS_PLACE_RIBBON, it->sample->train.shafts[driven_shaft].mesh);
}

static void ribbons_turn_round_in_the_start(void **state)
{
    (void)state;
    const uint32_t starter = 9; /* the shaft with the starter; its driver is the box input, 4 */
    drawn          crank, light;
    open_drawn(&crank, TS_FIGURE_POWER);
    open_drawn(&light, TS_FIGURE_POWER);
    crank.options.condition = SAMPLE_CRANK;
    light.options.condition = SAMPLE_TAKE_OFF;
    draw_it(&crank);
    draw_it(&light);
    const ts_place *in = ribbon_into(&crank, starter), *out = ribbon_into(&light, starter);
    assert_non_null(in);
    assert_non_null(out);
    /* The flow at crank begins where the flow at take-off ends. */
    assert_true(ts_distance(in->a, out->b) < 1e-6 && ts_distance(in->b, out->a) < 1e-6);
    /* What the fuel pump takes goes outwards in both. */
    const ts_place *fuel_crank = ribbon_into(&crank, 5), *fuel = ribbon_into(&light, 5);
    assert_true(ts_distance(fuel_crank->a, fuel->a) < 1e-6);
    close_drawn(&crank);
    close_drawn(&light);
}

static bool says(const drawn *it, const char *part)
{
    for (size_t i = 0; i < it->scene.canvas.places.count; i++) {
        const ts_place *place = &it->scene.canvas.places.items[i];
        if (place->kind == TS_PLACE_TEXT && strstr(place->text, part) != NULL)
            return true;
    }
    return false;
}

/* The least width of a band binds for small powers only. */
static void ribbons_too_thin_for_their_scale_say_so(void **state)
{
    (void)state;
    drawn it;
    open_drawn(&it, TS_FIGURE_POWER);
    draw_it(&it);
    assert_true(says(&it, "not to scale"));
    close_drawn(&it);
    open_drawn(&it, TS_FIGURE_POWER);
    const size_t meshes = (size_t)SAMPLE_CONDITIONS * it.sample->train.mesh_count;
    const size_t pads   = (size_t)SAMPLE_CONDITIONS * it.sample->train.pad_count;
    for (size_t i = 0; i < meshes; i++)
        it.sample->power.mesh[i].P[0] = it.sample->power.mesh[i].P[1] = 2e4;
    for (size_t i = 0; i < pads; i++)
        it.sample->power.pad[i].P = 2e4;
    draw_it(&it);
    assert_false(says(&it, "not to scale"));
    close_drawn(&it);
}

static void what_carries_nothing_has_no_ribbon(void **state)
{
    (void)state;
    drawn it;
    open_drawn(&it, TS_FIGURE_POWER);
    it.options.condition = SAMPLE_CRANK;
    draw_it(&it);
    assert_null(ribbon_into(&it, 8));  /* the generator's shaft: 0 kW at crank */
    assert_null(ribbon_into(&it, 14)); /* the stand-by generator's            */
    close_drawn(&it);
}

static void findings_get_one_tag_a_thing(void **state)
{
    (void)state;
    drawn it;
    open_drawn(&it, TS_FIGURE_BEHIND);
    draw_it(&it);
    /* Eight findings; the one about the whole drive has no place. */
    assert_int_equal(count_places(&it, TS_PLACE_TAG), 7);
    close_drawn(&it);
    open_drawn(&it, TS_FIGURE_BEHIND);
    it.sample->findings[1].node = it.sample->findings[0].node;
    draw_it(&it);
    assert_int_equal(count_places(&it, TS_PLACE_TAG), 6);
    close_drawn(&it);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_box_shaft_has_its_number_its_column_and_a_leader),
        cmocka_unit_test(a_leader_ends_over_the_column_of_its_own_shaft),
        cmocka_unit_test(no_leader_crosses_another),
        cmocka_unit_test(no_leader_crosses_another_wherever_the_box_stands),
        cmocka_unit_test(the_check_for_crossings_sees_one),
        cmocka_unit_test(the_front_view_mirrors_places_and_keeps_heights),
        cmocka_unit_test(the_dial_reads_what_the_file_says_from_both_sides),
        cmocka_unit_test(the_clock_of_a_place_is_that_of_the_file),
        cmocka_unit_test(teeth_of_mating_gears_interleave),
        cmocka_unit_test(drawn_outlines_do_not_overlap),
        cmocka_unit_test(ribbons_turn_round_in_the_start),
        cmocka_unit_test(ribbons_too_thin_for_their_scale_say_so),
        cmocka_unit_test(what_carries_nothing_has_no_ribbon),
        cmocka_unit_test(findings_get_one_tag_a_thing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
