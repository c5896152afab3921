/* bench/bench_main.c: is the program as fast and as small as it promised?
 *
 *   towershaft-bench [word]    measures the cases whose name holds the word, or all of them
 *
 * Exit 0: every limit is kept; 1: one is not; 2: no case of that name.
 */
#include "bench.h"

#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>

static const bench_group *const groups[] = {
#define BENCH_GROUP(name) &name,
#include "bench_groups.inc"
#undef BENCH_GROUP
};

/* A figure in the unit of its case; times in the power of a thousand that reads best. */
static void print_figure(double figure, const char *unit)
{
    static const struct {
        double      least;
        const char *name;
    } times[] = {{1.0, "s"}, {1e-3, "ms"}, {1e-6, "us"}, {0.0, "ns"}};
    if (strcmp(unit, "s") != 0) {
        printf("%10.4g %-5s", figure, unit);
        return;
    }
    size_t i = 0;
    while (figure < times[i].least)
        i++;
    const double scale = times[i].least > 0.0 ? times[i].least : 1e-9;
    printf("%10.4g %-5s", figure / scale, times[i].name);
}

/* Measures one case and says whether its limit is kept. */
static bool run_case(const bench_case *one)
{
    const double figure = one->measure();
    printf("%-28s", one->name);
    if (isnan(figure)) {
        printf("  could not be measured: %s\n", one->meaning);
        return false;
    }
    print_figure(figure, one->unit);
    const bool kept = figure <= one->most;
    if (isinf(one->most)) {
        printf("  %-22s", "");
    } else {
        printf("  %s ", kept ? "within " : "EXCEEDS");
        print_figure(one->most, one->unit);
    }
    printf("  %s\n", one->meaning);
    fflush(stdout);
    return kept;
}

int main(int count, char **words)
{
    const char *wanted   = count > 1 ? words[1] : "";
    size_t      measured = 0;
    size_t      exceeded = 0;
    for (size_t i = 0; i < sizeof groups / sizeof groups[0]; i++) {
        for (size_t k = 0; k < groups[i]->count; k++) {
            const bench_case *one = &groups[i]->cases[k];
            if (strstr(one->name, wanted) == NULL)
                continue;
            measured++;
            exceeded += run_case(one) ? 0 : 1;
        }
    }
    printf("%zu measured, %zu not kept\n", measured, exceeded);
    if (measured == 0)
        return 2;
    return exceeded > 0 ? 1 : 0;
}
