/* Does the outline lie within 1 um of the tooth that a finely rolled rack leaves, spur or helical?
 *
 * A second route without the envelope condition: on the circle of radius R every height of the
 * rack's tooth passes once on either side of the line of centres; the widest angle that any of
 * them cuts is where the tooth begins.  That is a search over one height, for every radius.
 */
#include "element/cylindrical_gear.h"
#include "element/tooth_outline.h"
#include "support/close.h"

static const double pi = 3.14159265358979323846;

#define MICROMETRE 1e-6
#define RADII      900
#define HEIGHTS    200

typedef struct wanted {
    int                  z;
    double               x, alpha_n, beta, m_n; /* degrees, m */
    const ts_basic_rack *rack;
} wanted;

/* Usual teeth, undercut, many teeth, helical, all racks, small and large modules. */
static const wanted kinds[] = {
    {25, 0.1, 20.0, 0.0, 2e-3, &ts_basic_rack_A},   {9, 0.0, 20.0, 0.0, 2e-3, &ts_basic_rack_A},
    {140, -0.2, 20.0, 0.0, 2e-3, &ts_basic_rack_A}, {31, 0.0, 25.0, 0.0, 2e-3, &ts_basic_rack_C},
    {18, 0.25, 22.5, 0.0, 3e-3, &ts_basic_rack_D},  {23, 0.2, 20.0, 25.0, 2e-3, &ts_basic_rack_A},
    {11, -0.1, 20.0, 15.0, 2e-3, &ts_basic_rack_B}, {41, 0.4, 20.0, 30.0, 8e-3, &ts_basic_rack_D},
    {17, 0.0, 20.0, 0.0, 0.5e-3, &ts_basic_rack_A}, {61, 0.0, 25.0, 12.0, 6e-3, &ts_basic_rack_C},
};
#define KINDS (sizeof kinds / sizeof kinds[0])

/* The rack's tooth in the transverse section; heights from its datum line, upwards. */
typedef struct rolled {
    double r, datum, m_n, alpha_n, cos_beta, depth, rho;
} rolled;

/* Half its width: straight flank above, round below. */
static double half_width(const rolled *of, double y)
{
    const double centre = -of->depth + of->rho; /* height of the centre of the round */
    const double x_0    = pi * of->m_n / 4.0 + centre * tan(of->alpha_n) -
                       of->rho / cos(of->alpha_n); /* of that centre */
    const double touch = centre - of->rho * sin(of->alpha_n);

    if (y >= touch)
        return (pi * of->m_n / 4.0 + y * tan(of->alpha_n)) / of->cos_beta;
    const double below = centre - y;
    return (x_0 + sqrt(fmax(of->rho * of->rho - below * below, 0.0))) / of->cos_beta;
}

/* Half the angle of the space that this height cuts on the circle of radius R, on one side. */
static double cut_by(const rolled *of, double R, double y, double side)
{
    const double h = of->datum + y;
    const double q = side * sqrt(fmax(R * R - h * h, 0.0));

    return atan2(q, h) - (q - half_width(of, y)) / of->r;
}

/* The widest of all heights: sampled, then closed in by thirds. */
static double half_space(const rolled *of, double R)
{
    const double low = -of->depth, high = fmin(R - of->datum, 2.5 * of->m_n);
    double       most = -1.0;

    for (int s = 0; s < 2; s++) {
        const double side = s == 0 ? 1.0 : -1.0;
        int          best = 0;
        double       top  = -1.0;
        for (int i = 0; i <= HEIGHTS; i++) {
            const double here = cut_by(of, R, low + (high - low) * i / HEIGHTS, side);
            if (here > top) {
                top  = here;
                best = i;
            }
        }
        double a = low + (high - low) * fmax(best - 1, 0) / HEIGHTS;
        double b = low + (high - low) * fmin(best + 1, HEIGHTS) / HEIGHTS;
        for (int round = 0; round < 80; round++) {
            const double c = a + (b - a) / 3.0, d = b - (b - a) / 3.0;
            if (cut_by(of, R, c, side) < cut_by(of, R, d, side))
                a = c;
            else
                b = d;
        }
        most = fmax(most, fmax(top, cut_by(of, R, 0.5 * (a + b), side)));
    }
    return most;
}

typedef struct specimen {
    ts_cylindrical_gear gear;
    ts_tooth_shape      shape;
    rolled              tool;
    ts_arena           *arena;
    ts_outline_point    points[RADII + 1]; /* of the second route */
    double              radii[RADII + 1], angles[RADII + 1];
} specimen;

static specimen s;

static void trace(const wanted *w)
{
    const double         degree = pi / 180.0, alpha_n = w->alpha_n * degree;
    ts_cylindrical_frame frame = {.m_n = w->m_n, .alpha_n = alpha_n, .beta = w->beta * degree};
    const ts_cylindrical_gear_input in = {
        .z = w->z, .x = w->x, .rack = ts_basic_rack_fitted(w->rack, alpha_n)};

    ts_cylindrical_frame_solve(&frame, NULL);
    ts_cylindrical_gear_solve(&frame, &in, TS_GEAR_ALONE, &s.gear, NULL);
    s.arena = ts_arena_open(NULL);
    assert_int_equal(ts_tooth_outline(&frame, &s.gear, TS_OUTLINE_CHORD_ERROR, s.arena, &s.shape),
                     TS_OUTLINE_FINE);
    s.tool              = (rolled){.r        = s.gear.d / 2.0,
                                   .datum    = s.gear.d / 2.0 + w->x * w->m_n,
                                   .m_n      = w->m_n,
                                   .alpha_n  = alpha_n,
                                   .cos_beta = cos(w->beta * degree),
                                   .depth    = in.rack.h_fPs * w->m_n,
                                   .rho      = in.rack.rho_fPs * w->m_n};
    const double r_root = s.tool.datum - s.tool.depth;
    for (int i = 0; i <= RADII; i++) { /* dense at the root, where the fillet begins level */
        const double part = (double)i / RADII;
        s.radii[i]        = r_root + (s.shape.r_tip - r_root) * part * part;
        s.angles[i]       = pi / w->z - half_space(&s.tool, s.radii[i]);
        s.points[i] =
            (ts_outline_point){s.radii[i] * sin(s.angles[i]), s.radii[i] * cos(s.angles[i])};
    }
}

static double to_polyline(const ts_outline_point *points, size_t count, ts_outline_point p)
{
    double least = (double)INFINITY;

    for (size_t k = 0; k + 1 < count; k++) {
        const ts_outline_point a = points[k], b = points[k + 1];
        const double           dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
        const double           along = (p.x - a.x) * dx + (p.y - a.y) * dy;
        const double           share = square > 0.0 ? fmin(fmax(along / square, 0.0), 1.0) : 0.0;

        least = fmin(least, hypot(p.x - a.x - share * dx, p.y - a.y - share * dy));
    }
    return least;
}

static void what_the_rack_leaves_is_within_a_micrometre_of_the_outline(void **state)
{
    (void)state;
    for (size_t i = 0; i < KINDS; i++) {
        trace(&kinds[i]);
        for (int k = 0; k <= RADII; k++)
            assert_true(to_polyline(s.shape.points, s.shape.count, s.points[k]) <= MICROMETRE);
        ts_arena_close(s.arena);
    }
}

static void the_outline_is_within_a_micrometre_of_what_the_rack_leaves(void **state)
{
    (void)state;
    for (size_t i = 0; i < KINDS; i++) {
        trace(&kinds[i]);
        for (size_t k = s.shape.fillet; k < s.shape.tip; k++) {
            const ts_outline_point a = s.shape.points[k], b = s.shape.points[k + 1];
            const ts_outline_point middle = {(a.x + b.x) / 2.0, (a.y + b.y) / 2.0};

            assert_true(to_polyline(s.points, RADII + 1, a) <= MICROMETRE);
            assert_true(to_polyline(s.points, RADII + 1, middle) <= MICROMETRE);
        }
        ts_arena_close(s.arena);
    }
}

/* derived: half a tooth above the root circle is the sum of its arcs, angle by angle. */
static void the_area_of_the_outline_is_that_of_what_the_rack_leaves(void **state)
{
    (void)state;
    for (size_t i = 0; i < KINDS; i++) {
        double above = 0.0, swept = 0.0;

        trace(&kinds[i]);
        for (int k = 0; k < RADII; k++) {
            const double square = (s.radii[k + 1] * s.radii[k + 1] - s.radii[k] * s.radii[k]) / 2.0;
            above += 0.5 * (s.angles[k] + s.angles[k + 1]) * square;
        }
        for (size_t k = 0; k + 1 < s.shape.count; k++) {
            const ts_outline_point a = s.shape.points[k], b = s.shape.points[k + 1];
            swept += 0.5 * (a.x * b.y - a.y * b.x);
        }
        const double below = s.radii[0] * s.radii[0] * pi / kinds[i].z / 2.0;
        /* Chords lie within the chord error of their arcs all along the outline. */
        const double length = s.shape.r_tip - s.radii[0] + s.shape.r_tip * pi / kinds[i].z;
        assert_close_abs(swept, above + below, MICROMETRE * length);
        ts_arena_close(s.arena);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_the_rack_leaves_is_within_a_micrometre_of_the_outline),
        cmocka_unit_test(the_outline_is_within_a_micrometre_of_what_the_rack_leaves),
        cmocka_unit_test(the_area_of_the_outline_is_that_of_what_the_rack_leaves),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
