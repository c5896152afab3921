/* model/rate_file.h: stand-alone elements as a rate file describes them, by standard symbols.
 *
 * These structs mirror docs/rate-file.md; src/model/field_rate*.c holds the field tables.  Keys are
 * the standards' symbols in ASCII; `[0]` belongs to gear 1 and `[1]` to gear 2.  Signs of internal
 * gears are those of ISO 21771: z_2 < 0.
 */
#ifndef TS_MODEL_RATE_FILE_H
#define TS_MODEL_RATE_FILE_H

#include "model/drive.h"

typedef enum ts_rate_rack { TS_RACK_A, TS_RACK_B, TS_RACK_C, TS_RACK_D } ts_rate_rack;

/* What each gear of a pair says for itself. */
typedef struct ts_rate_gear {
    ts_tally   z;
    ts_measure b, x, k, d_a; /* d_a without the sign of internal gears */
    ts_tally   k_W;          /* teeth under the span                   */
    ts_measure D_M;          /* pin                                    */
    ts_measure E_sns, E_sni; /* allowances of the normal thickness     */

    ts_word material;    /* a row of the catalogue */
    ts_pick class;       /* ts_gear_class          */
    ts_measure hardness; /* HV, of normalised steel HBW */
    ts_measure sigma_Hlim, sigma_Flim, sigma_y, HB, E, nu, rho;
    ts_pick    peened, pitting; /* ts_answer_yes */
    ts_measure Z_NTlong, Y_NTlong;

    ts_tally   accuracy;
    ts_measure f_pt, f_falpha, C_a, R_z, R_zF;
    ts_measure s_pr, t_g, rho_g;
    ts_tally   z_0;
    ts_measure x_0;
    ts_measure s_R, b_s, d_web;

    ts_measure N_L, R;
    ts_tally   q; /* mates that load the same flank in a turn */

    ts_measure sigma_HP, sigma_FP; /* of AGMA */
    ts_measure Ra;
    ts_pick    structure; /* ts_flank_structure */

    ts_pick    overhung; /* bevel gears: ts_answer_yes             */
    ts_measure rho_a0;   /* m  edge radius of the cutter            */
    ts_measure Y_J;      /* of the charts of ANSI/AGMA 2003         */
} ts_rate_gear;

/* What loads a pair, how long, and what it must withstand. */
typedef struct ts_rate_load {
    ts_measure T_1, F, P, n_1, L_h; /* F: F_t, of bevel gears F_mt */
    ts_measure K_A, S_Hmin, S_Fmin, nu_40;
} ts_rate_load;

/* What is asked the other way round: which load, life or width has the safeties wanted? */
typedef struct ts_rate_inverse {  /* inverse: of a gear pair */
    ts_node    node;              /* 0: it does not stand in the file */
    ts_pick    load, life, width; /* ts_answer_yes                    */
    ts_measure L_h, S_Hmin, S_Fmin;
    ts_measure b_low, b_high; /* m  limits of the common face width */
} ts_rate_inverse;

typedef struct ts_rate_bin { /* spectrum: of a gear pair */
    ts_node    node;
    ts_measure T_1, n_1, L_h, K_A;
    ts_measure K_Hbeta, F_betax, f_sh; /* of this load, at most one */
    ts_pick    flank;                  /* 0 or 1                    */
} ts_rate_bin;

typedef struct ts_rate_pair { /* gear pair: */
    const char  *name;
    ts_node      node;
    ts_rate_gear gear[2];
    ts_measure   m_n, alpha_n, beta;
    ts_measure   a_w; /* without the sign of internal gears */
    ts_measure   A_ae, A_ai;
    ts_pick      shift; /* ts_shift_rule */
    ts_pick      tip;   /* ts_tip_rule   */
    ts_pick      rack;  /* ts_rate_rack  */
    ts_measure   h_aPs, h_fPs, rho_fPs;

    ts_rate_load load;
    ts_measure   K_gamma, K_Hbeta, F_betax, f_sh, f_ma;
    ts_pick      lead;    /* ts_lead_design    */
    ts_pick      profile; /* ts_profile_design */
    ts_pick      relief;  /* ts_answer_yes: does it suit the load? */
    ts_pick      edition; /* ts_iso6336_year   */

    ts_rate_bin    *spectrum;
    size_t          spectrum_count;
    ts_rate_inverse inverse;

    ts_measure A_v, reliability;
    ts_measure theta_oil, nu_100, rho_15;
    ts_pick    oil;         /* ts_lubricant               */
    ts_pick    lubrication; /* 0 jets, 1 dip, 2 submerged */
    ts_pick    driver;      /* 0 or 1                     */
    ts_tally   mates;
    ts_measure phi_E, S_FZG, theta_S, theta_intS, lambda_GFP, theta_test;
    ts_tally   SKS;
} ts_rate_pair;

typedef struct ts_rate_bevels { /* bevel pair: */
    const char  *name;
    ts_node      node;
    ts_rate_gear gear[2]; /* b, x, k and the like are not read */
    ts_measure   m_et, Sigma, alpha_n, beta_m, b;
    ts_pick      taper; /* ts_bevel_taper */
    ts_measure   k_hap, k_hfp, x_hm1, x_smn, j_mn, r_c0;

    ts_rate_load load;
    ts_pick      pattern; /* ts_bevel_pattern */
    ts_measure   b_veff_share, e, Z_K;
    ts_pick      crowned; /* ts_answer_yes */
    ts_measure   A_v, reliability, Z_I;
} ts_rate_bevels;

typedef struct ts_rate_tooth { /* tooth measurement: */
    const char *name;
    ts_node     node;
    ts_tally    z, k_W;
    ts_measure  m_n, alpha_n, beta, x, k, D_M, E_sns, E_sni;
    ts_measure  h_aPs, h_fPs;
} ts_rate_tooth;

typedef struct ts_rate_tolerance { /* tolerance: */
    const char *name;
    ts_node     node;
    ts_tally    z, class;
    ts_measure  m_n, beta, d, b;
    ts_pick     edition; /* 0: 2013, 1: 1995 */
} ts_rate_tolerance;

typedef struct ts_rate_steel { /* material: */
    const char *name;
    ts_node     node;
    ts_pick     row; /* of catalog/gear_material.h */
    ts_measure  hardness;
} ts_rate_steel;

typedef struct ts_rate_bearing { /* bearing: */
    const char *name;
    ts_node     node;
    ts_pick     form;   /* ts_bearing_form                         */
    ts_pick     series; /* of ts_rate_series                       */
    ts_measure  d, D, alpha;
    ts_tally    rows, Z;
    ts_measure  D_w, L_we, D_pw, f_i, f_e;
    ts_measure  C_r, C_0r;
    ts_measure  F_r, F_a, n, nu, L_h, S, e_C, S_0min;
    ts_pick     cleanness; /* ts_cleanness */
} ts_rate_bearing;

typedef struct ts_rate_neck { /* shear neck: */
    const char *name;
    ts_node     node;
    ts_measure  d, tol, d_i, K_ts;
    ts_measure  Ftu_min, Ftu_max, ratio_min, ratio_max, warmth_min, warmth_max;
    ts_measure  y_low, y_high;
    ts_pick     brittle; /* ts_answer_yes */
    ts_measure  T_legit, T_capacity, S_T;
} ts_rate_neck;

typedef struct ts_rate_spline { /* spline: */
    const char *name;
    ts_node     node;
    ts_tally    N;
    ts_measure  P, m; /* P: teeth per inch of pitch diameter */
    ts_measure  alpha_D;
    ts_pick     root; /* ts_spline_root                     */
    ts_tally class;   /* of tolerance                       */
    ts_measure d_i, d_e;
    ts_measure T, D_h, L_e, K_a, slope, torque_cycles, revolutions;
    ts_pick    fixed; /* ts_answer_yes */
    ts_measure S_sP, S_cP;
} ts_rate_spline;

typedef struct ts_rate_file {
    ts_node            node;
    ts_tally           version;
    ts_word            title, revision;
    ts_rate_pair      *pairs;
    size_t             pair_count;
    ts_rate_bevels    *bevels;
    size_t             bevel_count;
    ts_rate_tooth     *teeth;
    size_t             tooth_count;
    ts_rate_tolerance *tolerances;
    size_t             tolerance_count;
    ts_rate_steel     *steels;
    size_t             steel_count;
    ts_rate_bearing   *bearings;
    size_t             bearing_count;
    ts_rate_neck      *necks;
    size_t             neck_count;
    ts_rate_spline    *splines;
    size_t             spline_count;

    ts_assumption          *assumed; /* the register of defaults, of use or not */
    size_t                  assumed_count;
    const struct ts_source *source;
} ts_rate_file;

#endif
