/* What does a bevel do to its mate when it moves? */
#include "element/bevel_shift.h"
#include "support/close.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* Mean section of 40/41 teeth, 2.4 mm, by the virtual gears alone. */
static ts_bevel_seat seat_of(void)
{
    const double alpha = pi / 9.0, m = 2.0, z_1 = 57.0, z_2 = 59.0;
    return (ts_bevel_seat){.r_a1  = m * (z_1 + 2.0) / 2.0,
                           .r_a2  = m * (z_2 + 2.0) / 2.0,
                           .r_b1  = m * z_1 / 2.0 * cos(alpha),
                           .r_b2  = m * z_2 / 2.0 * cos(alpha),
                           .a_v   = m * (z_1 + z_2) / 2.0,
                           .p_vet = pi * m * cos(alpha)};
}

/* derived, in space: apex at the origin, gear 1 along +x, its mate along +y.  The two flanks face
 * +-along the tooth normal in the pitch plane, tilted by alpha_n to the normal n of the cones; the
 * play is what both lose along their own normals. */
static void play_is_what_both_flanks_lose(void **state)
{
    (void)state;
    for (double beta = -0.6; beta < 0.7; beta += 0.3) {
        const double delta = 0.77, alpha = 0.35, s = 0.4, r = 0.15, w = 0.8;
        const double g[3]    = {cos(delta), sin(delta), 0.0};  /* outwards along the cones */
        const double n[3]    = {-sin(delta), cos(delta), 0.0}; /* out of gear 1 */
        const double move[3] = {-s, r, w}; /* to the apex, to the mate, across */
        double       lost    = 0.0;
        for (int flank = -1; flank <= 1; flank += 2) {
            double along = 0.0;
            for (int i = 0; i < 3; i++) {
                const double across = i == 2 ? cos(beta) : g[i] * sin(beta);
                along += move[i] * (flank * cos(alpha) * across + sin(alpha) * n[i]);
            }
            lost += along;
        }
        assert_close(ts_bevel_play_taken(ts_bevel_closing(s, r, delta), alpha), lost, 1e-14);
        const double out = move[0] * g[0] + move[1] * g[1];
        assert_close(ts_bevel_along(-s, r, delta), out, 1e-14);
    }
}

static void closing_and_its_play_are_inverse(void **state)
{
    (void)state;
    assert_close(ts_bevel_play_taken(ts_bevel_closing_of_play(2e-4, 0.35), 0.35), 2e-4, 1e-15);
}

/* derived: the common tangent of the base circles is a_v sin(alpha) long at the pitch point. */
static void unmoved_gears_have_the_ratio_of_their_path(void **state)
{
    (void)state;
    const ts_bevel_seat s    = seat_of();
    const double        path = sqrt(s.r_a1 * s.r_a1 - s.r_b1 * s.r_b1) +
                        sqrt(s.r_a2 * s.r_a2 - s.r_b2 * s.r_b2) - s.a_v * sin(pi / 9.0);
    assert_close(ts_bevel_moved_ratio(&s, 0.0), path / s.p_vet, 1e-12);
}

static void one_pair_is_left_where_the_ratio_is_one(void **state)
{
    (void)state;
    const ts_bevel_seat s = seat_of();
    const double        c = ts_bevel_closing_of_one_pair(&s);
    assert_true(c < 0.0);
    assert_close(ts_bevel_moved_ratio(&s, c), 1.0, 1e-12);
    assert_true(ts_bevel_moved_ratio(&s, c - 1e-6) < 1.0);
}

static void nothing_touches_once_the_tips_have_passed(void **state)
{
    (void)state;
    const ts_bevel_seat s = seat_of();
    const double        c = ts_bevel_closing_apart(&s);
    assert_true(c < ts_bevel_closing_of_one_pair(&s));
    assert_true(ts_bevel_moved_ratio(&s, c + 1e-6) > 0.0);
    assert_same_double(ts_bevel_moved_ratio(&s, c - 1e-6), 0.0);
}

/* Each radius is half of a diameter, and gears that change places change radii. */
static void a_seat_has_the_radii_of_both_virtual_gears(void **state)
{
    (void)state;
    const ts_bevel_virtual v = {
        .d_va = {0.118, 0.122}, .d_vb = {0.107, 0.111}, .a_v = 0.116, .p_vet = 5.9e-3};
    const ts_bevel_virtual w  = {.d_va  = {v.d_va[1], v.d_va[0]},
                                 .d_vb  = {v.d_vb[1], v.d_vb[0]},
                                 .a_v   = v.a_v,
                                 .p_vet = v.p_vet};
    const ts_bevel_seat    of = ts_bevel_seat_of(&v), turned = ts_bevel_seat_of(&w);

    assert_same_double(2.0 * of.r_a1, 0.118);
    assert_same_double(2.0 * of.r_a2, 0.122);
    assert_same_double(2.0 * of.r_b1, 0.107);
    assert_same_double(2.0 * of.r_b2, 0.111);
    assert_same_double(turned.r_a1, of.r_a2);
    assert_same_double(turned.r_b2, of.r_b1);
    for (double c = -1e-3; c < 1.1e-3; c += 5e-4)
        assert_close(ts_bevel_moved_ratio(&turned, c), ts_bevel_moved_ratio(&of, c), 1e-14);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(play_is_what_both_flanks_lose),
        cmocka_unit_test(closing_and_its_play_are_inverse),
        cmocka_unit_test(unmoved_gears_have_the_ratio_of_their_path),
        cmocka_unit_test(one_pair_is_left_where_the_ratio_is_one),
        cmocka_unit_test(nothing_touches_once_the_tips_have_passed),
        cmocka_unit_test(a_seat_has_the_radii_of_both_virtual_gears),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
