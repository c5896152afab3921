/* bank/bind_cylindrical.c: published cases about pairs of spur and helical gears. */
#include "bank/bank_case.h"
#include "element/cylindrical_contact.h"
#include "element/cylindrical_pair.h"
#include "element/helical_force.h"
#include "element/mating_limit.h"
#include "element/tooth_force.h"

#include <math.h>

static ts_cylindrical_pair solved(ts_case *c, const ts_cylindrical_pair_input *in)
{
    ts_cylindrical_pair pair;
    const ts_pair_fault fault = ts_cylindrical_pair_solve(in, &pair, NULL);

    if (fault != TS_PAIR_FINE && fault != TS_PAIR_POINTED)
        ts_case_spoil(c, ts_pair_fault_says(fault), "the pair:");
    return pair;
}

/* A plain spur pair of rack A: what most textbook cases start from. */
static ts_cylindrical_pair_input read_spur(ts_case *c)
{
    ts_cylindrical_pair_input in = {
        .z_1     = ts_case_whole(c, "z1"),
        .z_2     = ts_case_whole(c, "z2"),
        .m_n     = ts_case_gives(c, "P") ? 1.0 / ts_case_per(c, "P", TS_KIND_LENGTH)
                                         : ts_case_given(c, "m", TS_KIND_LENGTH),
        .alpha_n = ts_case_given(c, "alpha", TS_KIND_ANGLE),
    };
    in.rack = ts_basic_rack_fitted(&ts_basic_rack_A, in.alpha_n);
    return in;
}

static void give_circles(ts_case *c, const ts_cylindrical_pair *pair)
{
    const struct {
        const char *name;
        double      value;
    } lengths[] = {
        {"a_w", fabs(pair->a_w)},
        {"d1", pair->d_1},
        {"d2", fabs(pair->d_2)},
        {"d_b1", pair->d_b1},
        {"d_b2", fabs(pair->d_b2)},
        {"d_w1", pair->d_w1},
        {"d_w2", fabs(pair->d_w2)},
        {"d_a1", pair->d_a1},
        {"d_a2", fabs(pair->d_a2)},
        {"d_f1", pair->d_f1},
        {"d_f2", fabs(pair->d_f2)},
        {"h_a1", (pair->d_a1 - pair->d_1) / 2.0},
        {"h_a2", (pair->d_a2 - pair->d_2) / 2.0},
        {"h", (pair->d_a1 - pair->d_f1) / 2.0},
    };

    for (size_t i = 0; i < sizeof lengths / sizeof lengths[0]; i++)
        ts_case_computed(c, lengths[i].name, lengths[i].value, TS_KIND_LENGTH);
    ts_case_computed(c, "inv_alpha_w", pair->inv_alpha_wt, TS_KIND_ANGLE);
    ts_case_computed(c, "alpha_w", pair->alpha_wt, TS_KIND_ANGLE);
    ts_case_computed(c, "inv_alpha_wt", pair->inv_alpha_wt, TS_KIND_ANGLE);
    ts_case_computed(c, "alpha_wt", pair->alpha_wt, TS_KIND_ANGLE);
    ts_case_computed(c, "eps_alpha", pair->eps_alpha, TS_KIND_NUMBER);
    ts_case_computed(c, "alpha_t", pair->alpha_t, TS_KIND_ANGLE);
}

static void ext_pair_from_shift(ts_case *c)
{
    ts_cylindrical_pair_input in = read_spur(c);

    in.x_1                         = ts_case_given(c, "x1", TS_KIND_NUMBER);
    in.x_2                         = ts_case_given(c, "x2", TS_KIND_NUMBER);
    in.tip                         = TS_TIP_CLEARANCE;
    const ts_cylindrical_pair pair = solved(c, &in);
    give_circles(c, &pair);
    ts_case_computed(c, "y", pair.y, TS_KIND_NUMBER);
}

/* The source keeps the ring's z, x, d, a and y positive; ISO 21771 turns them round.  The pinion's
 * and the ring's full addenda are kept. */
static void int_pair_from_shift(ts_case *c)
{
    ts_cylindrical_pair_input in = read_spur(c);

    in.z_2                         = -in.z_2;
    in.x_1                         = ts_case_given(c, "x1", TS_KIND_NUMBER);
    in.x_2                         = -ts_case_given(c, "x2", TS_KIND_NUMBER);
    const ts_cylindrical_pair pair = solved(c, &in);
    give_circles(c, &pair);
    ts_case_computed(c, "y", -pair.y, TS_KIND_NUMBER);
}

static void helical_normal_from_a(ts_case *c)
{
    ts_cylindrical_pair_input in = {
        .z_1     = ts_case_whole(c, "z1"),
        .z_2     = ts_case_whole(c, "z2"),
        .m_n     = ts_case_given(c, "m_n", TS_KIND_LENGTH),
        .alpha_n = ts_case_given(c, "alpha_n", TS_KIND_ANGLE),
        .beta    = ts_case_given(c, "beta", TS_KIND_ANGLE),
        .a_w     = ts_case_given(c, "a_w", TS_KIND_LENGTH),
        .x_1     = ts_case_given(c, "x_n1", TS_KIND_NUMBER),
        .x_2     = ts_case_given(c, "x_n2", TS_KIND_NUMBER),
        .tip     = TS_TIP_CLEARANCE,
    };

    in.rack                        = ts_basic_rack_fitted(&ts_basic_rack_A, in.alpha_n);
    const ts_cylindrical_pair pair = solved(c, &in);
    give_circles(c, &pair);
    ts_case_computed(c, "y", pair.y, TS_KIND_NUMBER);
    ts_case_computed(c, "sum_x", pair.sum_x, TS_KIND_NUMBER);
}

/* The transverse system counts module, addendum and shift in m_t: the same gear, with rack heights
 * of 1/cos(beta) and 1.25/cos(beta) normal modules. */
static void helical_transverse_from_a(ts_case *c)
{
    const double  beta = ts_case_given(c, "beta", TS_KIND_ANGLE), shrink = cos(beta);
    const double  alpha_t = ts_case_given(c, "alpha_t", TS_KIND_ANGLE);
    ts_basic_rack rack = {.h_aPs = 1.0 / shrink, .h_fPs = 1.25 / shrink, .rho_fPs = 0.38 / shrink};
    ts_cylindrical_pair_input in = {
        .z_1     = ts_case_whole(c, "z1"),
        .z_2     = ts_case_whole(c, "z2"),
        .m_n     = ts_case_given(c, "m_t", TS_KIND_LENGTH) * shrink,
        .alpha_n = atan(tan(alpha_t) * shrink),
        .beta    = beta,
        .a_w     = ts_case_given(c, "a_w", TS_KIND_LENGTH),
        .shift   = TS_SHIFT_REST_1,
        .tip     = TS_TIP_CLEARANCE,
    };

    in.rack                        = ts_basic_rack_fitted(&rack, in.alpha_n);
    const ts_cylindrical_pair pair = solved(c, &in);
    give_circles(c, &pair);
    ts_case_computed(c, "y", pair.y * shrink, TS_KIND_NUMBER);
    ts_case_computed(c, "sum_x", pair.sum_x * shrink, TS_KIND_NUMBER);
}

static void helical_dims(ts_case *c)
{
    ts_cylindrical_pair_input in = {
        .z_1     = ts_case_whole(c, "z1"),
        .z_2     = ts_case_whole(c, "z2"),
        .m_n     = ts_case_given(c, "m_n", TS_KIND_LENGTH),
        .alpha_n = ts_case_given(c, "alpha_n", TS_KIND_ANGLE),
        .beta    = ts_case_given(c, "beta", TS_KIND_ANGLE),
    };
    ts_cylindrical_frame frame;
    ts_cylindrical_gear  gear;

    in.rack                        = ts_basic_rack_fitted(&ts_basic_rack_A, in.alpha_n);
    const ts_cylindrical_pair pair = solved(c, &in);
    give_circles(c, &pair);
    ts_cylindrical_pair_gear(&pair, TS_GEAR_1, &frame, &gear);
    ts_case_computed(c, "m_t", frame.m_t, TS_KIND_LENGTH);
    ts_case_computed(c, "p_x", frame.p_x, TS_KIND_LENGTH);
    ts_case_computed(c, "p_t", frame.p_t, TS_KIND_LENGTH);
}

/* ---- contact --------------------------------------------------------------------------------- */

/* Standard centres, addenda as lengths. */
static ts_cylindrical_pair_input read_with_addenda(ts_case *c)
{
    ts_cylindrical_pair_input in = read_spur(c);

    in.tip  = TS_TIP_DIAMETERS;
    in.d_a1 = in.z_1 * in.m_n + 2.0 * ts_case_given(c, "h_a1", TS_KIND_LENGTH);
    in.d_a2 = in.z_2 * in.m_n + 2.0 * ts_case_given(c, "h_a2", TS_KIND_LENGTH);
    return in;
}

static void give_path(ts_case *c, const ts_cylindrical_pair *pair)
{
    if (ts_case_expects_in(c, "path", "modules"))
        ts_case_counted(c, "path", pair->g_alpha / pair->in.m_n);
    else
        ts_case_computed(c, "path", pair->g_alpha, TS_KIND_LENGTH);
    ts_case_computed(c, "arc", ts_arc_of_contact(pair, NULL), TS_KIND_LENGTH);
}

static void path_of_contact(ts_case *c)
{
    const ts_cylindrical_pair_input in = read_with_addenda(c);

    const ts_cylindrical_pair pair = solved(c, &in);
    const double              r_1 = pair.d_w1 / 2.0, u = pair.u;
    give_path(c, &pair);
    ts_case_computed(c, "eps_alpha", pair.eps_alpha, TS_KIND_NUMBER);
    ts_case_computed(c, "pinion_angle", ts_turn_in_contact_1(&pair, NULL), TS_KIND_ANGLE);
    ts_case_computed(c, "gear_angle", ts_turn_in_contact_2(&pair, NULL), TS_KIND_ANGLE);
    /* Sliding over the speed of rolling at the pitch circle, as some textbooks define it. */
    ts_case_computed(c, "slide_over_roll_approach", ts_sliding_speed(1.0 / r_1, u, pair.g_f, NULL),
                     TS_KIND_NUMBER);
    ts_case_computed(c, "slide_over_roll_recess", ts_sliding_speed(1.0 / r_1, u, pair.g_a, NULL),
                     TS_KIND_NUMBER);
    if (!ts_case_gives(c, "v_t"))
        return;
    const double omega_1 = ts_case_given(c, "v_t", TS_KIND_VELOCITY) / r_1;
    ts_case_computed(c, "v_slide_approach", ts_sliding_speed(omega_1, u, pair.g_f, NULL),
                     TS_KIND_VELOCITY);
    ts_case_computed(c, "v_slide_recess", ts_sliding_speed(omega_1, u, pair.g_a, NULL),
                     TS_KIND_VELOCITY);
}

static void half_path_addenda(ts_case *c)
{
    ts_cylindrical_pair_input in = read_spur(c);

    const ts_cylindrical_pair plain = solved(c, &in);
    /* The longest approach is the base tangent of gear 1 up to the pitch point, the longest recess
     * the rest of the line of action. */
    const double r_a1 = ts_tip_radius_for_path_1(&plain, (plain.rho_T - plain.rho_C1) / 2.0, NULL);
    const double r_a2 = ts_tip_radius_for_path_2(&plain, plain.rho_C1 / 2.0, NULL);
    ts_case_computed(c, "h_a1", r_a1 - plain.d_1 / 2.0, TS_KIND_LENGTH);
    ts_case_computed(c, "h_a2", r_a2 - plain.d_2 / 2.0, TS_KIND_LENGTH);

    in.tip                         = TS_TIP_DIAMETERS;
    in.d_a1                        = 2.0 * r_a1;
    in.d_a2                        = 2.0 * r_a2;
    const ts_cylindrical_pair pair = solved(c, &in);
    give_path(c, &pair);
}

static void interference_addenda(ts_case *c)
{
    const ts_cylindrical_pair_input in = read_spur(c);

    const ts_cylindrical_pair pair = solved(c, &in);
    ts_case_computed(c, "h_a1_max", ts_tip_radius_most_1(&pair, NULL) - pair.d_1 / 2.0,
                     TS_KIND_LENGTH);
    ts_case_computed(c, "h_a2_max", ts_tip_radius_most_2(&pair, NULL) - pair.d_2 / 2.0,
                     TS_KIND_LENGTH);
}

static void give_least_teeth(ts_case *c, double k, double alpha_t, double beta)
{
    ts_case_computed(c, "rack", ts_teeth_least_with_rack(k, alpha_t, beta, NULL), TS_KIND_NUMBER);
    ts_case_computed(c, "equal", ts_teeth_least_at_ratio(k, alpha_t, beta, 1.0, NULL),
                     TS_KIND_NUMBER);
    if (ts_case_gives(c, "m_G")) {
        const double u = ts_case_given(c, "m_G", TS_KIND_NUMBER);

        ts_case_computed(c, "ratio", ts_teeth_least_at_ratio(k, alpha_t, beta, u, NULL),
                         TS_KIND_NUMBER);
    }
    if (ts_case_gives(c, "z1")) {
        const int z_1 = ts_case_whole(c, "z1");

        ts_case_computed(c, "gear_max_for_z1", ts_teeth_most_of_wheel(k, alpha_t, beta, z_1, NULL),
                         TS_KIND_NUMBER);
    }
}

static void min_teeth(ts_case *c)
{
    const double k     = ts_case_given(c, "k", TS_KIND_NUMBER);
    const double alpha = ts_case_given(c, "alpha", TS_KIND_ANGLE);

    give_least_teeth(c, k, alpha, 0.0);
}

static void helical_min_teeth(ts_case *c)
{
    const double         k     = ts_case_given(c, "k", TS_KIND_NUMBER);
    ts_cylindrical_frame frame = {.m_n     = 1.0,
                                  .alpha_n = ts_case_given(c, "phi_n", TS_KIND_ANGLE),
                                  .beta    = ts_case_given(c, "psi", TS_KIND_ANGLE)};

    if (!ts_cylindrical_frame_sound(&frame))
        ts_case_spoil(c, "are out of range", "phi_n or psi");
    ts_cylindrical_frame_solve(&frame, NULL);
    ts_case_computed(c, "phi_t", frame.alpha_t, TS_KIND_ANGLE);
    give_least_teeth(c, k, frame.alpha_t, frame.beta);
}

/* Sizes at standard centres, and the pressure angle and pitch circles when they are spread. */
static void us_spur_mesh(ts_case *c)
{
    ts_cylindrical_pair_input in = read_spur(c);
    ts_cylindrical_frame      frame;
    ts_cylindrical_gear       gear;

    const ts_cylindrical_pair pair = solved(c, &in);
    ts_cylindrical_pair_gear(&pair, TS_GEAR_1, &frame, &gear);
    ts_case_computed(c, "p_c", frame.p_t, TS_KIND_LENGTH);
    ts_case_computed(c, "p_b", pair.p_bt, TS_KIND_LENGTH);
    ts_case_computed(c, "C", pair.a, TS_KIND_LENGTH);
    ts_case_computed(c, "Z", pair.g_alpha, TS_KIND_LENGTH);
    ts_case_computed(c, "m_p", pair.eps_alpha, TS_KIND_NUMBER);
    ts_case_computed(c, "r_b1", pair.d_b1 / 2.0, TS_KIND_LENGTH);
    ts_case_computed(c, "r_b2", pair.d_b2 / 2.0, TS_KIND_LENGTH);
    ts_case_computed(c, "d1", pair.d_1, TS_KIND_LENGTH);
    ts_case_computed(c, "d2", pair.d_2, TS_KIND_LENGTH);
    ts_case_computed(c, "d_a1", pair.d_a1, TS_KIND_LENGTH);
    ts_case_computed(c, "d_a2", pair.d_a2, TS_KIND_LENGTH);

    in.a_w = pair.a * ts_case_given_or(c, "spread", TS_KIND_NUMBER, 1.0) +
             ts_case_given_or(c, "delta_c", TS_KIND_LENGTH, 0.0);
    const ts_cylindrical_pair spread = solved(c, &in);
    ts_case_computed(c, "phi_spread", spread.alpha_wt, TS_KIND_ANGLE);
    ts_case_computed(c, "d_w1", spread.d_w1, TS_KIND_LENGTH);
    ts_case_computed(c, "d_w2", spread.d_w2, TS_KIND_LENGTH);
}

static void test_rig_pair(ts_case *c)
{
    ts_cylindrical_pair_input in = read_spur(c);

    in.a_w                         = ts_case_given(c, "a_w", TS_KIND_LENGTH);
    in.tip                         = TS_TIP_DIAMETERS;
    in.d_a1                        = ts_case_given(c, "d_a1", TS_KIND_LENGTH);
    in.d_a2                        = ts_case_given(c, "d_a2", TS_KIND_LENGTH);
    const ts_cylindrical_pair pair = solved(c, &in);
    const double              v_ga = ts_sliding_speed(2.0 / pair.d_w1, pair.u, pair.g_a, NULL);
    give_circles(c, &pair);
    ts_case_computed(c, "sum_x", pair.sum_x, TS_KIND_NUMBER);
    ts_case_computed(c, "v_ga_over_v", v_ga, TS_KIND_NUMBER);
    ts_case_computed(c, "zeta_A1", pair.zeta_A1, TS_KIND_NUMBER);
    ts_case_computed(c, "zeta_E2", pair.zeta_E2, TS_KIND_NUMBER);
}

static void backlash_from_centre(ts_case *c)
{
    ts_cylindrical_pair_input in      = read_spur(c);
    const double              delta_a = ts_case_given(c, "delta_a", TS_KIND_LENGTH);

    const ts_cylindrical_pair closed = solved(c, &in);
    in.a_w                           = closed.a_w + delta_a;
    const ts_cylindrical_pair open   = solved(c, &in);
    ts_case_computed(c, "j_bn", open.j_bn, TS_KIND_LENGTH);
    ts_case_computed(c, "j_wt", open.j_wt, TS_KIND_LENGTH);
    ts_case_computed(c, "j_small_angle", ts_backlash_opened(delta_a, closed.alpha_wt, NULL),
                     TS_KIND_LENGTH);
}

/* ---- forces ---------------------------------------------------------------------------------- */

/* A gear without profile shift: working circle and reference circle are one. */
typedef struct driven_gear {
    double d, v, F_t, alpha_t;
} driven_gear;

static driven_gear drive_gear(ts_case *c, ts_cylindrical_frame *frame, double P, double omega)
{
    const int z = ts_case_whole(c, "z1");

    if (!ts_cylindrical_frame_sound(frame) || z < 1 || !(omega > 0.0))
        ts_case_spoil(c, "are out of range", "module, angles, teeth or speed");
    ts_cylindrical_frame_solve(frame, NULL);
    const ts_cylindrical_gear_input in = {
        .z = z, .rack = ts_basic_rack_fitted(&ts_basic_rack_A, frame->alpha_n)};
    ts_cylindrical_gear gear;
    ts_cylindrical_gear_solve(frame, &in, TS_GEAR_ALONE, &gear, NULL);
    return (driven_gear){
        .d       = gear.d,
        .v       = ts_pitch_line_velocity(omega, gear.d, NULL),
        .F_t     = ts_tangential_force(ts_torque_of_power(P, omega, NULL), gear.d, NULL),
        .alpha_t = frame->alpha_t,
    };
}

static void helical_force_us(ts_case *c)
{
    ts_cylindrical_frame frame = {.m_n     = 1.0 / ts_case_per(c, "P_n", TS_KIND_LENGTH),
                                  .alpha_n = ts_case_given(c, "phi_n", TS_KIND_ANGLE),
                                  .beta    = ts_case_given(c, "psi", TS_KIND_ANGLE)};
    const double         P     = ts_case_given(c, "H", TS_KIND_POWER);
    const double         omega = ts_case_given(c, "n1", TS_KIND_ROTATIONAL_SPEED);

    const driven_gear      gear  = drive_gear(c, &frame, P, omega);
    const ts_helical_force force = ts_helical_forces(gear.F_t, frame.alpha_n, frame.beta, NULL);
    ts_case_computed(c, "phi_t", gear.alpha_t, TS_KIND_ANGLE);
    ts_case_computed(c, "d", gear.d, TS_KIND_LENGTH);
    ts_case_computed(c, "V", gear.v, TS_KIND_VELOCITY);
    ts_case_computed(c, "W_t", gear.F_t, TS_KIND_FORCE);
    ts_case_computed(c, "W_r", force.F_r, TS_KIND_FORCE);
    ts_case_computed(c, "W_a", force.F_a, TS_KIND_FORCE);
    ts_case_computed(c, "W", force.F_n, TS_KIND_FORCE);
}

static void helical_force_si(ts_case *c)
{
    ts_cylindrical_frame frame = {.m_n     = ts_case_given(c, "m_n", TS_KIND_LENGTH),
                                  .alpha_n = ts_case_given(c, "alpha_n", TS_KIND_ANGLE),
                                  .beta    = ts_case_given(c, "beta", TS_KIND_ANGLE)};
    const double         P     = ts_case_given(c, "P", TS_KIND_POWER);
    const double         omega = ts_case_given(c, "n1", TS_KIND_ROTATIONAL_SPEED);

    const driven_gear      gear  = drive_gear(c, &frame, P, omega);
    const ts_helical_force force = ts_helical_forces(gear.F_t, frame.alpha_n, frame.beta, NULL);
    ts_case_computed(c, "F_t", gear.F_t, TS_KIND_FORCE);
    ts_case_computed(c, "F_a", force.F_a, TS_KIND_FORCE);
    ts_case_computed(c, "F_r", force.F_r, TS_KIND_FORCE);
    ts_case_computed(c, "F_n", force.F_n, TS_KIND_FORCE);
}

static const ts_binding bindings[] = {
    {"ext_pair_from_shift", ext_pair_from_shift},
    {"int_pair_from_shift", int_pair_from_shift},
    {"helical_normal_from_a", helical_normal_from_a},
    {"helical_transverse_from_a", helical_transverse_from_a},
    {"helical_dims", helical_dims},
    {"path_of_contact", path_of_contact},
    {"half_path_addenda", half_path_addenda},
    {"interference_addenda", interference_addenda},
    {"min_teeth", min_teeth},
    {"helical_min_teeth", helical_min_teeth},
    {"us_spur_mesh", us_spur_mesh},
    {"test_rig_pair", test_rig_pair},
    {"backlash_from_centre", backlash_from_centre},
    {"helical_force_us", helical_force_us},
    {"helical_force_si", helical_force_si},
};
TS_BINDINGS(bindings);
