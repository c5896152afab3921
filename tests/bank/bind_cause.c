/* bank/bind_cause.c: published fault trees, by the engine that seeks the causes of effects. */
#include "bank/bank_case.h"
#include "effect/minimal_cause.h"
#include "rating/bearing/life_weibull.h"
#include "rating/bearing/rolling_life.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define GIVEN(name) ts_case_given(c, name, TS_KIND_NUMBER)
#define EVENTS_MOST 8

/* ---- trees ----------------------------------------------------------------------------------- */

/* A tree as its source prints it: true where the top event comes about. */
typedef struct tree {
    bool (*top)(const bool *event);
    const char *names[EVENTS_MOST];
    uint32_t    count;
} tree;

static uint64_t happens(const void *context, const uint32_t *events, size_t count)
{
    const tree *of                 = context;
    bool        event[EVENTS_MOST] = {false};

    for (size_t i = 0; i < count; i++)
        event[events[i]] = true;
    return of->top(event) ? 1 : 0;
}

/* "A.B", in the order of the alphabet. */
static void name_of(const tree *of, const ts_cause *cause, char *out, size_t room)
{
    const char *one   = of->names[cause->first];
    const char *other = cause->second == TS_NO_EVENT ? NULL : of->names[cause->second];

    if (other == NULL)
        snprintf(out, room, "%s", one);
    else if (strcmp(one, other) < 0)
        snprintf(out, room, "%s.%s", one, other);
    else
        snprintf(out, room, "%s.%s", other, one);
}

static void list_sorted(ts_case *c, const tree *of, const ts_causes *causes)
{
    char   names[EVENTS_MOST * EVENTS_MOST][16];
    size_t count = 0;

    for (; count < causes->count; count++) {
        char   name[16];
        size_t at = count;
        name_of(of, &causes->items[count], name, sizeof name);
        for (; at > 0 && strcmp(name, names[at - 1]) < 0; at--)
            memcpy(names[at], names[at - 1], sizeof name);
        memcpy(names[at], name, sizeof name);
    }
    for (size_t i = 0; i < count; i++)
        ts_case_listed_word(c, "cut_sets", names[i]);
}

/* Exact, by every state of the events: one of the causes that were found is in it. */
static double chance_of(const tree *of, const ts_causes *causes, const double *p)
{
    double sum = 0.0;

    for (uint32_t state = 0; state < UINT32_C(1) << of->count; state++) {
        bool   met    = false;
        double chance = 1.0;
        for (uint32_t e = 0; e < of->count; e++)
            chance *= (state >> e & 1) != 0 ? p[e] : 1.0 - p[e];
        for (size_t i = 0; i < causes->count && !met; i++)
            met = (state >> causes->items[i].first & 1) != 0 &&
                  (causes->items[i].second == TS_NO_EVENT ||
                   (state >> causes->items[i].second & 1) != 0);
        sum += met ? chance : 0.0;
    }
    return sum;
}

static double rare_sum(const ts_causes *causes, const double *p)
{
    double sum = 0.0;

    for (size_t i = 0; i < causes->count; i++)
        sum += p[causes->items[i].first] *
               (causes->items[i].second == TS_NO_EVENT ? 1.0 : p[causes->items[i].second]);
    return sum;
}

/* The causes live in the arena, which the caller closes. */
static ts_causes seek(ts_case *c, const tree *of, ts_arena *arena)
{
    const ts_system system = {happens, of, of->count, 1};
    ts_causes       causes;

    if (arena == NULL || ts_minimal_causes(&system, arena, &causes) != TS_OK)
        ts_case_spoil(c, "needs memory", "the tree");
    return causes;
}

static bool top_of_handbook(const bool *e) /* A, B, C */
{
    const bool E3 = e[1] || e[2], E4 = e[0] && e[1], E1 = e[0] || E3, E2 = e[2] || E4;

    return E1 && E2;
}

static void handbook(ts_case *c)
{
    const tree   of = {top_of_handbook, {"A", "B", "C"}, 3};
    const double p = GIVEN("p"), all[3] = {p, p, p};
    ts_arena    *arena = ts_arena_open(&ts_allocator_standard);
    ts_causes    found = seek(c, &of, arena);

    list_sorted(c, &of, &found);
    ts_case_computed(c, "P_exact", chance_of(&of, &found, all), TS_KIND_NUMBER);
    ts_arena_close(arena);
}

static bool top_of_tank(const bool *e) /* T, K2, S, S1, K1, R */
{
    return e[0] || e[1] || (e[2] && (e[3] || e[4] || e[5]));
}

static void tank(ts_case *c)
{
    const tree   of    = {top_of_tank, {"T", "K2", "S", "S1", "K1", "R"}, 6};
    const double p[6]  = {GIVEN("p_T"),  GIVEN("p_K2"), GIVEN("p_S"),
                          GIVEN("p_S1"), GIVEN("p_K1"), GIVEN("p_R")};
    ts_arena    *arena = ts_arena_open(&ts_allocator_standard);
    ts_causes    found = seek(c, &of, arena);
    const double sum   = rare_sum(&found, p);

    list_sorted(c, &of, &found);
    ts_case_computed(c, "P_rare", sum, TS_KIND_NUMBER);
    ts_case_computed(c, "share_K2", p[1] / sum, TS_KIND_NUMBER);
    ts_case_computed(c, "share_T", p[0] / sum, TS_KIND_NUMBER);
    ts_arena_close(arena);
}

static bool top_of_power(const bool *e) /* E1, E2, E3 */
{
    return (e[0] && e[1]) || e[2];
}

static bool both_of_power(const bool *e)
{
    return e[0] && e[1];
}

static void power(ts_case *c)
{
    const tree   of    = {top_of_power, {"E1", "E2", "E3"}, 3};
    const tree   inner = {both_of_power, {"E1", "E2", "E3"}, 3};
    const double p[3]  = {GIVEN("E1"), GIVEN("E2"), GIVEN("E3")};
    ts_arena    *arena = ts_arena_open(&ts_allocator_standard);
    ts_causes    found = seek(c, &of, arena), within = seek(c, &inner, arena);

    ts_case_computed(c, "P_I", chance_of(&inner, &within, p), TS_KIND_NUMBER);
    ts_case_computed(c, "P_T", chance_of(&of, &found, p), TS_KIND_NUMBER);
    ts_arena_close(arena);
}

static bool top_of_redundant(const bool *e) /* E1 to E5 */
{
    const bool I3 = e[2] && e[3], I1 = e[0] && I3, I4 = e[4] || e[2], I2 = e[1] || I4;

    return I1 || I2;
}

static void redundant(ts_case *c)
{
    const tree of    = {top_of_redundant, {"E1", "E2", "E3", "E4", "E5"}, 5};
    ts_arena  *arena = ts_arena_open(&ts_allocator_standard);
    ts_causes  found = seek(c, &of, arena);

    list_sorted(c, &of, &found);
    ts_arena_close(arena);
}

/* Fails as soon as two of four have failed. */
static bool two_of_four(const bool *e)
{
    return e[0] + e[1] + e[2] + e[3] >= 2;
}

static void three_of_four(ts_case *c)
{
    const tree   of = {two_of_four, {"1", "2", "3", "4"}, 4};
    const double q = 1.0 - GIVEN("R"), p[4] = {q, q, q, q};
    ts_arena    *arena = ts_arena_open(&ts_allocator_standard);
    ts_causes    found = seek(c, &of, arena);

    ts_case_computed(c, "R", 1.0 - chance_of(&of, &found, p), TS_KIND_NUMBER);
    ts_arena_close(arena);
}

/* ---- lives ----------------------------------------------------------------------------------- */

static void weibull(ts_case *c)
{
    const ts_life_scatter scatter = {GIVEN("x0"), GIVEN("theta"), GIVEN("b")};

    ts_case_computed(c, "R_at_rating_life",
                     ts_scattered_reliability(&scatter, 1.0, 1.0, 1.0, 1.0, NULL), TS_KIND_NUMBER);
    ts_case_computed(c, "median", 1.0 / ts_scattered_capacity(&scatter, 1.0, 1.0, 0.5, 1.0, NULL),
                     TS_KIND_NUMBER);
}

static int lives_of(ts_case *c, double *lives, int most, ts_kind kind)
{
    const size_t count = ts_case_length(c, "L10");

    if (count == 0 || count > (size_t)most)
        ts_case_spoil(c, "is too long a list", "L10");
    for (size_t i = 0; i < count; i++)
        lives[i] = ts_case_given_at(c, "L10", i, kind);
    return (int)count;
}

static void system_life(ts_case *c)
{
    double    lives[16];
    const int count = lives_of(c, lives, 16, TS_KIND_TIME);

    ts_case_computed(c, "L_sys", ts_life_of_set(lives, count, GIVEN("e"), NULL), TS_KIND_TIME);
}

/* The reliability at which a life is `t`: the law of the program, run backwards. */
static double reliability_at(double L_10, double t, double e)
{
    double low = 1e-12, high = 1.0 - 1e-12;

    for (int i = 0; i < 200; i++) {
        const double middle = 0.5 * (low + high);
        if (ts_life_at_reliability(L_10, middle, e, NULL) > t)
            low = middle;
        else
            high = middle;
    }
    return 0.5 * (low + high);
}

static void product_rule(ts_case *c)
{
    double    lives[16], R[16];
    const int count = lives_of(c, lives, 16, TS_KIND_TIME);

    for (int i = 0; i < count; i++)
        R[i] = reliability_at(lives[i], 5000.0 * 3600.0, TS_SLOPE_BALL);
    ts_case_computed(c, "L_sys_10_9", ts_life_of_set(lives, count, TS_SLOPE_BALL, NULL),
                     TS_KIND_TIME);
    ts_case_computed(c, "L_sys_1_5", ts_life_of_set(lives, count, 1.5, NULL), TS_KIND_TIME);
    ts_case_computed(c, "R_at_5000h", ts_reliability_of_set(R, count), TS_KIND_NUMBER);
}

static const ts_binding bindings[] = {
    {"rel-weibull-three-parameter-bearing", weibull},
    {"rel-system-life-two-bearings-1.5", system_life},
    {"rel-system-life-product-rule", product_rule},
    {"fta-nureg-0492-boolean", handbook},
    {"fta-nureg-0492-pressure-tank", tank},
    {"fta-loss-of-electric-power", power},
    {"fta-redundant-event-reduction", redundant},
    {"rel-3-of-4-displays", three_of_four},
    {"rel-3-of-4-engines", three_of_four},
};
TS_BINDINGS(bindings);
