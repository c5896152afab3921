/* rating/bevels_gap.c: which factor makes AGMA 2003 and ISO 10300 disagree about the same bevels?
 *
 * As of cylindrical teeth (opinion_gap.c): the ratio of both safeties is the product of the ratios
 * of like factors.  Geometry is what is left of a stress without its load factors, surface what is
 * left of a strength without limit, life and bending to both sides.
 */
#include "rating/drive_opinion_parts.h"
#include "rating/drive_teeth_parts.h"

#include "element/both_gears_step.h"

#include <math.h>

#define LIKE "derived: the same question in both standards; above 1 AGMA sees more safety"

#define H_DYNAMIC(I)  "sqrt(K_vISO/K_v)"
#define H_FACE(I)     "sqrt(K_HbetaISO/K_Hbeta)"
#define H_SHARE(I)    "sqrt(K_Halpha)"
#define H_FORM(I)     "sigma_HISO/sqrt(K_vISO*K_HbetaISO*K_Halpha)*sqrt(K_v*K_Hbeta)/sigma_H"
#define H_STRENGTH(I) "sigma_Hlim" I "/sigma_HlimISO" I
#define H_LIFE(I)     "Z_NT" I "/Z_NTISO" I
#define H_SURFACE(I)                                                                               \
    "S_H" I "*sigma_H/(sigma_Hlim" I "*Z_NT" I ")*(sigma_HlimISO" I "*Z_NTISO" I ")/(S_HISO" I     \
    "*sigma_HISO)"
#define H_GAP(I) "S_H" I "/S_HISO" I

#define F_DYNAMIC(I)  "K_vISO/K_v"
#define F_FACE(I)     "K_FbetaISO/K_Hbeta"
#define F_SHARE(I)    "K_Falpha"
#define F_FORM(I)     "sigma_FISO" I "/(K_vISO*K_FbetaISO*K_Falpha)*(K_v*K_Hbeta)/sigma_F" I
#define F_STRENGTH(I) "sigma_Flim" I "/(2*sigma_FlimISO" I ")"
#define F_LIFE(I)     "Y_NT" I "/Y_NTISO" I
#define F_BOTH(I)     "Y_M" I "/Y_MISO" I
#define F_SURFACE(I)                                                                               \
    "S_F" I "*sigma_F" I "/(sigma_Flim" I "*Y_NT" I "*Y_M" I ")*(2*sigma_FlimISO" I "*Y_NTISO" I   \
    "*Y_MISO" I ")/(S_FISO" I "*sigma_FISO" I ")"
#define F_GAP(I) "S_F" I "/S_FISO" I

#define COMPARED(symbol, what, text) TS_OF_BOTH_GEARS(symbol, what " compared", "1", text, LIKE)
static const ts_formula formulas[2][TS_FACTORS][2] = {
    {[TS_FACTOR_DYNAMIC]  = COMPARED("r_Hdynamic", "dynamic factors", H_DYNAMIC),
     [TS_FACTOR_FACE]     = COMPARED("r_Hface", "face load factors", H_FACE),
     [TS_FACTOR_SHARE]    = COMPARED("r_Hshare", "transverse load factors", H_SHARE),
     [TS_FACTOR_GEOMETRY] = COMPARED("r_Hgeometry", "stresses by geometry", H_FORM),
     [TS_FACTOR_STRENGTH] = COMPARED("r_Hstrength", "allowable stresses", H_STRENGTH),
     [TS_FACTOR_LIFE]     = COMPARED("r_Hlife", "life factors", H_LIFE),
     [TS_FACTOR_SURFACE]  = COMPARED("r_Hsurface", "oil, speed, size and reliability", H_SURFACE)},
    {[TS_FACTOR_DYNAMIC]   = COMPARED("r_Fdynamic", "dynamic factors", F_DYNAMIC),
     [TS_FACTOR_FACE]      = COMPARED("r_Fface", "face load factors", F_FACE),
     [TS_FACTOR_SHARE]     = COMPARED("r_Fshare", "transverse load factors", F_SHARE),
     [TS_FACTOR_GEOMETRY]  = COMPARED("r_Fgeometry", "stresses by tooth form", F_FORM),
     [TS_FACTOR_STRENGTH]  = COMPARED("r_Fstrength", "allowable stresses", F_STRENGTH),
     [TS_FACTOR_LIFE]      = COMPARED("r_Flife", "life factors", F_LIFE),
     [TS_FACTOR_HARDENING] = COMPARED("r_Fboth", "bending to both sides", F_BOTH),
     [TS_FACTOR_SURFACE]   = COMPARED("r_Fsurface", "notch, roughness and reliability", F_SURFACE)},
};
static const ts_formula gap_formulas[2][2] = {
    TS_OF_BOTH_GEARS("r_H", "safety against pitting by AGMA 2003 over that by ISO 10300", "1",
                     H_GAP, "derived: second opinion over first"),
    TS_OF_BOTH_GEARS("r_F", "safety against breakage by AGMA 2003 over that by ISO 10300", "1",
                     F_GAP, "derived: second opinion over first"),
};

/* ---- both standards in one place ------------------------------------------------------------- */

/* What both say of one gear under one stress; of ISO 10300 with ISO in its name. */
typedef struct both {
    double K_vISO, K_v, K_betaISO, K_beta, K_alpha, sigma_ISO, sigma, limit_ISO, limit;
    double life_ISO, life, both_ISO, both, S_ISO, S;
} both;

static both gather(const ts_opinion_case *c, uint32_t m, const ts_opinion_gap *gap, bool contact)
{
    const ts_bevels          *bevels = &c->teeth->bevels;
    const uint32_t            number = bevels->number[m];
    const ts_bevels_mesh     *mesh   = &bevels->meshes[number];
    const ts_bevels_case     *one = &bevels->cases[(size_t)gap->condition * bevels->count + number];
    const ts_iso10300_rating *iso = &one->rating;
    const ts_agma2003_rating *agma   = &one->second;
    const ts_iso10300_gear   *lent   = &mesh->prepared.mesh.gear[gap->gear];
    const ts_agma2003_gear   *own    = &mesh->second.in.gear[gap->gear];
    const ts_iso10300_gear_rating *g = &iso->gear[gap->gear];
    const ts_agma2003_gear_rating *a = &agma->gear[gap->gear];

    if (contact)
        return (both){iso->K_v,
                      agma->K_v,
                      iso->K_Hbeta,
                      mesh->second.K_Hbeta,
                      iso->K_Halpha,
                      iso->sigma_H,
                      agma->sigma_H,
                      lent->sigma_Hlim,
                      own->sigma_Hlim,
                      g->Z_NT,
                      a->Z_NT,
                      1.0,
                      1.0,
                      g->S_H,
                      a->S_H};
    return (both){iso->K_v,
                  agma->K_v,
                  iso->K_Fbeta,
                  mesh->second.K_Hbeta,
                  iso->K_Falpha,
                  g->sigma_F,
                  a->sigma_F,
                  lent->sigma_Flim,
                  own->sigma_Flim,
                  g->Y_NT,
                  a->Y_NT,
                  one->load.Y_M[gap->gear],
                  one->second_Y_M[gap->gear],
                  g->S_F,
                  a->S_F};
}

static void borrow_all(const ts_opinion_case *c, uint32_t m, const ts_opinion_gap *gap,
                       const both *b, bool contact)
{
    static const char *const names[2][2][5][2] = {{{{"sigma_HISO", "sigma_H"},
                                                    {"sigma_HlimISO1", "sigma_Hlim1"},
                                                    {"Z_NTISO1", "Z_NT1"},
                                                    {"S_HISO1", "S_H1"},
                                                    {NULL, NULL}},
                                                   {{"sigma_HISO", "sigma_H"},
                                                    {"sigma_HlimISO2", "sigma_Hlim2"},
                                                    {"Z_NTISO2", "Z_NT2"},
                                                    {"S_HISO2", "S_H2"},
                                                    {NULL, NULL}}},
                                                  {{{"sigma_FISO1", "sigma_F1"},
                                                    {"sigma_FlimISO1", "sigma_Flim1"},
                                                    {"Y_NTISO1", "Y_NT1"},
                                                    {"S_FISO1", "S_F1"},
                                                    {"Y_MISO1", "Y_M1"}},
                                                   {{"sigma_FISO2", "sigma_F2"},
                                                    {"sigma_FlimISO2", "sigma_Flim2"},
                                                    {"Y_NTISO2", "Y_NT2"},
                                                    {"S_FISO2", "S_F2"},
                                                    {"Y_MISO2", "Y_M2"}}}};
    const double     values[5] = {b->sigma_ISO, b->limit_ISO, b->life_ISO, b->S_ISO, b->both_ISO};
    const ts_subject iso       = ts_opinion_first_subject(c, m, gap->condition);

    ts_workings_borrow(c->workings, "K_vISO", b->K_vISO, iso, "K_v");
    ts_workings_borrow(c->workings, contact ? "K_HbetaISO" : "K_FbetaISO", b->K_betaISO, iso,
                       contact ? "K_Hbeta" : "K_Fbeta");
    ts_workings_borrow(c->workings, contact ? "K_Halpha" : "K_Falpha", b->K_alpha, iso,
                       contact ? "K_Halpha" : "K_Falpha");
    for (int i = 0; i < (contact ? 4 : 5); i++) {
        const char *const *name = names[contact ? 0 : 1][gap->gear][i];
        ts_workings_borrow(c->workings, name[0], values[i], iso, name[1]);
    }
}

/* ---- factor by factor ------------------------------------------------------------------------ */

#define NOTE(which, result, ...)                                                                   \
    out->factor[which] = TS_GEAR_STEP(workings, formulas[stress][which], (result), __VA_ARGS__)

static void compare_contact(const both *b, ts_opinion_gap *out, ts_workings *workings)
{
    const int    gear = out->gear, stress = 0;
    const double K_vISO = b->K_vISO, K_v = b->K_v, K_HbetaISO = b->K_betaISO, K_Hbeta = b->K_beta;
    const double K_Halpha = b->K_alpha, sigma_HISO = b->sigma_ISO, sigma_H = b->sigma;

    NOTE(TS_FACTOR_DYNAMIC, sqrt(K_vISO / K_v), TS_ALL(K_vISO), TS_ALL(K_v));
    NOTE(TS_FACTOR_FACE, sqrt(K_HbetaISO / K_Hbeta), TS_ALL(K_HbetaISO), TS_ALL(K_Hbeta));
    NOTE(TS_FACTOR_SHARE, sqrt(K_Halpha), TS_ALL(K_Halpha));
    NOTE(TS_FACTOR_GEOMETRY,
         sigma_HISO / sqrt(K_vISO * K_HbetaISO * K_Halpha) * sqrt(K_v * K_Hbeta) / sigma_H,
         TS_ALL(sigma_HISO), TS_ALL(K_vISO), TS_ALL(K_HbetaISO), TS_ALL(K_Halpha), TS_ALL(K_v),
         TS_ALL(K_Hbeta), TS_ALL(sigma_H));
    NOTE(TS_FACTOR_STRENGTH, b->limit / b->limit_ISO, TS_OWN("sigma_Hlim", b->limit),
         TS_OWN("sigma_HlimISO", b->limit_ISO));
    NOTE(TS_FACTOR_LIFE, b->life / b->life_ISO, TS_OWN("Z_NT", b->life),
         TS_OWN("Z_NTISO", b->life_ISO));
    NOTE(TS_FACTOR_SURFACE,
         b->S * sigma_H / (b->limit * b->life) * (b->limit_ISO * b->life_ISO) /
             (b->S_ISO * sigma_HISO),
         TS_OWN("S_H", b->S), TS_ALL(sigma_H), TS_OWN("sigma_Hlim", b->limit),
         TS_OWN("Z_NT", b->life), TS_OWN("sigma_HlimISO", b->limit_ISO),
         TS_OWN("Z_NTISO", b->life_ISO), TS_OWN("S_HISO", b->S_ISO), TS_ALL(sigma_HISO));
    out->factor[TS_FACTOR_HARDENING] = out->factor[TS_FACTOR_RIM] = 1.0;
    out->ratio = TS_GEAR_STEP(workings, gap_formulas[0], b->S / b->S_ISO, TS_OWN("S_H", b->S),
                              TS_OWN("S_HISO", b->S_ISO));
}

static void compare_bending(const both *b, ts_opinion_gap *out, ts_workings *workings)
{
    const int    gear = out->gear, stress = 1;
    const double K_vISO = b->K_vISO, K_v = b->K_v, K_FbetaISO = b->K_betaISO, K_Hbeta = b->K_beta;
    const double K_Falpha = b->K_alpha;

    NOTE(TS_FACTOR_DYNAMIC, K_vISO / K_v, TS_ALL(K_vISO), TS_ALL(K_v));
    NOTE(TS_FACTOR_FACE, K_FbetaISO / K_Hbeta, TS_ALL(K_FbetaISO), TS_ALL(K_Hbeta));
    NOTE(TS_FACTOR_SHARE, K_Falpha, TS_ALL(K_Falpha));
    NOTE(TS_FACTOR_GEOMETRY,
         b->sigma_ISO / (K_vISO * K_FbetaISO * K_Falpha) * (K_v * K_Hbeta) / b->sigma,
         TS_OWN("sigma_FISO", b->sigma_ISO), TS_ALL(K_vISO), TS_ALL(K_FbetaISO), TS_ALL(K_Falpha),
         TS_ALL(K_v), TS_ALL(K_Hbeta), TS_OWN("sigma_F", b->sigma));
    NOTE(TS_FACTOR_STRENGTH, b->limit / (2.0 * b->limit_ISO), TS_OWN("sigma_Flim", b->limit),
         TS_OWN("sigma_FlimISO", b->limit_ISO));
    NOTE(TS_FACTOR_LIFE, b->life / b->life_ISO, TS_OWN("Y_NT", b->life),
         TS_OWN("Y_NTISO", b->life_ISO));
    NOTE(TS_FACTOR_HARDENING, b->both / b->both_ISO, TS_OWN("Y_M", b->both),
         TS_OWN("Y_MISO", b->both_ISO));
    NOTE(TS_FACTOR_SURFACE,
         b->S * b->sigma / (b->limit * b->life * b->both) *
             (2.0 * b->limit_ISO * b->life_ISO * b->both_ISO) / (b->S_ISO * b->sigma_ISO),
         TS_OWN("S_F", b->S), TS_OWN("sigma_F", b->sigma), TS_OWN("sigma_Flim", b->limit),
         TS_OWN("Y_NT", b->life), TS_OWN("Y_M", b->both), TS_OWN("sigma_FlimISO", b->limit_ISO),
         TS_OWN("Y_NTISO", b->life_ISO), TS_OWN("Y_MISO", b->both_ISO), TS_OWN("S_FISO", b->S_ISO),
         TS_OWN("sigma_FISO", b->sigma_ISO));
    out->factor[TS_FACTOR_RIM] = 1.0;
    out->ratio = TS_GEAR_STEP(workings, gap_formulas[1], b->S / b->S_ISO, TS_OWN("S_F", b->S),
                              TS_OWN("S_FISO", b->S_ISO));
}

/* ---- where ISO 10300 sees the least safety --------------------------------------------------- */

static ts_opinion_gap gap_of(const ts_opinion_case *c, uint32_t m, bool contact)
{
    ts_opinion_gap gap = {.condition = TS_EVERY_CONDITION,
                          .first     = INFINITY,
                          .second    = (double)NAN,
                          .ratio     = (double)NAN};

    for (uint32_t condition = 0; condition < c->drive->condition_count; condition++)
        for (int gear = 0; gear < 2; gear++) {
            const ts_mesh_case *one = ts_opinion_first(c, m, condition);
            const double S = contact ? one->rating.gear[gear].S_H : one->rating.gear[gear].S_F;

            if (!one->loaded || one->missing != NULL || one->fault != NULL || !(S < gap.first))
                continue;
            gap.first     = S;
            gap.condition = (int32_t)condition;
            gap.gear      = gear;
        }
    if (gap.condition < 0)
        return gap;
    const both b = gather(c, m, &gap, contact);

    gap.second = b.S;
    if (!isfinite(b.S)) {
        gap.condition = TS_EVERY_CONDITION;
        return gap;
    }
    ts_workings_about(c->workings, c->opinion->mesh[m].subject, gap.condition);
    if (c->workings != NULL)
        borrow_all(c, m, &gap, &b, contact);
    (contact ? compare_contact : compare_bending)(&b, &gap, c->workings);
    return gap;
}

void ts_opinion_compare_bevels(const ts_opinion_case *c, uint32_t m)
{
    const ts_bevels      *bevels = &c->teeth->bevels;
    const ts_bevels_mesh *mesh   = &bevels->meshes[bevels->number[m]];
    ts_mesh_opinion      *out    = &c->opinion->mesh[m];

    out->contact = out->bending =
        (ts_opinion_gap){.condition = TS_EVERY_CONDITION, .ratio = (double)NAN};
    if (!mesh->second_asked || mesh->second_missing != NULL)
        return;
    out->subject = mesh->second_subject.object;
    out->contact = gap_of(c, m, true);
    out->bending = gap_of(c, m, false);
}
