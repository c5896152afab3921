/* rating/iso6336/mesh_fit.c: can this pair be rated with these inputs at all? */
#include "rating/iso6336/prepare_parts.h"

#include <math.h>
#include <stddef.h>

/* Each is false for NaN. */
static bool positive(double value)
{
    return value > 0.0 && isfinite(value);
}

static bool not_negative(double value)
{
    return value >= 0.0 && isfinite(value);
}

static bool life_factor(double value)
{
    return value > 0.0 && value <= 1.0;
}

static const char *unfit_strength(const ts_iso6336_gear *gear)
{
    if (!positive(gear->sigma_Hlim))
        return "sigma_Hlim is not a positive number";
    if (!positive(gear->sigma_Flim))
        return "sigma_Flim is not a positive number";
    if (!ts_gear_class_surface_hardened(gear->class) && !positive(gear->yield))
        return "the yield stress of a through-hardened or normalised steel is missing";
    if (!positive(gear->E) || !positive(gear->rho))
        return "modulus or density is not a positive number";
    if (!(gear->nu > -1.0 && gear->nu <= 0.5))
        return "Poisson's ratio is outside -1 to 0.5";
    if (!life_factor(gear->Z_NTlong) || !life_factor(gear->Y_NTlong))
        return "a life factor at 1e10 cycles is outside 0 to 1";
    return not_negative(gear->HB) ? NULL : "the Brinell hardness is negative or no number";
}

static const char *unfit_make(const ts_iso6336_gear *gear)
{
    if (gear->accuracy < 0 || gear->accuracy > 12)
        return "the accuracy grade is outside 0 to 12";
    if (!not_negative(gear->f_pt) || !not_negative(gear->f_falpha) || !not_negative(gear->C_a))
        return "a deviation or relief is negative or no number";
    if (!positive(gear->R_z) || !positive(gear->R_zF))
        return "a roughness is not a positive number";
    if (!isfinite(gear->E_sni))
        return "the allowance of the tooth thickness is no number";
    if (!not_negative(gear->s_pr) || !not_negative(gear->t_g))
        return "undercut or grinding notch is negative or no number";
    if (gear->t_g > 0.0 && !positive(gear->rho_g))
        return "the radius of the grinding notch is not a positive number";
    if (!not_negative(gear->z_0) || !isfinite(gear->x_0))
        return "the pinion cutter is described by no number";
    if (!not_negative(gear->s_R) || !not_negative(gear->b_s) || !not_negative(gear->d_web) ||
        !not_negative(gear->Js))
        return "rim, web or inertia is negative or no number";
    return NULL;
}

/* Of outside teeth.  A rim that reaches the axis makes a disc, and its web is not read. */
static const char *unfit_blank(const ts_cylindrical_pair *pair, const ts_iso6336_gear *gear, int g)
{
    const double d_f = g == 0 ? pair->d_f1 : pair->d_f2, d_i = d_f - 2.0 * gear->s_R;

    if (!(d_f > 0.0) || !(gear->d_web > 0.0))
        return NULL;
    if (gear->d_web >= d_f)
        return "the bore of the web is as large as the root circle, or larger";
    if (gear->s_R > 0.0 && d_i > 0.0 && gear->d_web > d_i)
        return "the bore of the web is larger than the inside of the rim";
    return NULL;
}

static const char *unfit_pair(const ts_cylindrical_pair *pair)
{
    if (!isfinite(pair->eps_alpha) || !isfinite(pair->rho_T))
        return "the geometry of the pair is not solved";
    if (!positive(pair->in.b_1) || !positive(pair->in.b_2))
        return "a face width is not a positive number";
    if (!(pair->eps_alpha >= 1.0))
        return "the transverse contact ratio is below 1, which ISO 6336-2 does not cover";
    if (!(pair->eps_alpha < 3.0))
        return "the transverse contact ratio is 3 or more, which ISO 6336 does not cover";
    return NULL;
}

const char *ts_iso6336_unfit(const ts_cylindrical_pair *pair, const ts_iso6336_mesh *mesh)
{
    const char *why = unfit_pair(pair);

    for (int gear = 0; gear < 2 && why == NULL; gear++) {
        why = unfit_strength(&mesh->gear[gear]);
        if (why == NULL)
            why = unfit_make(&mesh->gear[gear]);
        if (why == NULL)
            why = unfit_blank(pair, &mesh->gear[gear], gear);
    }
    if (why == NULL && !positive(mesh->nu_40))
        why = "the viscosity is not a positive number";
    return why;
}

int ts_iso6336_pinion(const ts_cylindrical_pair *pair)
{
    const int z_1 = pair->in.z_1, z_2 = pair->in.z_2 < 0 ? -pair->in.z_2 : pair->in.z_2;

    if (pair->in.z_2 < 0 || z_1 < z_2)
        return 0;
    if (z_1 > z_2)
        return 1;
    return pair->x_2 > pair->x_1 ? 1 : 0;
}
