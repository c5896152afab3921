/* element/cylindrical_pair.c: how do two cylindrical gears sit together? */
#include "element/cylindrical_pair.h"

#include "base/assert.h"
#include "element/cylindrical_contact.h"
#include "element/involute.h"
#include "element/shift_split.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

#define ISO_21771 "ISO 21771:2007 (formula from memory)"

static const ts_formula u_formula = {
    .symbol  = "u",
    .meaning = "ratio of teeth",
    .unit    = "1",
    .text    = "z_2/z_1",
    .source  = ISO_21771,
};
static const ts_formula a_formula = {
    .symbol  = "a",
    .meaning = "reference centre distance",
    .unit    = "m",
    .text    = "m_t*(z_1 + z_2)/2",
    .source  = ISO_21771,
};
static const ts_formula inv_from_shift_formula = {
    .symbol  = "inv_alpha_wt",
    .meaning = "involute function of the working pressure angle",
    .unit    = "1",
    .text    = "inv(alpha_t) + 2*tan(alpha_n)*(x_1 + x_2)/(z_1 + z_2)",
    .source  = ISO_21771,
};
static const ts_formula alpha_wt_equation = {
    .symbol  = "alpha_wt",
    .meaning = "working transverse pressure angle",
    .unit    = "rad",
    .text    = "inv(alpha_wt) - inv_alpha_wt",
    .source  = ISO_21771,
};
static const ts_formula a_w_formula = {
    .symbol  = "a_w",
    .meaning = "working centre distance",
    .unit    = "m",
    .text    = "a*cos(alpha_t)/cos(alpha_wt)",
    .source  = ISO_21771,
};
static const ts_formula alpha_wt_formula = {
    .symbol  = "alpha_wt",
    .meaning = "working transverse pressure angle",
    .unit    = "rad",
    .text    = "acos(a*cos(alpha_t)/a_w)",
    .source  = ISO_21771,
};
static const ts_formula inv_formula = {
    .symbol  = "inv_alpha_wt",
    .meaning = "involute function of the working pressure angle",
    .unit    = "1",
    .text    = "inv(alpha_wt)",
    .source  = ISO_21771,
};
static const ts_formula sum_x_formula = {
    .symbol  = "sum_x",
    .meaning = "sum of profile shifts that closes the mesh",
    .unit    = "1",
    .text    = "(z_1 + z_2)*(inv_alpha_wt - inv(alpha_t))/(2*tan(alpha_n))",
    .source  = ISO_21771,
};
static const ts_formula sum_of_shifts_formula = {
    .symbol  = "sum_x",
    .meaning = "sum of profile shifts that closes the mesh",
    .unit    = "1",
    .text    = "x_1 + x_2",
    .source  = ISO_21771,
};
static const ts_formula y_formula = {
    .symbol  = "y",
    .meaning = "centre distance modification coefficient",
    .unit    = "1",
    .text    = "(a_w - a)/m_n",
    .source  = ISO_21771,
};
static const ts_formula x_1_formula = {
    .symbol  = "x_1",
    .meaning = "profile shift coefficient of gear 1",
    .unit    = "1",
    .text    = "sum_x - x_2",
    .source  = ISO_21771,
};
static const ts_formula x_2_formula = {
    .symbol  = "x_2",
    .meaning = "profile shift coefficient of gear 2",
    .unit    = "1",
    .text    = "sum_x - x_1",
    .source  = ISO_21771,
};
static const ts_formula k_1_formula = {
    .symbol  = "k_1",
    .meaning = "tip alteration coefficient of gear 1",
    .unit    = "1",
    .text    = "y - x_1 - x_2",
    .source  = ISO_21771,
};
static const ts_formula k_2_formula = {
    .symbol  = "k_2",
    .meaning = "tip alteration coefficient of gear 2",
    .unit    = "1",
    .text    = "y - x_1 - x_2",
    .source  = ISO_21771,
};
static const ts_formula k_1_from_tip_formula = {
    .symbol  = "k_1",
    .meaning = "tip alteration coefficient of gear 1",
    .unit    = "1",
    .text    = "(d_a1 - z_1*m_t)/(2*m_n) - h_aPs - x_1",
    .source  = ISO_21771,
};
static const ts_formula k_2_from_tip_formula = {
    .symbol  = "k_2",
    .meaning = "tip alteration coefficient of gear 2",
    .unit    = "1",
    .text    = "(d_a2 - z_2*m_t)/(2*m_n) - h_aPs - x_2",
    .source  = ISO_21771,
};
static const ts_formula d_w1_formula = {
    .symbol  = "d_w1",
    .meaning = "working pitch diameter of gear 1",
    .unit    = "m",
    .text    = "2*a_w/(u + 1)",
    .source  = ISO_21771,
};
static const ts_formula d_w2_formula = {
    .symbol  = "d_w2",
    .meaning = "working pitch diameter of gear 2",
    .unit    = "m",
    .text    = "2*a_w*u/(u + 1)",
    .source  = ISO_21771,
};
static const ts_formula c_1_formula = {
    .symbol  = "c_1",
    .meaning = "clearance from the tip of gear 1 to the root of gear 2",
    .unit    = "m",
    .text    = "a_w - d_a1/2 - d_f2/2",
    .source  = ISO_21771,
};
static const ts_formula c_2_formula = {
    .symbol  = "c_2",
    .meaning = "clearance from the tip of gear 2 to the root of gear 1",
    .unit    = "m",
    .text    = "a_w - d_a2/2 - d_f1/2",
    .source  = ISO_21771,
};
static const ts_formula j_wt_formula = {
    .symbol  = "j_wt",
    .meaning = "circumferential backlash at the working pitch circles",
    .unit    = "m",
    .text    = "2*m_t*cos(alpha_t)/cos(alpha_wt)*tan(alpha_n)*(sum_x - (x_1 + x_2))",
    .source  = "derived: base pitch less both tooth thicknesses on the line of action",
};
static const ts_formula j_bn_formula = {
    .symbol  = "j_bn",
    .meaning = "normal backlash",
    .unit    = "m",
    .text    = "j_wt*cos(alpha_wt)*cos(beta_b)",
    .source  = ISO_21771,
};

/* Far beyond any gear, and near enough to keep every result finite. */
#define TEETH_MOST       1000000
#define LENGTH_MOST      1e6
#define COEFFICIENT_MOST 1e3

static bool within(double value, double most)
{
    return fabs(value) <= most; /* false for NaN */
}

static ts_pair_fault check_range(const ts_cylindrical_pair_input *in,
                                 const ts_cylindrical_frame      *frame)
{
    const bool teeth = in->z_1 > 0 && in->z_1 <= TEETH_MOST && in->z_2 != 0 &&
                       in->z_2 >= -TEETH_MOST && in->z_2 <= TEETH_MOST && in->z_1 != -in->z_2;
    const bool shifts = within(in->x_1, COEFFICIENT_MOST) && within(in->x_2, COEFFICIENT_MOST) &&
                        within(in->k_1, COEFFICIENT_MOST) && within(in->k_2, COEFFICIENT_MOST);
    const bool lengths = within(in->a_w, LENGTH_MOST) && within(in->d_a1, LENGTH_MOST) &&
                         within(in->d_a2, LENGTH_MOST) && within(in->b_1, LENGTH_MOST) &&
                         within(in->b_2, LENGTH_MOST) && in->b_1 >= 0.0 && in->b_2 >= 0.0;

    if (!teeth || !shifts || !lengths || !ts_cylindrical_frame_sound(frame))
        return TS_PAIR_OUT_OF_RANGE;
    if (!ts_basic_rack_possible(&in->rack, frame->alpha_n))
        return TS_PAIR_NO_RACK;
    return TS_PAIR_FINE;
}

/* Profile shifts are given and the centre distance follows. */
static ts_pair_fault solve_centre(ts_cylindrical_pair *pair, ts_workings *workings)
{
    const double z_1 = pair->in.z_1, z_2 = pair->in.z_2, alpha_n = pair->in.alpha_n;
    const double alpha_t = pair->alpha_t, x_1 = pair->in.x_1, x_2 = pair->in.x_2, a = pair->a;

    const double inv_alpha_wt =
        TS_STEP(workings, inv_from_shift_formula,
                ts_inv(alpha_t) + 2.0 * tan(alpha_n) * (x_1 + x_2) / (z_1 + z_2), alpha_t, alpha_n,
                x_1, x_2, z_1, z_2);
    const double alpha_wt = ts_inv_inverse(inv_alpha_wt);
    if (!(alpha_wt > 0.0))
        return TS_PAIR_NO_CENTRE;
    if (workings != NULL) {
        const ts_input inputs[] = {{"alpha_wt", alpha_wt}, {"inv_alpha_wt", inv_alpha_wt}};
        ts_search_note(workings, &alpha_wt_equation, alpha_wt, ts_inv(alpha_wt) - inv_alpha_wt,
                       inputs, 2);
    }
    pair->inv_alpha_wt = inv_alpha_wt;
    pair->alpha_wt     = alpha_wt;
    pair->sum_x        = TS_STEP(workings, sum_of_shifts_formula, x_1 + x_2, x_1, x_2);
    pair->a_w =
        TS_STEP(workings, a_w_formula, a * cos(alpha_t) / cos(alpha_wt), a, alpha_t, alpha_wt);
    return TS_PAIR_FINE;
}

/* The centre distance is given and the sum of the shifts follows. */
static ts_pair_fault solve_sum(ts_cylindrical_pair *pair, ts_workings *workings)
{
    const double z_1 = pair->in.z_1, z_2 = pair->in.z_2, alpha_n = pair->in.alpha_n;
    const double alpha_t = pair->alpha_t, a = pair->a, a_w = pair->in.a_w;
    const double cosine = a * cos(alpha_t) / a_w;

    if (!(cosine > 0.0 && cosine < 1.0))
        return TS_PAIR_NO_CENTRE;
    const double alpha_wt     = TS_STEP(workings, alpha_wt_formula, acos(cosine), a, alpha_t, a_w);
    const double inv_alpha_wt = TS_STEP(workings, inv_formula, ts_inv(alpha_wt), alpha_wt);

    const double grown = inv_alpha_wt - ts_inv(alpha_t);

    pair->a_w          = a_w;
    pair->alpha_wt     = alpha_wt;
    pair->inv_alpha_wt = inv_alpha_wt;
    pair->sum_x = TS_STEP(workings, sum_x_formula, (z_1 + z_2) * grown / (2.0 * tan(alpha_n)), z_1,
                          z_2, inv_alpha_wt, alpha_t, alpha_n);
    return TS_PAIR_FINE;
}

static ts_pair_fault solve_shifts(ts_cylindrical_pair *pair, ts_workings *workings)
{
    const double sum_x = pair->sum_x;
    double       x_1 = pair->in.x_1, x_2 = pair->in.x_2;

    if (pair->in.shift == TS_SHIFT_EQUAL_SLIDING) {
        x_1 = ts_shift_split_equal_sliding(pair, workings);
        if (isnan(x_1))
            return TS_PAIR_NO_SPLIT;
        x_2 = TS_STEP(workings, x_2_formula, sum_x - x_1, sum_x, x_1);
    } else if (pair->in.shift == TS_SHIFT_REST_1) {
        x_1 = TS_STEP(workings, x_1_formula, sum_x - x_2, sum_x, x_2);
    } else if (pair->in.shift == TS_SHIFT_REST_2) {
        x_2 = TS_STEP(workings, x_2_formula, sum_x - x_1, sum_x, x_1);
    }
    pair->x_1 = x_1;
    pair->x_2 = x_2;
    return TS_PAIR_FINE;
}

static void solve_tips_from_diameters(ts_cylindrical_pair *pair, ts_workings *workings)
{
    const double d_a1 = pair->in.d_a1, d_a2 = pair->in.d_a2, m_t = pair->m_t, m_n = pair->in.m_n;
    const double z_1 = pair->in.z_1, z_2 = pair->in.z_2, h_aPs = pair->in.rack.h_aPs;
    const double x_1 = pair->x_1, x_2 = pair->x_2;

    pair->k_1 =
        TS_STEP(workings, k_1_from_tip_formula, (d_a1 - z_1 * m_t) / (2.0 * m_n) - h_aPs - x_1,
                d_a1, z_1, m_t, m_n, h_aPs, x_1);
    pair->k_2 =
        TS_STEP(workings, k_2_from_tip_formula, (d_a2 - z_2 * m_t) / (2.0 * m_n) - h_aPs - x_2,
                d_a2, z_2, m_t, m_n, h_aPs, x_2);
}

static void solve_tips(ts_cylindrical_pair *pair, ts_workings *workings)
{
    const double y = pair->y, x_1 = pair->x_1, x_2 = pair->x_2;

    if (pair->in.tip == TS_TIP_DIAMETERS) {
        solve_tips_from_diameters(pair, workings);
        return;
    }
    pair->k_1 = pair->in.k_1;
    pair->k_2 = pair->in.k_2;
    if (pair->in.tip == TS_TIP_CLEARANCE) {
        pair->k_1 = TS_STEP(workings, k_1_formula, y - x_1 - x_2, y, x_1, x_2);
        pair->k_2 = TS_STEP(workings, k_2_formula, y - x_1 - x_2, y, x_1, x_2);
    }
}

static void take_gear_1(ts_cylindrical_pair *pair, const ts_cylindrical_gear *gear)
{
    pair->d_1     = gear->d;
    pair->d_b1    = gear->d_b;
    pair->d_a1    = gear->d_a;
    pair->d_f1    = gear->d_f;
    pair->s_t1    = gear->s_t;
    pair->s_at1   = gear->s_at;
    pair->s_an1   = gear->s_an;
    pair->x_min1  = gear->x_min;
    pair->rho_Ff1 = gear->rho_Ff;
    pair->d_Ff1   = gear->d_Ff;
}

static void take_gear_2(ts_cylindrical_pair *pair, const ts_cylindrical_gear *gear)
{
    pair->d_2     = gear->d;
    pair->d_b2    = gear->d_b;
    pair->d_a2    = gear->d_a;
    pair->d_f2    = gear->d_f;
    pair->s_t2    = gear->s_t;
    pair->s_at2   = gear->s_at;
    pair->s_an2   = gear->s_an;
    pair->x_min2  = gear->x_min;
    pair->rho_Ff2 = gear->rho_Ff;
    pair->d_Ff2   = gear->d_Ff;
}

static void solve_clearances(ts_cylindrical_pair *pair, ts_workings *workings)
{
    const double a_w = pair->a_w, m_t = pair->m_t, alpha_n = pair->in.alpha_n, u = pair->u;
    const double alpha_t = pair->alpha_t, alpha_wt = pair->alpha_wt, beta_b = pair->beta_b;
    const double d_a1 = pair->d_a1, d_a2 = pair->d_a2, d_f1 = pair->d_f1, d_f2 = pair->d_f2;
    const double sum_x = pair->sum_x, x_1 = pair->x_1, x_2 = pair->x_2;

    pair->d_w1 = TS_STEP(workings, d_w1_formula, 2.0 * a_w / (u + 1.0), a_w, u);
    pair->d_w2 = TS_STEP(workings, d_w2_formula, 2.0 * a_w * u / (u + 1.0), a_w, u);
    pair->c_1  = TS_STEP(workings, c_1_formula, a_w - d_a1 / 2.0 - d_f2 / 2.0, a_w, d_a1, d_f2);
    pair->c_2  = TS_STEP(workings, c_2_formula, a_w - d_a2 / 2.0 - d_f1 / 2.0, a_w, d_a2, d_f1);

    const double j_wt =
        TS_STEP(workings, j_wt_formula,
                2.0 * m_t * cos(alpha_t) / cos(alpha_wt) * tan(alpha_n) * (sum_x - (x_1 + x_2)),
                m_t, alpha_t, alpha_wt, alpha_n, sum_x, x_1, x_2);
    pair->j_wt = j_wt;
    pair->j_bn =
        TS_STEP(workings, j_bn_formula, j_wt * cos(alpha_wt) * cos(beta_b), j_wt, alpha_wt, beta_b);
}

static void solve_frame(ts_cylindrical_pair *pair, ts_cylindrical_frame *frame,
                        ts_workings *workings)
{
    const double z_1 = pair->in.z_1, z_2 = pair->in.z_2;

    ts_cylindrical_frame_solve(frame, workings);
    const double m_t = frame->m_t;
    pair->m_t        = m_t;
    pair->alpha_t    = frame->alpha_t;
    pair->beta_b     = frame->beta_b;
    pair->p_bt       = frame->p_bt;
    pair->u          = TS_STEP(workings, u_formula, z_2 / z_1, z_2, z_1);
    pair->a          = TS_STEP(workings, a_formula, m_t * (z_1 + z_2) / 2.0, m_t, z_1, z_2);
}

static ts_pair_fault solve_gears(ts_cylindrical_pair *pair, const ts_cylindrical_frame *frame,
                                 ts_workings *workings)
{
    const ts_cylindrical_pair_input *in   = &pair->in;
    const ts_cylindrical_gear_input  in_1 = {in->z_1, pair->x_1, pair->k_1, in->rack};
    const ts_cylindrical_gear_input  in_2 = {in->z_2, pair->x_2, pair->k_2, in->rack};
    ts_cylindrical_gear              gear;

    /* Given centres or tips may ask for shifts that no gear has. */
    if (!ts_cylindrical_gear_sound(frame, &in_1) || !ts_cylindrical_gear_sound(frame, &in_2))
        return TS_PAIR_OUT_OF_RANGE;
    ts_cylindrical_gear_solve(frame, &in_1, TS_GEAR_1, &gear, workings);
    take_gear_1(pair, &gear);
    pair->rho_E1 = gear.rho_a;
    ts_cylindrical_gear_solve(frame, &in_2, TS_GEAR_2, &gear, workings);
    take_gear_2(pair, &gear);
    if (isnan(pair->rho_E1) || isnan(gear.rho_a))
        return TS_PAIR_NO_TIP;
    solve_clearances(pair, workings);
    ts_cylindrical_contact_solve(pair, gear.rho_a, workings);
    return pair->s_at1 > 0.0 && pair->s_at2 > 0.0 ? TS_PAIR_FINE : TS_PAIR_POINTED;
}

static ts_pair_fault solve(const ts_cylindrical_pair_input *in, ts_cylindrical_pair *pair,
                           ts_workings *workings)
{
    ts_cylindrical_frame frame = {.m_n = in->m_n, .alpha_n = in->alpha_n, .beta = in->beta};
    ts_pair_fault        fault = check_range(in, &frame);

    if (fault != TS_PAIR_FINE)
        return fault;
    *pair = (ts_cylindrical_pair){.in = *in};
    solve_frame(pair, &frame, workings);
    /* 0 is the mark of "not given", set by the caller and never computed. */
    const bool free_centre = !(in->a_w > 0.0 || in->a_w < 0.0);
    fault                  = free_centre ? solve_centre(pair, workings) : solve_sum(pair, workings);
    if (fault != TS_PAIR_FINE)
        return fault;

    const double a_w = pair->a_w, a = pair->a, m_n = in->m_n;
    pair->y = TS_STEP(workings, y_formula, (a_w - a) / m_n, a_w, a, m_n);
    fault   = solve_shifts(pair, workings);
    if (fault != TS_PAIR_FINE)
        return fault;
    solve_tips(pair, workings);
    return solve_gears(pair, &frame, workings);
}

/* Every result behind `in` is a double, so that "not computed" can be written over all of them. */
static void forget(const ts_cylindrical_pair_input *in, ts_cylindrical_pair *pair)
{
    const double   nothing = NAN;
    unsigned char *bytes   = (unsigned char *)pair;

    for (size_t at = offsetof(ts_cylindrical_pair, m_t); at < sizeof *pair; at += sizeof nothing)
        memcpy(bytes + at, &nothing, sizeof nothing);
    pair->in = *in;
}

ts_pair_fault ts_cylindrical_pair_solve(const ts_cylindrical_pair_input *in,
                                        ts_cylindrical_pair *pair, ts_workings *workings)
{
    const ts_pair_fault fault = solve(in, pair, workings);

    if (fault != TS_PAIR_FINE && fault != TS_PAIR_POINTED)
        forget(in, pair);
    return fault;
}

const char *ts_pair_fault_says(ts_pair_fault fault)
{
    switch (fault) {
    case TS_PAIR_FINE:
        return "the pair is in order";
    case TS_PAIR_POINTED:
        return "a tooth ends in a point below its tip circle";
    case TS_PAIR_NO_CENTRE:
        return "the gears cannot mesh at this centre distance and profile shift";
    case TS_PAIR_NO_TIP:
        return "a tip circle lies inside its base circle, so that no flank is left";
    case TS_PAIR_NO_RACK:
        return "the basic rack cannot exist at this pressure angle";
    case TS_PAIR_OUT_OF_RANGE:
        return "tooth numbers, module, angles or widths are out of range";
    case TS_PAIR_NO_SPLIT:
        return "no profile shifts between undercut and pointed tips give equal sliding";
    }
    return "";
}

void ts_cylindrical_pair_gear(const ts_cylindrical_pair *pair, ts_gear_index index,
                              ts_cylindrical_frame *frame, ts_cylindrical_gear *gear)
{
    const bool                      first = index == TS_GEAR_1;
    const ts_cylindrical_gear_input in    = {
           .z    = first ? pair->in.z_1 : pair->in.z_2,
           .x    = first ? pair->x_1 : pair->x_2,
           .k    = first ? pair->k_1 : pair->k_2,
           .rack = pair->in.rack,
    };

    TS_ASSERT(index != TS_GEAR_ALONE);
    *frame = (ts_cylindrical_frame){
        .m_n = pair->in.m_n, .alpha_n = pair->in.alpha_n, .beta = pair->in.beta};
    ts_cylindrical_frame_solve(frame, NULL);
    ts_cylindrical_gear_solve(frame, &in, TS_GEAR_ALONE, gear, NULL);
}
