/* rating/drive_opinion.h: what does a second standard say of the teeth of a drive, and why is that
 * another number?
 *
 * ANSI/AGMA 2101-D04 with the geometry factors of AGMA 908-B89, of every cylindrical mesh, in every
 * condition by itself.  Loads, cycles, materials and accuracies are those that ISO 6336 was given
 * (rating/drive_teeth.h), which decides; the second opinion shows how far a standard can be
 * trusted.
 *
 * Bevels    AGMA 2003 rates them beside ISO 10300 (rating/drive_bevels.h) where its geometry factors
 *           are given; their gap is here too, about the tooth number of the driver.
 * Gap       Where ISO 6336 sees the least safety of all conditions against pitting, and where
 *           against breakage, both standards are set side by side.  S of the second over S of the
 *           first is the product of the ratios of like factors, so the largest of them is named.
 * Workings  About the face width of the driven gear, whose address ends in `face`; those of ISO
 * 6336 are about its teeth.
 */
#ifndef TS_RATING_DRIVE_OPINION_H
#define TS_RATING_DRIVE_OPINION_H

#include "rating/agma2101/agma2101.h"
#include "rating/drive_teeth.h"

/* Pairs of factors that ask the same question, one of each standard. */
typedef enum ts_opinion_factor {
    TS_FACTOR_DYNAMIC,   /* K_v, K_v                                                            */
    TS_FACTOR_FACE,      /* K_Hbeta or K_Fbeta, K_H                                             */
    TS_FACTOR_SHARE,     /* K_Halpha or K_Falpha, none                                          */
    TS_FACTOR_GEOMETRY,  /* Z_H Z_E Z_eps Z_beta Z_B, Z_E Z_I; Y_F Y_S Y_beta Y_DT, Y_J         */
    TS_FACTOR_STRENGTH,  /* sigma_Hlim, sigma_HP; 2 sigma_Flim, sigma_FP                        */
    TS_FACTOR_LIFE,      /* Z_NT, Z_N; Y_NT, Y_N                                                */
    TS_FACTOR_HARDENING, /* Z_W, Z_W; bending: Y_M, Y_M                                        */
    TS_FACTOR_SURFACE,   /* Z_L Z_v Z_R, Z_R; Y_deltarelT Y_RrelT Y_X, K_s                      */
    TS_FACTOR_RIM,       /* bending alone: Y_B, K_B                                             */
    TS_FACTORS
} ts_opinion_factor;

typedef struct ts_opinion_gap {
    int32_t condition; /* TS_EVERY_CONDITION: neither standard could rate one                   */
    int     gear;      /* 0 or 1                                                                */
    double  first, second;      /* safeties by ISO and by AGMA; NaN: one cannot tell             */
    double  ratio;              /* second/first                                                 */
    double  factor[TS_FACTORS]; /* their product is `ratio`; above 1: AGMA sees more safety      */
} ts_opinion_gap;

typedef struct ts_mesh_opinion {
    ts_node         subject; /* of the workings                                                 */
    const char     *missing; /* NULL, or what the standard lacks: "the face width of both gears" */
    ts_least_safety S_H[2], S_F[2]; /* of all conditions, each by itself                         */
    /* What sets the mesh: the least S/S_min of these, less 1. */
    double          reserve;
    int             gear;
    ts_rated_stress stress;
    int32_t         condition;
    ts_opinion_gap  contact, bending;
} ts_mesh_opinion;

typedef struct ts_opinion {
    const ts_teeth     *teeth;
    ts_agma2101_pair   *prepared; /* [mesh]                                                      */
    ts_mesh_opinion    *mesh;     /* [mesh]; bevels: contact and bending alone                   */
    ts_agma2101_rating *cases;    /* [condition * mesh_count + mesh]; read with ts_opinion_stands */
} ts_opinion;

/* Memory for one drive; the teeth need only be prepared. */
ts_status ts_opinion_prepare(const ts_drive *drive, const ts_teeth *teeth, ts_arena *arena,
                             ts_opinion *out);

/* Rates everything behind solved teeth.  Allocates nothing. */
void ts_opinion_solve(const ts_drive *drive, ts_opinion *opinion, ts_workings *workings);

/* Was this mesh rated by the second standard in this condition? */
bool ts_opinion_stands(const ts_opinion *opinion, uint32_t mesh, uint32_t condition);

/* "the dynamic factor (K_v against K_v)" */
const char *ts_opinion_factor_says(ts_opinion_factor factor, ts_rated_stress stress);

#endif
