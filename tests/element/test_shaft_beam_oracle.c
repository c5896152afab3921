/* Does the beam bend as a solid of finite elements does?  tests/reference/calculix holds the input
 * deck of a stepped, bored shaft and what CalculiX 2.20 made of it (tools/beam_oracle.py). */
#include "support/close.h"
#include "support/read_file.h"

#include "element/shaft_beam.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define PLANES_MOST 64

typedef struct solid {
    int    count;
    double x[PLANES_MOST], v_y[PLANES_MOST], v_z[PLANES_MOST]; /* m */
} solid;

static solid read_solid(void)
{
    const ts_text file = read_file("tests/reference/calculix/stepped_shaft.tsv");
    solid         out  = {.count = 0};
    for (const char *at = file.at; *at != '\0'; at = strchr(at, '\n') + 1) {
        char *end;
        if (*at == '#')
            continue;
        assert_true(out.count < PLANES_MOST);
        out.x[out.count]   = strtod(at, &end) * 1e-3;
        out.v_y[out.count] = strtod(end, &end) * 1e-3;
        out.v_z[out.count] = strtod(end, &end) * 1e-3;
        out.count++;
    }
    free_file(file);
    return out;
}

static ts_beam_result beam_of(const solid *s, ts_beam_frame *frame, bool shear)
{
    static const ts_beam_section sections[] = {{0.0, 0.03, 0.03, 0.012},
                                               {0.03, 0.06, 0.04, 0.012},
                                               {0.06, 0.1, 0.05, 0.012},
                                               {0.1, 0.13, 0.04, 0.012},
                                               {0.13, 0.17, 0.03, 0.012}};
    static const ts_beam_support supports[] = {{.x = 0.015, .k_r = INFINITY, .locates = true},
                                               {.x = 0.145, .k_r = INFINITY}};
    static const ts_beam_load    loads[]    = {{.x = 0.08, .F_y = 1000.0, .F_z = -400.0},
                                               {.x = 0.17, .F_z = 300.0}};
    const ts_beam                beam       = {.sections      = sections,
                                               .supports      = supports,
                                               .places        = s->x,
                                               .section_count = 5,
                                               .support_count = 2,
                                               .place_count   = s->count,
                                               .E             = 206e9,
                                               .G             = 206e9 / 2.6,
                                               .shear         = shear};
    ts_beam_result               result;
    assert_int_equal(ts_beam_prepare(&beam, frame), TS_BEAM_FINE);
    assert_int_equal(ts_beam_solve(&beam, frame, loads, 2, &result), TS_BEAM_FINE);
    return result;
}

/* Largest difference over the largest deflection, both planes. */
static double apart(const solid *s, bool shear)
{
    ts_beam_frame        frame;
    const ts_beam_result r    = beam_of(s, &frame, shear);
    double               most = 0.0, gap = 0.0;
    for (int i = 0; i < s->count; i++) {
        const ts_beam_state *at = &r.left[ts_beam_station(&frame, s->x[i])];
        gap  = fmax(gap, fmax(fabs(at->v_y - s->v_y[i]), fabs(at->v_z - s->v_z[i])));
        most = fmax(most, fmax(fabs(s->v_y[i]), fabs(s->v_z[i])));
    }
    return gap / most;
}

/* A solid spreads stress into a wider section only little by little, so that the beam is stiffer at
 * its steps: the difference stays visible here. */
static void the_bent_line_is_that_of_the_solid(void **state)
{
    (void)state;
    const solid s = read_solid();
    assert_int_equal(s.count, 35);
    print_message("beam and solid part by %.4f of the largest deflection\n", apart(&s, true));
    assert_true(apart(&s, true) < 0.10);
}

static void without_shear_the_line_parts_further(void **state)
{
    (void)state;
    const solid s = read_solid();
    assert_true(apart(&s, false) > 2.0 * apart(&s, true));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_bent_line_is_that_of_the_solid),
        cmocka_unit_test(without_shear_the_line_parts_further),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
