/* oil/heat_loss.c: what does each place of a drive turn into heat, with these loads and this oil?
 */
#include "oil/heat_parts.h"

#include "oil/drag.h"

#include <math.h>

#define HALF_WAY "of the oil half way between feed and return; " FOUND
#define FOUND    "found by repetition, with the losses of all places: docs/method/oil.md"

static const ts_formula P_a_formula = {
    .symbol  = "P_a",
    .meaning = "power that enters the mesh",
    .unit    = "W",
    .text    = "max(abs(P_1), abs(P_2))",
    .source  = "derived: the side that power comes from",
};
static const ts_formula F_bt_formula = {
    .symbol  = "F_bt",
    .meaning = "force along the path of contact",
    .unit    = "N",
    .text    = "P_a/(v_t*cos(alpha_wt))",
    .source  = "derived: power over the speed of the base circles",
};
static const ts_formula w_formula = {
    .symbol  = "w_mesh",
    .meaning = "load over face width",
    .unit    = "N/m",
    .text    = "F_bt/b",
    .source  = "derived: force over the common face width",
};
static const ts_formula omega_formula = {
    .symbol  = "omega_1",
    .meaning = "speed of the smaller gear, of bevels the virtual one",
    .unit    = "rad/s",
    .text    = "v_t/r_w1",
    .source  = "derived: speed at the pitch circle",
};
static const ts_formula sliding_formula = {
    .symbol  = "P_S",
    .meaning = "power that sliding teeth turn into heat, where the law of the method has ended",
    .unit    = "W",
    .text    = "mu_mz*F_bt*V_s",
    .source  = "derived: sliding loss of Anderson and Loewenthal, friction of ISO/TR 14179-2",
};
static const ts_formula teeth_formula = {
    .symbol  = "P_teeth",
    .meaning = "heat of sliding and rolling teeth",
    .unit    = "W",
    .text    = "P_S + eps_alpha*P_R",
    .source  = "Anderson and Loewenthal, NASA TP-1622: rolling loss of all pairs in contact",
};
static const ts_formula dip_formula = {
    .symbol  = "P_churn",
    .meaning = "power that churns the oil",
    .unit    = "W",
    .text    = "M_churn*n",
    .source  = "derived: torque times speed",
};
static const ts_formula through_formula = {
    .symbol  = "P_spline",
    .meaning = "power that a tilted spline turns into heat",
    .unit    = "W",
    .text    = "k_spline*abs(P)",
    .source  = "derived: share of the power that passes",
};
static const ts_formula windage_formula = {
    .symbol  = "P_windage",
    .meaning = "power that the gears of the mesh give to air and oil around them",
    .unit    = "W",
    .text    = "P_w1 + P_w2",
    .source  = "derived: each gear is counted with one mesh",
};
#define HERE "derived: sum of what is lost here"
static const ts_formula mesh_formula = {
    .symbol  = "P_heat",
    .meaning = "heat of this mesh",
    .unit    = "W",
    .text    = "P_teeth + P_windage + P_oil",
    .source  = HERE,
};
static const ts_formula bearing_formula = {
    .symbol  = "P_heat",
    .meaning = "heat of this bearing",
    .unit    = "W",
    .text    = "P_V0 + P_V1",
    .source  = HERE,
};
static const ts_formula pad_formula = {
    .symbol  = "P_heat",
    .meaning = "heat of seal and spline of this pad",
    .unit    = "W",
    .text    = "P_seal + P_spline",
    .source  = HERE,
};
static const ts_formula power_formulas[2] = {
    {
        .symbol  = "P_V0",
        .meaning = "power that the oil in the bearing takes",
        .unit    = "W",
        .text    = "M_0*n",
        .source  = "derived: torque times speed",
    },
    {
        .symbol  = "P_V1",
        .meaning = "power that the load of the bearing takes",
        .unit    = "W",
        .text    = "M_1*n",
        .source  = "derived: torque times speed",
    },
};

static void about(const ts_heat_desk *desk, const ts_heat_place *place)
{
    ts_workings_about(desk->workings, place->node[desk->method], (int32_t)desk->condition);
}

static void note(const ts_heat_desk *desk, const char *symbol, double value, const char *unit,
                 const char *why)
{
    ts_workings_assumed(desk->workings, symbol, value, unit, why);
}

/* ---- teeth ----------------------------------------------------------------------------------- */

typedef struct mesh_load {
    double P_a, F_bt, w_mesh, v_t, eta_oil;
} mesh_load;

static double friction(const ts_heat_desk *desk, const ts_heat_place *place, const mesh_load *load)
{
    const ts_loss_friction met = {
        .w_Bt     = load->w_mesh,
        .v_SigmaC = ts_loss_sum_of_speeds(load->v_t, place->teeth.alpha_wt, NULL),
        .rho_redC = place->teeth.rho_redC,
        .eta_oil  = load->eta_oil,
        .Ra       = place->teeth.Ra,
        .X_L      = place->teeth.X_L,
    };

    note(desk, "v_sum", met.v_SigmaC, "m/s", "2 v_t sin(alpha_wt), ISO/TR 14179-2");
    note(desk, "rho_redC", met.rho_redC, "m", "at the pitch point, ISO/TR 14179-2");
    note(desk, "Ra", met.Ra, "m", "mean of both flanks, a sixth of their R_z");
    note(desk, "X_L", met.X_L, "1", "of the kind of oil, ISO/TR 14179-2");
    const ts_loss_friction held = ts_mesh_friction_within(&met, desk->workings);
    return ts_mesh_friction(&held, desk->workings);
}

static double teeth_first(const ts_heat_desk *desk, const ts_heat_place *place,
                          const mesh_load *load)
{
    const double mu_mz = friction(desk, place, load);

    note(desk, "H_v", place->H_v, "1", "by the contact ratios, ISO/TR 14179-2, after Ohlendorf");
    return ts_mesh_loss_power(load->P_a, mu_mz, place->H_v, desk->workings);
}

static double teeth_second(const ts_heat_desk *desk, const ts_heat_place *place,
                           const mesh_load *load, ts_heat_case *out)
{
    const ts_loss_mesh *teeth = &place->teeth;
    ts_workings        *w     = desk->workings;
    const double        v_t = load->v_t, F_bt = load->F_bt, r_w1 = teeth->r_w1;

    note(desk, "r_w1", r_w1, "m", "of the mesh");
    note(desk, "u", teeth->u, "1", "of the mesh");
    note(desk, "g_alpha", teeth->g_alpha, "m", "of the mesh");
    note(desk, "eps_alpha", place->eps_alpha, "1", "of the mesh");
    const double omega_1 = TS_STEP(w, omega_formula, v_t / r_w1, v_t, r_w1);
    const double V_s     = ts_mean_sliding(omega_1, teeth->u, teeth->g_alpha, w);
    const double V_T = ts_mean_rolling(omega_1, teeth->u, teeth->g_alpha, r_w1, teeth->alpha_wt, w);
    note(desk, "w", load->w_mesh, "N/m", "load over face width, w_mesh");
    const double f   = ts_sliding_friction(load->w_mesh, load->eta_oil, V_s, V_T, w);
    double       P_S = 0.0;

    out->law_ended = desk->quick[place->mesh].teeth_ended;
    if (out->law_ended) {
        const double mu_mz = friction(desk, place, load);
        P_S                = TS_STEP(w, sliding_formula, mu_mz * F_bt * V_s, mu_mz, F_bt, V_s);
    } else if (!isnan(f)) {
        P_S = ts_sliding_power(f, F_bt, V_s, w);
    } else {
        note(desk, "P_S", P_S, "W", "the friction of Benedict and Kelley has just come to none");
    }
    note(desk, "rho_redC", teeth->rho_redC, "m", "at the pitch point");
    const double h         = ts_rolling_film(V_T, load->eta_oil, load->w_mesh, teeth->rho_redC, w);
    const double P_R       = ts_rolling_power(h, V_T, place->b, w);
    const double eps_alpha = place->eps_alpha;
    return TS_STEP(w, teeth_formula, P_S + eps_alpha * P_R, P_S, eps_alpha, P_R);
}

static double teeth(const ts_heat_desk *desk, const ts_heat_place *place, double v_t,
                    ts_heat_case *out)
{
    const double P_1 = desk->P[place->mesh][0], P_2 = desk->P[place->mesh][1];
    const double b = place->b, alpha_wt = place->teeth.alpha_wt;
    ts_workings *w = desk->workings;

    note(desk, "P_1", P_1, "W", FOUND);
    note(desk, "P_2", P_2, "W", FOUND);
    note(desk, "v_t", v_t, "m/s", "at the pitch circle, of bevels at the middle of the face");
    note(desk, "alpha_wt", alpha_wt, "rad", "of the mesh");
    note(desk, "b", b, "m", "common face width");
    note(desk, "eta_oil", desk->states[place->drive].eta, "Pa.s", HALF_WAY);
    const double P_a = TS_STEP(w, P_a_formula, fmax(fabs(P_1), fabs(P_2)), P_1, P_2);
    if (!(P_a > 0.0))
        return 0.0;
    const double F_bt = TS_STEP(w, F_bt_formula, P_a / (v_t * cos(alpha_wt)), P_a, v_t, alpha_wt);
    const mesh_load load = {.P_a     = P_a,
                            .F_bt    = F_bt,
                            .w_mesh  = TS_STEP(w, w_formula, F_bt / b, F_bt, b),
                            .v_t     = v_t,
                            .eta_oil = desk->states[place->drive].eta};

    return desk->method == 0 ? teeth_first(desk, place, &load)
                             : teeth_second(desk, place, &load, out);
}

/* ---- air and oil around a mesh --------------------------------------------------------------- */

static double windage(const ts_heat_desk *desk, const ts_heat_place *place, int g)
{
    const ts_heat_gear *gear = &place->gears[g];
    const double        n    = desk->speed[gear->shaft];
    ts_workings        *w    = desk->workings;

    if (!(n > 0.0))
        return 0.0;
    note(desk, "n", n, "rad/s", "of the gear");
    note(desk, "F", gear->F, "m", "face width of the gear");
    if (desk->method == 1) {
        note(desk, "d_f", gear->d_f, "m", "root diameter of the gear");
        note(desk, "m_n", gear->m_n, "m", "module of the gear");
        return ts_windage_by_dawson(gear->d_f, gear->F, gear->m_n, n, w);
    }
    note(desk, "R", gear->R, "m", "pitch radius of the gear");
    note(desk, "eta_oil", desk->states[place->drive].eta, "Pa.s", HALF_WAY);
    return ts_windage_by_loewenthal(gear->R, gear->F, n, desk->states[place->drive].eta, w);
}

/* Dips as deep as its teeth: the file knows no level of oil. */
static double churning(const ts_heat_desk *desk, const ts_heat_place *place, double v_t)
{
    const double n   = desk->speed[desk->heat->motion->train->meshes[place->mesh].driven_shaft];
    const double dip = 2.25 * place->m, m_n = place->m, b = place->b;
    const double rho_oil = desk->states[place->drive].rho;
    ts_workings *w       = desk->workings;

    note(desk, "dip", dip, "m",
         "the driven gear dips as deep as its teeth; common practice, no "
         "source");
    note(desk, "n", n, "rad/s", "of the driven gear");
    if (desk->method == 0) {
        const double M_churn = ts_churning_torque(b, dip, v_t, w);
        return TS_STEP(w, dip_formula, M_churn * n, M_churn, n);
    }
    const double r_a = v_t / n + m_n;
    note(desk, "r_a", r_a, "m", "tip radius of the driven gear");
    note(desk, "m_n", m_n, "m", "of the teeth");
    note(desk, "rho_oil", rho_oil, "kg/m3", HALF_WAY);
    const double M_churn = ts_carried_oil_torque(b, m_n, r_a, n, rho_oil, dip, w);
    return TS_STEP(w, dip_formula, M_churn * n, M_churn, n);
}

static double thrown(const ts_heat_desk *desk, const ts_heat_place *place, uint32_t p, double v_t)
{
    const ts_heat *heat    = desk->heat;
    const double   rho_oil = desk->states[place->drive].rho_in;
    const double   Q = desk->sizing ? 0.0 : heat->scratch->Q[p] * heat->feed_share[desk->condition];

    if (place->dips)
        return churning(desk, place, v_t);
    note(desk, "Q", Q, "m3/s", "of the jets of this mesh in this condition");
    note(desk, "rho_oil", rho_oil, "kg/m3", "of the feed");
    return ts_thrown_oil_power(Q, rho_oil, v_t, desk->workings);
}

static void lose_mesh(const ts_heat_desk *desk, uint32_t p, ts_heat_case *out)
{
    const ts_heat_place *place  = &desk->heat->places[p];
    const ts_motion     *motion = desk->heat->motion;
    const double v_t = motion->velocity[(size_t)desk->condition * motion->train->mesh_count + p];

    if (!(v_t > 0.0))
        return;
    out->P[TS_HEAT_TEETH] = teeth(desk, place, v_t, out);
    for (int g = 0; g < place->gear_count; g++) {
        out->windage[g] = windage(desk, place, g);
        out->P[TS_HEAT_WINDAGE] += out->windage[g];
    }
    out->P[TS_HEAT_OIL] = thrown(desk, place, p, v_t);
}

/* ---- bearings, seals, splines ---------------------------------------------------------------- */

static void lose_bearing(const ts_heat_desk *desk, const ts_heat_place *place, ts_heat_case *out)
{
    const ts_line_case     *one   = ts_line_at(desk->heat->lines, place->line, desk->condition);
    const ts_line_reaction *force = &one->reaction[place->seat];
    const double            n     = desk->speed[place->shaft];
    const double            F_a   = place->rolls ? 0.0 : fabs(force->F[0]);
    ts_workings            *w     = desk->workings;

    if (!(n > 0.0))
        return;
    note(desk, "n", n, "rad/s", "of the shaft");
    note(desk, "F_r", force->F_r, "N", "of the bearing, by the rated flow of power");
    note(desk, "F_a", F_a, "N", "of the bearing, by the rated flow of power; of rollers none");
    note(desk, "alpha", place->alpha, "rad", "contact angle of the bearing");
    const double P_1 = ts_bearing_friction_load(force->F_r, F_a, place->alpha, w);
    if (desk->method == 1) {
        note(desk, "mu", place->mu, "1", "of its form, ISO/TR 14179-1:2001 (from memory)");
        note(desk, "d", place->d, "m", "bore of the bearing");
        const double M_mu            = ts_bearing_drag_by_friction(place->mu, P_1, place->d, w);
        out->P[TS_HEAT_BEARING_LOAD] = ts_bearing_power_by_friction(M_mu, n, w);
        return;
    }
    note(desk, "f_0", place->f_0, "1", "of its form and oiling, Harris, times rows (from memory)");
    note(desk, "nu", desk->states[place->drive].nu, "m2/s", HALF_WAY);
    note(desk, "d_m", place->d_m, "m", "mean diameter of the bearing");
    const double M_0 =
        ts_bearing_drag_0(place->f_0, desk->states[place->drive].nu, n, place->d_m, w);
    double f_1 = place->f_1z;
    if (place->f_1y > 0.0) {
        note(desk, "P_0", one->duty[place->seat].P_0, "N", "static equivalent load, ISO 76");
        note(desk, "C_0r", place->C_0r, "N", "of the bearing");
        note(desk, "z", place->f_1z, "1", "of its form, Harris (from memory)");
        note(desk, "y", place->f_1y, "1", "of its form, Harris (from memory)");
        f_1 = ts_bearing_f_1(place->f_1z, place->f_1y, one->duty[place->seat].P_0, place->C_0r, w);
    } else {
        note(desk, "f_1", f_1, "1", "of rollers, Harris (from memory)");
    }
    const double M_1             = ts_bearing_drag_1(f_1, P_1, place->d_m, w);
    out->P[TS_HEAT_BEARING_OIL]  = TS_STEP(w, power_formulas[0], M_0 * n, M_0, n);
    out->P[TS_HEAT_BEARING_LOAD] = TS_STEP(w, power_formulas[1], M_1 * n, M_1, n);
}

static double seal(const ts_heat_desk *desk, uint32_t p, double n)
{
    const ts_heat_place *place = &desk->heat->places[p];
    const ts_heat_state *state = &desk->states[place->drive];
    const double         nu_40 = desk->heat->drive->oil.nu_40.value;
    ts_workings         *w     = desk->workings;

    if (!(place->d_sh > 0.0))
        return 0.0;
    note(desk, "d_sh", place->d_sh, "m", "as the bore of the bearing beside it");
    note(desk, "theta", state->theta, "K", HALF_WAY);
    note(desk, "nu_40", nu_40, "m2/s", "of the oil");
    if (!desk->quick[p].seal_ended) {
        const double P = ts_seal_power(place->d_sh, n, state->theta, nu_40, w);
        return isnan(P) ? 0.0 : P;
    }
    return ts_seal_power_by_torque(ts_seal_torque(place->d_sh, w), n, w);
}

static void lose_pad(const ts_heat_desk *desk, uint32_t p, ts_heat_case *out)
{
    const ts_heat_place *place = &desk->heat->places[p];
    const ts_power      *power = desk->heat->power;
    const uint32_t       pads  = desk->heat->motion->train->pad_count;
    const double         n     = desk->speed[place->shaft];
    const double         P     = power->pad[(size_t)desk->condition * pads + place->pad].P;

    if (!(n > 0.0))
        return;
    note(desk, "n", n, "rad/s", "of the pad");
    out->P[TS_HEAT_SEAL] = seal(desk, p, n);
    if (!(place->slope > 0.0))
        return;
    note(desk, "P", P, "W", "of the pad");
    note(desk, "mu_spline", TS_HEAT_MU_SPLINE, "1", "lubricated steel; common practice, no source");
    note(desk, "phi", place->slope, "rad",
         "tilt of two shafts in one pad; common practice, no "
         "source");
    note(desk, "alpha_D", TS_HEAT_ALPHA_D, "rad", "30 degrees; as usual splines of pads");
    const double k_spline =
        ts_spline_share(TS_HEAT_MU_SPLINE, place->slope, TS_HEAT_ALPHA_D, desk->workings);
    out->P[TS_HEAT_SPLINE] =
        TS_STEP(desk->workings, through_formula, k_spline * fabs(P), k_spline, P);
}

/* From here on `symbol` is what the law of the place calls `law`. */
static void call(const ts_heat_desk *desk, const ts_heat_place *place, const char *symbol,
                 double value, const char *law)
{
    if (value > 0.0)
        ts_workings_borrow(desk->workings, symbol, value,
                           (ts_subject){place->node[desk->method], (int32_t)desk->condition}, law);
    else
        note(desk, symbol, value, "W", "none here");
}

static double add_mesh(const ts_heat_desk *desk, const ts_heat_place *place,
                       const ts_heat_case *one)
{
    const double P_teeth = one->P[TS_HEAT_TEETH], P_oil = one->P[TS_HEAT_OIL];
    const double P_w1 = one->windage[0], P_w2 = one->windage[1];
    const char  *law = desk->method == 0 ? "P_WA" : "P_WD";

    call(desk, place, "P_w1", P_w1, law);
    call(desk, place, "P_w2", P_w2, law);
    const double P_windage = TS_STEP(desk->workings, windage_formula, P_w1 + P_w2, P_w1, P_w2);
    if (desk->method == 0 || !(P_teeth > 0.0))
        call(desk, place, "P_teeth", P_teeth, "P_VZP");
    call(desk, place, "P_oil", P_oil, place->dips ? "P_churn" : "P_thrown");
    return TS_STEP(desk->workings, mesh_formula, P_teeth + P_windage + P_oil, P_teeth, P_windage,
                   P_oil);
}

static double add(const ts_heat_desk *desk, uint32_t p, const ts_heat_case *one)
{
    const ts_heat_place *place = &desk->heat->places[p];
    const double         P_V0 = one->P[TS_HEAT_BEARING_OIL], P_V1 = one->P[TS_HEAT_BEARING_LOAD];
    const double         P_seal = one->P[TS_HEAT_SEAL], P_spline = one->P[TS_HEAT_SPLINE];

    if (place->site == TS_HEAT_AT_MESH)
        return add_mesh(desk, place, one);
    if (place->site == TS_HEAT_AT_BEARING) {
        if (desk->method == 1 || !(P_V0 > 0.0)) {
            call(desk, place, "P_V0", P_V0, "P_V0");
            call(desk, place, "P_V1", P_V1, "P_mu");
        }
        return TS_STEP(desk->workings, bearing_formula, P_V0 + P_V1, P_V0, P_V1);
    }
    if (!desk->quick[p].seal_ended || !(P_seal > 0.0))
        call(desk, place, "P_seal", P_seal, "P_VD");
    if (!(P_spline > 0.0))
        note(desk, "P_spline", P_spline, "W", "none here");
    return TS_STEP(desk->workings, pad_formula, P_seal + P_spline, P_seal, P_spline);
}

void ts_heat_lose(const ts_heat_desk *desk)
{
    const ts_heat *heat = desk->heat;

    for (uint32_t p = 0; p < heat->place_count; p++) {
        const ts_heat_place *place = &heat->places[p];
        ts_heat_case        *out   = &desk->cases[p];

        *out = (ts_heat_case){0};
        if (place->missing != NULL)
            continue;
        about(desk, place);
        if (place->site == TS_HEAT_AT_MESH)
            lose_mesh(desk, p, out);
        else if (place->site == TS_HEAT_AT_BEARING)
            lose_bearing(desk, place, out);
        else
            lose_pad(desk, p, out);
        out->sum = add(desk, p, out);
    }
}
