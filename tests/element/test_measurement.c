/* Do span, pins and chords measure the teeth that are there? */
#include "element/involute.h"
#include "element/measurement.h"
#include "support/close.h"

static const double pi     = 3.14159265358979323846;
static const double degree = 3.14159265358979323846 / 180.0;

typedef struct specimen {
    ts_cylindrical_frame frame;
    ts_cylindrical_gear  gear;
} specimen;

static specimen made(int z, double m_n, double beta, double x)
{
    specimen s = {.frame = {.m_n = m_n, .alpha_n = 20.0 * degree, .beta = beta * degree}};
    const ts_cylindrical_gear_input in = {.z = z, .x = x, .rack = ts_basic_rack_A};

    ts_cylindrical_frame_solve(&s.frame, NULL);
    ts_cylindrical_gear_solve(&s.frame, &in, TS_GEAR_ALONE, &s.gear, NULL);
    return s;
}

/* "Elements of Metric Gear Technology" (SDP/SI), section 10 and KHK reference: m 3, 24 teeth, x 0.4
 * (from memory, reproduced to the last digit). */
static void printed_spans_agree(void **state)
{
    (void)state;
    const specimen spur = made(24, 3e-3, 0.0, 0.4), helical = made(24, 3e-3, 25.0, 0.4);

    assert_close(ts_span_width(&spur.frame, &spur.gear, 4, NULL), 32.8266e-3, 2e-6);
    assert_close(ts_span_teeth(&spur.frame, &spur.gear, NULL), 3.78787, 2e-6);
    assert_close(ts_span_width(&helical.frame, &helical.gear, 5, NULL), 42.0085e-3, 2e-6);
}

/* derived: the span over k teeth of a spur gear is k - 1 base pitches and one base thickness. */
static void span_is_base_pitches_and_a_base_thickness(void **state)
{
    (void)state;
    for (int z = 12; z < 80; z += 7) {
        const specimen s   = made(z, 2.5e-3, 0.0, 0.15);
        const double   s_b = s.gear.d_b * (s.gear.s_t / s.gear.d + ts_inv(s.frame.alpha_t));

        for (int k = 1; k < 8; k++)
            assert_close(ts_span_width(&s.frame, &s.gear, k, NULL), (k - 1) * s.frame.p_bt + s_b,
                         1e-13);
    }
}

/* derived: the normal of the base helix is cos(beta_b) of the transverse base pitch. */
static void span_grows_by_the_normal_base_pitch(void **state)
{
    (void)state;
    const specimen s    = made(37, 2e-3, 22.0, -0.1);
    const double   p_bn = s.frame.p_bt * cos(s.frame.beta_b);

    assert_close(ts_span_width(&s.frame, &s.gear, 6, NULL) -
                     ts_span_width(&s.frame, &s.gear, 5, NULL),
                 p_bn, 1e-13);
}

/* derived: with the span number taken as a real number, the span touches at d + 2*x*m_n, where half
 * of a spur gear's span is the base tangent. */
static void span_number_puts_contact_on_the_shifted_circle(void **state)
{
    (void)state;
    const specimen s     = made(45, 2e-3, 0.0, 0.3);
    const double   k     = ts_span_teeth(&s.frame, &s.gear, NULL);
    const int      below = (int)floor(k);
    const double at_k = ts_span_width(&s.frame, &s.gear, below, NULL) + (k - below) * s.frame.p_bt;
    const double circle = s.gear.d + 2.0 * 0.3 * 2e-3;

    assert_close(hypot(at_k, s.gear.d_b), circle, 1e-12);
}

/* Machinery's Handbook, checking spur gears over 1.728 in wires, 1 diametral pitch, 20 degrees
 * (from memory). */
static void printed_sizes_over_wires_agree(void **state)
{
    (void)state;
    const specimen ten = made(10, 1.0, 0.0, 0.0), twenty = made(20, 1.0, 0.0, 0.0);

    assert_close(ts_over_pins(&ten.frame, &ten.gear, 1.728, NULL), 12.3445, 4e-6);
    assert_close(ts_over_pins(&twenty.frame, &twenty.gear, 1.728, NULL), 22.39, 3e-6);
}

/* Distance from the middle of a pin on the space's middle line, at radius r_K, to the flank beside
 * it: least over the involute, by sampling and golden section. */
static double pin_to_flank(const specimen *s, double r_K)
{
    const double r_b   = s->gear.d_b / 2.0;
    const double psi_b = pi / s->gear.in.z - s->gear.s_t / s->gear.d - ts_inv(s->frame.alpha_t);
    double       least = 1e9, low = 0.0, high = 2.0;

    /* The flank lies psi_b + inv(alpha) from the middle of the space. */
    for (int round = 0; round < 200; round++) {
        const double a = high - 0.6180339887498949 * (high - low);
        const double b = low + 0.6180339887498949 * (high - low);
        double       at[2];

        for (int i = 0; i < 2; i++) {
            const double t   = i == 0 ? a : b;
            const double psi = psi_b + t - atan(t), r = r_b * sqrt(1.0 + t * t);

            at[i] = hypot(r * sin(psi), r * cos(psi) - r_K);
            least = fmin(least, at[i]);
        }
        if (at[0] < at[1])
            high = b;
        else
            low = a;
    }
    return least;
}

/* A second route: a pin lies in a space when both flanks are one radius from its middle. */
static void pin_touches_the_flanks(void **state)
{
    (void)state;
    for (int z = 18; z < 60; z += 4) {
        const specimen s   = made(z, 2e-3, 0.0, 0.2);
        const double   D_M = 3.6e-3, M = ts_over_pins(&s.frame, &s.gear, D_M, NULL);

        assert_close(pin_to_flank(&s, (M - D_M) / 2.0), D_M / 2.0, 1e-8);
    }
}

/* derived: with an odd number of teeth opposite spaces are half a pitch off the diameter. */
static void odd_number_of_teeth_measures_less_than_the_diameter(void **state)
{
    (void)state;
    const specimen s    = made(21, 2e-3, 0.0, 0.0);
    const double   D_M  = 3.6e-3;
    const double   r_K  = (ts_over_pins(&s.frame, &s.gear, D_M, NULL) - D_M) / 2.0;
    const double   half = pi / 2.0 / 21.0;

    assert_close(pin_to_flank(&s, r_K / cos(half)), D_M / 2.0, 1e-8);
}

/* The size between pins is positive, although by ISO 21771 all of a ring is negative. */
static void ring_measures_between_pins(void **state)
{
    (void)state;
    const specimen ring = made(-40, 2e-3, 0.0, 0.0);
    const double   M    = ts_over_pins(&ring.frame, &ring.gear, 3.36e-3, NULL);

    assert_true(M > 70e-3 && M < 80e-3);
    /* Bank case internal-between-pins, 30 teeth, 1 diametral pitch (derived there by bisection). */
    const specimen thirty = made(-30, 1.0, 0.0, 0.0);
    assert_close(ts_over_pins(&thirty.frame, &thirty.gear, 1.44, NULL), 28.664102, 1e-8);
}

static void pin_too_thin_for_the_space_gives_no_size(void **state)
{
    (void)state;
    const specimen s = made(20, 2e-3, 0.0, 0.0);

    assert_nan(ts_over_pins(&s.frame, &s.gear, 0.1e-3, NULL));
}

/* SDP/SI "Elements of Metric Gear Technology", section 10 (read): m 10, 12 teeth, x 0.3. */
static void printed_chordal_thickness_agrees(void **state)
{
    (void)state;
    const specimen       s     = made(12, 10e-3, 0.0, 0.3);
    const ts_tooth_chord chord = ts_chordal_thickness(&s.frame, &s.gear, 13e-3, NULL);

    assert_close(chord.s_n, 17.8918e-3, 4e-6);
    assert_close(chord.theta_v / degree, 8.5427, 1e-6);
    assert_close(chord.s_c, 17.8256e-3, 4e-6);
    assert_close(chord.h_c, 13.6657e-3, 6e-6);
}

/* derived: chord and arc of a circle. */
static void chord_is_shorter_than_the_arc_by_its_third_order(void **state)
{
    (void)state;
    const specimen       s     = made(60, 2e-3, 0.0, 0.0);
    const ts_tooth_chord chord = ts_chordal_thickness(&s.frame, &s.gear, 2e-3, NULL);

    assert_close(chord.s_n - chord.s_c, chord.s_n * chord.theta_v * chord.theta_v / 6.0, 1e-4);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(printed_spans_agree),
        cmocka_unit_test(span_is_base_pitches_and_a_base_thickness),
        cmocka_unit_test(span_grows_by_the_normal_base_pitch),
        cmocka_unit_test(span_number_puts_contact_on_the_shifted_circle),
        cmocka_unit_test(printed_sizes_over_wires_agree),
        cmocka_unit_test(pin_touches_the_flanks),
        cmocka_unit_test(odd_number_of_teeth_measures_less_than_the_diameter),
        cmocka_unit_test(ring_measures_between_pins),
        cmocka_unit_test(pin_too_thin_for_the_space_gives_no_size),
        cmocka_unit_test(printed_chordal_thickness_agrees),
        cmocka_unit_test(chord_is_shorter_than_the_arc_by_its_third_order),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
