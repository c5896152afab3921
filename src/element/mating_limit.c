/* element/mating_limit.c: how few teeth, or how long tips, may mesh without interference? */
#include "element/mating_limit.h"

#include "element/involute.h"

#include <math.h>

#define CLOSED_FORM                                                                                \
    "derived: tip circle through the foot of the mate's base tangent; as in textbooks"

static const ts_formula z_rack_formula = {
    .symbol  = "z_rack",
    .meaning = "least number of teeth that meshes with a rack without interference",
    .unit    = "1",
    .text    = "2*k*cos(beta)/sin(alpha_t)^2",
    .source  = CLOSED_FORM,
};
static const ts_formula z_pinion_formula = {
    .symbol  = "z_pinion",
    .meaning = "least number of pinion teeth without interference at this ratio",
    .unit    = "1",
    .text   = "2*k*cos(beta)/((1 + 2*u)*sin(alpha_t)^2)*(u + sqrt(u^2 + (1 + 2*u)*sin(alpha_t)^2))",
    .source = CLOSED_FORM,
};
static const ts_formula z_wheel_formula = {
    .symbol  = "z_wheel",
    .meaning = "largest number of wheel teeth without interference",
    .unit    = "1",
    .text    = "(z_1^2*sin(alpha_t)^2 - 4*(k*cos(beta))^2)/(4*k*cos(beta) - 2*z_1*sin(alpha_t)^2)",
    .source  = CLOSED_FORM,
};
static const ts_formula r_a1_most_formula = {
    .symbol  = "r_a1_most",
    .meaning = "largest tip radius of gear 1 without interference",
    .unit    = "m",
    .text    = "sqrt((d_b1/2)^2 + (a_w*sin(alpha_wt))^2)",
    .source  = CLOSED_FORM,
};
static const ts_formula r_a2_most_formula = {
    .symbol  = "r_a2_most",
    .meaning = "largest tip radius of gear 2 without interference",
    .unit    = "m",
    .text    = "sqrt((d_b2/2)^2 + (a_w*sin(alpha_wt))^2)",
    .source  = CLOSED_FORM,
};
static const ts_formula r_a1_path_formula = {
    .symbol  = "r_a1_path",
    .meaning = "tip radius of gear 1 that gives this recess path",
    .unit    = "m",
    .text    = "sqrt((d_b1/2)^2 + (d_b1/2*tan(alpha_wt) + g)^2)",
    .source  = CLOSED_FORM,
};
static const ts_formula r_a2_path_formula = {
    .symbol  = "r_a2_path",
    .meaning = "tip radius of gear 2 that gives this approach path",
    .unit    = "m",
    .text    = "sqrt((d_b2/2)^2 + (d_b2/2*tan(alpha_wt) + g)^2)",
    .source  = CLOSED_FORM,
};

static const ts_formula room_formula = {
    .symbol  = "room_tips",
    .meaning = "room for the tips where they pass beside the mesh of an internal gear",
    .unit    = "m",
    .text = "abs(d_a2)/2*((acos((d_a2^2 - d_a1^2 - 4*a_w^2)/(4*abs(a_w)*d_a1)) + inv(acos(d_b1/d_a1"
            ")) - inv(alpha_wt))/abs(u) + inv(alpha_wt) - inv(acos(d_b2/d_a2)) - acos((4*a_w^2 + "
            "d_a2^2 - d_a1^2)/(4*abs(a_w*d_a2))))",
    .source = "derived: both tips on their way to where the tip circles cross; as in textbooks",
};

double ts_teeth_least_with_rack(double k, double alpha_t, double beta, ts_workings *workings)
{
    const double square = sin(alpha_t) * sin(alpha_t);

    return TS_STEP(workings, z_rack_formula, 2.0 * k * cos(beta) / square, k, beta, alpha_t);
}

double ts_teeth_least_at_ratio(double k, double alpha_t, double beta, double u,
                               ts_workings *workings)
{
    const double square = sin(alpha_t) * sin(alpha_t), span = 1.0 + 2.0 * u;

    return TS_STEP(workings, z_pinion_formula,
                   2.0 * k * cos(beta) / (span * square) * (u + sqrt(u * u + span * square)), k,
                   beta, u, alpha_t);
}

double ts_teeth_most_of_wheel(double k, double alpha_t, double beta, int teeth,
                              ts_workings *workings)
{
    const double square = sin(alpha_t) * sin(alpha_t), height = k * cos(beta), z_1 = teeth;
    const double under = 4.0 * height - 2.0 * z_1 * square;

    if (!(under > 0.0))
        return INFINITY;
    return TS_STEP(workings, z_wheel_formula,
                   (z_1 * z_1 * square - 4.0 * (height * height)) / under, z_1, alpha_t, k, beta);
}

double ts_tip_radius_most_1(const ts_cylindrical_pair *pair, ts_workings *workings)
{
    const double d_b1 = pair->d_b1, a_w = pair->a_w, alpha_wt = pair->alpha_wt;

    return TS_STEP(workings, r_a1_most_formula, hypot(d_b1 / 2.0, a_w * sin(alpha_wt)), d_b1, a_w,
                   alpha_wt);
}

double ts_tip_radius_most_2(const ts_cylindrical_pair *pair, ts_workings *workings)
{
    const double d_b2 = pair->d_b2, a_w = pair->a_w, alpha_wt = pair->alpha_wt;

    return TS_STEP(workings, r_a2_most_formula, hypot(d_b2 / 2.0, a_w * sin(alpha_wt)), d_b2, a_w,
                   alpha_wt);
}

double ts_tip_radius_for_path_1(const ts_cylindrical_pair *pair, double g, ts_workings *workings)
{
    const double d_b1 = pair->d_b1, alpha_wt = pair->alpha_wt, r_b = d_b1 / 2.0;

    return TS_STEP(workings, r_a1_path_formula, hypot(r_b, r_b * tan(alpha_wt) + g), d_b1, alpha_wt,
                   g);
}

double ts_tip_radius_for_path_2(const ts_cylindrical_pair *pair, double g, ts_workings *workings)
{
    const double d_b2 = pair->d_b2, alpha_wt = pair->alpha_wt, r_b = d_b2 / 2.0;

    return TS_STEP(workings, r_a2_path_formula, hypot(r_b, r_b * tan(alpha_wt) + g), d_b2, alpha_wt,
                   g);
}

/* The tip of gear 1 lags behind its flank at the pitch point, that of gear 2 runs ahead; both turn
 * until gear 1 is where the circles cross. */
double ts_tips_passing_room(const ts_cylindrical_pair *pair, ts_workings *workings)
{
    const double d_a1 = pair->d_a1, d_a2 = pair->d_a2, d_b1 = pair->d_b1, d_b2 = pair->d_b2;
    const double a_w = pair->a_w, alpha_wt = pair->alpha_wt, u = pair->u;
    const double more = d_a2 * d_a2 - d_a1 * d_a1, square = 4.0 * a_w * a_w, a_4 = 4.0 * fabs(a_w);
    const double from_1 = (more - square) / (a_4 * d_a1);
    const double from_2 = (square + more) / (a_4 * fabs(d_a2));

    if (pair->in.z_2 > 0 || !(fabs(from_1) < 1.0 && fabs(from_2) < 1.0))
        return INFINITY;
    const double turned = acos(from_1) + ts_inv(acos(d_b1 / d_a1)) - ts_inv(alpha_wt);
    const double ahead  = ts_inv(alpha_wt) - ts_inv(acos(d_b2 / d_a2));
    return TS_STEP(workings, room_formula,
                   fabs(d_a2) / 2.0 * (turned / fabs(u) + ahead - acos(from_2)), d_a2, d_a1, a_w,
                   d_b1, alpha_wt, u, d_b2);
}
