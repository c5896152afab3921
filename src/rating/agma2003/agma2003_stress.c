/* rating/agma2003/agma2003_stress.c: how hard are bevel teeth strained, and what may they bear? */
#include "rating/agma2003/agma2003_stress.h"

#include "rating/agma2003/agma2003_step.h"

#include <math.h>

AGMA2003_FORMULA(sigma_H, "contact stress number", "Pa",
                 "Z_E*sqrt(F_et/(b*d_e*Z_I)*K_A*K_v*K_Hbeta*Z_x*Z_xc)", "pitting resistance");

#define BENDING_TEXT(I, M) "F_et/b*K_A*K_v/m_et*Y_x*K_Hbeta/(Y_beta*Y_J" I ")"
#define FLANK_TEXT(I, M)   "sigma_Hlim" I "*Z_NT" I "*Z_W" I "/(K_theta*Z_Z)"
#define ROOT_TEXT(I, M)    "sigma_Flim" I "*Y_NT" I "*Y_M" I "/(K_theta*Y_Z)"
AGMA2003_FORMULAS(sigma_F, "bending stress number", "Pa", BENDING_TEXT, "bending strength");
AGMA2003_FORMULAS(sigma_HP, "permissible contact stress number", "Pa", FLANK_TEXT,
                  "pitting resistance");
AGMA2003_FORMULAS(sigma_FP, "permissible bending stress number", "Pa", ROOT_TEXT,
                  "bending strength");

static double contact_of(const ts_agma2003_force *f, const ts_agma2003_contact *c, double F_et)
{
    return c->Z_E *
           sqrt(F_et / (f->b * c->d_e * c->Z_I) * f->K_A * f->K_v * f->K_Hbeta * c->Z_x * c->Z_xc);
}

static double bending_of(const ts_agma2003_force *f, const ts_agma2003_bending *r, double F_et)
{
    return F_et / f->b * f->K_A * f->K_v / r->m_et * r->Y_x * f->K_Hbeta / (r->Y_beta * r->Y_J);
}

double ts_agma2003_contact_stress(const ts_agma2003_force   *force,
                                  const ts_agma2003_contact *contact, ts_workings *workings)
{
    const double F_et = force->F_et, b = force->b, K_A = force->K_A, K_v = force->K_v;
    const double K_Hbeta = force->K_Hbeta, d_e = contact->d_e, Z_E = contact->Z_E;
    const double Z_x = contact->Z_x, Z_xc = contact->Z_xc, Z_I = contact->Z_I;

    return TS_STEP(workings, sigma_H_formula, contact_of(force, contact, F_et), Z_E, F_et, b, d_e,
                   Z_I, K_A, K_v, K_Hbeta, Z_x, Z_xc);
}

double ts_agma2003_bending_stress(const ts_agma2003_force   *force,
                                  const ts_agma2003_bending *bending, int gear,
                                  ts_workings *workings)
{
    const double F_et = force->F_et, b = force->b, K_A = force->K_A, K_v = force->K_v;
    const double K_Hbeta = force->K_Hbeta, m_et = bending->m_et, Y_x = bending->Y_x;
    const double Y_beta = bending->Y_beta, Y_J = bending->Y_J;

    return TS_BEVEL_STEP(workings, sigma_F_formulas, bending_of(force, bending, F_et),
                         TS_BEVEL_PAIR(F_et), TS_BEVEL_PAIR(b), TS_BEVEL_PAIR(K_A),
                         TS_BEVEL_PAIR(K_v), TS_BEVEL_PAIR(m_et), TS_BEVEL_PAIR(Y_x),
                         TS_BEVEL_PAIR(K_Hbeta), TS_BEVEL_PAIR(Y_beta), TS_BEVEL_SELF("Y_J", Y_J));
}

double ts_agma2003_contact_permitted(const ts_agma2003_contact_strength *s, int gear,
                                     ts_workings *workings)
{
    const double sigma_Hlim = s->sigma_Hlim, Z_NT = s->Z_NT, Z_W = s->Z_W;
    const double K_theta = s->K_theta, Z_Z = s->Z_Z;

    return TS_BEVEL_STEP(workings, sigma_HP_formulas, sigma_Hlim * Z_NT * Z_W / (K_theta * Z_Z),
                         TS_BEVEL_SELF("sigma_Hlim", sigma_Hlim), TS_BEVEL_SELF("Z_NT", Z_NT),
                         TS_BEVEL_SELF("Z_W", Z_W), TS_BEVEL_PAIR(K_theta), TS_BEVEL_PAIR(Z_Z));
}

double ts_agma2003_bending_permitted(const ts_agma2003_bending_strength *s, int gear,
                                     ts_workings *workings)
{
    const double sigma_Flim = s->sigma_Flim, Y_NT = s->Y_NT, K_theta = s->K_theta, Y_Z = s->Y_Z;
    const double Y_M = s->Y_M;

    return TS_BEVEL_STEP(workings, sigma_FP_formulas, sigma_Flim * Y_NT * Y_M / (K_theta * Y_Z),
                         TS_BEVEL_SELF("sigma_Flim", sigma_Flim), TS_BEVEL_SELF("Y_NT", Y_NT),
                         TS_BEVEL_SELF("Y_M", Y_M), TS_BEVEL_PAIR(K_theta), TS_BEVEL_PAIR(Y_Z));
}

double ts_agma2003_contact_force(const ts_agma2003_force *force, const ts_agma2003_contact *contact,
                                 double sigma_P)
{
    const double share = sigma_P / contact_of(force, contact, 1.0);

    return share * share;
}

double ts_agma2003_bending_force(const ts_agma2003_force *force, const ts_agma2003_bending *bending,
                                 double sigma_P)
{
    return sigma_P / bending_of(force, bending, 1.0);
}
