/* Does a shaft bend as the closed forms say, in both planes, stepped, sheared and on springs? */
#include "element/shaft_beam.h"
#include "support/close.h"

static const double pi = 3.14159265358979323846;

static ts_beam_frame  frame;
static ts_beam_result result;

static void solve(const ts_beam *beam, const ts_beam_load *loads, int count)
{
    assert_int_equal(ts_beam_prepare(beam, &frame), TS_BEAM_FINE);
    assert_int_equal(ts_beam_solve(beam, &frame, loads, count, &result), TS_BEAM_FINE);
}

static double second_moment(double d_o, double d_i)
{
    return pi / 64.0 * (pow(d_o, 4.0) - pow(d_i, 4.0));
}

/* A bar of 30/10 mm and 400 mm. */
static const ts_beam_section bar[] = {{0.0, 0.4, 0.03, 0.01}};
static const double          E = 206e9, G = 79e9;

/* S. Timoshenko, Strength of Materials I: W L^3/48 EI, and W L/(4 k G A) for shear (derived). */
static void middle_load_bends_by_the_closed_form(void **state)
{
    (void)state;
    const ts_beam_support ends[]   = {{0.0, INFINITY, 0.0, true}, {0.4, INFINITY, 0.0, false}};
    const double          middle[] = {0.2};
    const ts_beam_load    load     = {.x = 0.2, .F_y = -1000.0};
    ts_beam               beam     = {.sections      = bar,
                                      .supports      = ends,
                                      .places        = middle,
                                      .section_count = 1,
                                      .support_count = 2,
                                      .place_count   = 1,
                                      .E             = E,
                                      .G             = G};
    const double          EI = E * second_moment(0.03, 0.01), thin = -1000.0 * 0.064 / (48.0 * EI);

    solve(&beam, &load, 1);
    assert_int_equal(frame.count, 3); /* the load stands where the place is */
    assert_close(result.left[1].v_y, thin, 1e-12);
    assert_close(result.reaction[0].F_y, 500.0, 1e-12);
    assert_close(result.reaction[1].F_r, 500.0, 1e-12);
    assert_close(result.left[1].M_y, 500.0 * 0.2, 1e-12);
    assert_close(result.left[0].theta_y, -1000.0 * 0.16 / (16.0 * EI), 1e-12);

    beam.shear        = true;
    const double kGA  = ts_shear_coefficient(0.03, 0.01, E / (2.0 * G) - 1.0) * G * pi / 4.0 * 8e-4;
    const double more = -1000.0 * 0.4 / (4.0 * kGA);
    solve(&beam, &load, 1);
    assert_close(result.left[1].v_y, thin + more, 1e-12);
}

/* Cowper (1966), by hand: solid 6(1 + nu)/(7 + 6 nu), thin tube 2(1 + nu)/(4 + 3 nu), and between.
 */
static void shear_takes_the_share_of_its_section(void **state)
{
    (void)state;
    assert_close(ts_shear_coefficient(0.03, 0.0, 0.3), 7.8 / 8.8, 1e-14);
    assert_close(ts_shear_coefficient(0.03, 0.03, 0.3), 2.6 / 4.9, 1e-14);
    assert_close(ts_shear_coefficient(0.03, 0.015, 0.3), 12.1875 / 19.65, 1e-14);
}

/* Derived: a clamped bar with a force and a couple at its end, F L^3/3EI + M L^2/2EI. */
static void clamped_bar_bends_by_the_closed_form(void **state)
{
    (void)state;
    const ts_beam_support wall[]  = {{0.0, INFINITY, INFINITY, true}};
    const ts_beam_load    loads[] = {{.x = 0.4, .F_y = 50.0, .M_z = 7.0, .F_x = 11.0},
                                     {.x = 0.4, .F_z = -20.0, .M_y = 3.0}};
    const ts_beam         beam    = {
                   .sections = bar, .supports = wall, .section_count = 1, .support_count = 1, .E = E, .G = G};
    const double EI = E * second_moment(0.03, 0.01), L = 0.4;

    solve(&beam, loads, 2);
    assert_close(result.left[1].v_y, 50.0 * L * L * L / (3.0 * EI) + 7.0 * L * L / (2.0 * EI),
                 1e-12);
    assert_close(result.left[1].v_z, -20.0 * L * L * L / (3.0 * EI) - 3.0 * L * L / (2.0 * EI),
                 1e-12);
    /* The wall balances forces and moments about the origin: M = r x F. */
    assert_close(result.reaction[0].M_z, -(7.0 + L * 50.0), 1e-12);
    assert_close(result.reaction[0].M_y, -(3.0 + L * 20.0), 1e-12);
    assert_close(result.reaction[0].F_x, -11.0, 1e-14);
    assert_close(result.left[1].N, 11.0, 1e-14);
    assert_same_double(result.axial_rest, 0.0);
}

/* Derived: theorem of three moments; equal spans loaded in the middle: 5/16, 22/16, 5/16. */
static void three_supports_share_as_the_theorem_says(void **state)
{
    (void)state;
    const ts_beam_section pieces[]   = {{0.0, 0.13, 0.02, 0.0}, {0.13, 0.6, 0.02, 0.0}};
    const ts_beam_support supports[] = {
        {0.0, INFINITY, 0.0, false}, {0.3, INFINITY, 0.0, false}, {0.6, INFINITY, 0.0, true}};
    const double       places[] = {0.15, 0.45};
    const ts_beam_load loads[]  = {{.x = 0.15, .F_z = 800.0}, {.x = 0.45, .F_z = 800.0}};
    const ts_beam      beam     = {.sections      = pieces,
                                   .supports      = supports,
                                   .places        = places,
                                   .section_count = 2,
                                   .support_count = 3,
                                   .place_count   = 2,
                                   .E             = E,
                                   .G             = G};

    solve(&beam, loads, 2);
    assert_close(result.reaction[0].F_z, -800.0 * 5.0 / 16.0, 1e-11);
    assert_close(result.reaction[1].F_z, -800.0 * 22.0 / 16.0, 1e-11);
    assert_close(result.reaction[2].F_z, -800.0 * 5.0 / 16.0, 1e-11);
    assert_close(result.left[ts_beam_station(&frame, 0.3)].M_z, 3.0 / 16.0 * 800.0 * 0.3, 1e-11);
}

/* Derived: a bar that rests at one end and is held against tilting by k_t at the other.  By Mohr
 * the slope there is P L^2/16 EI - M L/3 EI, which is M/k_t: M = (3 P L/16)/(1 + 3 EI/(k_t L)). */
static void a_spring_against_tilting_shares_by_its_stiffness(void **state)
{
    (void)state;
    const double       EI = E * second_moment(0.03, 0.01), L = 0.4, P = 1000.0;
    const double       k_t[]    = {0.05, 0.5 * EI / L, 3.0 * EI / L, 40.0 * EI / L};
    const double       middle[] = {0.2};
    const ts_beam_load load     = {.x = 0.2, .F_y = -P, .F_z = -P};

    for (int i = 0; i < 4; i++) {
        const ts_beam_support ends[] = {{0.0, INFINITY, k_t[i], true}, {L, INFINITY, 0.0, false}};
        const ts_beam         beam   = {.sections      = bar,
                                        .supports      = ends,
                                        .places        = middle,
                                        .section_count = 1,
                                        .support_count = 2,
                                        .place_count   = 1,
                                        .E             = E,
                                        .G             = G};
        const double          M      = 3.0 * P * L / 16.0 / (1.0 + 3.0 * EI / (k_t[i] * L));

        solve(&beam, &load, 1);
        assert_close(result.reaction[0].M_z, M, 1e-11);
        assert_close(result.reaction[0].M_y, -M, 1e-11);
        assert_close(result.reaction[1].F_y, P / 2.0 - M / L, 1e-11);
        assert_close(result.reaction[0].F_z, P / 2.0 + M / L, 1e-11);
        assert_close(result.left[0].theta_y, -M / k_t[i], 1e-11);
    }
}

/* Derived: a rigid bar on two springs sinks by its share of the load. */
static void springs_give_way_by_their_load(void **state)
{
    (void)state;
    const ts_beam_section stout[]   = {{0.0, 0.5, 0.4, 0.0}};
    const ts_beam_support springs[] = {{0.1, 2e5, 0.0, false}, {0.5, 5e5, 0.0, false}};
    const double          places[]  = {0.2};
    const ts_beam_load    load      = {.x = 0.2, .F_y = 100.0, .F_x = 30.0};
    const ts_beam         beam      = {.sections      = stout,
                                       .supports      = springs,
                                       .places        = places,
                                       .section_count = 1,
                                       .support_count = 2,
                                       .place_count   = 1,
                                       .E             = 1e14,
                                       .G             = 1e14 / 2.6};

    solve(&beam, &load, 1);
    assert_close(result.reaction[0].F_y, -75.0, 1e-10);
    assert_close(result.left[ts_beam_station(&frame, 0.1)].v_y, 75.0 / 2e5, 1e-6);
    assert_close(result.left[ts_beam_station(&frame, 0.5)].v_y, 25.0 / 5e5, 1e-6);
    assert_close(result.axial_rest, 30.0, 1e-14); /* nothing locates this shaft */
}

/* ---- a stepped shaft by a second route ---------------------------------------------------------
 */

static const ts_beam_section stepped[]  = {{0.00, 0.04, 0.020, 0.008},
                                           {0.04, 0.11, 0.030, 0.008},
                                           {0.11, 0.18, 0.036, 0.012},
                                           {0.18, 0.25, 0.022, 0.012}};
static const ts_beam_support journals[] = {{0.02, INFINITY, 0.0, true},
                                           {0.20, INFINITY, 0.0, false}};
static const double          meshes[]   = {0.08, 0.15, 0.24};

static ts_beam stepped_shaft(void)
{
    return (ts_beam){.sections      = stepped,
                     .supports      = journals,
                     .places        = meshes,
                     .section_count = 4,
                     .support_count = 2,
                     .place_count   = 3,
                     .E             = E,
                     .G             = G,
                     .shear         = true};
}

/* Derived: unit load (Castigliano, Mohr): v = sum of integral M m/EI + Q q/kGA, by Simpson's rule,
 * which is exact for products of straight lines. */
static double bending_at(double x, double place, double force)
{
    const double a = 0.02, b = 0.20, R_a = -force * (b - place) / (b - a);
    double       M = 0.0;

    M += x > a ? R_a * (x - a) : 0.0;
    M += x > place ? force * (x - place) : 0.0;
    M += x > b ? (-force - R_a) * (x - b) : 0.0;
    return M;
}

static double shear_at(double x, double place, double force)
{
    const double a = 0.02, b = 0.20, R_a = -force * (b - place) / (b - a);

    return (x > a ? R_a : 0.0) + (x > place ? force : 0.0) + (x > b ? -force - R_a : 0.0);
}

static double sunk(double load_place, double force, double place)
{
    static const double cuts[] = {0.0, 0.02, 0.04, 0.08, 0.11, 0.15, 0.18, 0.20, 0.24, 0.25};
    double              sum    = 0.0;

    for (int i = 0; i + 1 < 10; i++) {
        const double x_1 = cuts[i] + 1e-15, x_2 = cuts[i + 1] - 1e-15, mid = (x_1 + x_2) / 2.0;
        int          s = 0;

        while (mid > stepped[s].x_2)
            s++;
        const double d_o = stepped[s].d_o, d_i = stepped[s].d_i;
        const double EI  = E * second_moment(d_o, d_i);
        const double kGA = ts_shear_coefficient(d_o, d_i, E / (2.0 * G) - 1.0) * G * pi / 4.0 *
                           (d_o * d_o - d_i * d_i);
        double MM = bending_at(x_1, load_place, force) * bending_at(x_1, place, 1.0) +
                    4.0 * bending_at(mid, load_place, force) * bending_at(mid, place, 1.0) +
                    bending_at(x_2, load_place, force) * bending_at(x_2, place, 1.0);

        sum += MM / 6.0 * (x_2 - x_1) / EI;
        sum += shear_at(mid, load_place, force) * shear_at(mid, place, 1.0) * (x_2 - x_1) / kGA;
    }
    return sum;
}

static void stepped_shaft_agrees_with_the_unit_load_method(void **state)
{
    (void)state;
    const ts_beam      beam    = stepped_shaft();
    const ts_beam_load loads[] = {{.x = 0.08, .F_y = 700.0, .F_z = -250.0},
                                  {.x = 0.15, .F_y = -400.0, .F_z = 900.0},
                                  {.x = 0.24, .F_y = 120.0}};

    solve(&beam, loads, 3);
    for (int i = 0; i < 3; i++) {
        const ts_beam_state *s   = &result.left[ts_beam_station(&frame, meshes[i])];
        double               v_y = 0.0, v_z = 0.0;

        for (int k = 0; k < 3; k++) {
            v_y += sunk(loads[k].x, loads[k].F_y, meshes[i]);
            v_z += sunk(loads[k].x, loads[k].F_z, meshes[i]);
        }
        assert_close(s->v_y, v_y, 1e-9);
        assert_close(s->v_z, v_z, 1e-9);
    }
}

/* Derived (Maxwell, Betti): the path of one place under a force at another is the same both ways,
 * and turning under a force is the path under a couple. */
static void influence_goes_both_ways(void **state)
{
    (void)state;
    const ts_beam      beam  = stepped_shaft();
    const ts_beam_load first = {.x = 0.08, .F_y = 1.0}, second = {.x = 0.24, .F_y = 1.0};
    const ts_beam_load turn = {.x = 0.24, .M_z = 1.0};

    solve(&beam, &first, 1);
    const double path  = result.left[ts_beam_station(&frame, 0.24)].v_y;
    const double slope = result.left[ts_beam_station(&frame, 0.24)].theta_y;
    solve(&beam, &second, 1);
    assert_close(result.left[ts_beam_station(&frame, 0.08)].v_y, path, 1e-11);
    solve(&beam, &turn, 1);
    assert_close(result.left[ts_beam_station(&frame, 0.08)].v_y, slope, 1e-11);
}

/* Turning all loads about the shaft turns the answer with them. */
static void answer_turns_with_the_loads(void **state)
{
    (void)state;
    const ts_beam beam = stepped_shaft();
    const double  a = 0.7, c = cos(a), s = sin(a);
    const double  F_y = 300.0, F_z = -800.0, M_y = 9.0, M_z = -4.0;
    ts_beam_load  load = {.x = 0.15, .F_y = F_y, .F_z = F_z, .M_y = M_y, .M_z = M_z};

    solve(&beam, &load, 1);
    const ts_beam_state plain = result.left[ts_beam_station(&frame, 0.24)];
    const double        F_r   = result.reaction[0].F_r;
    load.F_y                  = c * F_y - s * F_z;
    load.F_z                  = s * F_y + c * F_z;
    load.M_y                  = c * M_y - s * M_z;
    load.M_z                  = s * M_y + c * M_z;
    solve(&beam, &load, 1);
    const ts_beam_state turned = result.left[ts_beam_station(&frame, 0.24)];
    assert_close(turned.v_y, c * plain.v_y - s * plain.v_z, 1e-10);
    assert_close(turned.v_z, s * plain.v_y + c * plain.v_z, 1e-10);
    assert_close(result.reaction[0].F_r, F_r, 1e-11);
}

static void everything_balances_and_twists(void **state)
{
    (void)state;
    const ts_beam      beam    = stepped_shaft();
    const ts_beam_load loads[] = {
        {.x = 0.08, .F_x = 40.0, .F_y = 500.0, .F_z = 90.0, .T = 12.0, .M_y = 3.0, .M_z = -2.0},
        {.x = 0.24, .F_x = -15.0, .F_y = -80.0, .F_z = 300.0, .T = -12.0}};

    solve(&beam, loads, 2);
    double F_x = 25.0, F_y = 420.0, F_z = 390.0, M_y = 3.0, M_z = -2.0;
    for (int k = 0; k < 2; k++) {
        const ts_beam_reaction *r = &result.reaction[k];

        F_x += r->F_x;
        F_y += r->F_y;
        F_z += r->F_z;
        M_z += journals[k].x * r->F_y;
        M_y -= journals[k].x * r->F_z;
    }
    M_z += 0.08 * 500.0 - 0.24 * 80.0;
    M_y -= 0.08 * 90.0 + 0.24 * 300.0;
    assert_close_abs(F_x, 0.0, 1e-12);
    assert_close_abs(F_y, 0.0, 1e-9);
    assert_close_abs(F_z, 0.0, 1e-9);
    assert_close_abs(M_y, 0.0, 1e-9);
    assert_close_abs(M_z, 0.0, 1e-9);
    assert_close_abs(result.torque_rest, 0.0, 1e-12);
    const ts_beam_state *end = &result.right[result.count - 1];
    assert_close_abs(end->Q_y, 0.0, 1e-9);
    assert_close_abs(end->M_y, 0.0, 1e-10);
    assert_close_abs(end->T, 0.0, 1e-12);
    assert_close_abs(end->N, 0.0, 1e-12);

    double twist = 0.0; /* derived: between the torques, T dx/GJ */
    twist += 0.03 / second_moment(0.030, 0.008) + 0.07 / second_moment(0.036, 0.012) +
             0.06 / second_moment(0.022, 0.012);
    assert_close(end->phi, -12.0 * twist / (2.0 * G), 1e-12);
}

/* A step of a hundredth of a millimetre costs no accuracy. */
static void tiny_steps_do_no_harm(void **state)
{
    (void)state;
    const ts_beam_support ends[]   = {{0.0, INFINITY, 0.0, true}, {0.4, INFINITY, 0.0, false}};
    const ts_beam_section pieces[] = {
        {0.0, 0.2, 0.03, 0.01}, {0.2, 0.20001, 0.03, 0.01}, {0.20001, 0.4, 0.03, 0.01}};
    const ts_beam_load load = {.x = 0.2, .F_y = -1000.0};
    ts_beam            beam = {.sections      = pieces,
                               .supports      = ends,
                               .section_count = 3,
                               .support_count = 2,
                               .E             = E,
                               .G             = G};

    solve(&beam, &load, 1);
    assert_close(result.left[1].v_y, -1000.0 * 0.064 / (48.0 * E * second_moment(0.03, 0.01)),
                 1e-11);
}

static void impossible_shafts_are_refused(void **state)
{
    (void)state;
    const ts_beam_support two[]  = {{0.02, INFINITY, 0.0, true}, {0.20, INFINITY, 0.0, true}};
    const ts_beam_support far[]  = {{0.02, INFINITY, 0.0, true}, {0.30, INFINITY, 0.0, false}};
    const ts_beam_section gap[]  = {{0.0, 0.1, 0.02, 0.0}, {0.2, 0.3, 0.02, 0.0}};
    const ts_beam_section wide[] = {{0.0, 0.3, 0.02, 0.02}};
    const ts_beam_load    off = {.x = 0.1234, .F_y = 1.0}, nan = {.x = 0.08, .F_y = NAN};
    ts_beam               beam = stepped_shaft();

    assert_int_equal(ts_beam_prepare(&beam, &frame), TS_BEAM_FINE);
    assert_int_equal(ts_beam_solve(&beam, &frame, &off, 1, &result), TS_BEAM_OUTSIDE);
    assert_int_equal(ts_beam_solve(&beam, &frame, &nan, 1, &result), TS_BEAM_BAD_NUMBER);
    beam.support_count = 1;
    assert_int_equal(ts_beam_prepare(&beam, &frame), TS_BEAM_TOO_FEW);
    beam.support_count = 2;
    beam.supports      = two;
    assert_int_equal(ts_beam_prepare(&beam, &frame), TS_BEAM_TWO_LOCATE);
    beam.supports = far;
    assert_int_equal(ts_beam_prepare(&beam, &frame), TS_BEAM_OUTSIDE);
    beam               = stepped_shaft();
    beam.sections      = gap;
    beam.section_count = 2;
    assert_int_equal(ts_beam_prepare(&beam, &frame), TS_BEAM_BAD_SECTION);
    beam.sections      = wide;
    beam.section_count = 1;
    assert_int_equal(ts_beam_prepare(&beam, &frame), TS_BEAM_BAD_SECTION);
    assert_true(ts_beam_fault_says(TS_BEAM_OUTSIDE)[0] != '\0');
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(middle_load_bends_by_the_closed_form),
        cmocka_unit_test(clamped_bar_bends_by_the_closed_form),
        cmocka_unit_test(three_supports_share_as_the_theorem_says),
        cmocka_unit_test(shear_takes_the_share_of_its_section),
        cmocka_unit_test(a_spring_against_tilting_shares_by_its_stiffness),
        cmocka_unit_test(springs_give_way_by_their_load),
        cmocka_unit_test(stepped_shaft_agrees_with_the_unit_load_method),
        cmocka_unit_test(influence_goes_both_ways),
        cmocka_unit_test(answer_turns_with_the_loads),
        cmocka_unit_test(everything_balances_and_twists),
        cmocka_unit_test(tiny_steps_do_no_harm),
        cmocka_unit_test(impossible_shafts_are_refused),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
