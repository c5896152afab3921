/* bank/bind_rating.c: published cases about the load capacity of cylindrical gears. */
#include "bank/bank_run.h"
#include "element/tooth_force.h"
#include "rating/iso6336/dynamic_simple.h"
#include "rating/iso6336/first_size.h"
#include "rating/iso6336/iso6336.h"
#include "rating/iso6336/mesh_stiffness.h"
#include "rating/iso6336/reduced_mass.h"
#include "rating/iso6336/root_stress.h"
#include "rating/iso6336/spectrum_life.h"
#include "rating/iso6336/zone_factor.h"

#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

/* A number in a unit that the whitelist of drive files does not have; the binding turns it itself,
 * and refuses any other spelling of the unit. */
static double plain(ts_case *c, const char *name, const char *unit)
{
    const json_t *field = json_object_get(c->inputs, name);
    const json_t *value = json_object_get(field, "value");
    const char   *given = json_string_value(json_object_get(field, "unit"));

    if (!json_is_number(value))
        ts_case_spoil(c, "is missing among the inputs, or no number", name);
    if (given == NULL || strcmp(given, unit) != 0)
        ts_case_spoil(c, "is given in a unit that does not fit", name);
    if (c->readings != NULL)
        json_object_set_new(c->readings, name, json_integer(TS_READ_REAL));
    return json_number_value(value);
}

static double number(ts_case *c, const char *name)
{
    return ts_case_given(c, name, TS_KIND_NUMBER);
}

static double length(ts_case *c, const char *name)
{
    return ts_case_given(c, name, TS_KIND_LENGTH);
}

/* Angles stand in degrees; four pairs of teeth at once are more than the formulas of the transverse
 * contact ratio go for.  With the overlap of a wide helix there may be more. */
static double most_of(const char *name)
{
    if (strncmp(name, "alpha", 5) == 0)
        return 89.0;
    return strcmp(name, "eps_alpha") == 0 ? 4.0 : 1e12;
}

/* The functions of the rating ask for sound meshes; a strange case is refused here, by name. */
static void above_zero(ts_case *c, const char *const *names)
{
    for (; *names != NULL; names++) {
        const json_t *value = json_object_get(json_object_get(c->inputs, *names), "value");
        const double  given = json_number_value(value);
        const double  most  = most_of(*names);
        if (json_is_number(value) && !(given > 1e-9 && given < most))
            ts_case_spoil(c, "is beyond any machine", *names);
    }
}
#define ABOVE_ZERO(c, ...) above_zero((c), (const char *const[]){__VA_ARGS__, NULL})

/* ---- the whole chain ------------------------------------------------------------------------- */

/* What the nominal stresses do not depend on is given some fit value. */
static ts_iso6336_gear any_gear(double E, double nu)
{
    return (ts_iso6336_gear){
        .class      = TS_GEAR_CASE_HARDENED,
        .sigma_Hlim = 1500e6,
        .sigma_Flim = 461e6,
        .E          = E,
        .nu         = nu,
        .rho        = 7830.0,
        .Z_NTlong   = 0.85,
        .Y_NTlong   = 0.85,
        .accuracy   = 5,
        .f_pt       = 6e-6,
        .f_falpha   = 6e-6,
        .R_z        = 3e-6,
        .R_zF       = 10e-6,
    };
}

static void iso6336_spur(ts_case *c)
{
    ABOVE_ZERO(c, "m", "z1", "z2", "alpha", "a_w", "b", "T1", "d_a1", "d_a2", "E", "h_fP");
    const double                    b  = length(c, "b");
    const ts_cylindrical_pair_input in = {
        .z_1     = ts_case_whole(c, "z1"),
        .z_2     = ts_case_whole(c, "z2"),
        .m_n     = length(c, "m"),
        .alpha_n = ts_case_given(c, "alpha", TS_KIND_ANGLE),
        .b_1     = b,
        .b_2     = b,
        .x_1     = number(c, "x1"),
        .x_2     = number(c, "x2"),
        .a_w     = length(c, "a_w"),
        .d_a1    = length(c, "d_a1"),
        .d_a2    = length(c, "d_a2"),
        .tip     = TS_TIP_DIAMETERS,
        .rack    = {1.0, number(c, "h_fP"), number(c, "rho_fP")},
    };
    const ts_iso6336_gear gear = any_gear(ts_case_given(c, "E", TS_KIND_STRESS), number(c, "nu"));
    const ts_iso6336_mesh mesh = {.gear = {gear, gear}, .nu_40 = 100e-6};
    const ts_iso6336_load load = {.T_1     = ts_case_given(c, "T1", TS_KIND_TORQUE),
                                  .omega_1 = 100.0,
                                  .K_A     = 1.0,
                                  .K_gamma = 1.0,
                                  .K_Hbeta = 1.0,
                                  .N_L     = {1e7, 1e7},
                                  .S_Hmin  = 1.0,
                                  .S_Fmin  = 1.0};
    ts_cylindrical_pair   pair;
    ts_iso6336_prepared   prepared;
    ts_iso6336_rating     rating;

    const ts_pair_fault fault = ts_cylindrical_pair_solve(&in, &pair, NULL);
    if (fault != TS_PAIR_FINE)
        ts_case_spoil(c, ts_pair_fault_says(fault), "the pair:");
    if (!ts_iso6336_prepare(&pair, &mesh, &prepared, NULL) ||
        !ts_iso6336_rate(&prepared, &load, &rating, NULL))
        ts_case_spoil(c, prepared.missing == NULL ? rating.missing : prepared.missing,
                      "the rating:");

    ts_case_counted(c, "Z_E", prepared.Z_E / 1000.0); /* sqrt(MPa) */
    ts_case_computed(c, "Z_H", prepared.Z_H, TS_KIND_NUMBER);
    ts_case_computed(c, "Z_eps", prepared.Z_eps, TS_KIND_NUMBER);
    ts_case_computed(c, "Z_B", prepared.ends.Z_B, TS_KIND_NUMBER);
    ts_case_computed(c, "Z_D", prepared.ends.Z_D, TS_KIND_NUMBER);
    ts_case_computed(c, "sigma_H0", rating.sigma_H0, TS_KIND_STRESS);
    for (int gear_index = 0; gear_index < 2; gear_index++) {
        const ts_iso6336_gear_prepared *own = &prepared.gear[gear_index];

        ts_case_computed_as(c, own->Y_F, TS_KIND_NUMBER, "Y_F%d", gear_index + 1);
        ts_case_computed_as(c, own->Y_S, TS_KIND_NUMBER, "Y_S%d", gear_index + 1);
        ts_case_computed_as(c, rating.gear[gear_index].sigma_F0, TS_KIND_STRESS, "sigma_F0%d",
                            gear_index + 1);
    }
}

static void iso_edition(ts_case *c)
{
    ABOVE_ZERO(c, "alpha_n", "eps_alpha");
    ts_cylindrical_frame frame     = {.m_n     = 1e-3,
                                      .alpha_n = ts_case_given(c, "alpha_n", TS_KIND_ANGLE),
                                      .beta    = ts_case_given(c, "beta", TS_KIND_ANGLE)};
    const double         eps_alpha = number(c, "eps_alpha"), eps_beta = number(c, "eps_beta");

    if (!ts_cylindrical_frame_sound(&frame))
        ts_case_spoil(c, "are out of range", "the angles");
    ts_cylindrical_frame_solve(&frame, NULL);
    const double eps_alphan = eps_alpha / (cos(frame.beta_b) * cos(frame.beta_b));
    const double Y_2006     = ts_helix_factor_bending_2006(frame.beta, eps_beta, NULL);
    const double Y_2019     = ts_helix_factor_bending_2019(frame.beta, eps_beta, NULL);
    const double f_2006     = ts_load_share_2006(eps_alphan, eps_beta, NULL);
    const double f_2019     = ts_load_share_2019(eps_alphan, eps_beta, NULL);
    ts_case_computed(c, "Z_beta_1996", ts_helix_factor_contact_1996(frame.beta, NULL),
                     TS_KIND_NUMBER);
    ts_case_computed(c, "Z_beta_2006", ts_helix_factor_contact(frame.beta, NULL), TS_KIND_NUMBER);
    ts_case_computed(c, "Z_eps", ts_contact_ratio_factor(eps_alpha, eps_beta, NULL),
                     TS_KIND_NUMBER);
    ts_case_computed(c, "Y_beta_2006", Y_2006, TS_KIND_NUMBER);
    ts_case_computed(c, "Y_beta_2019", Y_2019, TS_KIND_NUMBER);
    ts_case_computed(c, "f_eps_2019", f_2019, TS_KIND_NUMBER);
    ts_case_computed(c, "ratio_sigma_F_2019_to_2006", Y_2019 * f_2019 / (Y_2006 * f_2006),
                     TS_KIND_NUMBER);
}

/* ---- dynamics -------------------------------------------------------------------------------- */

static void iso_stiffness(ts_case *c)
{
    ABOVE_ZERO(c, "z1", "z2", "eps_alpha");
    const ts_tooth_flexibility_input teeth = {
        .z_n1 = ts_case_whole(c, "z1"),
        .z_n2 = ts_case_whole(c, "z2"),
        .x_1  = number(c, "x1"),
        .x_2  = number(c, "x2"),
    };
    const double                    eps_alpha = number(c, "eps_alpha");
    const ts_single_stiffness_input single    = {
           .qp   = ts_tooth_flexibility(&teeth, NULL),
           .C_R  = 1.0,
           .C_B  = ts_rack_factor(1.2, pi / 9.0, NULL),
           .beta = 0.0,
           .E_1  = 206e9,
           .E_2  = 206e9,
    };
    const double cp            = ts_single_stiffness(&single, NULL);
    const double c_gamma_alpha = ts_mesh_stiffness(cp, eps_alpha, NULL);

    ts_case_counted(c, "q", single.qp * 1e9); /* mm um/N, and 1 N/(mm um) is 1 GPa */
    ts_case_counted(c, "c_prime", cp / 1e9);
    ts_case_counted(c, "c_gamma_alpha", c_gamma_alpha / 1e9);
    ts_case_counted(c, "c_gamma_beta", ts_mesh_stiffness_lead(c_gamma_alpha, NULL) / 1e9);
}

/* kg/mm and N/(mm um) are the standard's; its steel has 7.83e-6 kg/mm3. */
static void iso_resonance(ts_case *c)
{
    ABOVE_ZERO(c, "m", "z1", "z2", "alpha", "d_a1", "d_f1", "d_a2", "d_f2", "c_gamma_alpha", "n1");
    const double m_n = length(c, "m"), alpha = ts_case_given(c, "alpha", TS_KIND_ANGLE);
    const int    z[2]          = {ts_case_whole(c, "z1"), ts_case_whole(c, "z2")};
    const double c_gamma_alpha = plain(c, "c_gamma_alpha", "N/(mm um)") * 1e9;
    double       ms[2];

    for (int gear = 0; gear < 2; gear++) {
        const ts_gear_blank blank = {
            .d_a = length(c, gear == 0 ? "d_a1" : "d_a2"),
            .d_f = length(c, gear == 0 ? "d_f1" : "d_f2"),
            .d_i = length(c, gear == 0 ? "d_i1" : "d_i2"),
            .rho = 7830.0,
        };
        const double d_b = m_n * z[gear] * cos(alpha);
        ms[gear]         = ts_relative_mass(ts_blank_inertia(&blank, gear, NULL), d_b, gear, NULL);
    }
    const double m_red = ts_reduced_mass(ms[0], ms[1], NULL);
    const double n_E1  = ts_resonance_speed(c_gamma_alpha, m_red, z[0], NULL);

    ts_case_counted(c, "m1_star", ms[0] / 1000.0);
    ts_case_counted(c, "m2_star", ms[1] / 1000.0);
    ts_case_counted(c, "m_red", m_red / 1000.0);
    ts_case_computed(c, "n_E1", n_E1, TS_KIND_ROTATIONAL_SPEED);
    if (ts_case_expects(c, "N"))
        ts_case_computed(
            c, "N",
            ts_resonance_ratio(ts_case_given(c, "n1", TS_KIND_ROTATIONAL_SPEED), n_E1, NULL),
            TS_KIND_NUMBER);
}

static void iso_kv_b(ts_case *c)
{
    ABOVE_ZERO(c, "eps_gamma");
    const ts_dynamic_constants  C = ts_dynamic_constants_of(number(c, "eps_gamma"), NULL);
    const ts_dynamic_parameters B = {number(c, "B_p"), number(c, "B_f"), number(c, "B_k")};
    const double                N = number(c, "N");
    const double N_S              = ts_resonance_start(1e6, NULL); /* at 100 N/mm and more: 0.85 */

    ts_case_computed(c, "K_V_resonance", ts_dynamic_resonance(&C, &B, NULL), TS_KIND_NUMBER);
    ts_case_computed(c, "K_V_super", ts_dynamic_supercritical(&C, &B, NULL), TS_KIND_NUMBER);
    ts_case_computed(c, "K_V_sub", ts_dynamic_subcritical(N, &C, &B, NULL), TS_KIND_NUMBER);
    ts_case_computed(c, "K_V", ts_dynamic_factor(N, N_S, &C, &B, NULL), TS_KIND_NUMBER);
}

static void iacs_kv(ts_case *c)
{
    ABOVE_ZERO(c, "z1", "u", "w_t", "K_1", "K_2");
    const ts_dynamic_simple_input in = {
        .v   = ts_case_given(c, "v", TS_KIND_VELOCITY),
        .z_1 = ts_case_whole(c, "z1"),
        .u   = number(c, "u"),
        .w_t = ts_case_given(c, "w_t", TS_KIND_STIFFNESS), /* N/mm is both */
        .K_1 = number(c, "K_1") * 1000.0,                  /* N/mm without saying so */
        .K_2 = number(c, "K_2"),
    };
    const ts_dynamic_simple out = ts_dynamic_factor_simple(&in, NULL);

    ts_case_computed(c, "parameter", out.p, TS_KIND_NUMBER);
    ts_case_computed(c, "K_3", out.K_3, TS_KIND_NUMBER);
    ts_case_computed(c, "K_V", out.K_v, TS_KIND_NUMBER);
}

/* ---- life ------------------------------------------------------------------------------------ */

static double number_in(ts_case *c, const json_t *row, size_t index)
{
    const json_t *cell = json_array_get(row, index);

    if (!json_is_number(cell) || !(json_number_value(cell) > 0.0))
        ts_case_spoil(c, "has something else than a positive number in a row", "cases");
    return json_number_value(cell);
}

/* name: [[[N, factor], [N, factor]], N] */
static void iso_life(ts_case *c)
{
    const json_t *cases = json_object_get(json_object_get(c->inputs, "cases"), "value");
    const char   *name;
    json_t       *entry;

    if (!json_is_object(cases))
        ts_case_spoil(c, "is missing among the inputs, or no object", "cases");
    json_object_foreach((json_t *)cases, name, entry)
    {
        const json_t *first  = json_array_get(json_array_get(entry, 0), 0);
        const json_t *second = json_array_get(json_array_get(entry, 0), 1);
        const double  factor =
            ts_life_between(number_in(c, first, 0), number_in(c, first, 1), number_in(c, second, 0),
                            number_in(c, second, 1), number_in(c, entry, 1), NULL);

        ts_case_computed(c, name, factor, TS_KIND_NUMBER);
    }
}

static void miner_equiv(ts_case *c)
{
    ABOVE_ZERO(c, "p");
    ts_load_bin  bins[32];
    const size_t count = ts_case_length(c, "bins");
    double       total = 0.0;

    if (count > sizeof bins / sizeof bins[0])
        ts_case_spoil(c, "has too many rows", "bins");
    for (size_t i = 0; i < count; i++) {
        bins[i] = (ts_load_bin){ts_case_cell(c, "bins", i, 0), ts_case_cell(c, "bins", i, 1)};
        total += bins[i].n;
    }
    ts_case_computed(c, "T_eq", ts_equivalent_load(bins, count, number(c, "p")), TS_KIND_TORQUE);
    ts_case_counted(c, "N_total", total);
}

static void y_m(ts_case *c)
{
    const json_t *printed = json_object_get(json_object_get(c->printed, "pairs"), "value");

    for (size_t i = 0; i < ts_case_length(c, "pairs"); i++) {
        const json_t *row = json_array_get(printed, i);
        const double  Y_M = ts_mean_stress_factor(ts_case_cell(c, "pairs", i, 0),
                                                  ts_case_cell(c, "pairs", i, 1), 0, NULL);

        ts_case_computed_as(c, Y_M, TS_KIND_NUMBER, "Y_M_R%g_M%g",
                            json_number_value(json_array_get(row, 0)),
                            json_number_value(json_array_get(row, 1)));
    }
}

/* ---- root by itself ------------------------------------------------------------------------- */

/* Teeth of full height without profile shift, loaded at the tip. */
static void yfa_table(ts_case *c)
{
    ABOVE_ZERO(c, "alpha", "h_fP", "rho_fP");
    const double        alpha_n = ts_case_given(c, "alpha", TS_KIND_ANGLE), m_n = 1e-3;
    const ts_basic_rack rack = {1.0, number(c, "h_fP"), number(c, "rho_fP")};

    for (size_t i = 0; i < ts_case_length(c, "z_list"); i++) {
        const int                z  = ts_case_whole_at(c, "z_list", i);
        const ts_root_form_input in = {
            .z       = z,
            .d       = z * m_n,
            .d_a     = (z + 2.0) * m_n,
            .m_n     = m_n,
            .alpha_n = alpha_n,
            .rack    = rack,
            .load    = TS_ROOT_LOAD_TIP,
        };
        const char  *printed = ts_case_printed_at(c, "z_list", i);
        ts_root_form form;

        if (!ts_root_form_solve(&in, &form, NULL))
            ts_case_spoil(c, "has no critical section", "a root");
        const ts_root_notch notch = ts_root_notch_of(form.s_Fn, form.h_Fe, form.rho_F, 0, NULL);
        ts_case_computed_as(c, form.Y_F, TS_KIND_NUMBER, "Y_Fa_%s", printed);
        ts_case_computed_as(c, notch.Y_S, TS_KIND_NUMBER, "Y_Sa_%s", printed);
    }
}

/* ---- textbooks ------------------------------------------------------------------------------- */

/* The source rounds its constants to 9.55e6 N.mm.rpm/kW and 2.32, the cube root of 2*Z_H^2: both
 * are its own statements, and so stand here. */
static void cn_pitting_size(ts_case *c)
{
    ABOVE_ZERO(c, "P", "n1", "j", "L_h", "u", "S_H", "T1_used", "K_t", "phi_d", "Z_E", "z1",
               "K_HN1", "K_HN2", "K_A", "K_V", "K_Ha", "K_Hb", "sHlim1", "sHlim2");
    const ts_unit *kW      = ts_unit_named(TS_TEXT("kW"), TS_KIND_POWER);
    const ts_unit *rpm     = ts_unit_named(TS_TEXT("rpm"), TS_KIND_ROTATIONAL_SPEED);
    const double   P       = ts_from_si(ts_case_given(c, "P", TS_KIND_POWER), kW);
    const double   omega_1 = ts_case_given(c, "n1", TS_KIND_ROTATIONAL_SPEED);
    const double   u = number(c, "u"), S_H = number(c, "S_H"), K_t = number(c, "K_t");
    const double   N_1 =
        ts_load_cycles(omega_1, ts_case_given(c, "L_h", TS_KIND_TIME), number(c, "j"), NULL);
    const double sHP[2] = {
        number(c, "K_HN1") * ts_case_given(c, "sHlim1", TS_KIND_STRESS) / S_H,
        number(c, "K_HN2") * ts_case_given(c, "sHlim2", TS_KIND_STRESS) / S_H,
    };
    const ts_first_size_input in = {
        .T_1      = ts_case_given(c, "T1_used", TS_KIND_TORQUE),
        .K        = K_t,
        .phi_d    = number(c, "phi_d"),
        .u        = u,
        .Z        = sqrt(2.32 * 2.32 * 2.32 / 2.0) * plain(c, "Z_E", "sqrt(MPa)") * 1000.0,
        .sigma_HP = fmin(sHP[0], sHP[1]),
    };
    const double d_1t = ts_first_pinion_diameter(&in, NULL);
    const double K    = number(c, "K_A") * number(c, "K_V") * number(c, "K_Ha") * number(c, "K_Hb");
    const double d_1  = ts_corrected_diameter(d_1t, K, K_t, NULL);

    ts_case_computed(c, "T1", 9.55e3 * P / ts_from_si(omega_1, rpm), TS_KIND_TORQUE);
    ts_case_counted(c, "N1", N_1);
    ts_case_counted(c, "N2", N_1 / u);
    ts_case_computed(c, "sHP1", sHP[0], TS_KIND_STRESS);
    ts_case_computed(c, "sHP2", sHP[1], TS_KIND_STRESS);
    ts_case_computed(c, "d1t", d_1t, TS_KIND_LENGTH);
    ts_case_computed(c, "v", ts_pitch_line_velocity(omega_1, d_1t, NULL), TS_KIND_VELOCITY);
    ts_case_computed(c, "K", K, TS_KIND_NUMBER);
    ts_case_computed(c, "d1", d_1, TS_KIND_LENGTH);
    ts_case_computed(c, "m", d_1 / ts_case_whole(c, "z1"), TS_KIND_LENGTH);
}

/* The nominal stresses of one kilogram-force, and so the force that the strengths allow.  Lengths
 * stay in mm and stresses in kgf/mm2: the formulas do not care. */
static void jgma_bending(ts_case *c, double m, double b, double K_VO)
{
    for (int gear = 0; gear < 2; gear++) {
        const ts_root_stress_input in = {
            .F_t    = 1.0,
            .b_F    = b,
            .m_n    = m,
            .Y_F    = number(c, gear == 0 ? "Y_F1" : "Y_F2"),
            .Y_S    = number(c, "Y_eps"),
            .Y_beta = number(c, "Y_beta"),
            .Y_B    = 1.0,
            .Y_DT   = 1.0,
        };
        const double allowed =
            plain(c, "sFlim", "kgf/mm2") * number(c, "K_L") * number(c, "K_FX") / number(c, "S_F");

        ts_case_counted(c, gear == 0 ? "F_t_lim_bend_1" : "F_t_lim_bend_2",
                        allowed / (ts_nominal_root_stress(&in, gear, NULL) * K_VO));
    }
}

static void jgma_spur(ts_case *c)
{
    ABOVE_ZERO(c, "m", "b", "z1", "z2", "n1", "alpha", "Y_F1", "Y_F2");
    const double                  m = length(c, "m") * 1000.0, b = length(c, "b") * 1000.0;
    const int                     z_1 = ts_case_whole(c, "z1"), z_2 = ts_case_whole(c, "z2");
    const double                  K_VO    = number(c, "K_V") * number(c, "K_O");
    const double                  alpha   = ts_case_given(c, "alpha", TS_KIND_ANGLE);
    const double                  omega_1 = ts_case_given(c, "n1", TS_KIND_ROTATIONAL_SPEED);
    const ts_contact_stress_input in      = {
             .F_t    = 1.0,
             .d_1    = m * z_1,
             .b      = b,
             .u      = (double)z_2 / z_1,
             .Z_H    = number(c, "Z_H"),
             .Z_E    = plain(c, "Z_M", "sqrt(kgf)/mm"),
             .Z_eps  = number(c, "Z_eps"),
             .Z_beta = 1.0,
    };
    const double allowed = plain(c, "sHlim", "kgf/mm2") * number(c, "K_HL") * number(c, "Z_L") *
                           number(c, "Z_R") * number(c, "Z_V") * number(c, "Z_W") *
                           number(c, "K_HX") / number(c, "S_H");
    const double over = allowed / ts_nominal_contact_stress(&in, NULL);

    jgma_bending(c, m, b, K_VO);
    ts_case_counted(c, "F_t_lim_surf", over * over / (number(c, "K_Hb") * K_VO));
    ts_case_computed(c, "v", ts_pitch_line_velocity(omega_1, in.d_1 / 1000.0, NULL),
                     TS_KIND_VELOCITY);
    ts_case_computed(c, "Z_H", ts_zone_factor(alpha, alpha, 0.0, NULL), TS_KIND_NUMBER);
}

/* ---- recorded data --------------------------------------------------------------------------- */

static const char *unit_of(const json_t *fields, const char *name)
{
    const char *unit = json_string_value(json_object_get(json_object_get(fields, name), "unit"));

    return unit == NULL ? "" : unit;
}

/* Of what both units are; TS_KIND_COUNT where the drive file knows no such quantity. */
static ts_kind common_kind(const char *given, const char *expected)
{
    int kind = 0;

    while (kind < (int)TS_KIND_COUNT && (ts_bank_unit(given, (ts_kind)kind) == NULL ||
                                         ts_bank_unit(expected, (ts_kind)kind) == NULL))
        kind++;
    return (ts_kind)kind;
}

/* Nothing is computed: the data go into SI and come back in the expected unit, so the agreement
 * says only that units are read right.  What the program itself holds of them is in tests/catalog.
 */
static void echo(ts_case *c)
{
    const char *given = unit_of(c->inputs, "data");
    const bool  share = strcmp(given, "wt percent") == 0;

    for (size_t i = 0; i < ts_case_member_count(c, "data"); i++) {
        const char *name = ts_case_member_name(c, "data", i);
        if (!ts_case_expects(c, name))
            continue;
        const char   *expected = unit_of(c->expected, name);
        const ts_kind kind     = common_kind(given, expected);

        if (kind < TS_KIND_COUNT) {
            ts_case_computed(c, name, ts_case_member(c, "data", name, kind), kind);
            continue;
        }
        /* A unit of no quantity that a drive file has: a hardness in HRC, parts by weight. */
        if (!(strcmp(given, expected) == 0 || (share && strcmp(expected, "%") == 0)))
            ts_case_spoil(c, "is expected in a unit that does not fit", name);
        const json_t *data = json_object_get(json_object_get(c->inputs, "data"), "value");
        ts_case_counted(c, name, json_number_value(json_object_get(data, name)));
    }
}

static const ts_binding bindings[] = {
    {"iso6336_spur", iso6336_spur},
    {"iso_edition", iso_edition},
    {"iso_stiffness", iso_stiffness},
    {"iso_resonance", iso_resonance},
    {"iso_kv_b", iso_kv_b},
    {"iacs_kv", iacs_kv},
    {"iso_life", iso_life},
    {"miner_equiv", miner_equiv},
    {"y_m", y_m},
    {"yfa_table", yfa_table},
    {"cn_pitting_size", cn_pitting_size},
    {"jgma_spur", jgma_spur},
    {"echo", echo},
};
TS_BINDINGS(bindings);
