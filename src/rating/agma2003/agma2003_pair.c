/* rating/agma2003/agma2003_pair.c: what of AGMA's bevel rating does not depend on the load? */
#include "rating/agma2003/agma2003.h"

#include <math.h>
#include <stddef.h>

static bool positive(double value)
{
    return value > 0.0 && value < 1e30;
}

/* A given value, or one that is not given at all. */
static bool positive_or_open(double value)
{
    return isnan(value) || positive(value);
}

static const char *unfit_gear(const ts_agma2003_gear *g)
{
    if (!positive(g->sigma_Hlim) || !positive(g->sigma_Flim))
        return "the allowable stress numbers sigma_Hlim and sigma_Flim must be above 0";
    if (!positive(g->E) || !(g->nu > -1.0 && g->nu < 0.5))
        return "the modulus must be above 0, Poisson's ratio between -1 and 0.5";
    if (!positive_or_open(g->hardness) || !positive_or_open(g->Z_W) || !positive_or_open(g->Y_J))
        return "hardness, Z_W and Y_J must be above 0 where they are given";
    return NULL;
}

static const char *unfit(const ts_agma2003_input *in)
{
    if (!(in->geometry->R_m > 0.0) || !(in->geometry->in.b > 0.0))
        return "the geometry of the pair is not solved";
    if (!positive_or_open(in->Z_I) || !positive_or_open(in->r_c0))
        return "Z_I and the cutter radius must be above 0 where they are given";
    const char *wrong = unfit_gear(&in->gear[0]);
    return wrong != NULL ? wrong : unfit_gear(&in->gear[1]);
}

static void prepare_dynamic(ts_agma2003_pair *p, ts_workings *workings)
{
    const double accuracy = p->in.accuracy;

    p->dynamic = (ts_agma2003_dynamic){NAN, NAN, INFINITY};
    p->K_v     = NAN;
    if (p->in.scale == TS_AGMA2003_ACCURACY_K_V) {
        if (accuracy >= 1.0 && accuracy < 1e3)
            p->K_v = accuracy;
        else
            p->missing = "a given dynamic factor K_v must be 1 or more";
        return;
    }
    p->dynamic = p->in.scale == TS_AGMA2003_ACCURACY_Q_V
                     ? ts_agma2003_dynamic_Q_v(accuracy, workings)
                     : ts_agma2003_dynamic_A_v(accuracy, workings);
    if (p->in.scale == TS_AGMA2003_ACCURACY_Q_V ? accuracy > 11.0 : accuracy < 6.0)
        p->remarks |= TS_AGMA2003_REMARKED(TS_AGMA2003_REMARK_NO_CURVE);
    if (isnan(p->dynamic.B)) {
        p->remarks |= TS_AGMA2003_REMARKED(TS_AGMA2003_REMARK_NO_CURVE);
        p->missing = "the dynamic factor has no curve for gears coarser than Q_v 5 (A_v 12)";
    }
}

static double work_hardening(ts_agma2003_pair *p, int gear, ts_workings *workings)
{
    const ts_agma2003_gear *g = &p->in.gear[gear], *mate = &p->in.gear[1 - gear];
    const double            u = p->geometry.u < 1.0 ? 1.0 / p->geometry.u : p->geometry.u;

    if (!isnan(g->Z_W))
        return g->Z_W;
    if (!g->hard && mate->hard)
        p->remarks |= TS_AGMA2003_REMARKED(TS_AGMA2003_REMARK_MIXED);
    if (g->hard || mate->hard || gear == p->pinion || isnan(g->hardness) || isnan(mate->hardness)) {
        ts_workings_row(workings, gear == 0 ? "Z_W1" : "Z_W2", 1.0, "1",
                        "no work hardening by the mate is counted");
        return 1.0;
    }
    if (mate->hardness > 1.7 * g->hardness)
        p->remarks |= TS_AGMA2003_REMARKED(TS_AGMA2003_REMARK_HARDNESS);
    return ts_agma2003_hardness_ratio(mate->hardness, g->hardness, u, gear, workings);
}

static void prepare_factors(ts_agma2003_pair *p, ts_workings *workings)
{
    const ts_agma2003_input *in       = &p->in;
    const ts_bevel_pair     *geometry = &p->geometry;
    const double             b = geometry->in.b, beta_m = geometry->in.beta_m;
    const int overhung = (in->gear[0].overhung ? 1 : 0) + (in->gear[1].overhung ? 1 : 0);

    p->K_mb    = ts_agma2003_mounting(overhung, workings);
    p->K_Hbeta = ts_agma2003_face_load(p->K_mb, b, workings);
    p->Z_E    = ts_agma2003_elasticity(in->gear[0].E, in->gear[0].nu, in->gear[1].E, in->gear[1].nu,
                                       workings);
    p->Z_x    = ts_agma2003_size_contact(b, workings);
    p->Z_xc   = ts_agma2003_crowning(in->crowned, workings);
    p->Y_x    = ts_agma2003_size_bending(geometry->in.m_et, workings);
    p->Y_beta = ts_agma2003_curvature(in->r_c0, geometry->R_m, beta_m, workings);
    p->Z_W[0] = work_hardening(p, 0, workings);
    p->Z_W[1] = work_hardening(p, 1, workings);
    p->R      = in->R;
    if (isnan(p->R)) {
        p->R = 0.99;
        ts_workings_assumed(workings, "R", p->R, "1",
                            "one failure in a hundred, for which the allowable numbers stand");
    }
    p->Y_Z = ts_agma2003_reliability(p->R, workings);
    if (isnan(p->Y_Z))
        p->missing = "the reliability must be 0.9 to 0.9999";
    else
        p->Z_Z = ts_agma2003_reliability_contact(p->Y_Z, workings);
}

static uint32_t when(bool holds, ts_agma2003_remark remark)
{
    return holds ? TS_AGMA2003_REMARKED(remark) : 0;
}

static uint32_t remarks_of(const ts_agma2003_pair *p)
{
    const ts_bevel_pair *g = &p->geometry;

    return when(g->in.b > 0.3 * g->R_e || g->in.b > 10.0 * g->in.m_et,
                TS_AGMA2003_REMARK_FACE_LENGTH) |
           when(g->in.m_et > 50.8e-3, TS_AGMA2003_REMARK_MODULE) |
           when(g->in.beta_m > 0.0 && isnan(p->in.r_c0), TS_AGMA2003_REMARK_CUTTER) |
           when(isnan(p->in.Z_I), TS_AGMA2003_REMARK_NO_Z_I) |
           when(isnan(p->in.gear[0].Y_J) || isnan(p->in.gear[1].Y_J), TS_AGMA2003_REMARK_NO_Y_J);
}

static const char *missing_factor(const ts_agma2003_input *in)
{
    const bool no_J = isnan(in->gear[0].Y_J) || isnan(in->gear[1].Y_J);

    if (isnan(in->Z_I))
        return no_J ? "the geometry factors Z_I and Y_J of the charts are not given"
                    : "the geometry factor Z_I of the charts is not given";
    return no_J ? "the geometry factor Y_J of the charts is not given" : NULL;
}

bool ts_agma2003_pair_prepare(const ts_agma2003_input *in, ts_agma2003_pair *pair,
                              ts_workings *workings)
{
    ts_agma2003_pair *p = pair;

    *p      = (ts_agma2003_pair){.in = *in, .geometry = *in->geometry};
    p->K_mb = p->K_Hbeta = p->Z_E = p->Z_x = p->Z_xc = p->Y_x = p->Y_beta = NAN;
    p->R = p->Y_Z = p->Z_Z = p->Z_W[0] = p->Z_W[1] = p->d_e = p->K_v = NAN;
    p->in.geometry = NULL; /* a copy is kept, so that the caller's may go */
    p->missing     = unfit(in);
    if (p->missing != NULL)
        return false;
    p->pinion = in->geometry->in.z_1 <= in->geometry->in.z_2 ? 0 : 1;
    p->d_e    = p->pinion == 0 ? in->geometry->d_e1 : in->geometry->d_e2;
    prepare_dynamic(p, workings);
    prepare_factors(p, workings);
    p->remarks |= remarks_of(p);
    if (p->missing != NULL)
        return false;
    p->rateable = true;
    p->missing  = missing_factor(in);
    return true;
}
