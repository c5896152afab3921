/* element/load_share.c: which part of the load does one pair of teeth carry? */
#include "element/load_share.h"

#include <math.h>

#define ISO_20 "ISO/TS 6336-20:2017, load sharing factor (from memory)"
#define CONSERVED                                                                                  \
    "derived: two pairs of teeth together carry the whole load; agrees with " ISO_20               \
    " without relief and with full relief"

static const ts_formula X_0_formula = {
    .symbol  = "X_0",
    .meaning = "share of a pair of teeth that begins to carry",
    .unit    = "1",
    .text    = "max(7, min(12, Q))/15 - 2/15",
    .source  = ISO_20,
};
static const ts_formula t_entering_formula = {
    .symbol  = "t",
    .meaning = "how far the point is on its way from A to B",
    .unit    = "1",
    .text    = "(Gamma - Gamma_A)/(Gamma_B - Gamma_A)",
    .source  = ISO_20,
};
static const ts_formula t_leaving_formula = {
    .symbol  = "t",
    .meaning = "how far the point is on its way back from E to D",
    .unit    = "1",
    .text    = "(Gamma_E - Gamma)/(Gamma_E - Gamma_D)",
    .source  = ISO_20,
};
static const ts_formula double_formula = {
    .symbol  = "X_spur",
    .meaning = "share in double contact, spur gears without relief",
    .unit    = "1",
    .text    = "X_0 + t/3",
    .source  = ISO_20,
};
static const ts_formula own_formula = {
    .symbol  = "X_spurtip",
    .meaning = "what relief at the tip that carries here takes off, spur gears",
    .unit    = "1",
    .text    = "(t - 1)/3",
    .source  = CONSERVED,
};
static const ts_formula other_formula = {
    .symbol  = "X_spurtip",
    .meaning = "what relief at the other tip adds, spur gears",
    .unit    = "1",
    .text    = "t/3",
    .source  = CONSERVED,
};
static const ts_formula high_ratio_formula = {
    .symbol  = "X_spur",
    .meaning = "share where never less than so many pairs of teeth carry",
    .unit    = "1",
    .text    = "1/n_least",
    .source  = "derived: equal teeth share equally; beyond the clause on load sharing",
};
static const ts_formula X_butmax_formula = {
    .symbol  = "X_butmax",
    .meaning = "buttressing factor at the ends of the path",
    .unit    = "1",
    .text    = "1 + 0.3*min(1, eps_beta)",
    .source  = "ISO/TS 6336-20:2017, buttressing factor (from memory)",
};
static const ts_formula X_but_formula = {
    .symbol  = "X_but",
    .meaning = "buttressing factor",
    .unit    = "1",
    .text    = "1 + (X_butmax - 1)*max(0, 1 - Gamma_end/(0.2*sin(beta_b)))",
    .source  = "ISO/TS 6336-20:2017, buttressing factor (from memory)",
};
static const ts_formula X_wide_formula = {
    .symbol  = "X_wide",
    .meaning = "share of wide helical gears without relief",
    .unit    = "1",
    .text    = "X_but/eps_alpha",
    .source  = ISO_20,
};
static const ts_formula mix_formula = {
    .symbol  = "f_wide",
    .meaning = "how wide a helical gear counts",
    .unit    = "1",
    .text    = "max(0, min(1, (eps_beta - 0.8)/0.4))",
    .source  = ISO_20,
};
static const ts_formula X_bare_formula = {
    .symbol  = "X_bare",
    .meaning = "share without relief",
    .unit    = "1",
    .text    = "(1 - f_wide)*X_spur*X_but + f_wide*X_wide",
    .source  = ISO_20,
};
static const ts_formula wide_own_formula = {
    .symbol  = "X_widetip",
    .meaning = "what relief at the tip that carries here takes off, wide helical gears",
    .unit    = "1",
    .text    = "(eps_alpha - 1)/(2*eps_alpha*(eps_alpha + 1)) - 2*(1 - t_own)/(eps_alpha + 1)",
    .source  = ISO_20,
};
static const ts_formula tip_formula = {
    .symbol  = "X_tip",
    .meaning = "what full relief of one tip adds to the share",
    .unit    = "1",
    .text    = "(1 - f_wide)*X_spurtip + f_wide*X_widetip - (X_end - 1)*((1 - f_wide)*X_spur + "
               "f_wide/eps_alpha)",
    .source  = "derived: parts of spur and of wide helical gears, without the buttressing that "
               "relief ends",
};

/* What one point asks for. */
typedef struct place {
    const ts_cylindrical_pair *pair;
    const ts_flank_path       *path;
    int                        grade;
    int                        point;
    double                     f_wide;
    ts_workings               *workings;
} place;

typedef struct parts {
    double bare, tip_1, tip_2;
} parts;

bool ts_load_share_high_ratio(const ts_cylindrical_pair *pair)
{
    return pair->eps_alpha >= 2.0 && pair->eps_beta < 1.2;
}

/* ---- spur ------------------------------------------------------------------------------------ */

static parts spur_double(const place *at, bool entering)
{
    const double       Gamma = at->path->Gamma[at->point], Q = at->grade;
    const double       Gamma_A = at->path->Gamma_A, Gamma_B = at->path->Gamma_B;
    const double       Gamma_D = at->path->Gamma_D, Gamma_E = at->path->Gamma_E;
    ts_workings *const workings = at->workings;

    const double X_0 =
        TS_STEP(workings, X_0_formula, fmax(7.0, fmin(12.0, Q)) / 15.0 - 2.0 / 15.0, Q);
    const double t =
        entering ? TS_STEP(workings, t_entering_formula, (Gamma - Gamma_A) / (Gamma_B - Gamma_A),
                           Gamma, Gamma_A, Gamma_B)
                 : TS_STEP(workings, t_leaving_formula, (Gamma_E - Gamma) / (Gamma_E - Gamma_D),
                           Gamma_E, Gamma, Gamma_D);
    const double X_spur = TS_STEP(workings, double_formula, X_0 + t / 3.0, X_0, t);
    const double own    = TS_STEP(workings, own_formula, (t - 1.0) / 3.0, t);
    const double other  = TS_STEP(workings, other_formula, t / 3.0, t);
    return entering ? (parts){X_spur, other, own} : (parts){X_spur, own, other};
}

static parts spur_parts(const place *at)
{
    const ts_path_zone zone     = at->path->zone[at->point];
    ts_workings *const workings = at->workings;

    if (at->pair->eps_alpha >= 2.0) {
        const double n_least = floor(at->pair->eps_alpha);

        ts_workings_row(workings, "n_least", n_least, "1", "whole part of eps_alpha");
        return (parts){.bare = TS_STEP(workings, high_ratio_formula, 1.0 / n_least, n_least)};
    }
    if (zone == TS_PATH_ALONE || !(at->path->Gamma_B > at->path->Gamma_A)) {
        ts_workings_row(workings, "X_spur", 1.0, "1", "one pair of teeth carries alone");
        return (parts){.bare = 1.0};
    }
    return spur_double(at, zone == TS_PATH_ENTERING);
}

/* ---- helical --------------------------------------------------------------------------------- */

/* Buttressing by the end from which the point is `away`, of the Gamma of gear 1.  The standard
 * counts Gamma of the pinion, whichever gear that is. */
static double buttressing(const place *at, double away)
{
    const double       Gamma_end = away / fmin(1.0, fabs(at->path->u));
    const double       beta_b = at->pair->beta_b, eps_beta = at->pair->eps_beta;
    ts_workings *const workings = at->workings;

    const double X_butmax =
        TS_STEP(workings, X_butmax_formula, 1.0 + 0.3 * fmin(1.0, eps_beta), eps_beta);
    const double ramp = fmax(0.0, 1.0 - Gamma_end / (0.2 * sin(beta_b)));
    return TS_STEP(workings, X_but_formula, 1.0 + (X_butmax - 1.0) * ramp, X_butmax, Gamma_end,
                   beta_b);
}

/* Relief of wide helical gears begins half-way between A and B; what it takes off there the rest of
 * the path carries. */
static double wide_tip(const place *at, double Gamma_end)
{
    const double       eps_alpha = at->pair->eps_alpha;
    const double       half      = (at->path->Gamma_B - at->path->Gamma_A) / 2.0;
    ts_workings *const workings  = at->workings;
    const double       t_own     = half > 0.0 ? fmin(1.0, Gamma_end / half) : 1.0;
    const double       rest      = (eps_alpha - 1.0) / (2.0 * eps_alpha * (eps_alpha + 1.0));

    ts_workings_row(workings, "t_own", t_own, "1",
                    "how far the point is on the relieved half of double contact");
    return TS_STEP(workings, wide_own_formula, rest - 2.0 * (1.0 - t_own) / (eps_alpha + 1.0),
                   eps_alpha, t_own);
}

static double tip_part(const place *at, double X_spur, double X_spurtip, double X_widetip,
                       double X_end)
{
    const double       f_wide = at->f_wide, eps_alpha = at->pair->eps_alpha;
    const double       ended    = (X_end - 1.0) * ((1.0 - f_wide) * X_spur + f_wide / eps_alpha);
    ts_workings *const workings = at->workings;

    ts_workings_row(workings, "X_end", X_end, "1", "buttressing by that end, 1 by the other");
    return TS_STEP(workings, tip_formula, (1.0 - f_wide) * X_spurtip + f_wide * X_widetip - ended,
                   f_wide, X_spurtip, X_widetip, X_end, X_spur, eps_alpha);
}

static parts helical_parts(const place *at)
{
    const double       Gamma = at->path->Gamma[at->point], eps_alpha = at->pair->eps_alpha;
    const double       from_A = Gamma - at->path->Gamma_A, to_E = at->path->Gamma_E - Gamma;
    const double       f_wide   = at->f_wide;
    ts_workings *const workings = at->workings;

    const parts  spur   = spur_parts(at);
    const double X_spur = spur.bare;
    const double but_2  = buttressing(at, from_A);
    const double but_1  = buttressing(at, to_E);
    const double X_but  = fmax(but_1, but_2);
    ts_workings_row(workings, "X_but", X_but, "1", "the larger buttressing of both ends");
    const double X_wide = TS_STEP(workings, X_wide_formula, X_but / eps_alpha, X_but, eps_alpha);
    const double X_bare =
        TS_STEP(workings, X_bare_formula, (1.0 - f_wide) * X_spur * X_but + f_wide * X_wide, f_wide,
                X_spur, X_but, X_wide);
    return (parts){
        .bare  = X_bare,
        .tip_1 = tip_part(at, X_spur, spur.tip_1, wide_tip(at, to_E), but_1 >= but_2 ? X_but : 1.0),
        .tip_2 =
            tip_part(at, X_spur, spur.tip_2, wide_tip(at, from_A), but_2 > but_1 ? X_but : 1.0),
    };
}

static place place_of(const ts_cylindrical_pair *pair, const ts_flank_path *path, int grade,
                      ts_workings *workings)
{
    const double eps_beta = pair->eps_beta;

    return (place){
        .pair  = pair,
        .path  = path,
        .grade = grade,
        .f_wide =
            TS_STEP(workings, mix_formula, fmax(0.0, fmin(1.0, (eps_beta - 0.8) / 0.4)), eps_beta),
        .workings = workings,
    };
}

static parts parts_at(const place *at)
{
    return at->pair->eps_beta > 0.0 && at->pair->beta_b > 0.0 ? helical_parts(at) : spur_parts(at);
}

void ts_load_share_lay(const ts_cylindrical_pair *pair, const ts_flank_path *path, int grade,
                       ts_load_share *share)
{
    ts_workings *const silent = NULL;
    place              at     = place_of(pair, path, grade, silent);

    for (int i = 0; i < TS_FLANK_POINTS; i++) {
        at.point         = i;
        const parts here = parts_at(&at);
        share->bare[i]   = here.bare;
        share->tip_1[i]  = here.tip_1;
        share->tip_2[i]  = here.tip_2;
    }
}

void ts_load_share_note(const ts_cylindrical_pair *pair, const ts_flank_path *path, int grade,
                        int point, ts_workings *workings)
{
    place at = place_of(pair, path, grade, workings);

    at.point         = point;
    const parts here = parts_at(&at);
    ts_workings_row(workings, "X_bare", here.bare, "1", ISO_20 ", without relief");
    ts_workings_row(workings, "X_tip1", here.tip_1, "1", "what full relief of tip 1 adds");
    ts_workings_row(workings, "X_tip2", here.tip_2, "1", "what full relief of tip 2 adds");
}
