/* Is a conflict really one, is every member of it needed, and is the least relaxation the least? */
#include "arrange/brute.h"
#include "arrange/random_problem.h"
#include "search/arrange_conflict.h"
#include "support/case_count.h"
#include "support/close.h"

enum {
    CONFLICTS        = TS_CASES(15, 2),
    ENUMERATED_LEAST = TS_CASES(1, 0),
    STEPS_MOST       = TS_CASES(8000, 1000)
};

static random_problem problem;
static brute_answer   brute;

static void draw(uint64_t seed)
{
    const random_wish wish = {.accessories = 2 + seed % 2,
                              .boxes       = 1 + seed % 2,
                              .modules     = 1,
                              .z_in        = 1 + seed % 3,
                              .narrow      = true};
    random_problem_make(&problem, seed, &wish);
}

static bool fits(const ts_arrange_problem *p)
{
    const ts_arrange_wish wish = {.workers = 1, .any = true};
    ts_arrange_result     r;
    assert_int_equal(ts_arrange_search(p, &wish, &r), TS_OK);
    const bool found = r.count > 0;
    ts_arrange_result_close(&r);
    return found;
}

static bool same(const ts_demand *a, const ts_demand *b)
{
    return a->kind == b->kind && a->index == b->index && a->condition == b->condition;
}

/* Members of the conflict alone, without the one of that index. */
static ts_arrange_problem only_members(const ts_conflict *conflict, size_t without, ts_arena *arena)
{
    size_t             count, dropped = 0;
    ts_demand         *all = ts_demands_of(&problem.problem, &count, arena);
    ts_arrange_problem out;

    for (size_t i = 0; i < count; i++) {
        bool kept = false;
        for (size_t k = 0; k < conflict->count; k++)
            kept = kept || (k != without && same(&all[i], &conflict->members[k].demand));
        if (!kept)
            all[dropped++] = all[i];
    }
    assert_true(ts_demands_drop(&problem.problem, all, dropped, &out, arena));
    return out;
}

/* Puts a number where a member has its own; `p` owns its lists, as only_members makes them.  Not
 * shared with the search on purpose: one that let the wrong number give there would be believed
 * here too. */
static void let_give(ts_arrange_problem *p, const ts_conflict_member *m, double number)
{
    const ts_demand      *d = &m->demand;
    ts_arrange_accessory *a = (ts_arrange_accessory *)&p->accessories[d->index];
    ts_arrange_box       *b = (ts_arrange_box *)&p->boxes[d->index];
    switch (d->kind) {
    case TS_DEMAND_BAND:
        ((double *)(m->to > m->from ? a->speed_most : a->speed_least))[d->condition] = number;
        break;
    case TS_DEMAND_BODY:
        a->body_radius = number;
        break;
    case TS_DEMAND_WRAP:
        b->wrap_most = number;
        break;
    case TS_DEMAND_BRANCH:
        b->side_most = number;
        break;
    case TS_DEMAND_GAP:
        p->gap = number;
        break;
    default:
        p->width_over_diameter = number;
        break;
    }
}

/* The number that is told will do, and a fiftieth less will not. */
static void assert_least(const ts_conflict *conflict, size_t i, ts_arena *arena)
{
    const ts_conflict_member *m = &conflict->members[i];
    ts_arrange_problem        p = only_members(conflict, SIZE_MAX, arena);

    let_give(&p, m, m->to);
    assert_true(fits(&p));
    if (m->at_most || fabs(m->to - m->from) < 1e-3 * fabs(m->from))
        return;
    let_give(&p, m, m->from + 0.98 * (m->to - m->from));
    assert_false(fits(&p));
}

/* Also asked of plain enumeration, where that is small enough. */
static void conflicts_are_minimal(void **state)
{
    const ts_arrange_wish wish  = {.workers = 1};
    size_t                found = 0, enumerated = 0, numbers = 0;

    (void)state;
    for (uint64_t seed = 1; found < CONFLICTS; seed++) {
        ts_arena   *arena = ts_arena_open(NULL);
        ts_conflict conflict;
        draw(seed);
        assert_int_equal(ts_arrange_explain(&problem.problem, &wish, &conflict, arena), TS_OK);
        if (conflict.found) {
            found++;
            assert_true(conflict.count > 0);
            const ts_arrange_problem core = only_members(&conflict, SIZE_MAX, arena);
            assert_false(fits(&core));
            for (size_t i = 0; i < conflict.count; i++) {
                const ts_arrange_problem less = only_members(&conflict, i, arena);
                assert_true(fits(&less));
                if (!isfinite(conflict.members[i].to))
                    continue;
                numbers++;
                assert_least(&conflict, i, arena);
            }
            brute_solve(&core, STEPS_MOST, &brute);
            if (!brute.gave_up) {
                enumerated++;
                assert_int_equal(brute.count, 0);
            }
        } else {
            assert_true(conflict.hopeless || fits(&problem.problem));
        }
        ts_arena_close(arena);
    }
    print_message("%zu conflicts, %zu enumerated, %zu numbers\n", found, enumerated, numbers);
    assert_true(numbers > 0 && enumerated >= ENUMERATED_LEAST);
}

/* derived: with one gear on one box and one condition, n = n_in z_in / z; the band is set between
 * two whole tooth numbers, so that the nearer of them is what it must reach. */
static void a_band_between_two_tooth_numbers_reaches_for_the_nearer(void **state)
{
    const random_wish wish = {
        .accessories = 1, .boxes = 1, .modules = 1, .z_in = 1, .narrow = true};
    const ts_arrange_wish how   = {.workers = 1};
    ts_arena             *arena = ts_arena_open(NULL);
    ts_conflict           conflict;

    (void)state;
    random_problem_make(&problem, 3, &wish);
    ts_arrange_accessory *a    = &problem.accessories[0];
    a->boxes                   = 1;
    a->faces                   = 3;
    a->sense                   = 0;
    a->side                    = TS_SIDE_ANY;
    problem.problem.hunting    = false;
    problem.boxes[0].wrap_most = problem.boxes[0].side_most = 2.0;
    problem.boxes[0].input_faces                            = 0;
    for (size_t c = 0; c < RANDOM_CONDITIONS; c++) {
        problem.least[0][c] = 0.0;
        problem.most[0][c]  = 1e6;
    }
    const double fast   = problem.input_speed[0][2] * (double)problem.choices[0][0].z_in;
    problem.least[0][2] = fast / 60.4;
    problem.most[0][2]  = fast / 60.3;
    assert_int_equal(ts_arrange_explain(&problem.problem, &how, &conflict, arena), TS_OK);
    assert_true(conflict.found);
    assert_int_equal(conflict.count, 1);
    assert_int_equal(conflict.members[0].demand.kind, TS_DEMAND_BAND);
    assert_int_equal(conflict.members[0].demand.condition, 2);
    assert_same_double(conflict.members[0].from, problem.most[0][2]);
    assert_close(conflict.members[0].to, fast / 60.0, 1e-4);
    ts_arena_close(arena);
}

static void nothing_is_explained_when_something_fits(void **state)
{
    const ts_arrange_wish wish  = {.workers = 1};
    ts_arena             *arena = ts_arena_open(NULL);
    ts_conflict           conflict;
    uint64_t              seed = 1;

    (void)state;
    for (draw(seed); !fits(&problem.problem); draw(seed))
        seed++;
    assert_int_equal(ts_arrange_explain(&problem.problem, &wish, &conflict, arena), TS_OK);
    assert_false(conflict.found || conflict.hopeless);
    assert_int_equal(conflict.searches, 1);
    ts_arena_close(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(conflicts_are_minimal),
        cmocka_unit_test(a_band_between_two_tooth_numbers_reaches_for_the_nearer),
        cmocka_unit_test(nothing_is_explained_when_something_fits),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
