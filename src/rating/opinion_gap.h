/* rating/opinion_gap.h: which factor makes two standards disagree about the same teeth?
 *
 * Each safety is a product of factors (or of their roots), and each factor of one standard has its
 * like in the other.  The ratio of both safeties is therefore the product of the ratios of like
 * factors; what has no like stands against 1.  Geometry is what is left of a stress once its load
 * factors are taken away, surface what is left of a strength: so nothing is counted twice.
 */
#ifndef TS_RATING_OPINION_GAP_H
#define TS_RATING_OPINION_GAP_H

#include "rating/agma2101/agma2101.h"
#include "rating/iso6336/iso6336.h"

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

/* One cylindrical pair under one load, by both standards. */
typedef struct ts_two_opinions {
    const ts_iso6336_prepared *iso_pair;
    const ts_iso6336_rating   *iso;
    const ts_agma2101_pair    *agma_pair;
    const ts_agma2101_rating  *agma;
    ts_subject                 lender; /* of the workings of ISO 6336 */
} ts_two_opinions;

/* Both side by side: gap->gear is known, and its safeties, ratio and factors are filled in.  The
 * steps are noted about what the workings are about, where those of AGMA 2101 stand. */
void ts_opinion_set_side_by_side(const ts_two_opinions *two, ts_rated_stress stress,
                                 ts_opinion_gap *gap, ts_workings *workings);

/* Which factor pulls most towards the difference that there is, and which one besides pulls at
 * least half as much: TS_FACTORS where none does. */
typedef struct ts_opinion_reason {
    ts_opinion_factor first, second;
} ts_opinion_reason;
ts_opinion_reason ts_opinion_reason_of(const ts_opinion_gap *gap);

/* "the dynamic factor (K_v against K_v)" */
const char *ts_opinion_factor_says(ts_opinion_factor factor, ts_rated_stress stress);

#endif
