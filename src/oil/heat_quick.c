/* oil/heat_quick.c: how do the losses of a place go with load, temperature and thickness of oil? */
#include "oil/heat_parts.h"

#include "oil/drag.h"

#include <math.h>

/* The point at which the laws are taken. */
#define THETA_0 360.0 /* K    */
#define ETA_0   0.006 /* Pa.s */
#define W_LEAST 150e3 /* N/m, below which friction was not measured: ISO/TR 14179-2 */

static double friction_at(const ts_heat_place *place, double v_t)
{
    const ts_loss_friction met = {
        .w_Bt     = W_LEAST,
        .v_SigmaC = ts_loss_sum_of_speeds(v_t, place->teeth.alpha_wt, NULL),
        .rho_redC = place->teeth.rho_redC,
        .eta_oil  = ETA_0,
        .Ra       = place->teeth.Ra,
        .X_L      = place->teeth.X_L,
    };
    const ts_loss_friction held = ts_mesh_friction_within(&met, NULL);

    return ts_mesh_friction(&held, NULL);
}

/* W that enters the mesh by the rated flow of power. */
static double rated_load(const ts_heat_desk *desk, const ts_heat_place *place)
{
    const ts_heat      *heat = desk->heat;
    const ts_mesh_load *load =
        &heat->power->mesh[(size_t)desk->condition * heat->motion->train->mesh_count + place->mesh];

    return fmax(fabs(load->P[0]), fabs(load->P[1]));
}

static void quicken_teeth(const ts_heat_desk *desk, const ts_heat_place *place, double v_t,
                          ts_heat_quick *q)
{
    const ts_loss_mesh *teeth = &place->teeth;
    const double        v_b   = v_t * cos(teeth->alpha_wt);

    q->load  = 1.0 / (v_b * place->b);
    q->mu    = friction_at(place, v_t);
    q->slide = place->H_v;
    if (desk->method == 0)
        return;
    const double omega_1 = v_t / teeth->r_w1;
    const double V_s     = ts_mean_sliding(omega_1, teeth->u, teeth->g_alpha, NULL);
    const double V_T =
        ts_mean_rolling(omega_1, teeth->u, teeth->g_alpha, teeth->r_w1, teeth->alpha_wt, NULL);
    const double h = ts_rolling_film(V_T, ETA_0, 1.0, teeth->rho_redC, NULL);

    q->slide    = V_s / v_b;
    q->argument = 29.66 / (1000.0 * V_s * V_T * V_T);
    q->teeth_ended =
        !(rated_load(desk, place) * q->load * q->argument > desk->states[place->drive].eta);
    q->rolling = place->eps_alpha * ts_rolling_power(h, V_T, place->b, NULL);
}

static void quicken_mesh(const ts_heat_desk *desk, uint32_t p, ts_heat_quick *q)
{
    const ts_heat_place *place  = &desk->heat->places[p];
    const ts_motion     *motion = desk->heat->motion;
    const double v_t = motion->velocity[(size_t)desk->condition * motion->train->mesh_count + p];

    if (!(v_t > 0.0))
        return;
    quicken_teeth(desk, place, v_t, q);
    for (int g = 0; g < place->gear_count; g++) {
        const ts_heat_gear *gear = &place->gears[g];
        const double        n    = desk->speed[gear->shaft];
        if (desk->method == 0)
            q->windage[g] = ts_windage_by_loewenthal(gear->R, gear->F, n, ETA_0, NULL);
        else
            q->windage[g] = ts_windage_by_dawson(gear->d_f, gear->F, gear->m_n, n, NULL);
    }
    const double n   = desk->speed[motion->train->meshes[p].driven_shaft];
    const double dip = 2.25 * place->m;
    if (!place->dips)
        q->thrown = v_t * v_t;
    else if (desk->method == 0)
        q->churned = ts_churning_torque(place->b, dip, v_t, NULL) * n;
    else
        q->thrown =
            ts_carried_oil_torque(place->b, place->m, v_t / n + place->m, n, 1.0, dip, NULL) * n;
}

static void quicken_bearing(const ts_heat_desk *desk, const ts_heat_place *place, ts_heat_quick *q)
{
    const ts_line_case     *one   = ts_line_at(desk->heat->lines, place->line, desk->condition);
    const ts_line_reaction *force = &one->reaction[place->seat];
    const double            n     = desk->speed[place->shaft];

    if (!(n > 0.0))
        return;
    const double P_1 = ts_bearing_friction_load(force->F_r, place->rolls ? 0.0 : fabs(force->F[0]),
                                                place->alpha, NULL);
    if (desk->method == 1) {
        q->still = ts_bearing_drag_by_friction(place->mu, P_1, place->d, NULL) * n;
        return;
    }
    const double f_1 = place->f_1y > 0.0
                           ? ts_bearing_f_1(place->f_1z, place->f_1y, one->duty[place->seat].P_0,
                                            place->C_0r, NULL)
                           : place->f_1z;
    q->still         = ts_bearing_drag_1(f_1, P_1, place->d_m, NULL) * n;
    q->fast          = ts_bearing_drag_0(place->f_0, 1.0, n, place->d_m, NULL) * n;
    q->slow          = ts_bearing_drag_0(place->f_0, 0.0, n, place->d_m, NULL) * n;
}

static void quicken_pad(const ts_heat_desk *desk, const ts_heat_place *place, ts_heat_quick *q)
{
    const ts_power *power = desk->heat->power;
    const double    n     = desk->speed[place->shaft];
    const double    nu_40 = desk->heat->drive->oil.nu_40.value;
    const uint32_t  pads  = desk->heat->motion->train->pad_count;

    if (!(n > 0.0))
        return;
    if (place->slope > 0.0)
        q->still = ts_spline_share(TS_HEAT_MU_SPLINE, place->slope, TS_HEAT_ALPHA_D, NULL) *
                   fabs(power->pad[(size_t)desk->condition * pads + place->pad].P);
    if (!(place->d_sh > 0.0))
        return;
    q->torque_seal = ts_seal_torque(place->d_sh, NULL) * n;
    q->seal_ended =
        desk->method == 1 ||
        isnan(ts_seal_power(place->d_sh, n, desk->states[place->drive].theta, nu_40, NULL));
    if (q->seal_ended)
        return;
    q->seal       = ts_seal_power(place->d_sh, n, THETA_0, nu_40, NULL);
    q->seal_slope = ts_seal_power(place->d_sh, n, THETA_0 - 50.0, nu_40, NULL) - q->seal;
    q->seal_slope /= 50.0;
}

void ts_heat_quicken(const ts_heat_desk *desk)
{
    const ts_heat *heat = desk->heat;

    for (uint32_t d = 0; d < heat->drive->drive_count; d++)
        ts_heat_oil_at(desk, d, heat->drive->oil.rise.value);
    for (uint32_t p = 0; p < heat->place_count; p++) {
        const ts_heat_place *place = &heat->places[p];
        ts_heat_quick       *q     = &desk->quick[p];

        *q = (ts_heat_quick){.site       = place->site,
                             .drive      = place->drive,
                             .shaft      = place->shaft,
                             .gear_shaft = {place->gears[0].shaft, place->gears[1].shaft},
                             .gear_count = place->gear_count};
        if (place->missing != NULL)
            continue;
        if (place->site == TS_HEAT_AT_MESH)
            quicken_mesh(desk, p, q);
        else if (place->site == TS_HEAT_AT_BEARING)
            quicken_bearing(desk, place, q);
        else
            quicken_pad(desk, place, q);
    }
}

/* ---- a round --------------------------------------------------------------------------------- */

/* How the oil of a drive scales the laws. */
typedef struct oil_scale {
    double friction, rolling, windage, bearing;
} oil_scale;

static oil_scale scale_of(const ts_heat_desk *desk, const ts_heat_state *oil)
{
    const double eta = oil->eta / ETA_0;

    if (desk->method == 1)
        return (oil_scale){.friction = pow(eta, -0.05), .rolling = pow(eta, 0.67), .windage = 1.0};
    const double root = cbrt(oil->nu);
    return (oil_scale){.friction = pow(eta, -0.05),
                       .windage  = pow((28.0 * oil->eta + 0.019) / (28.0 * ETA_0 + 0.019), 0.2),
                       .bearing  = root * root};
}

static double sliding(const ts_heat_quick *q, double w, double friction)
{
    return q->mu * friction * (w > W_LEAST ? pow(w / W_LEAST, 0.2) : 1.0) * q->slide;
}

static double teeth(const ts_heat_desk *desk, const ts_heat_quick *q, uint32_t p,
                    const oil_scale *scale)
{
    const double P_a = fmax(fabs(desk->P[p][0]), fabs(desk->P[p][1]));
    const double w   = P_a * q->load;

    if (!(w > 0.0))
        return 0.0;
    if (desk->method == 0)
        return P_a * sliding(q, w, scale->friction);
    const double argument = w * q->argument / desk->states[q->drive].eta;
    const double slides   = q->teeth_ended ? sliding(q, w, scale->friction)
                                           : 0.0127 * log10(fmax(argument, 1.0)) * q->slide;
    return P_a * slides + q->rolling * scale->rolling * pow(w, -0.067);
}

static void lose_mesh(const ts_heat_desk *desk, uint32_t p, const oil_scale *scale,
                      ts_heat_case *out)
{
    const ts_heat       *heat = desk->heat;
    const ts_heat_quick *q    = &desk->quick[p];
    const bool           dips = heat->places[p].dips;
    const double         rho  = dips ? desk->states[q->drive].rho : desk->states[q->drive].rho_in;
    double               Q    = heat->scratch->Q[p] * heat->feed_share[desk->condition];

    if (dips || desk->sizing) /* a bath, or oil whose flow is not known yet */
        Q = dips ? 1.0 : 0.0;

    out->P[TS_HEAT_TEETH] = teeth(desk, q, p, scale);
    out->windage[0]       = q->windage[0] * scale->windage;
    out->windage[1]       = q->windage[1] * scale->windage;
    out->P[TS_HEAT_OIL]   = q->thrown * rho * Q + q->churned;
    out->sum = out->P[TS_HEAT_TEETH] + out->windage[0] + out->windage[1] + out->P[TS_HEAT_OIL];
}

static double seal(const ts_heat_quick *q, const ts_heat_state *oil)
{
    return q->seal_ended ? q->torque_seal
                         : fmax(q->seal + q->seal_slope * (THETA_0 - oil->theta), 0.0);
}

void ts_heat_lose_quickly(const ts_heat_desk *desk)
{
    const ts_heat *heat  = desk->heat;
    oil_scale      scale = {0};
    uint32_t       drive = TS_NOWHERE;

    for (uint32_t p = 0; p < heat->place_count; p++) {
        const ts_heat_quick *q   = &desk->quick[p];
        ts_heat_case        *out = &desk->cases[p];

        if (q->drive != drive) {
            drive = q->drive;
            scale = scale_of(desk, &desk->states[drive]);
        }
        if (q->site == TS_HEAT_AT_MESH)
            lose_mesh(desk, p, &scale, out);
        else if (q->site == TS_HEAT_AT_BEARING)
            out->sum = q->still + fmax(q->slow, q->fast * scale.bearing);
        else
            out->sum = q->still + seal(q, &desk->states[drive]);
    }
}
