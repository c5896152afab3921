/* The root section as it is drawn: what is marked lies on the outline that is drawn. */
#include "draw/root_section.h"
#include "support/close.h"

static const ts_cylindrical_pair_input pairs[] = {
    {.z_1 = 33, .z_2 = 71, .m_n = 2.5e-3, .alpha_n = 25.0 * M_PI / 180.0},
    {.z_1 = 18, .z_2 = 44, .m_n = 3e-3, .alpha_n = 20.0 * M_PI / 180.0, .x_1 = 0.4, .x_2 = -0.1},
    {.z_1     = 24,
     .z_2     = 53,
     .m_n     = 2e-3,
     .alpha_n = 20.0 * M_PI / 180.0,
     .beta    = 17.0 * M_PI / 180.0,
     .b_1     = 0.02,
     .b_2     = 0.02},
};
enum { PAIRS = sizeof pairs / sizeof *pairs };

static ts_cylindrical_pair solved(size_t which)
{
    ts_cylindrical_pair       pair;
    ts_cylindrical_pair_input in = pairs[which];
    in.rack                      = ts_basic_rack_fitted(&ts_basic_rack_B, in.alpha_n);
    assert_int_equal(ts_cylindrical_pair_solve(&in, &pair, NULL), TS_PAIR_FINE);
    return pair;
}

typedef void (*section_check)(const ts_root_section *section, const ts_cylindrical_pair *pair);

static void for_all_sections(section_check check)
{
    for (size_t which = 0; which < PAIRS; which++)
        for (int gear = 0; gear < 2; gear++) {
            const ts_cylindrical_pair pair = solved(which);
            ts_root_section           section;
            assert_true(ts_root_section_of(&pair, gear, gear == 0 ? pair.x_1 : pair.x_2, &section));
            assert_true(section.count > 60 && section.count <= TS_ROOT_POINTS);
            check(&section, &pair);
        }
}

/* Distance from the piece of the outline before point `i`; *along tells its direction, rad from the
 * middle of the tooth. */
static double from_piece(const ts_root_section *section, size_t i, ts_outline_point at,
                         double *along)
{
    const ts_outline_point a = section->points[i - 1], b = section->points[i];
    const double           dx = b.x - a.x, dy = b.y - a.y, length = hypot(dx, dy);
    if (!(length > 0.0))
        return INFINITY;
    const double share =
        fmin(1.0, fmax(0.0, ((at.x - a.x) * dx + (at.y - a.y) * dy) / (length * length)));
    *along = atan2(-dx, dy);
    return hypot(at.x - a.x - share * dx, at.y - a.y - share * dy);
}

static double from_outline(const ts_root_section *section, ts_outline_point at, double *along)
{
    double least = INFINITY;
    for (size_t i = 1; i < section->count; i++) {
        double       direction = 0.0;
        const double distance  = from_piece(section, i, at, &direction);
        if (distance < least) {
            least  = distance;
            *along = direction;
        }
    }
    return least;
}

/* derived: the chord ends where the outline stands at 30 degrees to the middle of the tooth.  The
 * pieces of the fillet are 1/40 of its turn long. */
static void check_chord(const ts_root_section *section, const ts_cylindrical_pair *pair)
{
    const ts_outline_point end   = {0.5 * section->form.s_Fn, section->chord_y};
    double                 along = 0.0;
    assert_true(from_outline(section, end, &along) < 3e-4 * pair->in.m_n);
    assert_close_abs(along, M_PI / 6.0, 0.04);
}

static void the_chord_ends_on_the_outline_at_thirty_degrees(void **state)
{
    (void)state;
    for_all_sections(check_chord);
}

/* derived: the load stands square on the involute, so its line touches the base circle. */
static void check_load(const ts_root_section *section, const ts_cylindrical_pair *pair)
{
    double       along = 0.0;
    const double alpha = section->form.alpha_Fen;
    assert_true(from_outline(section, section->load, &along) < 3e-4 * pair->in.m_n);
    assert_close_abs(along, alpha, 0.02);
    assert_close(section->load_y * cos(alpha), 0.5 * section->form.d_bn, 1e-12);
    assert_true(section->load_y > section->chord_y);
}

static void the_load_stands_square_on_the_flank(void **state)
{
    (void)state;
    for_all_sections(check_load);
}

/* The outline goes from the middle of the space to the middle of the tooth, ever higher. */
static void check_outline(const ts_root_section *section, const ts_cylindrical_pair *pair)
{
    (void)pair;
    const ts_outline_point first = section->points[0], last = section->points[section->count - 1];
    double                 before = 0.0;
    assert_close(atan2(first.x, first.y), M_PI / section->form.z_n, 1e-9);
    assert_close_abs(last.x, 0.0, 1e-15);
    assert_close(last.y, section->r_tip, 1e-12);
    for (size_t i = 0; i < section->count; i++) {
        const double r = hypot(section->points[i].x, section->points[i].y);
        assert_true(r >= before - 1e-12);
        before = r;
    }
}

static void the_outline_rises_from_the_space_to_the_tip(void **state)
{
    (void)state;
    for_all_sections(check_outline);
}

/* derived: beta = 0 leaves the gear its own virtual gear. */
static void a_spur_gear_is_its_own_virtual_gear(void **state)
{
    (void)state;
    const ts_cylindrical_pair pair = solved(0);
    ts_root_section           section;
    assert_true(ts_root_section_of(&pair, 0, pair.x_1, &section));
    assert_close(section.form.z_n, 33.0, 1e-15);
    assert_close(section.r_tip, 0.5 * pair.d_a1, 1e-12);
    assert_close(section.r_root, 0.5 * pair.d_f1, 1e-12);
}

/* derived: the flanks of a pointed tooth meet below the tip circle, on the middle of the tooth. */
static void a_pointed_tooth_ends_where_its_flanks_meet(void **state)
{
    (void)state;
    ts_cylindrical_pair             pair;
    ts_root_section                 section;
    const ts_cylindrical_pair_input in = {.z_1     = 14,
                                          .z_2     = 44,
                                          .m_n     = 2e-3,
                                          .alpha_n = 25.0 * M_PI / 180.0,
                                          .x_1     = 1.2,
                                          .rack    = {1.0, 1.25, 0.25}};
    assert_int_equal(ts_cylindrical_pair_solve(&in, &pair, NULL), TS_PAIR_POINTED);
    assert_true(ts_root_section_of(&pair, 0, pair.x_1, &section));
    const ts_outline_point flank = section.points[section.count - 2];
    const ts_outline_point top   = section.points[section.count - 1];
    assert_close_abs(flank.x, 0.0, 1e-12);
    assert_close(flank.y, top.y, 1e-12);
    assert_true(top.y < section.r_tip);
}

static void an_internal_gear_and_unknown_numbers_have_no_section(void **state)
{
    (void)state;
    ts_cylindrical_pair pair = solved(0);
    ts_root_section     section;
    pair.eps_alpha = (double)NAN;
    assert_false(ts_root_section_of(&pair, 0, pair.x_1, &section));
    const ts_cylindrical_pair_input inner = {.z_1     = 20,
                                             .z_2     = -60,
                                             .m_n     = 2e-3,
                                             .alpha_n = 20.0 * M_PI / 180.0,
                                             .rack    = ts_basic_rack_B};
    assert_int_equal(ts_cylindrical_pair_solve(&inner, &pair, NULL), TS_PAIR_FINE);
    assert_false(ts_root_section_of(&pair, 1, pair.x_2, &section));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_chord_ends_on_the_outline_at_thirty_degrees),
        cmocka_unit_test(the_load_stands_square_on_the_flank),
        cmocka_unit_test(the_outline_rises_from_the_space_to_the_tip),
        cmocka_unit_test(a_spur_gear_is_its_own_virtual_gear),
        cmocka_unit_test(a_pointed_tooth_ends_where_its_flanks_meet),
        cmocka_unit_test(an_internal_gear_and_unknown_numbers_have_no_section),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
