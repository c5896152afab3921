/* Arrangements side by side: every shaft of each stands in its cell, no two words meet, what is
 * elsewhere is marked, and the front is drawn where there is one. */
#include "draw/candidate_sheet.h"
#include "draw/drawn.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <string.h>

#include <cmocka.h>

enum { CHOICES = 1, PADS = 3 };

/* Three pads on the first box of the sample, in two orders. */
typedef struct fixture {
    drawn                it;
    double               speed[64], modules[1], m_n[1];
    size_t               tapped[1];
    ts_arrange_accessory accessories[PADS];
    ts_arrange_choice    choice;
    ts_arrange_box       box;
    ts_drive_problem     made;
    ts_arrangement       found[2];
    ts_candidate         items[2];
    ts_front_mark        front[2];
    ts_candidates        all;
} fixture;

static double no_mass(void *context, uint32_t module, uint32_t z, double width)
{
    (void)context;
    return module + z + width > 0.0 ? 0.0 : 1.0;
}

static ts_arrangement arrangement(int8_t left, int8_t right)
{
    ts_arrangement   a   = {.mass = 9.5};
    ts_arranged_box *b   = &a.boxes[0];
    b->present           = true;
    b->input             = (ts_arranged_shaft){.front = -1, .rear = 0, .z = 37, .width = 0.008};
    b->branches[0].count = b->branches[1].count = 1;
    b->branches[0].shafts[0] =
        (ts_arranged_shaft){.front = left, .rear = -1, .z = 50, .width = 0.008};
    b->branches[1].shafts[0] =
        (ts_arranged_shaft){.front = -1, .rear = right, .z = 41, .width = 0.008};
    return a;
}

static void open_fixture(fixture *f)
{
    static const char *const names[PADS] = {"starter", "fuel pump", "breather"};
    memset(f, 0, sizeof *f);
    open_drawn(&f->it, TS_FIGURE_CANDIDATES);
    for (size_t i = 0; i < PADS; i++)
        f->accessories[i] = (ts_arrange_accessory){.name = names[i], .body_radius = 0.05};
    f->modules[0] = f->m_n[0] = 0.002;
    f->choice                 = (ts_arrange_choice){.z_in = 37, .speed = f->speed};
    f->box                    = (ts_arrange_box){.name         = "hp",
                                                 .input_sense  = 1,
                                                 .choices      = &f->choice,
                                                 .choice_count = CHOICES,
                                                 .radius       = 0.3,
                                                 .wrap_most    = 1.5};
    f->made                   = (ts_drive_problem){.tapped = f->tapped, .m_n = f->m_n};
    f->made.problem           = (ts_arrange_problem){.modules         = f->modules,
                                                     .module_count    = 1,
                                                     .accessories     = f->accessories,
                                                     .accessory_count = PADS,
                                                     .boxes           = &f->box,
                                                     .box_count       = 1,
                                                     .model           = {.gear_mass = no_mass}};
    f->found[0]               = arrangement(1, 2);
    f->found[1]               = arrangement(2, 1);
    for (size_t i = 0; i < 2; i++)
        f->items[i] = (ts_candidate){.name    = i == 0 ? "1" : "2",
                                     .found   = &f->found[i],
                                     .problem = &f->made.problem,
                                     .mass    = 9.5 + 0.1 * (double)i,
                                     .judged  = true,
                                     .read    = true,
                                     .holds   = i == 0,
                                     .finding = "a gear enters the cowl by 3.2 mm"};
    f->front[0] = (ts_front_mark){1.2, 9.5, true, true};
    f->front[1] = (ts_front_mark){1.0, 9.8, false, true};
    f->all      = (ts_candidates){
             .made = &f->made, .items = f->items, .count = 2, .nothing_below = (double)NAN};
    f->it.sample->subject.candidates = &f->all;
}

static bool says(const fixture *f, const char *part)
{
    const ts_places *places = &f->it.scene.canvas.places;
    for (size_t i = 0; i < places->count; i++)
        if (places->items[i].kind == TS_PLACE_TEXT && strstr(places->items[i].text, part) != NULL)
            return true;
    return false;
}

static void every_shaft_has_its_row_and_no_words_meet(void **state)
{
    fixture f;
    (void)state;
    open_fixture(&f);
    draw_it(&f.it);
    assert_int_equal(count_places(&f.it, TS_PLACE_ROW), 6);
    assert_int_equal(count_places(&f.it, TS_PLACE_CELL), 0);
    const ts_places *places = &f.it.scene.canvas.places;
    for (size_t i = 0; i < places->count; i++)
        for (size_t k = 0; k < i; k++)
            if (places->items[i].kind == TS_PLACE_TEXT && places->items[k].kind == TS_PLACE_TEXT &&
                ts_areas_meet(ts_area_inset(places->items[i].area, 2.0),
                              ts_area_inset(places->items[k].area, 2.0)))
                fail_msg("`%s` meets `%s`", places->items[i].text, places->items[k].text);
    assert_true(says(&f, "does not hold: a gear enters the cowl by 3.2 mm"));
    assert_true(says(&f, "holds by all rules, 0 warnings"));
    assert_true(says(&f, "(+0.100)"));
    close_drawn(&f.it);
}

static void front_is_drawn_with_what_is_not_proven(void **state)
{
    fixture f;
    (void)state;
    open_fixture(&f);
    f.all.front         = f.front;
    f.all.front_count   = 2;
    f.all.nothing_below = 0.9;
    draw_it(&f.it);
    assert_int_equal(count_places(&f.it, TS_PLACE_CELL), 2);
    assert_true(says(&f, "9.800, not proven"));
    assert_true(says(&f, "nothing fits"));
    close_drawn(&f.it);
}

/* derived: two gears of 50 and 37 teeth, module 2 mm, are 87 mm apart on a circle of 300 mm. */
static void shafts_stand_where_their_teeth_mesh(void **state)
{
    fixture  f;
    ts_stood stood[TS_STOOD_MOST];
    (void)state;
    open_fixture(&f);
    draw_it(&f.it);
    assert_int_equal(ts_stand_candidate(&f.it.scene, &f.items[0], stood), 3);
    assert_true(fabs(hypot(stood[0].x - stood[1].x, stood[0].y - stood[1].y) - 0.087) < 1e-12);
    assert_true(fabs(hypot(stood[2].x - stood[1].x, stood[2].y - stood[1].y) - 0.078) < 1e-12);
    for (int i = 0; i < 3; i++)
        assert_true(fabs(hypot(stood[i].x, stood[i].y) - 0.3) < 1e-12);
    assert_int_equal(stood[0].sense, -stood[1].sense);
    close_drawn(&f.it);
}

static void nothing_to_draw_is_a_sentence(void **state)
{
    fixture f;
    (void)state;
    open_fixture(&f);
    f.all.count = 0;
    draw_it(&f.it);
    assert_true(
        says(&f, "No arrangement was found; the verdict below says whether there is none."));
    close_drawn(&f.it);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_shaft_has_its_row_and_no_words_meet),
        cmocka_unit_test(front_is_drawn_with_what_is_not_proven),
        cmocka_unit_test(shafts_stand_where_their_teeth_mesh),
        cmocka_unit_test(nothing_to_draw_is_a_sentence),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
