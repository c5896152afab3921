/* bench/measure_rating.c: how long do the ratings of one mesh take? */
#include "bench.h"
#include "rating/agma2101/agma2101_case.h"
#include "rating/iso6336/spectrum_life.h"

#include <math.h>

enum { CONDITIONS = 8 };

typedef struct rating_work {
    ts_cylindrical_pair_input in;
    ts_cylindrical_pair       pair;
    ts_iso6336_mesh           mesh;
    ts_iso6336_case           cases[2 * CONDITIONS]; /* every condition on both flanks */
    ts_iso6336_prepared       prepared;
    ts_agma2101_pair          agma;
    ts_agma2101_rating        second[2 * CONDITIONS];
} rating_work;

/* An invented helical pair of carburised steel, as fine as an accessory drive's. */
static void set_up(rating_work *work)
{
    const double degree = 3.14159265358979323846 / 180.0;
    work->in            = (ts_cylindrical_pair_input){
                   .z_1     = 31,
                   .z_2     = 67,
                   .m_n     = 2e-3,
                   .alpha_n = 22.5 * degree,
                   .beta    = 10.0 * degree,
                   .b_1     = 16e-3,
                   .b_2     = 15e-3,
                   .x_1     = 0.2,
                   .x_2     = 0.05,
                   .tip     = TS_TIP_CLEARANCE,
                   .rack    = ts_basic_rack_fitted(&ts_basic_rack_A, 22.5 * degree),
    };
    const ts_iso6336_gear gear = {
        .class      = TS_GEAR_CASE_HARDENED,
        .sigma_Hlim = 1500e6,
        .sigma_Flim = 500e6,
        .E          = 203e9,
        .nu         = 0.3,
        .rho        = 7850.0,
        .Z_NTlong   = 0.85,
        .Y_NTlong   = 0.85,
        .accuracy   = 4,
        .f_pt       = 4e-6,
        .f_falpha   = 4e-6,
        .C_a        = 10e-6,
        .R_z        = 2e-6,
        .R_zF       = 6e-6,
        .E_sni      = -0.11e-3,
        .s_R        = 6e-3,
        .b_s        = 5e-3,
    };

    (void)ts_cylindrical_pair_solve(&work->in, &work->pair, NULL);
    work->mesh = (ts_iso6336_mesh){
        .gear = {gear, gear}, .nu_40 = 27e-6, .profile = TS_PROFILE_BY_EXPERIENCE};
    for (int i = 0; i < 2 * CONDITIONS; i++) {
        const int condition = i / 2;

        work->cases[i].flank = i % 2;
        work->cases[i].load  = (ts_iso6336_load){
             .T_1     = 40.0 + 14.0 * condition,
             .omega_1 = 150.0 + 190.0 * condition,
             .K_A     = 1.0,
             .K_gamma = 1.0,
             .face    = TS_FACE_LOAD_PARTS,
             .f_sh    = 2e-6,
             .f_ma    = 6e-6,
             .N_L     = {1e6 * (condition + 1.0), 4e5 * (condition + 1.0)},
             .R       = {-0.3, 0.0},
             .S_Hmin  = 1.0,
             .S_Fmin  = 1.4,
        };
    }
}

static void work_mesh(void *context)
{
    rating_work *work = context;

    (void)ts_iso6336_prepare(&work->pair, &work->mesh, &work->prepared, NULL);
    (void)ts_iso6336_rate_cases(&work->prepared, work->cases, 2 * CONDITIONS);
    bench_keep(work->cases);
}

static void work_case(void *context)
{
    rating_work *work = context;

    (void)ts_iso6336_rate_cases(&work->prepared, work->cases, 1);
    bench_keep(work->cases);
}

/* ---- both standards -------------------------------------------------------------------------- */

/* What a drive asks of AGMA 2101 beside ISO 6336: the same gears and loads in its own words. */
static void prepare_second(rating_work *work)
{
    const ts_iso6336_gear *gear    = work->mesh.gear;
    const double           f_pt[2] = {gear[0].f_pt, gear[1].f_pt};
    const int              coarser = ts_agma_coarser_gear(&work->pair, f_pt);
    const ts_subject       own     = {0, TS_EVERY_CONDITION};
    ts_agma2101_input      in      = ts_agma2101_input_of(&work->pair);

    for (int g = 0; g < 2; g++) {
        ts_agma2101_gear *out = &in.gear[g];

        out->line     = ts_agma_line_of(gear[g].class);
        out->hard     = true;
        out->E        = gear[g].E;
        out->nu       = gear[g].nu;
        out->t_R      = gear[g].s_R;
        out->sigma_HP = 1550e6;
        out->sigma_FP = 450e6;
        out->delta_sn = ts_agma_thinning_of(gear[g].E_sni, work->in.m_n, g, NULL);
    }
    in.accuracy = ts_agma_accuracy_of_gear(&work->pair, coarser, f_pt[coarser], own, NULL);
    (void)ts_agma2101_pair_prepare(&in, &work->agma, NULL);
}

static void rate_second(rating_work *work, int count)
{
    for (int i = 0; i < count; i++) {
        const ts_iso6336_load *load = &work->cases[i].load;
        const ts_agma2101_case one  = {.T_1     = load->T_1,
                                       .omega_1 = load->omega_1,
                                       .d_w1    = work->pair.d_w1,
                                       .N_L     = {load->N_L[0], load->N_L[1]},
                                       .R       = {load->R[0], load->R[1]},
                                       .K_A     = load->K_A,
                                       .K_gamma = load->K_gamma};
        const ts_agma2101_load in   = ts_agma2101_load_of(&one, NULL);

        ts_agma2101_rate(&work->agma, &in, &work->second[i], NULL);
    }
    bench_keep(work->second);
}

static void work_both(void *context)
{
    rating_work *work = context;

    (void)ts_cylindrical_pair_solve(&work->in, &work->pair, NULL);
    work_mesh(work);
    prepare_second(work);
    rate_second(work, 2 * CONDITIONS);
}

/* A further condition is two cases, one on each flank. */
static void work_condition(void *context)
{
    rating_work *work = context;

    (void)ts_iso6336_rate_cases(&work->prepared, work->cases, 2);
    bench_keep(work->cases);
    rate_second(work, 2);
}

static void work_spectrum(void *context)
{
    rating_work *work    = context;
    double       reserve = ts_iso6336_spectrum_reserve(work->cases, 2 * CONDITIONS, 1.0, 1.4, NULL);

    bench_keep(&reserve);
}

static double seconds_of(void (*run)(void *context))
{
    static rating_work work;

    set_up(&work);
    if (!ts_iso6336_prepare(&work.pair, &work.mesh, &work.prepared, NULL) ||
        !ts_iso6336_rate_cases(&work.prepared, work.cases, 2 * CONDITIONS))
        return NAN;
    prepare_second(&work);
    rate_second(&work, 2 * CONDITIONS);
    if (work.agma.missing != NULL || !(work.second[0].gear[1].S_F > 0.0))
        return NAN;
    return bench_seconds(run, &work);
}

static double mesh_seconds(void)
{
    return seconds_of(work_mesh);
}

static double case_seconds(void)
{
    return seconds_of(work_case);
}

static double both_seconds(void)
{
    return seconds_of(work_both);
}

static double condition_seconds(void)
{
    return seconds_of(work_condition);
}

static double spectrum_seconds(void)
{
    return seconds_of(work_spectrum);
}

static const bench_case cases[] = {
    {"iso6336-mesh", "one mesh to ISO 6336: prepared, 8 conditions, both flanks", "s", 8e-6,
     mesh_seconds},
    {"iso6336-case", "one further load case of a prepared mesh", "s", 1.5e-6, case_seconds},
    {"both-standards-mesh",
     "one mesh, geometry included, ISO 6336 and AGMA 2101, 8 conditions on both flanks", "s", 20e-6,
     both_seconds},
    {"both-standards-case", "a further condition of it on both flanks, both standards", "s", 3e-6,
     condition_seconds},
    {"iso6336-spectrum", "Miner's sum of 16 cases, solved for the safety of all 8 places", "s",
     INFINITY, spectrum_seconds},
};

const bench_group measure_rating = {cases, sizeof cases / sizeof cases[0]};
