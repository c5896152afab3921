/* rating/iso6336/mesh_rate.c: how far is this load from what the teeth bear? */
#include "rating/iso6336/edition.h"
#include "rating/iso6336/prepare_parts.h"
#include "rating/iso6336/rate_parts.h"

#include <math.h>
#include <stddef.h>

static bool not_negative(double value)
{
    return value >= 0.0 && isfinite(value);
}

static bool positive(double value)
{
    return value > 0.0 && isfinite(value);
}

static const char *unfit_face(const ts_iso6336_load *load)
{
    switch (load->face) {
    case TS_FACE_LOAD_GIVEN:
        return load->K_Hbeta >= 1.0 && isfinite(load->K_Hbeta) ? NULL : "K_Hbeta is below 1";
    case TS_FACE_LOAD_MISALIGNED:
        return not_negative(load->F_betax) ? NULL : "F_betax is negative or no number";
    case TS_FACE_LOAD_PARTS:
        break;
    }
    return not_negative(load->f_sh) && not_negative(load->f_ma)
               ? NULL
               : "f_sh or f_ma is negative or no number";
}

static const char *unfit_load(const ts_iso6336_load *load)
{
    if (!not_negative(load->T_1))
        return "the torque is negative or no number";
    if (!not_negative(load->omega_1))
        return "the speed is negative or no number";
    if (!positive(load->K_A) || !positive(load->K_gamma))
        return "K_A or K_gamma is not a positive number";
    if (!positive(load->S_Hmin) || !positive(load->S_Fmin))
        return "a least safety is not a positive number";
    for (int gear = 0; gear < 2; gear++) {
        if (!positive(load->N_L[gear]))
            return "a number of load cycles is not a positive number";
        if (!(load->R[gear] >= -10.0 && load->R[gear] <= 1.0))
            return "a stress ratio is outside -10 to 1";
    }
    return unfit_face(load);
}

static ts_remarks remarks_of_load(const ts_iso6336_prepared *p, const ts_iso6336_load *load,
                                  const ts_iso6336_rating *r)
{
    const bool has_K_gamma = ts_iso6336_edition_of(p->mesh.year)->has_mesh_load_factor;
    ts_remarks remarks =
        ts_remark_when(r->w_t < 100e3, TS_REMARK_LOAD_LOW) |
        ts_remark_when(r->w_t < 50e3 && r->range == TS_SPEED_SUBCRITICAL,
                       TS_REMARK_LOAD_SEPARATES) |
        ts_remark_when(r->w_t > 1600e3, TS_REMARK_LOAD_HIGH) |
        ts_remark_when(r->range == TS_SPEED_RESONANCE, TS_REMARK_RESONANCE) |
        ts_remark_when(r->range == TS_SPEED_INTERMEDIATE, TS_REMARK_INTERMEDIATE) |
        ts_remark_when(r->K_Hbeta >= 2.0, TS_REMARK_FACE_PART) |
        ts_remark_when(!has_K_gamma && fabs(load->K_gamma - 1.0) > 0.0, TS_REMARK_K_GAMMA);

    for (int gear = 0; gear < 2; gear++) {
        const ts_iso6336_gear_rating *out = &r->gear[gear];

        remarks |=
            ts_remark_when(load->N_L[gear] > TS_LIFE_LONG, TS_REMARK_CYCLES) |
            ts_remark_when(load->R[gear] < -1.2 || load->R[gear] > 0.0, TS_REMARK_STRESS_RATIO) |
            ts_remark_when(out->contact.sigma_stat <= out->contact.sigma_ref ||
                               out->bending.sigma_stat <= out->bending.sigma_ref,
                           TS_REMARK_STATIC_BELOW_LONG);
    }
    return remarks;
}

/* Everything that is not told otherwise is "not computed". */
static void blank(ts_iso6336_rating *r)
{
    static const ts_life_curve none = {NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN};

    *r     = (ts_iso6336_rating){.F_t = NAN};
    r->F_t = r->v = r->w_t = r->cp = r->c_gamma_alpha = r->c_gamma_beta = NAN;
    r->n_E1 = r->N = r->N_S = r->y_alpha = r->y_f = r->f_pbeff = r->K_v = r->F_mb = NAN;
    r->B.B_p = r->B.B_f = r->B.B_k = r->F_betax = r->y_beta = r->F_betay = NAN;
    r->K_Hbeta = r->K_Fbeta = r->q_alpha = r->K_Halpha = r->K_Falpha = r->Z_v = r->sigma_H0 = NAN;
    for (int gear = 0; gear < 2; gear++)
        r->gear[gear] = (ts_iso6336_gear_rating){NAN, NAN, NAN, NAN, NAN, NAN, NAN,  NAN,
                                                 NAN, NAN, NAN, NAN, NAN, NAN, none, none};
}

static bool rate_unloaded(const ts_iso6336_prepared *p, const ts_iso6336_load *load,
                          ts_iso6336_rating *r)
{
    blank(r);
    r->F_t = r->w_t = r->sigma_H0 = 0.0;
    r->v                          = load->omega_1 * p->pair.d_1 / 2.0;
    r->remarks                    = TS_REMARK(TS_REMARK_NO_LOAD);
    for (int gear = 0; gear < 2; gear++) {
        r->gear[gear].sigma_H = r->gear[gear].sigma_F0 = r->gear[gear].sigma_F = 0.0;
        r->gear[gear].S_H = r->gear[gear].S_F = INFINITY;
    }
    return true;
}

bool ts_iso6336_rate(const ts_iso6336_prepared *p, const ts_iso6336_load *load,
                     ts_iso6336_rating *r, ts_workings *workings)
{
    const char *missing = p->missing != NULL ? p->missing : unfit_load(load);

    if (missing != NULL) {
        blank(r);
        r->missing = missing;
        return false;
    }
    if (!(load->T_1 > 0.0))
        return rate_unloaded(p, load, r);

    /* Everything else is assigned below. */
    r->remarks   = 0;
    r->missing   = NULL;
    r->cycles[0] = ts_cycles_of(load->N_L[0]);
    r->cycles[1] = ts_cycles_of(load->N_L[1]);
    ts_iso6336_rate_load(p, load, r, workings);
    ts_iso6336_rate_contact(p, load, r, workings);
    ts_iso6336_rate_root(p, load, r, workings);
    r->remarks |= remarks_of_load(p, load, r);
    return true;
}

double ts_iso6336_reserve(const ts_iso6336_rating *rating, const ts_iso6336_load *load,
                          ts_rated_stress *stress, int *gear)
{
    double least = INFINITY;

    for (int i = 0; i < 4; i++) {
        const int             which = i % 2;
        const ts_rated_stress kind  = i < 2 ? TS_RATED_CONTACT : TS_RATED_BENDING;
        const double ratio = kind == TS_RATED_CONTACT ? rating->gear[which].S_H / load->S_Hmin
                                                      : rating->gear[which].S_F / load->S_Fmin;

        if (isnan(ratio))
            return NAN;
        if (i > 0 && !(ratio < least))
            continue;
        least = ratio;
        if (stress != NULL)
            *stress = kind;
        if (gear != NULL)
            *gear = which;
    }
    return least - 1.0;
}
