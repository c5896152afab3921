/* Is the critical section of the root where a search on the generated tooth finds it? */
#include "base/arena.h"
#include "element/tooth_curve.h"
#include "element/tooth_outline.h"
#include "rating/sample_mesh.h"
#include "support/close.h"

static const double pi     = 3.14159265358979323846;
static const double degree = 3.14159265358979323846 / 180.0;

static ts_root_form_input form_input(const ts_cylindrical_pair *pair, int gear)
{
    return (ts_root_form_input){
        .z         = gear == 0 ? pair->in.z_1 : pair->in.z_2,
        .x         = gear == 0 ? pair->x_1 : pair->x_2,
        .d         = gear == 0 ? pair->d_1 : pair->d_2,
        .d_a       = gear == 0 ? pair->d_a1 : pair->d_a2,
        .m_n       = pair->in.m_n,
        .alpha_n   = pair->in.alpha_n,
        .beta      = pair->in.beta,
        .beta_b    = pair->beta_b,
        .eps_alpha = pair->eps_alpha,
        .rack      = pair->in.rack,
        .gear      = gear,
    };
}

/* The virtual spur gear as curves: a rack cuts any radius, whole number of teeth or not. */
static ts_tooth_curve virtual_curve(const ts_root_form_input *in, double z_n)
{
    const double rho = in->rack.rho_fPs * in->m_n, depth = in->rack.h_fPs * in->m_n - rho;
    const double r = z_n * in->m_n / 2.0;

    return (ts_tooth_curve){
        .r     = r,
        .r_b   = r * cos(in->alpha_n),
        .psi_b = (pi / 2.0 + 2.0 * in->x * tan(in->alpha_n)) / z_n + tan(in->alpha_n) - in->alpha_n,
        .xi_c  = pi * in->m_n / 4.0 + depth * tan(in->alpha_n) + rho / cos(in->alpha_n),
        .y_c   = r + in->x * in->m_n - depth,
        .rho   = rho,
        .cos_beta  = 1.0,
        .theta_end = pi / 2.0 - in->alpha_n,
    };
}

static double slope_angle(const ts_tooth_curve *curve, double theta)
{
    const double           h = 1e-6;
    const ts_outline_point a = ts_trochoid_point(curve, theta - h);
    const ts_outline_point b = ts_trochoid_point(curve, theta + h);

    return atan2(fabs(b.x - a.x), b.y - a.y); /* from the middle of the tooth */
}

/* The fillet rises from the root, where it lies across, to the flank, where it stands. */
static double search_tangent(const ts_tooth_curve *curve, double wanted, double last)
{
    double low = 1e-3, high = last;

    assert_true(slope_angle(curve, low) > wanted);
    assert_true(slope_angle(curve, high) < wanted);
    for (int round = 0; round < 100; round++) {
        const double middle = 0.5 * (low + high);

        if (slope_angle(curve, middle) > wanted)
            low = middle;
        else
            high = middle;
    }
    return 0.5 * (low + high);
}

/* Radius of the circle through three near points of the fillet. */
static double radius_at(const ts_tooth_curve *curve, double theta)
{
    const double           h  = 2e-4;
    const ts_outline_point a  = ts_trochoid_point(curve, theta - h);
    const ts_outline_point b  = ts_trochoid_point(curve, theta);
    const ts_outline_point c  = ts_trochoid_point(curve, theta + h);
    const double           ab = hypot(b.x - a.x, b.y - a.y), bc = hypot(c.x - b.x, c.y - b.y);
    const double           ca   = hypot(a.x - c.x, a.y - c.y);
    const double           area = fabs((b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y)) / 2.0;

    return ab * bc * ca / (4.0 * area);
}

static void check_gear(const ts_cylindrical_pair *pair, int gear)
{
    const ts_root_form_input in = form_input(pair, gear);
    ts_root_form             form;

    assert_true(ts_root_form_solve(&in, &form, NULL));
    const ts_tooth_curve   curve = virtual_curve(&in, form.z_n);
    const double           theta = search_tangent(&curve, 30.0 * degree, curve.theta_end - 1e-5);
    const ts_outline_point at    = ts_trochoid_point(&curve, theta);
    assert_close(form.s_Fn, 2.0 * at.x, 1e-7);
    assert_close(form.rho_F, radius_at(&curve, theta), 1e-5);

    /* Where the line of the load, tangent to the base circle, cuts the middle of the tooth. */
    const double t     = tan(acos(form.d_bn / form.d_en));
    const double angle = curve.psi_b - (t - atan(t)); /* of the loaded point, from the middle */
    const double lean  = acos(form.d_bn / form.d_en) - angle;
    const double top   = form.d_bn / 2.0 / cos(lean);
    assert_close(form.alpha_Fen, lean, 1e-9);
    assert_close(form.h_Fe, top - at.y, 1e-6);
    const double Y_F = 6.0 * (top - at.y) / in.m_n * cos(lean) /
                       (4.0 * at.x * at.x / (in.m_n * in.m_n) * cos(in.alpha_n));
    assert_close(form.Y_F, Y_F, 1e-6);
}

static void the_tangent_is_where_a_search_on_the_trochoid_finds_it(void **state)
{
    (void)state;
    uint64_t seed = 30;

    for (int round = 0; round < 200; round++) {
        const ts_cylindrical_pair_input in   = drawn_pair(&seed);
        const ts_cylindrical_pair       pair = solved_pair(&in);

        check_gear(&pair, 0);
        check_gear(&pair, 1);
    }
}

/* The chord of the outline, fine to 2 nm, that first leans 30 degrees: m. */
static double chord_of_outline(const ts_cylindrical_frame *frame, const ts_cylindrical_gear *gear)
{
    ts_arena      *arena = ts_arena_open(NULL);
    ts_tooth_shape shape;

    assert_int_equal(ts_tooth_outline(frame, gear, 2e-9, arena, &shape), TS_OUTLINE_FINE);
    size_t i = shape.fillet;
    while (i < shape.flank) {
        const ts_outline_point a = shape.points[i], b = shape.points[i + 1];
        if (atan2(a.x - b.x, b.y - a.y) <= 30.0 * degree)
            break;
        i++;
    }
    assert_in_range(i, shape.fillet + 1, shape.flank - 1);
    const double chord = 2.0 * shape.points[i].x;
    ts_arena_close(arena);
    return chord;
}

/* The same on the polyline that pictures and clash tests use, with its own coarser accuracy. */
static void the_drawn_outline_has_the_same_root_chord(void **state)
{
    (void)state;
    ts_cylindrical_pair_input in   = sample_pair();
    in.beta                        = 0.0;
    const ts_cylindrical_pair pair = solved_pair(&in);

    for (int gear = 0; gear < 2; gear++) {
        const ts_root_form_input given = form_input(&pair, gear);
        ts_cylindrical_frame     frame;
        ts_cylindrical_gear      one;
        ts_root_form             form;

        ts_cylindrical_pair_gear(&pair, gear == 0 ? TS_GEAR_1 : TS_GEAR_2, &frame, &one);
        assert_true(ts_root_form_solve(&given, &form, NULL));
        assert_close(chord_of_outline(&frame, &one), form.s_Fn, 2e-3);
    }
}

/* ---- teeth thinned for backlash, ISO 6336-3, clause 6 (from memory) ---------------------------
 */

/* The gear whose teeth are E_sn thinner, normal at the reference circle, found by trial: nothing of
 * the formula of x_E is in it. */
static ts_cylindrical_gear thinned_gear(const ts_cylindrical_frame *frame, ts_cylindrical_gear gear,
                                        double E_sn)
{
    const double full = ts_gear_thickness(frame, &gear, gear.d) * cos(frame->beta);
    double       low = gear.in.x - 1.0, high = gear.in.x;

    for (int round = 0; round < 60; round++) {
        ts_cylindrical_gear_input in = gear.in;

        in.x = 0.5 * (low + high);
        ts_cylindrical_gear_solve(frame, &in, TS_GEAR_ALONE, &gear, NULL);
        if (ts_gear_thickness(frame, &gear, gear.d) * cos(frame->beta) > full + E_sn)
            high = in.x;
        else
            low = in.x;
    }
    return gear;
}

static ts_iso6336_prepared prepared_thin(const ts_cylindrical_pair *pair, double E_1, double E_2)
{
    ts_iso6336_mesh     mesh = sample_mesh();
    ts_iso6336_prepared prepared;

    mesh.gear[0].E_sni = E_1;
    mesh.gear[1].E_sni = E_2;
    assert_true(ts_iso6336_prepare(pair, &mesh, &prepared, NULL));
    return prepared;
}

static void a_thinned_tooth_is_rated_with_the_chord_of_its_generated_outline(void **state)
{
    (void)state;
    ts_cylindrical_pair_input in       = sample_pair();
    in.beta                            = 0.0;
    const ts_cylindrical_pair pair     = solved_pair(&in);
    const double              E_sni[2] = {-0.24e-3, -0.5e-3};
    const ts_iso6336_prepared full     = prepared_thin(&pair, 0.0, 0.0);
    const ts_iso6336_prepared thin     = prepared_thin(&pair, E_sni[0], E_sni[1]);

    for (int gear = 0; gear < 2; gear++) {
        ts_cylindrical_frame frame;
        ts_cylindrical_gear  one;

        ts_cylindrical_pair_gear(&pair, gear == 0 ? TS_GEAR_1 : TS_GEAR_2, &frame, &one);
        const ts_cylindrical_gear made = thinned_gear(&frame, one, E_sni[gear]);
        const double              s_Fn = thin.gear[gear].form.s_Fn;
        assert_close(made.in.x, thin.gear[gear].x_E, 1e-9);
        assert_close(chord_of_outline(&frame, &made), s_Fn, 2e-3);
        /* far more than the two thousandths of the outline */
        assert_true(s_Fn < full.gear[gear].form.s_Fn * 0.97);
        assert_true(thin.gear[gear].form.Y_F > full.gear[gear].form.Y_F * 1.02);
        /* nothing but the root changes */
        assert_close(thin.gear[gear].form.d_en, full.gear[gear].form.d_en, 0.0);
    }
    assert_close(thin.cp_100, full.cp_100, 0.0);
    assert_true(ts_remarks_have(thin.remarks, TS_REMARK_THIN_TEETH));
}

static void teeth_up_to_a_twentieth_of_a_module_thinner_count_as_full(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in    = sample_pair();
    const ts_cylindrical_pair       pair  = solved_pair(&in);
    const double                    limit = -0.05 * in.m_n;
    const ts_iso6336_prepared       full  = prepared_thin(&pair, 0.0, 0.0);
    const ts_iso6336_prepared       at    = prepared_thin(&pair, limit, 0.5e-3);
    const ts_iso6336_prepared       past  = prepared_thin(&pair, limit * 1.001, 0.0);

    for (int gear = 0; gear < 2; gear++) {
        assert_close(at.gear[gear].form.Y_F, full.gear[gear].form.Y_F, 0.0);
        assert_close(at.gear[gear].Y_S, full.gear[gear].Y_S, 0.0);
    }
    assert_false(ts_remarks_have(at.remarks, TS_REMARK_THIN_TEETH));
    assert_true(past.gear[0].form.Y_F > full.gear[0].form.Y_F);
    assert_close(past.gear[1].form.Y_F, full.gear[1].form.Y_F, 0.0);
    assert_true(ts_remarks_have(past.remarks, TS_REMARK_THIN_TEETH));
}

static void an_allowance_that_is_no_number_is_refused(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = sample_pair();
    const ts_cylindrical_pair       pair = solved_pair(&in);
    ts_iso6336_mesh                 mesh = sample_mesh();
    ts_iso6336_prepared             prepared;

    mesh.gear[1].E_sni = NAN;
    assert_false(ts_iso6336_prepare(&pair, &mesh, &prepared, NULL));
    assert_non_null(prepared.missing);
}

/* Pu Lianggui et al., Mechanical Design, table 10-5 (read in the bank): 20 teeth, load at the tip:
 * 2.80 and 1.55. */
static void a_textbook_entry_for_tip_load(void **state)
{
    (void)state;
    const ts_root_form_input in = {.z       = 20,
                                   .d       = 20e-3,
                                   .d_a     = 22e-3,
                                   .m_n     = 1e-3,
                                   .alpha_n = 20.0 * degree,
                                   .rack    = ts_basic_rack_A,
                                   .load    = TS_ROOT_LOAD_TIP};
    ts_root_form             form;

    assert_true(ts_root_form_solve(&in, &form, NULL));
    const ts_root_notch notch = ts_root_notch_of(form.s_Fn, form.h_Fe, form.rho_F, 0, NULL);
    assert_close(form.Y_F, 2.80, 5.5e-3);
    assert_close(notch.Y_S, 1.55, 5.5e-3);
}

/* derived: with very many teeth the virtual gear is a rack, whose chord at 30 degrees follows from
 * the tip round alone. */
static void many_teeth_tend_to_the_rack(void **state)
{
    (void)state;
    const double             z = 1e7, m_n = 1e-3, alpha = 20.0 * degree, rho = 0.38, h = 1.25;
    const ts_root_form_input in = {.z       = z,
                                   .d       = z * m_n,
                                   .d_a     = (z + 2.0) * m_n,
                                   .m_n     = m_n,
                                   .alpha_n = alpha,
                                   .rack    = {1.0, h, rho},
                                   .load    = TS_ROOT_LOAD_TIP};
    ts_root_form             form;

    assert_true(ts_root_form_solve(&in, &form, NULL));
    /* The tooth of a rack is half a pitch minus what the tip round leaves at its 30-degree point.
     */
    const double centre = pi / 4.0 + (h - rho) * tan(alpha) + rho / cos(alpha);
    const double chord  = 2.0 * (centre - rho * cos(30.0 * degree));
    assert_close(form.s_Fn / m_n, chord, 1e-5);
    assert_close(form.rho_F / m_n, rho, 1e-5);
}

static void more_shift_makes_a_thicker_root(void **state)
{
    (void)state;
    double before = 0.0;

    for (int step = 0; step <= 10; step++) {
        const double             x  = -0.2 + 0.08 * step;
        const ts_root_form_input in = {.z       = 25,
                                       .x       = x,
                                       .d       = 25e-3,
                                       .d_a     = (27.0 + 2.0 * x) * 1e-3,
                                       .m_n     = 1e-3,
                                       .alpha_n = 20.0 * degree,
                                       .rack    = ts_basic_rack_A,
                                       .load    = TS_ROOT_LOAD_TIP};
        ts_root_form             form;

        assert_true(ts_root_form_solve(&in, &form, NULL));
        assert_true(form.s_Fn > before);
        before = form.s_Fn;
    }
}

/* A residual undercut of the protuberance tool makes the root thinner by twice its depth across. */
static void a_protuberance_thins_the_root(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input pair_in = sample_pair();
    const ts_cylindrical_pair       pair    = solved_pair(&pair_in);
    ts_root_form_input              in      = form_input(&pair, 0);
    ts_root_form                    plain, cut;

    assert_true(ts_root_form_solve(&in, &plain, NULL));
    in.s_pr = 0.05e-3;
    assert_true(ts_root_form_solve(&in, &cut, NULL));
    assert_true(cut.s_Fn < plain.s_Fn - 1.5 * in.s_pr);
    assert_true(cut.Y_F > plain.Y_F);
}

/* A ring is the gear of a rack with a negative radius: the same trochoid, and the tangent stands at
 * 60 degrees.  (Towards its flank that trochoid turns back, since no rack can cut a ring there.) */
static void the_root_of_a_ring_is_where_a_search_finds_it(void **state)
{
    (void)state;
    for (int z = 50; z <= 150; z += 10) {
        const ts_root_form_input in = {.z         = -z,
                                       .x         = 0.1,
                                       .d         = -z * 1e-3,
                                       .d_a       = (2.2 - z) * 1e-3,
                                       .m_n       = 1e-3,
                                       .alpha_n   = 20.0 * degree,
                                       .eps_alpha = 1.7,
                                       .rack      = ts_basic_rack_A,
                                       .gear      = 1};
        ts_root_form             form;

        assert_true(ts_root_form_solve(&in, &form, NULL));
        const ts_tooth_curve   curve = virtual_curve(&in, form.z_n);
        const double           theta = search_tangent(&curve, 60.0 * degree, pi / 4.0);
        const ts_outline_point at    = ts_trochoid_point(&curve, theta);
        assert_close(form.s_Fn, 2.0 * fabs(at.x), 1e-7);
        assert_close(form.rho_F, radius_at(&curve, theta), 1e-5);
        assert_true(form.on_fillet);
        assert_true(form.h_Fe > 0.5e-3);
        assert_true(form.h_Fe < 2.2e-3);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_tangent_is_where_a_search_on_the_trochoid_finds_it),
        cmocka_unit_test(the_drawn_outline_has_the_same_root_chord),
        cmocka_unit_test(a_thinned_tooth_is_rated_with_the_chord_of_its_generated_outline),
        cmocka_unit_test(teeth_up_to_a_twentieth_of_a_module_thinner_count_as_full),
        cmocka_unit_test(an_allowance_that_is_no_number_is_refused),
        cmocka_unit_test(a_textbook_entry_for_tip_load),
        cmocka_unit_test(many_teeth_tend_to_the_rack),
        cmocka_unit_test(more_shift_makes_a_thicker_root),
        cmocka_unit_test(a_protuberance_thins_the_root),
        cmocka_unit_test(the_root_of_a_ring_is_where_a_search_finds_it),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
