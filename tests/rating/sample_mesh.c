/* rating/sample_mesh.c: which meshes are rated in tests? */
#include "rating/sample_mesh.h"

#include "support/close.h"

static const double degree = 3.14159265358979323846 / 180.0;

double drawn(uint64_t *seed, double low, double high)
{
    *seed = *seed * 6364136223846793005u + 1442695040888963407u;
    return low + (high - low) * (double)(*seed >> 11) / 9007199254740992.0;
}

ts_cylindrical_pair_input sample_pair(void)
{
    return (ts_cylindrical_pair_input){
        .z_1     = 23,
        .z_2     = 61,
        .m_n     = 2.5e-3,
        .alpha_n = 20.0 * degree,
        .beta    = 12.0 * degree,
        .b_1     = 20e-3,
        .b_2     = 19e-3,
        .x_1     = 0.25,
        .x_2     = 0.05,
        .tip     = TS_TIP_CLEARANCE,
        .rack    = ts_basic_rack_A,
    };
}

ts_iso6336_gear sample_gear(void)
{
    return (ts_iso6336_gear){
        .class      = TS_GEAR_CASE_HARDENED,
        .sigma_Hlim = 1500e6,
        .sigma_Flim = 500e6,
        .E          = 206e9,
        .nu         = 0.3,
        .rho        = 7830.0,
        .Z_NTlong   = 0.85,
        .Y_NTlong   = 0.85,
        .accuracy   = 4,
        .f_pt       = 4e-6,
        .f_falpha   = 5e-6,
        .C_a        = 12e-6,
        .R_z        = 2.5e-6,
        .R_zF       = 8e-6,
    };
}

ts_iso6336_mesh sample_mesh(void)
{
    return (ts_iso6336_mesh){
        .gear    = {sample_gear(), sample_gear()},
        .nu_40   = 27e-6,
        .profile = TS_PROFILE_BY_EXPERIENCE,
        .lead    = TS_LEAD_CROWNED,
    };
}

ts_iso6336_load sample_load(void)
{
    return (ts_iso6336_load){
        .T_1     = 180.0,
        .omega_1 = 900.0,
        .K_A     = 1.0,
        .K_gamma = 1.0,
        .face    = TS_FACE_LOAD_PARTS,
        .f_sh    = 4e-6,
        .f_ma    = 8e-6,
        .N_L     = {3e8, 1.1e8},
        .S_Hmin  = 1.0,
        .S_Fmin  = 1.4,
    };
}

ts_cylindrical_pair_input drawn_pair(uint64_t *seed)
{
    const bool                spur = drawn(seed, 0.0, 3.0) < 1.0;
    ts_cylindrical_pair_input in   = {
          .z_1     = (int)drawn(seed, 20.0, 60.0),
          .z_2     = (int)drawn(seed, 20.0, 120.0),
          .m_n     = drawn(seed, 0.8e-3, 8e-3),
          .alpha_n = drawn(seed, 18.0, 25.0) * degree,
          .beta    = spur ? 0.0 : drawn(seed, 3.0, 33.0) * degree,
          .x_1     = drawn(seed, 0.0, 0.5),
          .x_2     = drawn(seed, 0.0, 0.5),
          .tip     = TS_TIP_CLEARANCE,
    };

    in.b_1  = in.m_n * drawn(seed, 4.0, 14.0);
    in.b_2  = in.b_1 * drawn(seed, 0.7, 1.3);
    in.rack = ts_basic_rack_fitted(&ts_basic_rack_A, in.alpha_n);
    return in;
}

static ts_iso6336_gear drawn_gear(uint64_t *seed)
{
    ts_iso6336_gear gear = sample_gear();

    gear.class       = (ts_gear_class)(int)drawn(seed, 0.0, TS_GEAR_CLASS_COUNT);
    gear.sigma_Hlim  = drawn(seed, 500e6, 1600e6);
    gear.sigma_Flim  = drawn(seed, 180e6, 520e6);
    gear.yield       = drawn(seed, 280e6, 1100e6);
    gear.HB          = drawn(seed, 120.0, 480.0);
    gear.E           = drawn(seed, 190e9, 210e9);
    gear.shot_peened = drawn(seed, 0.0, 2.0) < 1.0;
    gear.pitting     = drawn(seed, 0.0, 4.0) < 1.0;
    gear.Z_NTlong    = drawn(seed, 0.85, 1.0);
    gear.Y_NTlong    = drawn(seed, 0.85, 1.0);
    gear.accuracy    = (int)drawn(seed, 3.0, 9.0);
    gear.f_pt        = drawn(seed, 2e-6, 40e-6);
    gear.f_falpha    = drawn(seed, 2e-6, 40e-6);
    gear.C_a         = drawn(seed, 0.0, 2.0) < 1.0 ? 0.0 : drawn(seed, 5e-6, 40e-6);
    gear.R_z         = drawn(seed, 0.8e-6, 12e-6);
    gear.R_zF        = drawn(seed, 0.6e-6, 45e-6);
    gear.t_g         = drawn(seed, 0.0, 5.0) < 1.0 ? 0.1e-3 : 0.0;
    gear.rho_g       = 0.3e-3;
    gear.E_sni       = drawn(seed, 0.0, 2.0) < 1.0 ? 0.0 : drawn(seed, -0.4e-3, 0.0);
    gear.s_pr        = drawn(seed, 0.0, 3.0) < 1.0 ? 0.02e-3 : 0.0;
    return gear;
}

ts_iso6336_mesh drawn_mesh(uint64_t *seed)
{
    return (ts_iso6336_mesh){
        .year           = drawn(seed, 0.0, 2.0) < 1.0 ? TS_ISO6336_2019 : TS_ISO6336_2006,
        .gear           = {drawn_gear(seed), drawn_gear(seed)},
        .nu_40          = drawn(seed, 15e-6, 400e-6),
        .profile        = (ts_profile_design)(int)drawn(seed, 0.0, 3.0),
        .lead           = (ts_lead_design)(int)drawn(seed, 0.0, TS_LEAD_DESIGN_COUNT),
        .relief_matched = drawn(seed, 0.0, 2.0) < 1.0,
    };
}

ts_iso6336_load drawn_load(uint64_t *seed)
{
    return (ts_iso6336_load){
        .T_1     = drawn(seed, 2.0, 800.0),
        .omega_1 = drawn(seed, 1.0, 4000.0),
        .K_A     = drawn(seed, 1.0, 1.5),
        .K_gamma = drawn(seed, 1.0, 1.2),
        .face    = (ts_face_load_rule)(int)drawn(seed, 0.0, 3.0),
        .K_Hbeta = drawn(seed, 1.0, 2.0),
        .F_betax = drawn(seed, 0.0, 60e-6),
        .f_sh    = drawn(seed, 0.0, 20e-6),
        .f_ma    = drawn(seed, 0.0, 40e-6),
        .N_L     = {pow(10.0, drawn(seed, 2.0, 11.0)), pow(10.0, drawn(seed, 2.0, 11.0))},
        .R       = {drawn(seed, -1.2, 0.0), drawn(seed, -1.2, 0.0)},
        .S_Hmin  = drawn(seed, 1.0, 1.3),
        .S_Fmin  = drawn(seed, 1.0, 1.8),
    };
}

ts_cylindrical_pair solved_pair(const ts_cylindrical_pair_input *in)
{
    ts_cylindrical_pair pair;

    assert_int_equal(ts_cylindrical_pair_solve(in, &pair, NULL), TS_PAIR_FINE);
    return pair;
}

ts_iso6336_rating rated(const ts_cylindrical_pair_input *in, const ts_iso6336_mesh *mesh,
                        const ts_iso6336_load *load)
{
    const ts_cylindrical_pair pair = solved_pair(in);
    ts_iso6336_prepared       prepared;
    ts_iso6336_rating         rating;

    if (!ts_iso6336_prepare(&pair, mesh, &prepared, NULL))
        fail_msg("%s", prepared.missing);
    if (!ts_iso6336_rate(&prepared, load, &rating, NULL))
        fail_msg("%s", rating.missing);
    return rating;
}

ts_cylindrical_pair_input exchanged_pair(const ts_cylindrical_pair_input *in)
{
    ts_cylindrical_pair_input out = *in;

    out.z_1 = in->z_2;
    out.z_2 = in->z_1;
    out.x_1 = in->x_2;
    out.x_2 = in->x_1;
    out.b_1 = in->b_2;
    out.b_2 = in->b_1;
    return out;
}

ts_iso6336_mesh exchanged_mesh(const ts_iso6336_mesh *mesh)
{
    ts_iso6336_mesh out = *mesh;

    out.gear[0] = mesh->gear[1];
    out.gear[1] = mesh->gear[0];
    return out;
}

ts_iso6336_load exchanged_load(const ts_iso6336_load *load, double u)
{
    ts_iso6336_load out = *load;

    out.T_1     = load->T_1 * u;
    out.omega_1 = load->omega_1 / u;
    for (int gear = 0; gear < 2; gear++) {
        out.N_L[gear] = load->N_L[1 - gear];
        out.R[gear]   = load->R[1 - gear];
    }
    return out;
}
