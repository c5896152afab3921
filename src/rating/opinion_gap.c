/* rating/opinion_gap.c: which factor makes two standards disagree about the same teeth? */
#include "rating/opinion_gap.h"

#include "element/both_gears_step.h"

#include <math.h>

#define LIKE "derived: the same question in both standards; above 1 AGMA sees more safety"

#define H_DYNAMIC(I)  "sqrt(K_vISO/K_v)"
#define H_FACE(I)     "sqrt(K_Hbeta/K_H)"
#define H_SHARE(I)    "sqrt(K_Halpha)"
#define H_STRENGTH(I) "sigma_HP" I "/sigma_Hlim" I
#define H_LIFE(I)     "Z_N" I "/Z_NT" I
#define H_HARD(I)     "Z_W" I "/Z_WISO" I
#define H_FORM(I)                                                                                  \
    "sigma_HISO" I "/sqrt(K_vISO*K_Hbeta*K_Halpha)*sqrt(K_v*K_H*K_s" I "*Z_R)/sigma_H" I
#define H_SURFACE(I)                                                                               \
    "sigma_Hlim" I "*Z_NT" I "*Z_WISO" I "/(sigma_HG" I "*Y_theta*Y_Z*sqrt(K_s" I "*Z_R))"
#define H_GAP(I) "S_H" I "/S_HISO" I

#define F_DYNAMIC(I)  "K_vISO/K_v"
#define F_FACE(I)     "K_Fbeta/K_H"
#define F_SHARE(I)    "K_Falpha"
#define F_STRENGTH(I) "sigma_FP" I "/(2*sigma_Flim" I ")"
#define F_LIFE(I)     "Y_N" I "/Y_NT" I
#define F_BOTH(I)     "Y_M" I "/Y_MISO" I
#define F_RIM(I)      "Y_B" I "/K_B" I
#define F_FORM(I)                                                                                  \
    "sigma_FISO" I "/(K_vISO*K_Fbeta*K_Falpha*Y_B" I ")*(K_v*K_H*K_s" I "*K_B" I ")/sigma_F" I
#define F_SURFACE(I) "2*sigma_Flim" I "*Y_NT" I "*Y_MISO" I "/(sigma_FG" I "*Y_theta*Y_Z*K_s" I ")"
#define F_GAP(I)     "S_F" I "/S_FISO" I

static const ts_formula contact_formulas[TS_FACTORS][2] = {
    [TS_FACTOR_DYNAMIC] =
        TS_OF_BOTH_GEARS("r_Hdynamic", "dynamic factors compared", "1", H_DYNAMIC, LIKE),
    [TS_FACTOR_FACE] = TS_OF_BOTH_GEARS("r_Hface", "face load factors compared", "1", H_FACE, LIKE),
    [TS_FACTOR_SHARE] =
        TS_OF_BOTH_GEARS("r_Hshare", "transverse load factors compared", "1", H_SHARE, LIKE),
    [TS_FACTOR_GEOMETRY] =
        TS_OF_BOTH_GEARS("r_Hgeometry", "stresses by geometry compared", "1", H_FORM, LIKE),
    [TS_FACTOR_STRENGTH] =
        TS_OF_BOTH_GEARS("r_Hstrength", "allowable stresses compared", "1", H_STRENGTH, LIKE),
    [TS_FACTOR_LIFE] = TS_OF_BOTH_GEARS("r_Hlife", "life factors compared", "1", H_LIFE, LIKE),
    [TS_FACTOR_HARDENING] =
        TS_OF_BOTH_GEARS("r_Hhardness", "hardness ratio factors compared", "1", H_HARD, LIKE),
    [TS_FACTOR_SURFACE] =
        TS_OF_BOTH_GEARS("r_Hsurface", "oil, speed and roughness compared", "1", H_SURFACE, LIKE),
};
static const ts_formula bending_formulas[TS_FACTORS][2] = {
    [TS_FACTOR_DYNAMIC] =
        TS_OF_BOTH_GEARS("r_Fdynamic", "dynamic factors compared", "1", F_DYNAMIC, LIKE),
    [TS_FACTOR_FACE] = TS_OF_BOTH_GEARS("r_Fface", "face load factors compared", "1", F_FACE, LIKE),
    [TS_FACTOR_SHARE] =
        TS_OF_BOTH_GEARS("r_Fshare", "transverse load factors compared", "1", F_SHARE, LIKE),
    [TS_FACTOR_GEOMETRY] =
        TS_OF_BOTH_GEARS("r_Fgeometry", "stresses by tooth form compared", "1", F_FORM, LIKE),
    [TS_FACTOR_STRENGTH] =
        TS_OF_BOTH_GEARS("r_Fstrength", "allowable stresses compared", "1", F_STRENGTH, LIKE),
    [TS_FACTOR_LIFE] = TS_OF_BOTH_GEARS("r_Flife", "life factors compared", "1", F_LIFE, LIKE),
    [TS_FACTOR_HARDENING] =
        TS_OF_BOTH_GEARS("r_Fboth", "bending to both sides compared", "1", F_BOTH, LIKE),
    [TS_FACTOR_SURFACE] =
        TS_OF_BOTH_GEARS("r_Fsurface", "notch, roughness and size compared", "1", F_SURFACE, LIKE),
    [TS_FACTOR_RIM] = TS_OF_BOTH_GEARS("r_Frim", "rim factors compared", "1", F_RIM, LIKE),
};
static const ts_formula gap_formulas[2][2] = {
    TS_OF_BOTH_GEARS("r_H", "safety against pitting by AGMA 2101 over that by ISO 6336", "1", H_GAP,
                     "derived: second opinion over first"),
    TS_OF_BOTH_GEARS("r_F", "safety against breakage by AGMA 2101 over that by ISO 6336", "1",
                     F_GAP, "derived: second opinion over first"),
};

/* ---- what ISO 6336 says ---------------------------------------------------------------------- */

static void borrow_contact(const ts_two_opinions *two, int gear, ts_workings *workings)
{
    static const char *const own[2][7] = {
        {"S_HISO1", "S_H1", "sigma_HISO1", "sigma_H1", "Z_WISO1", "Z_W1", "Z_NT1"},
        {"S_HISO2", "S_H2", "sigma_HISO2", "sigma_H2", "Z_WISO2", "Z_W2", "Z_NT2"}};
    static const char *const      lent[2][2] = {{"sigma_HG1", "sigma_Hlim1"},
                                                {"sigma_HG2", "sigma_Hlim2"}};
    const ts_iso6336_rating      *r          = two->iso;
    const ts_iso6336_gear_rating *g          = &r->gear[gear];
    const ts_subject              iso        = two->lender;
    const char *const            *name       = own[gear];

    ts_workings_borrow(workings, "K_vISO", r->K_v, iso, "K_v");
    ts_workings_borrow(workings, "K_Hbeta", r->K_Hbeta, iso, "K_Hbeta");
    ts_workings_borrow(workings, "K_Halpha", r->K_Halpha, iso, "K_Halpha");
    ts_workings_borrow(workings, name[0], g->S_H, iso, name[1]);
    ts_workings_borrow(workings, name[2], g->sigma_H, iso, name[3]);
    ts_workings_borrow(workings, name[4], g->Z_W, iso, name[5]);
    ts_workings_borrow(workings, name[6], g->Z_NT, iso, name[6]);
    ts_workings_borrow(workings, lent[gear][0], g->sigma_HG, iso, lent[gear][0]);
    ts_workings_borrow(workings, lent[gear][1], two->iso_pair->mesh.gear[gear].sigma_Hlim, iso,
                       lent[gear][1]);
}

static void borrow_bending(const ts_two_opinions *two, int gear, ts_workings *workings)
{
    static const char *const own[2][7] = {
        {"S_FISO1", "S_F1", "sigma_FISO1", "sigma_F1", "Y_MISO1", "Y_M1", "Y_NT1"},
        {"S_FISO2", "S_F2", "sigma_FISO2", "sigma_F2", "Y_MISO2", "Y_M2", "Y_NT2"}};
    static const char *const      lent[2][3] = {{"sigma_FG1", "sigma_Flim1", "Y_B1"},
                                                {"sigma_FG2", "sigma_Flim2", "Y_B2"}};
    const ts_iso6336_prepared    *p          = two->iso_pair;
    const ts_iso6336_rating      *r          = two->iso;
    const ts_iso6336_gear_rating *g          = &r->gear[gear];
    const ts_subject              iso        = two->lender;
    const char *const            *name       = own[gear];

    ts_workings_borrow(workings, "K_vISO", r->K_v, iso, "K_v");
    ts_workings_borrow(workings, "K_Fbeta", r->K_Fbeta, iso, "K_Fbeta");
    ts_workings_borrow(workings, "K_Falpha", r->K_Falpha, iso, "K_Falpha");
    ts_workings_borrow(workings, name[0], g->S_F, iso, name[1]);
    ts_workings_borrow(workings, name[2], g->sigma_F, iso, name[3]);
    ts_workings_borrow(workings, name[4], g->Y_M, iso, name[5]);
    ts_workings_borrow(workings, name[6], g->Y_NT, iso, name[6]);
    ts_workings_borrow(workings, lent[gear][0], g->sigma_FG, iso, lent[gear][0]);
    ts_workings_borrow(workings, lent[gear][1], p->mesh.gear[gear].sigma_Flim, iso, lent[gear][1]);
    ts_workings_borrow(workings, lent[gear][2], p->gear[gear].Y_B, iso, lent[gear][2]);
}

/* ---- factor by factor ------------------------------------------------------------------------ */

#define NOTE(which, result, ...)                                                                   \
    gap->factor[which] = TS_GEAR_STEP(workings, formulas[which], (result), __VA_ARGS__)

static void compare_contact(const ts_two_opinions *two, ts_opinion_gap *gap, ts_workings *workings)
{
    const ts_formula(*formulas)[2] = contact_formulas;
    const int                 gear = gap->gear;
    const ts_iso6336_rating  *iso  = two->iso;
    const ts_agma2101_rating *agma = two->agma;
    const ts_agma2101_pair   *pair = two->agma_pair;
    const double K_vISO = iso->K_v, K_v = agma->K_v, K_Hbeta = iso->K_Hbeta, K_H = agma->K_H;
    const double K_Halpha = iso->K_Halpha, Z_R = pair->Z_R, Y_Z = pair->Y_Z;
    const double Y_theta = agma->Y_theta, K_s = pair->tooth[gear].K_s;
    const double sigma_HP   = pair->tooth[gear].sigma_HP;
    const double sigma_Hlim = two->iso_pair->mesh.gear[gear].sigma_Hlim;
    const double Z_N = agma->gear[gear].Z_N, Z_NT = iso->gear[gear].Z_NT;
    const double Z_W = pair->tooth[gear].Z_W, Z_WISO = iso->gear[gear].Z_W;
    const double sigma_HISO = iso->gear[gear].sigma_H, sigma_H = agma->gear[gear].sigma_H;
    const double sigma_HG = iso->gear[gear].sigma_HG;

    NOTE(TS_FACTOR_DYNAMIC, sqrt(K_vISO / K_v), TS_ALL(K_vISO), TS_ALL(K_v));
    NOTE(TS_FACTOR_FACE, sqrt(K_Hbeta / K_H), TS_ALL(K_Hbeta), TS_ALL(K_H));
    NOTE(TS_FACTOR_SHARE, sqrt(K_Halpha), TS_ALL(K_Halpha));
    NOTE(TS_FACTOR_GEOMETRY,
         sigma_HISO / sqrt(K_vISO * K_Hbeta * K_Halpha) * sqrt(K_v * K_H * K_s * Z_R) / sigma_H,
         TS_OWN("sigma_HISO", sigma_HISO), TS_ALL(K_vISO), TS_ALL(K_Hbeta), TS_ALL(K_Halpha),
         TS_ALL(K_v), TS_ALL(K_H), TS_OWN("K_s", K_s), TS_ALL(Z_R), TS_OWN("sigma_H", sigma_H));
    NOTE(TS_FACTOR_STRENGTH, sigma_HP / sigma_Hlim, TS_OWN("sigma_HP", sigma_HP),
         TS_OWN("sigma_Hlim", sigma_Hlim));
    NOTE(TS_FACTOR_LIFE, Z_N / Z_NT, TS_OWN("Z_N", Z_N), TS_OWN("Z_NT", Z_NT));
    NOTE(TS_FACTOR_HARDENING, Z_W / Z_WISO, TS_OWN("Z_W", Z_W), TS_OWN("Z_WISO", Z_WISO));
    NOTE(TS_FACTOR_SURFACE,
         sigma_Hlim * Z_NT * Z_WISO / (sigma_HG * Y_theta * Y_Z * sqrt(K_s * Z_R)),
         TS_OWN("sigma_Hlim", sigma_Hlim), TS_OWN("Z_NT", Z_NT), TS_OWN("Z_WISO", Z_WISO),
         TS_OWN("sigma_HG", sigma_HG), TS_ALL(Y_theta), TS_ALL(Y_Z), TS_OWN("K_s", K_s),
         TS_ALL(Z_R));
    gap->factor[TS_FACTOR_RIM] = 1.0;
}

static void compare_bending(const ts_two_opinions *two, ts_opinion_gap *gap, ts_workings *workings)
{
    const ts_formula(*formulas)[2]  = bending_formulas;
    const int                  gear = gap->gear;
    const ts_iso6336_prepared *p    = two->iso_pair;
    const ts_iso6336_rating   *iso  = two->iso;
    const ts_agma2101_rating  *agma = two->agma;
    const ts_agma2101_pair    *pair = two->agma_pair;
    const double K_vISO = iso->K_v, K_v = agma->K_v, K_Fbeta = iso->K_Fbeta, K_H = agma->K_H;
    const double K_Falpha = iso->K_Falpha, Y_Z = pair->Y_Z, Y_theta = agma->Y_theta;
    const double K_s = pair->tooth[gear].K_s, K_B = pair->tooth[gear].K_B;
    const double Y_B = p->gear[gear].Y_B, sigma_FP = pair->tooth[gear].sigma_FP;
    const double sigma_Flim = p->mesh.gear[gear].sigma_Flim;
    const double Y_N = agma->gear[gear].Y_N, Y_NT = iso->gear[gear].Y_NT;
    const double Y_M = agma->gear[gear].Y_M, Y_MISO = iso->gear[gear].Y_M;
    const double sigma_FISO = iso->gear[gear].sigma_F, sigma_F = agma->gear[gear].sigma_F;
    const double sigma_FG = iso->gear[gear].sigma_FG;

    NOTE(TS_FACTOR_DYNAMIC, K_vISO / K_v, TS_ALL(K_vISO), TS_ALL(K_v));
    NOTE(TS_FACTOR_FACE, K_Fbeta / K_H, TS_ALL(K_Fbeta), TS_ALL(K_H));
    NOTE(TS_FACTOR_SHARE, K_Falpha, TS_ALL(K_Falpha));
    NOTE(TS_FACTOR_GEOMETRY,
         sigma_FISO / (K_vISO * K_Fbeta * K_Falpha * Y_B) * (K_v * K_H * K_s * K_B) / sigma_F,
         TS_OWN("sigma_FISO", sigma_FISO), TS_ALL(K_vISO), TS_ALL(K_Fbeta), TS_ALL(K_Falpha),
         TS_OWN("Y_B", Y_B), TS_ALL(K_v), TS_ALL(K_H), TS_OWN("K_s", K_s), TS_OWN("K_B", K_B),
         TS_OWN("sigma_F", sigma_F));
    NOTE(TS_FACTOR_STRENGTH, sigma_FP / (2.0 * sigma_Flim), TS_OWN("sigma_FP", sigma_FP),
         TS_OWN("sigma_Flim", sigma_Flim));
    NOTE(TS_FACTOR_LIFE, Y_N / Y_NT, TS_OWN("Y_N", Y_N), TS_OWN("Y_NT", Y_NT));
    NOTE(TS_FACTOR_HARDENING, Y_M / Y_MISO, TS_OWN("Y_M", Y_M), TS_OWN("Y_MISO", Y_MISO));
    NOTE(TS_FACTOR_RIM, Y_B / K_B, TS_OWN("Y_B", Y_B), TS_OWN("K_B", K_B));
    NOTE(TS_FACTOR_SURFACE, 2.0 * sigma_Flim * Y_NT * Y_MISO / (sigma_FG * Y_theta * Y_Z * K_s),
         TS_OWN("sigma_Flim", sigma_Flim), TS_OWN("Y_NT", Y_NT), TS_OWN("Y_MISO", Y_MISO),
         TS_OWN("sigma_FG", sigma_FG), TS_ALL(Y_theta), TS_ALL(Y_Z), TS_OWN("K_s", K_s));
}

void ts_opinion_set_side_by_side(const ts_two_opinions *two, ts_rated_stress stress,
                                 ts_opinion_gap *gap, ts_workings *workings)
{
    const bool                     contact = stress == TS_RATED_CONTACT;
    const int                      gear    = gap->gear;
    const ts_agma2101_gear_rating *agma    = &two->agma->gear[gear];
    const ts_iso6336_gear_rating  *iso     = &two->iso->gear[gear];

    gap->first  = contact ? iso->S_H : iso->S_F;
    gap->second = contact ? agma->S_H : agma->S_F;
    if (workings != NULL)
        (contact ? borrow_contact : borrow_bending)(two, gear, workings);
    (contact ? compare_contact : compare_bending)(two, gap, workings);
    if (contact)
        gap->ratio = TS_GEAR_STEP(workings, gap_formulas[0], gap->second / gap->first,
                                  TS_OWN("S_H", gap->second), TS_OWN("S_HISO", gap->first));
    else
        gap->ratio = TS_GEAR_STEP(workings, gap_formulas[1], gap->second / gap->first,
                                  TS_OWN("S_F", gap->second), TS_OWN("S_FISO", gap->first));
}

/* ---- in words -------------------------------------------------------------------------------- */

/* How much a factor pulls towards the difference that there is. */
static double pull(const ts_opinion_gap *gap, int factor)
{
    return log(gap->factor[factor]) * (gap->ratio > 1.0 ? 1.0 : -1.0);
}

/* The factor that pulls most, other than `but`. */
static int strongest(const ts_opinion_gap *gap, int but)
{
    int best = but == 0 ? 1 : 0;
    for (int f = 0; f < TS_FACTORS; f++)
        if (f != but && pull(gap, f) > pull(gap, best))
            best = f;
    return best;
}

ts_opinion_reason ts_opinion_reason_of(const ts_opinion_gap *gap)
{
    const int  first = strongest(gap, TS_FACTORS), second = strongest(gap, first);
    const bool both = pull(gap, second) >= 0.5 * pull(gap, first);

    return (ts_opinion_reason){(ts_opinion_factor)first,
                               both ? (ts_opinion_factor)second : TS_FACTORS};
}

const char *ts_opinion_factor_says(ts_opinion_factor factor, ts_rated_stress stress)
{
    static const char *const says[TS_FACTORS][2] = {
        [TS_FACTOR_DYNAMIC]   = {"the dynamic factor (K_v)", "the dynamic factor (K_v)"},
        [TS_FACTOR_FACE]      = {"the load over the face (K_Hbeta against K_H)",
                                 "the load over the face (K_Fbeta against K_H)"},
        [TS_FACTOR_SHARE]     = {"the share of teeth in contact (K_Halpha against none)",
                                 "the share of teeth in contact (K_Falpha against none)"},
        [TS_FACTOR_GEOMETRY]  = {"the geometry (Z_H Z_eps Z_beta Z_B against Z_I)",
                                 "the tooth form (Y_F Y_S against Y_J)"},
        [TS_FACTOR_STRENGTH]  = {"the allowable stress (sigma_Hlim against sigma_HP)",
                                 "the allowable stress (2 sigma_Flim against sigma_FP)"},
        [TS_FACTOR_LIFE]      = {"the life factor (Z_NT against Z_N)",
                                 "the life factor (Y_NT against Y_N)"},
        [TS_FACTOR_HARDENING] = {"the hardness ratio (Z_W)", "bending to both sides (Y_M)"},
        [TS_FACTOR_SURFACE]   = {"oil, speed and roughness (Z_L Z_v Z_R against none)",
                                 "notch, roughness and size (Y_deltarelT Y_RrelT Y_X against none)"},
        [TS_FACTOR_RIM]       = {"the rim (Y_B against K_B)", "the rim (Y_B against K_B)"},
    };
    return says[factor][stress == TS_RATED_CONTACT ? 0 : 1];
}
