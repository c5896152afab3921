/* arrange/arrange_main.c: runs files of proven arrangement problems through the search of the
 * program, with widths and masses in closed form.
 *
 *   towershaft-bank-arrange FILE...
 *
 * Exit 0: all agree; 1: some problem differs; 2: a file is no list of problems.
 */
#include "arrange/arrange_case.h"
#include "search/arrange_search.h"

#include <math.h>
#include <string.h>

#define TOLERANCE 1e-9 /* relative, of the mass; as the problems say */

typedef struct tally {
    size_t agree, differ, without;
} tally;

typedef struct outcome {
    bool     solved, feasible, counted;
    double   mass;
    uint64_t count;
} outcome;

static outcome solve(const arrange_case *c)
{
    const ts_arrange_wish wish = {.workers = 1};
    ts_arrange_result     result;
    outcome               out = {0};

    if (ts_arrange_search(&c->problem, &wish, &result) == TS_OK) {
        out.solved   = result.end == TS_ARRANGE_PROVEN;
        out.feasible = result.count > 0;
        out.mass     = out.feasible ? result.answers[0].mass : 0.0;
        ts_arrange_result_close(&result);
    }
    if (c->has_count)
        out.counted = ts_arrange_count(&c->problem, &wish, &out.count) == TS_OK;
    return out;
}

static bool agrees(const arrange_case *c, const outcome *o)
{
    if (!o->solved || o->feasible != c->feasible || (c->has_count && !o->counted))
        return false;
    if (c->has_count && o->count != c->count)
        return false;
    return !c->feasible || fabs(o->mass - c->mass) <= TOLERANCE * fabs(c->mass);
}

static void say_values(const char *what, bool feasible, double mass, bool counted, uint64_t count)
{
    printf("  %s ", what);
    if (feasible)
        printf("%.9f kg", mass);
    else
        printf("infeasible");
    if (counted)
        printf(", %llu arrangements", (unsigned long long)count);
}

static void run(const arrange_case *c, tally *t)
{
    const outcome o    = solve(c);
    const bool    well = !c->has_answer || agrees(c, &o);

    printf("%-8s %s", !c->has_answer ? "no answer" : well ? "agrees" : "differs", c->name);
    say_values("computed", o.feasible, o.mass, o.counted, o.count);
    if (!o.solved)
        printf(" (not solved)");
    if (!well)
        say_values("expected", c->feasible, c->mass, c->has_count, c->count);
    printf("\n");
    t->without += c->has_answer ? 0 : 1;
    t->agree += c->has_answer && well ? 1 : 0;
    t->differ += well ? 0 : 1;
}

static bool run_file(const char *path, tally *t)
{
    ts_arena     *arena = ts_arena_open(NULL);
    arrange_fault fault = {"no memory"};
    size_t        count = 0;
    arrange_case *cases = arena != NULL ? arrange_cases_read(path, arena, &count, &fault) : NULL;

    if (cases == NULL)
        fprintf(stderr, "%s\n", fault.says);
    for (size_t i = 0; cases != NULL && i < count; i++)
        run(&cases[i], t);
    ts_arena_close(arena);
    return cases != NULL;
}

int main(int count, char **words)
{
    tally t = {0};

    if (count < 2) {
        fputs("usage: towershaft-bank-arrange FILE...\n", stderr);
        return 2;
    }
    for (int i = 1; i < count; i++)
        if (!run_file(words[i], &t))
            return 2;
    printf("%zu agree, %zu differ, %zu without an answer\n", t.agree, t.differ, t.without);
    return t.differ > 0 ? 1 : 0;
}
