/* bench/measure_rating.c: how long do the ratings of one mesh take? */
#include "bench.h"
#include "rating/iso6336/spectrum_life.h"

#include <math.h>

enum { CONDITIONS = 8 };

typedef struct rating_work {
    ts_cylindrical_pair pair;
    ts_iso6336_mesh     mesh;
    ts_iso6336_case     cases[2 * CONDITIONS]; /* every condition on both flanks */
    ts_iso6336_prepared prepared;
} rating_work;

/* An invented helical pair of carburised steel, as fine as an accessory drive's. */
static void set_up(rating_work *work)
{
    const double                    degree = 3.14159265358979323846 / 180.0;
    const ts_cylindrical_pair_input in     = {
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
        .s_R        = 6e-3,
        .b_s        = 5e-3,
    };

    (void)ts_cylindrical_pair_solve(&in, &work->pair, NULL);
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

static double spectrum_seconds(void)
{
    return seconds_of(work_spectrum);
}

static const bench_case cases[] = {
    {"iso6336-mesh", "one mesh to ISO 6336: prepared, 8 conditions, both flanks", "s", 8e-6,
     mesh_seconds},
    {"iso6336-case", "one further load case of a prepared mesh", "s", 1.5e-6, case_seconds},
    {"iso6336-spectrum", "Miner's sum of 16 cases, solved for the safety of all 8 places", "s",
     INFINITY, spectrum_seconds},
};

const bench_group measure_rating = {cases, sizeof cases / sizeof cases[0]};
