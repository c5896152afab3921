/* Does a rating keep the laws that every rating must keep? */
#include "base/arena.h"
#include "rating/sample_mesh.h"
#include "support/close.h"

#include <stddef.h>
#include <string.h>

static const double degree = 3.14159265358979323846 / 180.0;

/* Load factors that do not move with the load: all given, and a mesh that does not swing. */
static ts_iso6336_load calm_load(double T_1)
{
    ts_iso6336_load load = sample_load();

    load.T_1     = T_1;
    load.omega_1 = 0.0;
    load.face    = TS_FACE_LOAD_GIVEN;
    load.K_Hbeta = 1.2;
    return load;
}

static ts_iso6336_mesh exact_mesh(void)
{
    ts_iso6336_mesh mesh = sample_mesh();

    for (int gear = 0; gear < 2; gear++)
        mesh.gear[gear].f_pt = mesh.gear[gear].f_falpha = 0.0;
    return mesh;
}

/* derived: without deviations and at rest every K stands still, so bending goes with the load and
 * contact with its root. */
static void twice_the_load_is_twice_the_bending_and_root_two_the_pressure(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = sample_pair();
    const ts_iso6336_mesh           mesh = exact_mesh();
    const ts_iso6336_load           one = calm_load(150.0), two = calm_load(300.0);
    const ts_iso6336_rating         r = rated(&in, &mesh, &one), s = rated(&in, &mesh, &two);

    for (int gear = 0; gear < 2; gear++) {
        assert_close(s.gear[gear].sigma_F, 2.0 * r.gear[gear].sigma_F, 1e-14);
        assert_close(s.gear[gear].sigma_H, sqrt(2.0) * r.gear[gear].sigma_H, 1e-14);
        assert_close(s.gear[gear].S_F, 0.5 * r.gear[gear].S_F, 1e-14);
        assert_same_double(s.gear[gear].sigma_HG, r.gear[gear].sigma_HG);
    }
}

/* derived: a mesh k times as large under k^3 times the torque has the same nominal stresses. */
static void nominal_stress_does_not_see_the_size(void **state)
{
    (void)state;
    const ts_iso6336_mesh     mesh = exact_mesh();
    ts_cylindrical_pair_input in   = sample_pair();
    const ts_iso6336_load     load = calm_load(150.0), large = calm_load(150.0 * 27.0);
    const ts_iso6336_rating   r = rated(&in, &mesh, &load);

    in.m_n *= 3.0;
    in.b_1 *= 3.0;
    in.b_2 *= 3.0;
    const ts_iso6336_rating s = rated(&in, &mesh, &large);
    assert_close(s.sigma_H0, r.sigma_H0, 1e-13);
    for (int gear = 0; gear < 2; gear++)
        assert_close(s.gear[gear].sigma_F0, r.gear[gear].sigma_F0, 1e-13);
}

static void names_1_and_2_are_free(void **state)
{
    (void)state;
    uint64_t seed = 12;

    for (int round = 0; round < 500; round++) {
        const ts_cylindrical_pair_input in = drawn_pair(&seed), back_in = exchanged_pair(&in);
        const ts_iso6336_mesh           mesh = drawn_mesh(&seed), back_mesh = exchanged_mesh(&mesh);
        const ts_iso6336_load           load      = drawn_load(&seed);
        const ts_iso6336_load           back_load = exchanged_load(&load, (double)in.z_2 / in.z_1);
        const ts_iso6336_rating         r         = rated(&in, &mesh, &load);
        const ts_iso6336_rating         s         = rated(&back_in, &back_mesh, &back_load);

        assert_close(s.K_v, r.K_v, 1e-10);
        assert_close(s.K_Hbeta, r.K_Hbeta, 1e-10);
        assert_close(s.K_Halpha, r.K_Halpha, 1e-10);
        assert_close(s.sigma_H0, r.sigma_H0, 1e-12);
        for (int gear = 0; gear < 2; gear++) {
            assert_close(s.gear[1 - gear].S_H, r.gear[gear].S_H, 1e-9);
            assert_close(s.gear[1 - gear].S_F, r.gear[gear].S_F, 1e-9);
        }
        assert_true(s.remarks == r.remarks);
    }
}

/* The limit of a vanishing helix; what 2019 counts at the ends of helical teeth is left out, since
 * the standard itself jumps there only with eps_beta, which vanishes too. */
static void a_vanishing_helix_is_a_spur_gear(void **state)
{
    (void)state;
    const ts_iso6336_mesh     mesh = sample_mesh();
    const ts_iso6336_load     load = sample_load();
    ts_cylindrical_pair_input in   = sample_pair();

    in.beta                      = 0.0;
    const ts_iso6336_rating spur = rated(&in, &mesh, &load);
    in.beta                      = 1e-9;
    const ts_iso6336_rating near = rated(&in, &mesh, &load);
    assert_close(near.K_v, spur.K_v, 1e-7);
    for (int gear = 0; gear < 2; gear++) {
        assert_close(near.gear[gear].S_H, spur.gear[gear].S_H, 1e-7);
        assert_close(near.gear[gear].S_F, spur.gear[gear].S_F, 1e-7);
    }
}

/* Face width moves the overlap ratio through 1: contact ratio factors and the single contact factor
 * must meet there. */
static void nothing_jumps_where_the_overlap_reaches_1(void **state)
{
    (void)state;
    const ts_iso6336_mesh     mesh = sample_mesh();
    ts_cylindrical_pair_input in   = sample_pair();
    const double              pi   = 3.14159265358979323846;

    for (int year = 0; year < TS_ISO6336_YEARS; year++) {
        ts_iso6336_mesh of_year = mesh;
        double          value[2][4];

        of_year.year = (ts_iso6336_year)year;
        for (int side = 0; side < 2; side++) {
            in.b_1 = in.b_2 = pi * in.m_n / sin(in.beta) * (side == 0 ? 1.0 - 1e-9 : 1.0 + 1e-9);
            const ts_cylindrical_pair pair = solved_pair(&in);
            ts_iso6336_prepared       p;

            assert_true(ts_iso6336_prepare(&pair, &of_year, &p, NULL));
            assert_int_equal(pair.eps_beta >= 1.0, side == 1);
            value[side][0] = p.Z_eps;
            value[side][1] = p.ends.Z_B;
            value[side][2] = p.gear[0].Y_F;
            value[side][3] = p.Y_beta;
        }
        for (int i = 0; i < 4; i++)
            assert_close(value[1][i], value[0][i], 1e-7);
    }
}

/* ---- trends ---------------------------------------------------------------------------------- */

typedef void (*change)(ts_cylindrical_pair_input *in, ts_iso6336_mesh *mesh, ts_iso6336_load *load,
                       double by);

static void wider(ts_cylindrical_pair_input *in, ts_iso6336_mesh *mesh, ts_iso6336_load *load,
                  double by)
{
    (void)mesh;
    load->face    = TS_FACE_LOAD_GIVEN;
    load->K_Hbeta = 1.2;
    in->b_1 *= 1.0 + by;
    in->b_2 *= 1.0 + by;
}

static void stronger(ts_cylindrical_pair_input *in, ts_iso6336_mesh *mesh, ts_iso6336_load *load,
                     double by)
{
    (void)in;
    (void)load;
    for (int gear = 0; gear < 2; gear++) {
        mesh->gear[gear].sigma_Hlim *= 1.0 + 0.1 * by;
        mesh->gear[gear].sigma_Flim *= 1.0 + 0.1 * by;
    }
}

static void lighter(ts_cylindrical_pair_input *in, ts_iso6336_mesh *mesh, ts_iso6336_load *load,
                    double by)
{
    (void)in;
    (void)mesh;
    load->T_1 /= 1.0 + by;
}

static void shorter(ts_cylindrical_pair_input *in, ts_iso6336_mesh *mesh, ts_iso6336_load *load,
                    double by)
{
    (void)in;
    (void)mesh;
    for (int gear = 0; gear < 2; gear++)
        load->N_L[gear] /= 1.0 + 10.0 * by;
}

static void straighter(ts_cylindrical_pair_input *in, ts_iso6336_mesh *mesh, ts_iso6336_load *load,
                       double by)
{
    (void)in;
    (void)mesh;
    load->f_ma /= 1.0 + by;
}

static void smoother(ts_cylindrical_pair_input *in, ts_iso6336_mesh *mesh, ts_iso6336_load *load,
                     double by)
{
    (void)in;
    (void)load;
    for (int gear = 0; gear < 2; gear++) {
        mesh->gear[gear].R_z /= 1.0 + by;
        mesh->gear[gear].R_zF /= 1.0 + by;
    }
}

static void one_sided(ts_cylindrical_pair_input *in, ts_iso6336_mesh *mesh, ts_iso6336_load *load,
                      double by)
{
    (void)in;
    (void)mesh;
    for (int gear = 0; gear < 2; gear++)
        load->R[gear] = -1.2 / (1.0 + by);
}

static void safer_with(change what, bool contact, bool bending)
{
    double before[4] = {0.0};

    for (int step = 0; step <= 6; step++) {
        ts_cylindrical_pair_input in   = sample_pair();
        ts_iso6336_mesh           mesh = sample_mesh();
        ts_iso6336_load           load = sample_load();

        what(&in, &mesh, &load, step * 0.25);
        const ts_iso6336_rating r = rated(&in, &mesh, &load);
        const double now[4]       = {r.gear[0].S_H, r.gear[1].S_H, r.gear[0].S_F, r.gear[1].S_F};
        for (int i = 0; i < 4; i++) {
            if (i < 2 ? contact : bending)
                assert_true(now[i] > before[i]);
            before[i] = now[i];
        }
    }
}

static void what_should_help_helps(void **state)
{
    (void)state;
    safer_with(wider, true, true);
    safer_with(stronger, true, true);
    safer_with(lighter, true, true);
    safer_with(shorter, true, true);
    safer_with(straighter, true, true);
    safer_with(smoother, true, true);
    safer_with(one_sided, false, true);
}

/* ---- honesty --------------------------------------------------------------------------------- */

static void workings_change_no_bit(void **state)
{
    (void)state;
    uint64_t seed = 99;

    for (int round = 0; round < 60; round++) {
        const ts_cylindrical_pair_input in       = drawn_pair(&seed);
        const ts_iso6336_mesh           mesh     = drawn_mesh(&seed);
        const ts_iso6336_load           load     = drawn_load(&seed);
        const ts_cylindrical_pair       pair     = solved_pair(&in);
        ts_arena                       *arena    = ts_arena_open(NULL);
        ts_workings                    *workings = ts_workings_open(arena);
        ts_iso6336_prepared             p, q;
        ts_iso6336_rating               r, s;

        memset(&r, 0, sizeof r);
        memset(&s, 0, sizeof s);
        assert_true(ts_iso6336_prepare(&pair, &mesh, &p, NULL));
        assert_true(ts_iso6336_prepare(&pair, &mesh, &q, workings));
        assert_true(ts_iso6336_rate(&p, &load, &r, NULL));
        assert_true(ts_iso6336_rate(&q, &load, &s, workings));
        for (int gear = 0; gear < 2; gear++) {
            assert_same_double(s.gear[gear].S_H, r.gear[gear].S_H);
            assert_same_double(s.gear[gear].S_F, r.gear[gear].S_F);
            assert_same_double(s.gear[gear].sigma_HG, r.gear[gear].sigma_HG);
            assert_same_double(s.gear[gear].sigma_FG, r.gear[gear].sigma_FG);
        }
        assert_same_double(s.K_v, r.K_v);
        assert_true(ts_workings_complete(workings));
        assert_in_range(ts_workings_count(workings), 150, 400);
        ts_arena_close(arena);
    }
}

/* A rating is written in full, whatever stood in its memory before; only the padding behind the
 * enum is nobody's. */
static void nothing_of_an_old_rating_is_left(void **state)
{
    (void)state;
    uint64_t seed = 3;

    for (int round = 0; round < 50; round++) {
        const ts_cylindrical_pair_input in   = drawn_pair(&seed);
        const ts_iso6336_mesh           mesh = drawn_mesh(&seed);
        const ts_iso6336_load           load = drawn_load(&seed);
        const ts_cylindrical_pair       pair = solved_pair(&in);
        const size_t        free_from = offsetof(ts_iso6336_rating, range) + sizeof(ts_speed_range);
        const size_t        free_to   = offsetof(ts_iso6336_rating, y_alpha);
        ts_iso6336_prepared p;
        unsigned char       bytes[2][sizeof(ts_iso6336_rating)];

        assert_true(ts_iso6336_prepare(&pair, &mesh, &p, NULL));
        for (int i = 0; i < 2; i++) {
            ts_iso6336_rating r;

            memset(&r, i == 0 ? 0 : 0x5a, sizeof r);
            assert_true(ts_iso6336_rate(&p, &load, &r, NULL));
            memcpy(bytes[i], &r, sizeof r);
        }
        for (size_t i = 0; i < sizeof bytes[0]; i++)
            if (i < free_from || i >= free_to)
                assert_int_equal(bytes[0][i], bytes[1][i]);
    }
}

/* Every number that a formula uses was noted before it, or is one of the inputs that the caller
 * notes: so "why" never ends at a number from nowhere. */
static void every_input_has_an_origin(void **state)
{
    (void)state;
    static const char *const given[] = {
        "sigma_Hlim", "sigma_Flim", "sigma_y", "HB", "HB_ratio", "u_teeth", "E_", "nu_", "rho_",
        "Z_NTlong", "Y_NTlong", "f_pt", "f_falpha", "C_a", "R_z", "R_zF", "R_zhard", "R_zsoft",
        "s_pr", "E_sni", "t_g", "rho_g", "s_R", "b_s", "d_web", "Js_", "nu_40", "T_1", "omega_1",
        "K_A", "K_gamma", "K_Hbeta", "F_betax", "f_sh", "f_ma", "N_L", "R_", "S_Hmin", "S_Fmin",
        /* of the pair */
        "z_", "x_", "d_", "d_a", "d_b", "d_f", "b_", "m_n", "alpha_n", "alpha_t", "alpha_wt",
        "beta", "beta_b", "eps_alpha", "eps_beta", "eps_gamma", "u", "h_fPs", "rho_fPs"};
    uint64_t seed = 7;

    for (int round = 0; round < 40; round++) {
        const ts_cylindrical_pair_input in       = drawn_pair(&seed);
        const ts_iso6336_mesh           mesh     = drawn_mesh(&seed);
        const ts_iso6336_load           load     = drawn_load(&seed);
        const ts_cylindrical_pair       pair     = solved_pair(&in);
        ts_arena                       *arena    = ts_arena_open(NULL);
        ts_workings                    *workings = ts_workings_open(arena);
        ts_iso6336_prepared             p;
        ts_iso6336_rating               r;

        assert_true(ts_iso6336_prepare(&pair, &mesh, &p, workings));
        assert_true(ts_iso6336_rate(&p, &load, &r, workings));
        for (size_t i = 0; i < ts_workings_count(workings); i++) {
            const ts_note *note = ts_workings_at(workings, i);

            for (size_t k = 0; k < note->input_count; k++) {
                const char *name   = note->inputs[k].name;
                bool        caller = strcmp(name, note->symbol == NULL ? "" : note->symbol) == 0 ||
                              strcmp(name, note->formula->symbol) == 0;

                for (size_t g = 0; g < sizeof given / sizeof given[0] && !caller; g++) {
                    const size_t length = strlen(given[g]);
                    caller              = strncmp(name, given[g], length) == 0 &&
                             (name[length] == '\0' || strcmp(name + length, "1") == 0 ||
                              strcmp(name + length, "2") == 0);
                }
                if (!caller && ts_origin(workings, i, name, note->inputs[k].value) == SIZE_MAX)
                    fail_msg("%s uses %s, which nothing noted", note->formula->symbol, name);
            }
        }
        ts_arena_close(arena);
    }
}

static void assert_no_verdict(const ts_iso6336_rating *r, const ts_iso6336_load *load)
{
    assert_non_null(r->missing);
    for (int gear = 0; gear < 2; gear++) {
        assert_nan(r->gear[gear].S_H);
        assert_nan(r->gear[gear].S_F);
        assert_nan(r->gear[gear].sigma_H);
        assert_nan(r->gear[gear].sigma_F);
    }
    assert_nan(ts_iso6336_reserve(r, load, NULL, NULL));
}

/* Each double of a load, one by one, as NaN. */
static void a_nan_in_the_load_never_passes(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = sample_pair();
    const ts_cylindrical_pair       pair = solved_pair(&in);
    const ts_iso6336_mesh           mesh = sample_mesh();
    ts_iso6336_prepared             p;
    ts_iso6336_rating               r;

    assert_true(ts_iso6336_prepare(&pair, &mesh, &p, NULL));
    for (int i = 0; i < 12; i++) {
        ts_iso6336_load load     = sample_load();
        double *const   values[] = {&load.T_1,  &load.omega_1, &load.K_A,    &load.K_gamma,
                                    &load.f_sh, &load.f_ma,    &load.N_L[0], &load.N_L[1],
                                    &load.R[0], &load.R[1],    &load.S_Hmin, &load.S_Fmin};

        *values[i] = (double)NAN;
        assert_false(ts_iso6336_rate(&p, &load, &r, NULL));
        assert_no_verdict(&r, &load);
    }
    for (int rule = 0; rule < 2; rule++) {
        ts_iso6336_load load = sample_load();

        load.face    = rule == 0 ? TS_FACE_LOAD_GIVEN : TS_FACE_LOAD_MISALIGNED;
        load.K_Hbeta = load.F_betax = (double)NAN;
        assert_false(ts_iso6336_rate(&p, &load, &r, NULL));
        assert_no_verdict(&r, &load);
    }
}

static void a_nan_in_the_mesh_never_passes(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = sample_pair();
    const ts_cylindrical_pair       pair = solved_pair(&in);
    const ts_iso6336_load           load = sample_load();

    for (int i = 0; i < 20; i++) {
        ts_iso6336_mesh     mesh = sample_mesh();
        ts_iso6336_gear    *g    = &mesh.gear[i % 2];
        ts_iso6336_prepared p;
        ts_iso6336_rating   r;
        double *const values[] = {&g->sigma_Hlim, &g->sigma_Flim, &g->E,    &g->nu,       &g->rho,
                                  &g->Z_NTlong,   &g->Y_NTlong,   &g->f_pt, &g->f_falpha, &g->C_a,
                                  &g->R_z,        &g->R_zF,       &g->s_pr, &g->E_sni,    &g->t_g,
                                  &g->s_R,        &g->b_s,        &g->Js,   &mesh.nu_40,  &g->HB};

        *values[i] = (double)NAN;
        assert_false(ts_iso6336_prepare(&pair, &mesh, &p, NULL));
        assert_non_null(p.missing);
        assert_false(ts_iso6336_rate(&p, &load, &r, NULL));
        assert_no_verdict(&r, &load);
    }
}

static void a_pair_that_was_not_solved_is_not_rated(void **state)
{
    (void)state;
    ts_cylindrical_pair_input in   = sample_pair();
    const ts_iso6336_mesh     mesh = sample_mesh();
    ts_cylindrical_pair       pair;
    ts_iso6336_prepared       p;

    in.a_w   = 0.01;
    in.shift = TS_SHIFT_REST_1;
    assert_int_not_equal(ts_cylindrical_pair_solve(&in, &pair, NULL), TS_PAIR_FINE);
    assert_false(ts_iso6336_prepare(&pair, &mesh, &p, NULL));
    assert_non_null(p.missing);
    assert_nan(p.Z_H);
}

static void a_case_without_torque_is_no_stress_and_no_failure(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = sample_pair();
    const ts_iso6336_mesh           mesh = sample_mesh();
    ts_iso6336_load                 load = sample_load();

    load.T_1                  = 0.0;
    const ts_iso6336_rating r = rated(&in, &mesh, &load);
    assert_true(ts_remarks_have(r.remarks, TS_REMARK_NO_LOAD));
    assert_same_double(r.gear[0].sigma_H, 0.0);
    assert_same_double(ts_iso6336_reserve(&r, &load, NULL, NULL), (double)INFINITY);
    assert_nan(r.K_v);
}

/* ---- editions and remarks -------------------------------------------------------------------- */

/* ISO 6336-3:2019 against :2006 for a spur pair of ordinary depth: nothing changed. */
static void the_years_agree_on_plain_spur_gears(void **state)
{
    (void)state;
    ts_cylindrical_pair_input in   = sample_pair();
    ts_iso6336_mesh           mesh = sample_mesh();
    const ts_iso6336_load     load = sample_load();

    in.beta                     = 0.0;
    const ts_iso6336_rating now = rated(&in, &mesh, &load);
    mesh.year                   = TS_ISO6336_2006;
    const ts_iso6336_rating old = rated(&in, &mesh, &load);
    assert_same_double(old.gear[0].S_H, now.gear[0].S_H);
    assert_same_double(old.gear[0].S_F, now.gear[0].S_F);
}

/* From memory: 2019 charges helical teeth without relief 20 % more load at the ends of contact. */
static void unrelieved_helical_teeth_cost_more_since_2019(void **state)
{
    (void)state;
    ts_cylindrical_pair_input in   = sample_pair();
    ts_iso6336_mesh           mesh = sample_mesh();
    const ts_iso6336_load     load = sample_load();

    in.beta                       = 30.0 * degree; /* eps_beta above 1 */
    mesh.profile                  = TS_PROFILE_PLAIN;
    const ts_iso6336_rating plain = rated(&in, &mesh, &load);
    mesh.profile                  = TS_PROFILE_BY_ANALYSIS;
    const ts_iso6336_rating eased = rated(&in, &mesh, &load);
    assert_close(plain.gear[0].sigma_H / eased.gear[0].sigma_H, sqrt(1.2), 1e-13);
}

static void ranges_that_are_left_are_told(void **state)
{
    (void)state;
    ts_cylindrical_pair_input in   = sample_pair();
    ts_iso6336_mesh           mesh = sample_mesh();
    ts_iso6336_load           load = sample_load();
    ts_iso6336_prepared       p;

    in.beta                        = 33.0 * degree;
    in.x_1                         = 0.0;
    in.x_2                         = 0.3;
    mesh.nu_40                     = 5e-6;
    const ts_cylindrical_pair pair = solved_pair(&in);
    assert_true(ts_iso6336_prepare(&pair, &mesh, &p, NULL));
    assert_true(ts_remarks_have(p.remarks, TS_REMARK_HELIX_ANGLE));
    assert_true(ts_remarks_have(p.remarks, TS_REMARK_SHIFT_ORDER));
    assert_true(ts_remarks_have(p.remarks, TS_REMARK_VISCOSITY));
    assert_false(ts_remarks_have(p.remarks, TS_REMARK_CONTACT_RATIO_LOW));

    load.T_1    = 10.0;
    load.N_L[0] = 2e10;
    load.R[1]   = -1.5;
    ts_iso6336_rating r;
    assert_true(ts_iso6336_rate(&p, &load, &r, NULL));
    assert_true(ts_remarks_have(r.remarks, TS_REMARK_LOAD_LOW));
    assert_true(ts_remarks_have(r.remarks, TS_REMARK_CYCLES));
    assert_true(ts_remarks_have(r.remarks, TS_REMARK_STRESS_RATIO));
    for (int kind = 0; kind < TS_REMARK_COUNT; kind++) {
        const ts_remark_text *text = ts_remark_text_of((ts_remark_kind)kind);
        assert_non_null(text->name);
        assert_non_null(text->says);
        assert_non_null(text->clause);
    }
}

/* ISO 6336-3, clause 9: at half a tooth height of rim the standard ends, and so does the rating. */
static void a_rim_that_is_too_thin_is_not_rated(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = sample_pair();
    const ts_cylindrical_pair       pair = solved_pair(&in);
    ts_iso6336_mesh                 mesh = sample_mesh();
    const double                    h_t  = (pair.d_a2 - pair.d_f2) / 2.0;
    ts_iso6336_prepared             p;

    mesh.gear[1].s_R = 1.2 * h_t;
    assert_true(ts_iso6336_prepare(&pair, &mesh, &p, NULL));
    assert_close(p.gear[1].Y_B, 1.0, 1e-15);
    mesh.gear[1].s_R = (1.2 - 1e-9) * h_t;
    assert_true(ts_iso6336_prepare(&pair, &mesh, &p, NULL));
    assert_close(p.gear[1].Y_B, 1.0, 1e-4); /* the standard's own rounding: 1.6 ln(2.242/1.2) */
    mesh.gear[1].s_R = 0.7 * h_t;
    assert_true(ts_iso6336_prepare(&pair, &mesh, &p, NULL));
    assert_close(p.gear[1].Y_B, 1.6 * log(2.242 / 0.7), 1e-13);
    mesh.gear[1].s_R = 0.5 * h_t;
    assert_false(ts_iso6336_prepare(&pair, &mesh, &p, NULL));
    assert_non_null(p.missing);
}

/* An internal pair runs through the chain; its flanks hug, so the contact stress is lower than that
 * of the external pair of the same teeth. */
static void a_ring_is_kinder_to_its_flanks(void **state)
{
    (void)state;
    ts_cylindrical_pair_input in   = sample_pair();
    ts_iso6336_mesh           mesh = sample_mesh();
    const ts_iso6336_load     load = sample_load();

    in.x_1 = in.x_2                 = 0.0;
    const ts_iso6336_rating outside = rated(&in, &mesh, &load);
    in.z_2                          = -in.z_2;
    mesh.gear[1].s_R                = 15e-3;
    const ts_iso6336_rating inside  = rated(&in, &mesh, &load);
    assert_true(inside.sigma_H0 < 0.8 * outside.sigma_H0);
    assert_true(inside.gear[1].S_F > outside.gear[1].S_F);
    assert_true(isfinite(inside.gear[0].S_F));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(twice_the_load_is_twice_the_bending_and_root_two_the_pressure),
        cmocka_unit_test(nominal_stress_does_not_see_the_size),
        cmocka_unit_test(names_1_and_2_are_free),
        cmocka_unit_test(a_vanishing_helix_is_a_spur_gear),
        cmocka_unit_test(nothing_jumps_where_the_overlap_reaches_1),
        cmocka_unit_test(what_should_help_helps),
        cmocka_unit_test(workings_change_no_bit),
        cmocka_unit_test(nothing_of_an_old_rating_is_left),
        cmocka_unit_test(every_input_has_an_origin),
        cmocka_unit_test(a_nan_in_the_load_never_passes),
        cmocka_unit_test(a_nan_in_the_mesh_never_passes),
        cmocka_unit_test(a_pair_that_was_not_solved_is_not_rated),
        cmocka_unit_test(a_case_without_torque_is_no_stress_and_no_failure),
        cmocka_unit_test(the_years_agree_on_plain_spur_gears),
        cmocka_unit_test(unrelieved_helical_teeth_cost_more_since_2019),
        cmocka_unit_test(ranges_that_are_left_are_told),
        cmocka_unit_test(a_rim_that_is_too_thin_is_not_rated),
        cmocka_unit_test(a_ring_is_kinder_to_its_flanks),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
