/* peer/rate_batch.c: what does towershaft say of the meshes that the peers rate, and how fast?
 *
 *   towershaft-rate-batch <meshes> [answers]
 *
 * <meshes> is written by drawn_meshes.py: three counts (meshes, fields, cases) as 64-bit integers,
 * then doubles: four shares of each case, and a row of fields, in the units of print, of each mesh.
 * Prints the processor seconds a mesh of geometry, preparation and one load case to ISO 6336; of
 * geometry, preparation and all cases; and of all cases to ISO 6336 and AGMA 2101 both.  Reading
 * and writing are not in them.  Into [answers] go 26 factors and stresses (SI) of every mesh under
 * its own load, then the four safeties of every mesh and case; then the same to AGMA 2101, 16
 * factors and stresses.
 *
 * Exit 0: all meshes are rated; 1: one cannot be, and why; 2: the files are no use.
 */
#include "rating/agma2101/agma2101_case.h"
#include "rating/iso6336/iso6336.h"

#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

enum {
    PAIR_FIELDS = 10,
    GEAR_FIELDS = 19,
    MESH_FIELDS = 5,
    LOAD_FIELDS = 13,
    SECOND_GEAR = 4, /* of one gear, for AGMA 2101 alone */
    SECOND_MESH = 2,
    FIELDS =
        PAIR_FIELDS + 2 * GEAR_FIELDS + MESH_FIELDS + LOAD_FIELDS + 2 * SECOND_GEAR + SECOND_MESH,
    CASES_MOST = 64,
    ANSWERS    = 26,
    SECOND     = 16,
    SAFETIES   = 4
};
#define MESHES_MOST 10000000

typedef struct case_share {
    double torque, speed, cycles, ratio;
} case_share;

typedef struct drawn {
    ts_cylindrical_pair_input teeth;
    ts_iso6336_mesh           mesh;
    ts_iso6336_load           load;
    ts_agma2101_gear          second[2];
    double                    R; /* reliability */
    bool                      critical;
} drawn;

typedef struct batch {
    size_t     meshes, cases;
    case_share share[CASES_MOST];
    drawn     *drawn;
    double    *answers;  /* ANSWERS of each mesh           */
    double    *safeties; /* SAFETIES of each mesh and case */
    double    *second;   /* SECOND of each mesh            */
    double    *second_safeties;
} batch;

/* ---- reading --------------------------------------------------------------------------------- */

static ts_cylindrical_pair_input teeth_of(const double *f)
{
    return (ts_cylindrical_pair_input){
        .z_1     = (int)f[0],
        .z_2     = (int)f[1],
        .m_n     = f[2] * 1e-3,
        .alpha_n = f[3],
        .beta    = f[4],
        .x_1     = f[5],
        .x_2     = f[6],
        .b_1     = f[7] * 1e-3,
        .b_2     = f[8] * 1e-3,
        .tip     = TS_TIP_CLEARANCE,
        .rack    = {.h_aPs = 1.0, .h_fPs = 1.25, .rho_fPs = f[9]},
    };
}

static ts_iso6336_gear gear_of(const double *f)
{
    return (ts_iso6336_gear){
        .class       = (ts_gear_class)(int)f[0],
        .sigma_Hlim  = f[1] * 1e6,
        .sigma_Flim  = f[2] * 1e6,
        .yield       = f[3] * 1e6,
        .HB          = f[4],
        .E           = f[5] * 1e6,
        .nu          = 0.3,
        .rho         = 7830.0,
        .shot_peened = f[6] > 0.0,
        .pitting     = f[7] > 0.0,
        .Z_NTlong    = f[8],
        .Y_NTlong    = f[9],
        .accuracy    = (int)f[10],
        .f_pt        = f[11] * 1e-6,
        .f_falpha    = f[12] * 1e-6,
        .C_a         = f[13] * 1e-6,
        .R_z         = f[14] * 1e-6,
        .R_zF        = f[15] * 1e-6,
        .t_g         = f[16] * 1e-3,
        .rho_g       = f[17] * 1e-3,
        .s_pr        = f[18] * 1e-3,
    };
}

/* The same gear in the words of AGMA 2101; `own` is what ISO 6336 does not ask. */
static ts_agma2101_gear second_of(const double *gear, const double *own)
{
    const ts_gear_class class = (ts_gear_class)(int)gear[0];

    return (ts_agma2101_gear){
        .tool     = {.h_a0 = NAN},
        .delta_sn = own[2],
        .sigma_HP = own[0] * 1e6,
        .sigma_FP = own[1] * 1e6,
        .line     = ts_agma_line_of(class),
        .hardness = gear[4],
        .hard     = ts_gear_class_surface_hardened(class),
        .R_a      = gear[14] / 6.0 * 1e-6, /* common practice, no source */
        .t_R      = own[3] > 0.0 ? own[3] * 1e-3 : (double)NAN,
        .E        = gear[5] * 1e6,
        .nu       = 0.3,
        .K_s      = NAN,
        .Y_J      = NAN,
    };
}

static drawn drawn_of(const double *f)
{
    const double *gear = f + PAIR_FIELDS, *mesh = gear + 2 * GEAR_FIELDS;
    const double *load = mesh + MESH_FIELDS, *second = load + LOAD_FIELDS;

    return (drawn){
        .teeth    = teeth_of(f),
        .mesh     = {.year           = (ts_iso6336_year)(int)mesh[0],
                     .gear           = {gear_of(gear), gear_of(gear + GEAR_FIELDS)},
                     .nu_40          = mesh[1] * 1e-6,
                     .profile        = (ts_profile_design)(int)mesh[2],
                     .lead           = (ts_lead_design)(int)mesh[3],
                     .relief_matched = mesh[4] > 0.0},
        .load     = {.T_1     = load[0],
                     .omega_1 = load[1],
                     .K_A     = load[2],
                     .K_gamma = load[3],
                     .face    = (ts_face_load_rule)(int)load[4],
                     .K_Hbeta = load[5],
                     .F_betax = load[6] * 1e-6,
                     .f_sh    = load[7] * 1e-6,
                     .f_ma    = load[8] * 1e-6,
                     .N_L     = {load[9], load[10]},
                     .R       = {load[11], load[12]},
                     .S_Hmin  = 1.0,
                     .S_Fmin  = 1.0},
        .second   = {second_of(gear, second), second_of(gear + GEAR_FIELDS, second + SECOND_GEAR)},
        .R        = second[2 * SECOND_GEAR],
        .critical = second[2 * SECOND_GEAR + 1] > 0.0,
    };
}

static bool read_meshes(FILE *file, batch *all)
{
    double row[FIELDS];

    for (size_t i = 0; i < all->meshes; i++) {
        if (fread(row, sizeof row, 1, file) != 1)
            return false;
        all->drawn[i] = drawn_of(row);
    }
    return fgetc(file) == EOF;
}

static bool read_batch(FILE *file, batch *all)
{
    int64_t counts[3];

    if (fread(counts, sizeof counts, 1, file) != 1 || counts[0] < 1 || counts[0] > MESHES_MOST ||
        counts[1] != FIELDS || counts[2] < 1 || counts[2] > CASES_MOST)
        return false;
    all->meshes          = (size_t)counts[0];
    all->cases           = (size_t)counts[2];
    all->drawn           = calloc(all->meshes, sizeof *all->drawn);
    all->answers         = calloc(all->meshes, ANSWERS * sizeof(double));
    all->safeties        = calloc(all->meshes * all->cases, SAFETIES * sizeof(double));
    all->second          = calloc(all->meshes, SECOND * sizeof(double));
    all->second_safeties = calloc(all->meshes * all->cases, SAFETIES * sizeof(double));
    return all->drawn != NULL && all->answers != NULL && all->safeties != NULL &&
           all->second != NULL && all->second_safeties != NULL &&
           fread(all->share, sizeof all->share[0], all->cases, file) == all->cases &&
           read_meshes(file, all);
}

/* ---- rating ---------------------------------------------------------------------------------- */

/* In the order of compare.py. */
static void keep_answers(const ts_iso6336_prepared *p, const ts_iso6336_rating *r, double *kept)
{
    const double mesh[] = {r->c_gamma_alpha, r->N,        r->K_v,      r->K_Hbeta,
                           r->K_Fbeta,       r->K_Halpha, r->K_Falpha, r->sigma_H0};
    for (size_t i = 0; i < sizeof mesh / sizeof mesh[0]; i++)
        *kept++ = mesh[i];
    for (int gear = 0; gear < 2; gear++) {
        const ts_iso6336_gear_prepared *own = &p->gear[gear];
        const ts_iso6336_gear_rating   *out = &r->gear[gear];
        const double one[] = {own->Y_F, own->Y_S,     out->Z_W,      out->sigma_H, out->sigma_HG,
                              out->S_H, out->sigma_F, out->sigma_FG, out->S_F};
        for (size_t i = 0; i < sizeof one / sizeof one[0]; i++)
            *kept++ = one[i];
    }
}

static const char *prepare(const drawn *one, ts_iso6336_prepared *prepared)
{
    ts_cylindrical_pair pair;
    const ts_pair_fault fault = ts_cylindrical_pair_solve(&one->teeth, &pair, NULL);

    if (fault != TS_PAIR_FINE && fault != TS_PAIR_POINTED)
        return ts_pair_fault_says(fault);
    return ts_iso6336_prepare(&pair, &one->mesh, prepared, NULL) ? NULL : prepared->missing;
}

static const char *rate_drawn(batch *all, size_t i)
{
    ts_iso6336_prepared prepared;
    ts_iso6336_rating   rating;
    const char         *why = prepare(&all->drawn[i], &prepared);

    if (why != NULL)
        return why;
    if (!ts_iso6336_rate(&prepared, &all->drawn[i].load, &rating, NULL))
        return rating.missing;
    keep_answers(&prepared, &rating, &all->answers[i * ANSWERS]);
    return NULL;
}

static ts_iso6336_load load_of(const ts_iso6336_load *whole, const case_share *share)
{
    ts_iso6336_load load = *whole;

    load.T_1 *= share->torque;
    load.f_sh *= share->torque;
    load.omega_1 *= share->speed;
    for (int gear = 0; gear < 2; gear++) {
        load.N_L[gear] *= share->cycles;
        load.R[gear] *= share->ratio;
    }
    return load;
}

static const char *rate_cases(batch *all, size_t i)
{
    ts_iso6336_prepared prepared;
    ts_iso6336_rating   rating;
    double             *kept = &all->safeties[i * all->cases * SAFETIES];
    const char         *why  = prepare(&all->drawn[i], &prepared);

    if (why != NULL)
        return why;
    for (size_t k = 0; k < all->cases; k++) {
        const ts_iso6336_load load = load_of(&all->drawn[i].load, &all->share[k]);

        if (!ts_iso6336_rate(&prepared, &load, &rating, NULL))
            return rating.missing;
        *kept++ = rating.gear[0].S_H;
        *kept++ = rating.gear[1].S_H;
        *kept++ = rating.gear[0].S_F;
        *kept++ = rating.gear[1].S_F;
    }
    return NULL;
}

/* ---- both standards -------------------------------------------------------------------------- */

static const char *prepare_second(const drawn *one, const ts_cylindrical_pair *pair,
                                  ts_agma2101_pair *prepared)
{
    const double      f_pt[2] = {one->mesh.gear[0].f_pt, one->mesh.gear[1].f_pt};
    const int         coarser = ts_agma_coarser_gear(pair, f_pt);
    const ts_subject  own     = {0, TS_EVERY_CONDITION};
    ts_agma2101_input in      = ts_agma2101_input_of(pair);

    in.gear[0]  = one->second[0];
    in.gear[1]  = one->second[1];
    in.R        = one->R;
    in.critical = one->critical;
    in.accuracy = ts_agma_accuracy_of_gear(pair, coarser, f_pt[coarser], own, NULL);
    (void)ts_agma2101_pair_prepare(&in, prepared, NULL);
    return prepared->missing;
}

static void rate_second(const ts_cylindrical_pair *pair, const ts_agma2101_pair *prepared,
                        const ts_iso6336_load *load, ts_agma2101_rating *rating)
{
    const ts_agma2101_case one = {.T_1     = load->T_1,
                                  .omega_1 = load->omega_1,
                                  .d_w1    = pair->d_w1,
                                  .N_L     = {load->N_L[0], load->N_L[1]},
                                  .R       = {load->R[0], load->R[1]},
                                  .K_A     = load->K_A,
                                  .K_gamma = load->K_gamma};
    const ts_agma2101_load in  = ts_agma2101_load_of(&one, NULL);

    ts_agma2101_rate(prepared, &in, rating, NULL);
}

static void keep_second(const ts_agma2101_pair *p, const ts_agma2101_rating *r, double *kept)
{
    const double mesh[] = {p->Z_I,          r->K_v,          r->K_H,
                           p->tooth[0].Y_J, p->tooth[1].Y_J, r->gear[0].sigma_H};

    for (size_t i = 0; i < sizeof mesh / sizeof mesh[0]; i++)
        *kept++ = mesh[i];
    for (int gear = 0; gear < 2; gear++) {
        const ts_agma2101_gear_rating *out = &r->gear[gear];
        const double one[]                 = {out->sigma_F, out->Z_N, out->Y_N, out->S_H, out->S_F};
        for (size_t i = 0; i < sizeof one / sizeof one[0]; i++)
            *kept++ = one[i];
    }
}

/* Only to be compared. */
static const char *keep_own_load(batch *all, size_t i)
{
    ts_cylindrical_pair pair;
    ts_agma2101_pair    prepared;
    ts_agma2101_rating  rating;

    (void)ts_cylindrical_pair_solve(&all->drawn[i].teeth, &pair, NULL);
    const char *why = prepare_second(&all->drawn[i], &pair, &prepared);
    if (why != NULL)
        return why;
    rate_second(&pair, &prepared, &all->drawn[i].load, &rating);
    keep_second(&prepared, &rating, &all->second[i * SECOND]);
    return rating.missing;
}

static const char *rate_both(batch *all, size_t i)
{
    const drawn        *one = &all->drawn[i];
    ts_cylindrical_pair pair;
    ts_iso6336_prepared first;
    ts_agma2101_pair    second;
    ts_iso6336_rating   rating;
    ts_agma2101_rating  opinion;
    double             *kept   = &all->safeties[i * all->cases * SAFETIES];
    double             *kept_2 = &all->second_safeties[i * all->cases * SAFETIES];

    const ts_pair_fault fault = ts_cylindrical_pair_solve(&one->teeth, &pair, NULL);
    if (fault != TS_PAIR_FINE && fault != TS_PAIR_POINTED)
        return ts_pair_fault_says(fault);
    if (!ts_iso6336_prepare(&pair, &one->mesh, &first, NULL))
        return first.missing;
    const char *why = prepare_second(one, &pair, &second);
    if (why != NULL)
        return why;
    for (size_t k = 0; k < all->cases; k++) {
        const ts_iso6336_load load = load_of(&one->load, &all->share[k]);

        if (!ts_iso6336_rate(&first, &load, &rating, NULL))
            return rating.missing;
        rate_second(&pair, &second, &load, &opinion);
        for (int gear = 0; gear < 2; gear++) {
            kept[gear]       = rating.gear[gear].S_H;
            kept[2 + gear]   = rating.gear[gear].S_F;
            kept_2[gear]     = opinion.gear[gear].S_H;
            kept_2[2 + gear] = opinion.gear[gear].S_F;
        }
        kept += SAFETIES;
        kept_2 += SAFETIES;
    }
    return NULL;
}

/* ---- time ------------------------------------------------------------------------------------ */

static double now(void)
{
    struct timespec at;

    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &at);
    return (double)at.tv_sec + 1e-9 * (double)at.tv_nsec;
}

/* Processor seconds a mesh; NaN, said on stderr, when one cannot be rated.  The first pass meets
 * the memory, the second is timed. */
static double seconds_of(batch *all, const char *(*rate_one)(batch *all, size_t i))
{
    double begun = 0.0;

    for (int pass = 0; pass < 2; pass++) {
        begun = now();
        for (size_t i = 0; i < all->meshes; i++) {
            const char *why = rate_one(all, i);

            if (why == NULL)
                continue;
            fprintf(stderr, "mesh %zu: %s\n", i, why);
            return NAN;
        }
    }
    return (now() - begun) / (double)all->meshes;
}

/* ---- all of it ------------------------------------------------------------------------------- */

static bool write_answers(const char *path, const batch *all)
{
    const size_t answers = all->meshes * ANSWERS, safeties = all->meshes * all->cases * SAFETIES;
    FILE        *file = fopen(path, "wb");

    if (file == NULL)
        return false;
    const size_t second  = all->meshes * SECOND;
    const bool   written = fwrite(all->answers, sizeof(double), answers, file) == answers &&
                         fwrite(all->safeties, sizeof(double), safeties, file) == safeties &&
                         fwrite(all->second, sizeof(double), second, file) == second &&
                         fwrite(all->second_safeties, sizeof(double), safeties, file) == safeties;
    return fclose(file) == 0 && written;
}

static int run(const char *meshes, const char *answers, batch *all)
{
    FILE *file = fopen(meshes, "rb");

    if (file == NULL) {
        fprintf(stderr, "%s: cannot be read\n", meshes);
        return 2;
    }
    const bool read = read_batch(file, all);
    fclose(file);
    if (!read) {
        fprintf(stderr, "%s: no file of meshes with %d fields\n", meshes, (int)FIELDS);
        return 2;
    }
    const double one = seconds_of(all, rate_drawn), cases = seconds_of(all, rate_cases);
    const double both = seconds_of(all, rate_both);
    if (isnan(one) || isnan(cases) || isnan(both) ||
        (answers != NULL && isnan(seconds_of(all, keep_own_load))))
        return 1;
    if (answers != NULL && !write_answers(answers, all)) {
        fprintf(stderr, "%s: cannot be written\n", answers);
        return 2;
    }
    printf("%.9g %.9g %.9g\n", one, cases, both);
    return 0;
}

int main(int count, char **words)
{
    batch all = {0};

    if (count < 2 || count > 3) {
        fputs("usage: towershaft-rate-batch <meshes> [answers]\n", stderr);
        return 2;
    }
    const int status = run(words[1], count > 2 ? words[2] : NULL, &all);
    free(all.drawn);
    free(all.answers);
    free(all.safeties);
    free(all.second);
    free(all.second_safeties);
    return status;
}
