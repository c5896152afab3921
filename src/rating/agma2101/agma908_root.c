/* rating/agma2101/agma908_root.c: where does the inscribed parabola touch the generated fillet? */
#include "rating/agma2101/agma908_root.h"

#include "element/involute.h"
#include "rating/agma2101/agma_step.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

#define CLAUSE_5 AGMA_908 "5" RECALLED
#define DERIVED  "derived: the rack's tip round rolled on the gear; AGMA 908-B89, clause 5, iterates"
#define FORMULA(name, symbol, meaning, unit, text, source)                                         \
    static const ts_formula name##_formulas[2] =                                                   \
        TS_OF_BOTH_GEARS(symbol, meaning, unit, text, source)

ts_agma_tool ts_agma_tool_of_rack(const ts_basic_rack *rack)
{
    return (ts_agma_tool){.h_a0 = rack->h_fPs, .rho_a0 = rack->rho_fPs};
}

/* ---- the load on the virtual spur gear ------------------------------------------------------- */

#define Z_N_TEXT(I)      "z_" I "/cos(beta)^3"
#define R_N_TEXT(I)      "z_n" I "/2"
#define R_BN_TEXT(I)     "r_n" I "*cos(alpha_n)"
#define T_TIP_TEXT(I)    "sqrt(((r_n" I " + h_a" I ")/r_bn" I ")^2 - 1)"
#define T_SINGLE_TEXT(I) "rho_W" I "/r_bn" I
#define S_N_TEXT(I)      "pi/2 + 2*x_" I "*tan(alpha_n)"
#define ALPHA_NL_TEXT(I) "t_W" I " - inv(alpha_n) - s_n" I "/z_n" I
#define R_NL_TEXT(I)     "r_bn" I "/cos(alpha_nL" I ")"

FORMULA(z_n, "z_n", "virtual number of teeth", "1", Z_N_TEXT, CLAUSE_5);
FORMULA(r_n, "r_n", "reference radius of the virtual gear, in modules", "1", R_N_TEXT, CLAUSE_5);
FORMULA(r_bn, "r_bn", "base radius of the virtual gear, in modules", "1", R_BN_TEXT, CLAUSE_5);
FORMULA(t_tip, "t_W", "tangent of the profile angle at the tip, where the load acts", "1",
        T_TIP_TEXT, CLAUSE_5);
FORMULA(t_single, "t_W",
        "tangent of the profile angle at the highest point of single contact, where the load acts",
        "1", T_SINGLE_TEXT, CLAUSE_5);
FORMULA(s_n, "s_n", "thickness of the full tooth, in modules", "1", S_N_TEXT, CLAUSE_5);
FORMULA(alpha_nL, "alpha_nL", "load angle", "rad", ALPHA_NL_TEXT, CLAUSE_5);
FORMULA(r_nL, "r_nL", "radius where the load line crosses the middle of the tooth, in modules", "1",
        R_NL_TEXT, CLAUSE_5);

static bool place_load(const ts_agma_root_input *in, ts_agma_root *root, ts_workings *workings)
{
    const int    gear = in->gear;
    const double h_a = in->h_a, rho_W = in->rho_W, r_n = root->r_n, r_bn = root->r_bn;

    if (!isnan(rho_W)) {
        root->t_W = TS_GEAR_STEP(workings, t_single_formulas, rho_W / r_bn, TS_OWN("rho_W", rho_W),
                                 TS_OWN("r_bn", r_bn));
        return root->t_W > 0.0;
    }
    const double tip = (r_n + h_a) / r_bn;
    if (!(tip > 1.0))
        return false;
    root->t_W = TS_GEAR_STEP(workings, t_tip_formulas, sqrt(tip * tip - 1.0), TS_OWN("r_n", r_n),
                             TS_OWN("h_a", h_a), TS_OWN("r_bn", r_bn));
    return true;
}

static bool solve_load(const ts_agma_root_input *in, ts_agma_root *root, ts_workings *workings)
{
    const int    gear = in->gear;
    const double z = in->z, x = in->x, beta = in->beta, alpha_n = in->alpha_n;
    const double slant = cos(beta);

    const double z_n = TS_GEAR_STEP(workings, z_n_formulas, z / (slant * slant * slant),
                                    TS_OWN("z_", z), TS_ALL(beta));
    const double r_n = TS_GEAR_STEP(workings, r_n_formulas, z_n / 2.0, TS_OWN("z_n", z_n));
    root->z_n        = z_n;
    root->r_n        = r_n;
    root->r_bn       = TS_GEAR_STEP(workings, r_bn_formulas, r_n * cos(alpha_n), TS_OWN("r_n", r_n),
                                    TS_ALL(alpha_n));
    if (!place_load(in, root, workings))
        return false;
    const double s_n = TS_GEAR_STEP(workings, s_n_formulas, pi / 2.0 + 2.0 * x * tan(alpha_n),
                                    TS_OWN("x_", x), TS_ALL(alpha_n));
    const double t_W = root->t_W, r_bn = root->r_bn;
    const double alpha_nL =
        TS_GEAR_STEP(workings, alpha_nL_formulas, t_W - ts_inv(alpha_n) - s_n / z_n,
                     TS_OWN("t_W", t_W), TS_ALL(alpha_n), TS_OWN("s_n", s_n), TS_OWN("z_n", z_n));
    root->alpha_nL = alpha_nL;
    if (!(fabs(alpha_nL) < pi / 2.0))
        return false;
    root->r_nL = TS_GEAR_STEP(workings, r_nL_formulas, r_bn / cos(alpha_nL), TS_OWN("r_bn", r_bn),
                              TS_OWN("alpha_nL", alpha_nL));
    return true;
}

/* ---- the tool -------------------------------------------------------------------------------- */

#define X_G_TEXT(I) "x_" I " - delta_sn" I "/(2*tan(alpha_n))"
#define H_S_TEXT(I) "h_a0" I " - x_g" I " - rho_a0" I
#define L_S_TEXT(I)                                                                                \
    "pi/4 + (h_a0" I " - rho_a0" I ")*tan(alpha_n) + (rho_a0" I " - delta_a0" I ")/cos(alpha_n)"
#define RHO_F_TEXT(I) "rho_a0" I " + h_S" I "^2/(r_n" I " + h_S" I ")"

FORMULA(x_g, "x_g", "generating shift coefficient, thinning included", "1", X_G_TEXT, CLAUSE_5);
FORMULA(h_S, "h_S", "depth of the centre of the tip round below the generating pitch circle", "1",
        H_S_TEXT, CLAUSE_5);
FORMULA(l_S, "l_S", "centre of the tip round beside the middle of the tooth, in modules", "1",
        L_S_TEXT, DERIVED);
FORMULA(rho_F, "rho_F", "least radius of the fillet, in modules", "1", RHO_F_TEXT, CLAUSE_5);

static bool place_tool(const ts_agma_root_input *in, ts_agma_root *root, ts_workings *workings)
{
    const int    gear = in->gear;
    const double x = in->x, delta_sn = in->delta_sn, alpha_n = in->alpha_n, r_n = root->r_n;
    const double h_a0 = in->tool.h_a0, rho_a0 = in->tool.rho_a0, delta_a0 = in->tool.delta_a0;

    const double x_g = TS_GEAR_STEP(workings, x_g_formulas, x - delta_sn / (2.0 * tan(alpha_n)),
                                    TS_OWN("x_", x), TS_OWN("delta_sn", delta_sn), TS_ALL(alpha_n));
    const double h_S =
        TS_GEAR_STEP(workings, h_S_formulas, h_a0 - x_g - rho_a0, TS_OWN("h_a0", h_a0),
                     TS_OWN("x_g", x_g), TS_OWN("rho_a0", rho_a0));
    root->x_g = x_g;
    root->h_S = h_S;
    root->l_S =
        TS_GEAR_STEP(workings, l_S_formulas,
                     pi / 4.0 + (h_a0 - rho_a0) * tan(alpha_n) + (rho_a0 - delta_a0) / cos(alpha_n),
                     TS_OWN("h_a0", h_a0), TS_OWN("rho_a0", rho_a0), TS_OWN("delta_a0", delta_a0),
                     TS_ALL(alpha_n));
    if (!(r_n + h_S > 0.0))
        return false;
    root->rho_F = TS_GEAR_STEP(workings, rho_F_formulas, rho_a0 + h_S * h_S / (r_n + h_S),
                               TS_OWN("rho_a0", rho_a0), TS_OWN("h_S", h_S), TS_OWN("r_n", r_n));
    return true;
}

/* ---- the critical section -------------------------------------------------------------------- */

/* A point of the tip round cuts when its normal passes through the pitch point; theta is the angle
 * of that normal on the tool (0: at the root circle), nu on the gear, both from the middle of the
 * tooth.  xi and eta are the point's half thickness and radius along the middle of the tooth. */
#define NU_OF(I, THETA) "(" THETA I " + (h_S" I "*tan(" THETA I ") + l_S" I ")/r_n" I ")"
#define REACH(I)        "(h_S" I "/cos(theta_" I ") + rho_a0" I ")"
#define XI_OF(I, NU)    "(r_n" I "*sin(" NU " - theta_" I ") - " REACH(I) "*sin(" NU "))"
#define ETA_OF(I, NU)   "(r_n" I "*cos(" NU " - theta_" I ") - " REACH(I) "*cos(" NU "))"
#define THETA_TEXT(I)                                                                              \
    "2*(r_nL" I " - " ETA_OF(I, NU_OF(I, "theta_")) ")*cos(" NU_OF(I, "theta_") ") - " XI_OF(      \
        I, NU_OF(I, "theta_")) "*sin(" NU_OF(I, "theta_") ")"
#define NU_TEXT(I)  NU_OF(I, "theta_")
#define S_F_TEXT(I) "2*" XI_OF(I, "nu_" I)
#define H_F_TEXT(I) "r_nL" I " - " ETA_OF(I, "nu_" I)

FORMULA(theta, "theta_", "where the parabola touches the fillet, on the tool's tip round", "rad",
        THETA_TEXT, DERIVED);
FORMULA(nu, "nu_", "the same on the gear, from the middle of the tooth", "rad", NU_TEXT, DERIVED);
FORMULA(s_F, "s_F", "tooth thickness at the critical section, in modules", "1", S_F_TEXT, DERIVED);
FORMULA(h_F, "h_F", "height of the load above the critical section, in modules", "1", H_F_TEXT,
        DERIVED);

typedef struct fillet {
    double r_n, h_S, rho_a0, lean; /* lean: l_S/r_n                                     */
    double r_nL;
} fillet;

typedef struct fillet_point {
    double nu, xi, eta;
    double miss;  /* 2 (r_nL - eta) cos(nu) - xi sin(nu): 0 where the parabola touches; falls */
    double slope; /* of miss with theta                                                       */
} fillet_point;

/* The derivative takes the speed along the fillet; its tangent leans by pi/2 - nu. */
static fillet_point fillet_at(const fillet *f, double theta)
{
    const double c = cos(theta), s = sin(theta), t = s / c;
    const double turn     = f->h_S / f->r_n * t + f->lean;
    const double sin_turn = sin(turn), cos_turn = cos(turn);
    const double sin_nu = s * cos_turn + c * sin_turn, cos_nu = c * cos_turn - s * sin_turn;
    const double reach = f->h_S / c + f->rho_a0;
    fillet_point at    = {.nu = theta + turn};

    at.xi              = f->r_n * sin_turn - reach * sin_nu;
    at.eta             = f->r_n * cos_turn - reach * cos_nu;
    const double arm   = f->r_nL - at.eta;
    const double speed = f->h_S / (f->r_n * c * c); /* of turn with theta */
    const double along = f->h_S / c * speed + (1.0 + speed) * f->rho_a0;
    at.miss            = 2.0 * arm * cos_nu - at.xi * sin_nu;
    at.slope = -along * sin_nu * cos_nu - (1.0 + speed) * (2.0 * arm * sin_nu + at.xi * cos_nu);
    return at;
}

/* Newton's rule between two bounds: miss falls from the root circle on, and past nu = pi/2 the
 * fillet leads away from the tooth.  A step of 1e-9 leaves an error of its square; 4 rounds are
 * usual. */
static double find_theta(const fillet *f)
{
    double low = 0.0, high = pi / 2.0;
    double theta = 0.9;

    if (f->h_S < 0.0) { /* the tool's motion turns back where nu is stationary */
        if (!(-f->h_S < f->r_n))
            return NAN;
        high  = acos(sqrt(-f->h_S / f->r_n));
        theta = fmin(theta, 0.5 * high);
    }
    for (int round = 0; round < 100; round++) {
        const fillet_point at   = fillet_at(f, theta);
        const bool         past = at.nu >= pi / 2.0 || at.miss < 0.0;
        const double       next = theta - at.miss / at.slope;

        if (past)
            high = theta;
        else
            low = theta;
        if (at.nu < pi / 2.0 && fabs(next - theta) <= 1e-9)
            return next;
        /* A step outside the bounds, or none (NaN), is replaced by the middle. */
        theta = at.nu < pi / 2.0 && next > low && next < high ? next : 0.5 * (low + high);
        if (!(high - low > 1e-15))
            break;
    }
    return theta;
}

static void note_theta(ts_workings *workings, int gear, const ts_agma_root_input *in,
                       const ts_agma_root *root, double miss)
{
#ifndef TS_CHECKED
    if (workings == NULL)
        return;
#endif
    const ts_input inputs[] = {
        TS_OWN("theta_", root->theta), TS_OWN("r_nL", root->r_nL),        TS_OWN("r_n", root->r_n),
        TS_OWN("h_S", root->h_S),      TS_OWN("rho_a0", in->tool.rho_a0), TS_OWN("l_S", root->l_S),
    };

    ts_search_note(workings, &theta_formulas[gear], root->theta, miss, inputs, 6);
}

static bool find_section(const ts_agma_root_input *in, ts_agma_root *root, ts_workings *workings)
{
    const int    gear = in->gear;
    const double r_n = root->r_n, h_S = root->h_S, l_S = root->l_S, rho_a0 = in->tool.rho_a0;
    const double r_nL = root->r_nL;
    const fillet f    = {.r_n = r_n, .h_S = h_S, .rho_a0 = rho_a0, .lean = l_S / r_n, .r_nL = r_nL};

    root->theta              = find_theta(&f);
    const fillet_point at    = fillet_at(&f, root->theta);
    const double       theta = root->theta, nu = at.nu;
    /* Lengths are in modules; what is left after the search is rounding. */
    if (!(fabs(at.miss) <= 1e-12 * (r_n + 10.0)) || !(at.xi > 0.0) || !(r_nL - at.eta > 0.0))
        return false;
    note_theta(workings, gear, in, root, at.miss);
    root->nu = TS_GEAR_STEP(workings, nu_formulas, nu, TS_OWN("theta_", theta), TS_OWN("h_S", h_S),
                            TS_OWN("l_S", l_S), TS_OWN("r_n", r_n));
    root->s_F =
        TS_GEAR_STEP(workings, s_F_formulas, 2.0 * at.xi, TS_OWN("r_n", r_n), TS_OWN("nu_", nu),
                     TS_OWN("theta_", theta), TS_OWN("h_S", h_S), TS_OWN("rho_a0", rho_a0));
    root->h_F          = TS_GEAR_STEP(workings, h_F_formulas, r_nL - at.eta, TS_OWN("r_nL", r_nL),
                                      TS_OWN("r_n", r_n), TS_OWN("nu_", nu), TS_OWN("theta_", theta),
                                      TS_OWN("h_S", h_S), TS_OWN("rho_a0", rho_a0));
    root->above_fillet = theta > pi / 2.0 - in->alpha_n;
    return true;
}

/* Far beyond any tool; also false for NaN. */
#define MODULES_MOST 1e3

static bool tool_is_sound(const ts_agma_root_input *in)
{
    return fabs(in->tool.h_a0) <= MODULES_MOST && in->tool.rho_a0 >= 0.0 &&
           in->tool.rho_a0 <= MODULES_MOST && fabs(in->tool.delta_a0) <= MODULES_MOST &&
           fabs(in->delta_sn) <= MODULES_MOST;
}

bool ts_agma_root_solve(const ts_agma_root_input *in, ts_agma_root *root, ts_workings *workings)
{
    *root = (ts_agma_root){.s_F = NAN, .h_F = NAN};
    return tool_is_sound(in) && solve_load(in, root, workings) && place_tool(in, root, workings) &&
           find_section(in, root, workings);
}
