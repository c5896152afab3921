/* rating/second_chain.c: what does the standard say, read as it is printed? */
#include "rating/second_chain.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

typedef struct sheet {
    double z[2], x[2], d[2], da[2], df[2], db[2], b[2]; /* mm */
    double mn, an, at, awt, beta, betab, ea, eb, eg, u, bmin;
    double hfP, rfP;
} sheet;

static bool hard(ts_gear_class class)
{
    return class <= TS_GEAR_NITROCARBURISED;
}

static bool nitrided(ts_gear_class class)
{
    return class >= TS_GEAR_NITRIDED && class <= TS_GEAR_NITROCARBURISED;
}

static sheet sheet_of(const ts_cylindrical_pair *pair)
{
    return (sheet){
        .z     = {pair->in.z_1, pair->in.z_2},
        .x     = {pair->x_1, pair->x_2},
        .d     = {pair->d_1 * 1e3, pair->d_2 * 1e3},
        .da    = {pair->d_a1 * 1e3, pair->d_a2 * 1e3},
        .df    = {pair->d_f1 * 1e3, pair->d_f2 * 1e3},
        .db    = {pair->d_b1 * 1e3, pair->d_b2 * 1e3},
        .b     = {pair->in.b_1 * 1e3, pair->in.b_2 * 1e3},
        .mn    = pair->in.m_n * 1e3,
        .an    = pair->in.alpha_n,
        .at    = pair->alpha_t,
        .awt   = pair->alpha_wt,
        .beta  = pair->in.beta,
        .betab = pair->beta_b,
        .ea    = pair->eps_alpha,
        .eb    = pair->eps_beta,
        .eg    = pair->eps_gamma,
        .u     = pair->u,
        .bmin  = fmin(pair->in.b_1, pair->in.b_2) * 1e3,
        .hfP   = pair->in.rack.h_fPs,
        .rfP   = pair->in.rack.rho_fPs,
    };
}

/* ---- root ------------------------------------------------------------------------------------ */

typedef struct root {
    double YF, YS, qs, zn, ean;
} root;

static double involute(double angle)
{
    return tan(angle) - angle;
}

static root root_of(const sheet *s, int i, double spr, double Esni)
{
    const double x   = -Esni / s->mn > 0.05 ? s->x[i] + Esni / s->mn / 2.0 / tan(s->an) : s->x[i];
    const double bb  = acos(sqrt(1.0 - pow(sin(s->beta) * cos(s->an), 2.0)));
    const double zn  = s->z[i] / (pow(cos(bb), 2.0) * cos(s->beta));
    const double hfP = s->hfP * s->mn, rfP = s->rfP * s->mn;
    const double E = pi / 4.0 * s->mn - hfP * tan(s->an) + spr / cos(s->an) -
                     (1.0 - sin(s->an)) * rfP / cos(s->an);
    const double G     = rfP / s->mn - hfP / s->mn + x;
    const double H     = 2.0 / zn * (pi / 2.0 - E / s->mn) - pi / 3.0;
    double       theta = pi / 6.0;

    for (int round = 0; round < 400; round++) /* the standard's own rule, carried to the end */
        theta = 2.0 * G / zn * tan(theta) - H;

    const double sFn = zn * sin(pi / 3.0 - theta) + sqrt(3.0) * (G / cos(theta) - rfP / s->mn);
    const double rF =
        rfP / s->mn + 2.0 * G * G / (cos(theta) * (zn * pow(cos(theta), 2.0) - 2.0 * G));
    const double ean = s->ea / pow(cos(bb), 2.0), dn = s->mn * zn, pbn = pi * s->mn * cos(s->an);
    const double dbn = dn * cos(s->an), dan = dn + s->da[i] - s->d[i];
    const double den =
        2.0 * sqrt(pow(sqrt(pow(dan / 2.0, 2.0) - pow(dbn / 2.0, 2.0)) - pbn * (ean - 1.0), 2.0) +
                   pow(dbn / 2.0, 2.0));
    const double aen = acos(dbn / den);
    const double ge  = (0.5 * pi + 2.0 * tan(s->an) * x) / zn + involute(s->an) - involute(aen);
    const double aF  = aen - ge;
    const double hFe = 0.5 * ((cos(ge) - sin(ge) * tan(aF)) * den / s->mn -
                              zn * cos(pi / 3.0 - theta) - G / cos(theta) + rfP / s->mn);
    const double L = sFn / hFe, qs = sFn / (2.0 * rF);

    return (root){
        .YF  = 6.0 * hFe * cos(aF) / (sFn * sFn * cos(s->an)),
        .YS  = (1.2 + 0.13 * L) * pow(qs, 1.0 / (1.21 + 2.3 / L)),
        .qs  = qs,
        .zn  = zn,
        .ean = ean,
    };
}

/* ---- dynamics -------------------------------------------------------------------------------- */

/* um; f in um, sigma in N/mm2 */
static double run_in(ts_gear_class class, double sigma, double v, double f, double factor)
{
    if (hard(class))
        return fmin(0.075 * factor * f, 3.0 * factor);
    double y = fmin(f, 160.0 * factor * f / sigma);
    if (v > 10.0)
        y = fmin(y, 6400.0 * factor / sigma);
    else if (v > 5.0)
        y = fmin(y, 12800.0 * factor / sigma);
    return y;
}

static double run_in_pair(const ts_iso6336_mesh *m, double v, double f, double factor)
{
    return 0.5 * (run_in(m->gear[0].class, m->gear[0].sigma_Hlim / 1e6, v, f, factor) +
                  run_in(m->gear[1].class, m->gear[1].sigma_Hlim / 1e6, v, f, factor));
}

/* N/(mm um) */
static double stiffness(const sheet *s, const ts_iso6336_mesh *m, const root r[2], double w)
{
    const int    p = s->z[0] < s->z[1] || (s->z[0] <= s->z[1] && s->x[0] >= s->x[1]) ? 0 : 1;
    const int    g = 1 - p;
    const double q = 0.04723 + 0.15551 / r[p].zn + 0.25791 / r[g].zn - 0.00635 * s->x[p] -
                     0.11654 * s->x[p] / r[p].zn - 0.00193 * s->x[g] - 0.24188 * s->x[g] / r[g].zn +
                     0.00529 * pow(s->x[p], 2.0) + 0.00182 * pow(s->x[g], 2.0);
    const double CB = (1.0 + 0.5 * (1.2 - s->hfP)) * (1.0 - 0.02 * (20.0 - s->an * 180.0 / pi));
    const double E1 = m->gear[0].E / 1e6, E2 = m->gear[1].E / 1e6;
    double       c = 0.8 / q * CB * cos(s->beta) * (2.0 * E1 * E2 / (E1 + E2)) / 206000.0;

    if (w < 100.0)
        c *= pow(w / 100.0, 0.25);
    return c;
}

static double disc(const sheet *s, int i)
{
    const double dm = (s->da[i] + s->df[i]) / 2.0;

    return pi / 8.0 * pow(dm / s->db[i], 2.0) * dm * dm * 7.83e-6; /* kg/mm */
}

static double dynamic(double N, double NS, double eg, const double B[3])
{
    const bool   two = eg > 2.0;
    const double C1 = 0.32, C2 = two ? 0.57 / (eg - 0.3) : 0.34;
    const double C3 = two ? 0.096 / (eg - 1.56) : 0.23;
    const double C4 = two ? (0.57 - 0.05 * eg) / (eg - 1.44) : 0.90;
    const double C5 = 0.47, C6 = two ? 0.12 / (eg - 1.74) : 0.47;
    const double C7 = eg <= 1.5 ? 0.75 : eg <= 2.5 ? 0.125 * sin(pi * (eg - 2.0)) + 0.875 : 1.0;
    const double K  = C1 * B[0] + C2 * B[1] + C3 * B[2];
    const double at_resonance = C1 * B[0] + C2 * B[1] + C4 * B[2] + 1.0;
    const double above        = C5 * B[0] + C6 * B[1] + C7;

    if (N <= NS)
        return N * K + 1.0;
    if (N <= 1.15)
        return at_resonance;
    if (N >= 1.5)
        return above;
    return above + (at_resonance - above) / 0.35 * (1.5 - N);
}

/* ---- life ------------------------------------------------------------------------------------ */

/* Limit stress from node to node. */
static double limit(const double N[3], const double s[3], double long_factor, double NL)
{
    if (NL <= N[0])
        return s[0];
    if (NL <= N[1])
        return s[1] * pow(N[1] / NL, log(s[0] / s[1]) / log(N[1] / N[0]));
    if (NL <= N[2])
        return s[2] * pow(N[2] / NL, log(s[1] / s[2]) / log(N[2] / N[1]));
    return s[2] * pow(N[2] / NL, log(1.0 / long_factor) / log(1e10 / N[2]));
}

static double contact_limit(const ts_iso6336_gear *g, double stat, double ref, double NL)
{
    const bool   soft_nitride = g->class == TS_GEAR_NITROCARBURISED;
    const double ZN           = soft_nitride ? 1.1 : nitrided(g->class) ? 1.3 : 1.6;
    const double s0           = fmax(stat * ZN, ref);

    if (nitrided(g->class))
        return limit((double[]){1e5, 2e6, 2e6}, (double[]){s0, ref, ref}, g->Z_NTlong, NL);
    if (!g->pitting)
        return limit((double[]){1e5, 5e7, 5e7}, (double[]){s0, ref, ref}, g->Z_NTlong, NL);
    const double s1 = ref * pow(s0 / ref, log(1.3) / log(1.6));
    return limit((double[]){6e5, 1e7, 1e9}, (double[]){s0, s1, ref}, g->Z_NTlong, NL);
}

static double bending_limit(const ts_iso6336_gear *g, double stat, double ref, double NL)
{
    const bool   soft = !hard(g->class);
    const double YN   = g->class == TS_GEAR_NITROCARBURISED ? 1.1 : nitrided(g->class) ? 1.6 : 2.5;
    const double s0   = fmax(stat * YN, ref);

    return limit((double[]){soft ? 1e4 : 1e3, 3e6, 3e6}, (double[]){s0, ref, ref}, g->Y_NTlong, NL);
}

/* ---- strength -------------------------------------------------------------------------------- */

static double straight(const double *x, const double *y, int n, double at)
{
    if (at <= x[0])
        return y[0];
    for (int i = 1; i < n; i++)
        if (at <= x[i])
            return y[i - 1] + (y[i] - y[i - 1]) * (at - x[i - 1]) / (x[i] - x[i - 1]);
    return y[n - 1];
}

static double slip(const ts_iso6336_gear *g)
{
    static const double xq[] = {500, 600, 800, 1000}, yq[] = {0.0281, 0.0194, 0.0064, 0.0014};
    static const double xn[] = {300, 400}, yn[] = {0.0833, 0.0445};

    if (nitrided(g->class))
        return 0.1005;
    if (hard(g->class))
        return 0.0030;
    return g->class == TS_GEAR_THROUGH_HARDENED ? straight(xq, yq, 4, g->yield / 1e6)
                                                : straight(xn, yn, 2, g->yield / 1e6);
}

static double root_limit(const sheet *s, const ts_iso6336_gear *g, const root *r, double R,
                         double NL)
{
    const double rho = slip(g), chi = 0.2 * (1.0 + 2.0 * r->qs);
    const double Yd = (1.0 + sqrt(rho * chi)) / (1.0 + sqrt(rho * 1.2));
    const double Rz = fmin(g->R_zF * 1e6, 40.0);
    double       YR, Yds, YX, M, Ms;

    if (nitrided(g->class))
        YR = Rz < 1.0 ? 1.025 : 4.299 - 3.259 * pow(Rz + 1.0, 0.005);
    else if (g->class == TS_GEAR_NORMALISED)
        YR = Rz < 1.0 ? 1.07 : 5.306 - 4.203 * pow(Rz + 1.0, 0.01);
    else
        YR = Rz < 1.0 ? 1.12 : 1.674 - 0.529 * pow(Rz + 1.0, 0.1);
    if (hard(g->class))
        YX = s->mn <= 5.0 ? 1.0 : s->mn < 25.0 ? 1.05 - 0.01 * s->mn : 0.8;
    else
        YX = s->mn <= 5.0 ? 1.0 : s->mn < 30.0 ? 1.03 - 0.006 * s->mn : 0.85;
    if (nitrided(g->class)) {
        Yds = 0.2 * r->YS + 0.6;
        M = Ms = 0.3;
    } else if (hard(g->class)) {
        const bool firm = g->class == TS_GEAR_INDUCTION_HARDENED || g->shot_peened;

        Yds = 0.44 * r->YS + 0.12;
        M   = firm ? 0.4 : 0.8 - 0.15 * r->YS;
        Ms  = firm ? 0.6 : 0.7;
    } else {
        const bool   quenched = g->class == TS_GEAR_THROUGH_HARDENED;
        const double f =
            quenched ? 0.82 * pow(300e6 / g->yield, 0.25) : 0.93 * pow(200e6 / g->yield, 0.25);

        Yds = (1.0 + f * (r->YS - 1.0)) / (1.0 + f);
        M   = 0.3;
        Ms  = 0.5;
    }
    const double YM  = 1.0 / (1.0 - R * (1.0 - M) / (1.0 + M));
    const double YMs = 1.0 / (1.0 - R * (1.0 - Ms) / (1.0 + Ms));
    const double FE  = 2.0 * g->sigma_Flim / 1e6;

    return bending_limit(g, FE * Yds * YMs, FE * Yd * YR * YX * YM, NL);
}

/* Z_W and its static value. */
static void hardening(const sheet *s, const ts_iso6336_mesh *m, int i, double v, double out[2])
{
    const ts_iso6336_gear *own = &m->gear[i], *mate = &m->gear[1 - i];
    const double           rr = 0.5 * tan(s->awt) * s->db[0] * s->db[1] / (s->db[0] + s->db[1]);

    out[0] = out[1] = 1.0;
    if (!hard(own->class) && hard(mate->class)) {
        const double HB = fmin(470.0, fmax(130.0, own->HB));
        const double R1 = mate->R_z * 1e6, R2 = own->R_z * 1e6;
        double       RH =
            R1 * pow(10.0 / rr, 0.33) * pow(R1 / R2, 0.66) / pow(v * m->nu_40 * 1e6 / 1500.0, 0.33);

        RH     = fmin(16.0, fmax(3.0, RH));
        out[0] = (1.2 - (HB - 130.0) / 1700.0) * pow(3.0 / RH, 0.15);
        out[1] = 1.05 - (HB - 130.0) / 6800.0;
    }
    const bool pinion =
        s->z[0] < s->z[1] || (s->z[0] <= s->z[1] && s->x[0] >= s->x[1]) ? i == 0 : i == 1;
    const double h = mate->HB / own->HB;
    if (!hard(own->class) && !hard(mate->class) && !pinion && h >= 1.2) {
        const double u = fmax(s->u, 1.0 / s->u);

        out[0] = 1.0 + (0.00898 * fmin(h, 1.7) - 0.00829) * (fmin(u, 20.0) - 1.0);
    }
}

/* ---- all of it ------------------------------------------------------------------------------- */

static double K_Hbeta(const ts_iso6336_mesh *m, const ts_iso6336_load *l, double v, double Fm,
                      double cgb)
{
    static const double B1[] = {1, 1, 0.5, 0.1, 0.1, 0.7}, B2[] = {1, 0.5, 0.5, 1, 0.5, 0.7};

    if (l->face == TS_FACE_LOAD_GIVEN)
        return l->K_Hbeta;
    double F = l->F_betax * 1e6;
    if (l->face == TS_FACE_LOAD_PARTS)
        F = fmax(1.33 * B1[m->lead] * l->f_sh * 1e6 + B2[m->lead] * l->f_ma * 1e6, 0.005 * Fm);
    F -= run_in_pair(m, v, F, 2.0);
    const double ratio = F * cgb / (2.0 * Fm);
    return ratio >= 1.0 ? sqrt(2.0 * F * cgb / Fm) : 1.0 + ratio;
}

static double Z_BD(const sheet *s, const ts_iso6336_mesh *m, int i)
{
    const int    o  = 1 - i;
    const double ti = sqrt(pow(s->da[i] / s->db[i], 2.0) - 1.0);
    const double to = sqrt(pow(s->da[o] / s->db[o], 2.0) - 1.0);
    const double M =
        tan(s->awt) / sqrt((ti - 2.0 * pi / s->z[i]) * (to - (s->ea - 1.0) * 2.0 * pi / s->z[o]));
    static const double fz[] = {1.2, 1.07, 1.0};
    const double ends = m->year == TS_ISO6336_2019 && s->eb > 0.0 ? sqrt(fz[m->profile]) : 1.0;

    return fmax(1.0, s->eb >= 1.0 ? ends : M - s->eb * (M - ends));
}

second_rating second_chain(const ts_cylindrical_pair *pair, const ts_iso6336_mesh *m,
                           const ts_iso6336_load *l)
{
    const sheet  sh = sheet_of(pair), *s = &sh;
    const root   r[2] = {root_of(s, 0, m->gear[0].s_pr * 1e3, m->gear[0].E_sni * 1e3),
                         root_of(s, 1, m->gear[1].s_pr * 1e3, m->gear[1].E_sni * 1e3)};
    const double Ft = 2000.0 * l->T_1 / s->d[0], n1 = l->omega_1 * 30.0 / pi;
    const double v = pi * s->d[0] * n1 / 60000.0, w = Ft * l->K_A * l->K_gamma / s->bmin;
    const double c = stiffness(s, m, r, w), cga = c * (0.75 * s->ea + 0.25), cgb = 0.85 * cga;
    const double m1 = disc(s, 0), m2 = disc(s, 1), mred = m1 * m2 / (m1 + m2);
    const double nE = 30000.0 / (pi * s->z[0]) * sqrt(cga / mred), N = n1 / nE;
    const double NS  = w >= 100.0 ? 0.85 : 0.5 + 0.35 * sqrt(w / 100.0);
    const double fpb = fmax(m->gear[0].f_pt, m->gear[1].f_pt) * 1e6 * cos(s->at);
    const double ffa = fmax(m->gear[0].f_falpha, m->gear[1].f_falpha) * 1e6;
    const double fp = fpb - run_in_pair(m, v, fpb, 1.0), ff = ffa - run_in_pair(m, v, ffa, 1.0);
    const double Ca1 = m->gear[0].C_a * 1e6, Ca2 = m->gear[1].C_a * 1e6;
    double       Cay = 0.0;
    for (int i = 0; i < 2; i++)
        Cay += 0.5 * (pow(m->gear[i].sigma_Hlim / 1e6 / 97.0 - 18.45, 2.0) / 18.0 + 1.5);
    const double Ca   = Ca1 > 0.0 && Ca2 > 0.0 ? fmin(Ca1, Ca2)
                        : Ca1 + Ca2 > 0.0      ? fmin(Ca1 + Ca2, Cay)
                                               : Cay;
    const bool   fine = m->gear[0].accuracy < 6 && m->gear[1].accuracy < 6;
    const double B[3] = {c * fp / w, c * ff / w, fine ? fabs(1.0 - c * Ca / w) : 1.0};
    const double Kv = dynamic(N, NS, s->eg, B), Fm = w * Kv;
    const double KHb = K_Hbeta(m, l, v, Fm, cgb);
    const double bh  = fmax(3.0, fmin(s->b[0] / (0.5 * (s->da[0] - s->df[0])),
                                      s->b[1] / (0.5 * (s->da[1] - s->df[1]))));
    const double KFb = pow(KHb, bh * bh / (1.0 + bh + bh * bh));
    const double Ze  = s->eb >= 1.0 ? sqrt(1.0 / s->ea)
                                    : sqrt((4.0 - s->ea) / 3.0 * (1.0 - s->eb) + s->eb / s->ea);
    const double q   = cga * (m->relief_matched ? 0.5 : 1.0) * fp / (Fm * KHb);
    const double Ka  = s->eg <= 2.0 ? s->eg / 2.0 * (0.9 + 0.4 * q)
                                    : 0.9 + 0.4 * sqrt(2.0 * (s->eg - 1.0) / s->eg) * q;
    const double KHa = fmax(1.0, fmin(Ka, s->eg / (s->ea * Ze * Ze)));
    const double KFa = fmax(1.0, fmin(Ka, s->eg / (0.25 * s->ea + 0.75)));
    const double E1 = m->gear[0].E / 1e6, E2 = m->gear[1].E / 1e6, nu = m->gear[0].nu;
    const double ZE = sqrt(1.0 / (pi * ((1.0 - nu * nu) / E1 + (1.0 - nu * nu) / E2)));
    const double ZH =
        sqrt(2.0 * cos(s->betab) * cos(s->awt) / (pow(cos(s->at), 2.0) * sin(s->awt)));
    const double sH0 =
        ZH * ZE * Ze / sqrt(cos(s->beta)) * sqrt(Ft / (s->d[0] * s->bmin) * (s->u + 1.0) / s->u);
    const double soft = fmin(m->gear[0].sigma_Hlim, m->gear[1].sigma_Hlim) / 1e6;
    const double ZL   = fmin(0.91, fmax(0.83, soft / 4375.0 + 0.6357));
    const double Zv   = fmin(0.93, fmax(0.85, soft / 4375.0 + 0.6557));
    const double CZR  = soft < 850.0 ? 0.15 : soft > 1200.0 ? 0.08 : 0.32 - 0.0002 * soft;
    const double rr   = 0.5 * tan(s->awt) * s->db[0] * s->db[1] / (s->db[0] + s->db[1]);
    const double Rz10 = (m->gear[0].R_z + m->gear[1].R_z) / 2.0 * 1e6 * pow(10.0 / rr, 1.0 / 3.0);
    const double film = (ZL + 4.0 * (1.0 - ZL) / pow(1.2 + 134.0 / (m->nu_40 * 1e6), 2.0)) *
                        (Zv + 2.0 * (1.0 - Zv) / sqrt(0.8 + 32.0 / v)) * pow(3.0 / Rz10, CZR);
    const double degrees = fmin(s->beta * 180.0 / pi, 30.0), eb1 = fmin(s->eb, 1.0);
    const double ean = r[0].ean;
    double       Yb = 1.0 - eb1 * degrees / 120.0, fe = 1.0, YDT = 1.0;
    if (m->year == TS_ISO6336_2019) {
        Yb /= pow(cos(s->beta), 3.0);
        fe = s->eb <= 0.0   ? (ean < 2.0 ? 1.0 : 0.7)
             : s->eb >= 1.0 ? pow(ean, -0.5)
                            : sqrt((1.0 - s->eb) / (ean < 2.0 ? 1.0 : 2.0) + s->eb / ean);
    } else if (m->gear[0].accuracy <= 4 && m->gear[1].accuracy <= 4 && ean > 2.05) {
        YDT = ean <= 2.5 ? 2.366 - 0.666 * ean : 0.7;
    }
    const second_gear empty = {.S_H = NAN};
    second_rating     out   = {cga, mred, nE, N, Kv, KHb, KFb, KHa, KFa, sH0, {empty, empty}};
    for (int i = 0; i < 2; i++) {
        const ts_iso6336_gear *g = &m->gear[i];
        second_gear           *o = &out.gear[i];
        const bool eased         = m->lead == TS_LEAD_CROWNED || m->lead == TS_LEAD_CROWNED_WELL ||
                           m->lead == TS_LEAD_CORRECTED_CROWNED || m->lead == TS_LEAD_END_RELIEF;
        const double bF = eased ? s->bmin : fmin(s->b[i], s->bmin + 2.0 * s->mn);
        double       ZW[2];

        hardening(s, m, i, v, ZW);
        o->Z_W     = ZW[0];
        o->Y_F     = r[i].YF * fe;
        o->Y_S     = g->t_g > 0.0 ? 1.3 * r[i].YS / (1.3 - 0.6 * sqrt(g->t_g / g->rho_g)) : r[i].YS;
        o->sigma_H = Z_BD(s, m, i) * sH0 * sqrt(l->K_A * l->K_gamma * Kv * KHb * KHa);
        o->sigma_F =
            Ft / (bF * s->mn) * o->Y_F * o->Y_S * Yb * YDT * l->K_A * l->K_gamma * Kv * KFb * KFa;
        o->sigma_HG = contact_limit(g, g->sigma_Hlim / 1e6 * ZW[1],
                                    g->sigma_Hlim / 1e6 * film * ZW[0], l->N_L[i]);
        o->sigma_FG = root_limit(s, g, &r[i], l->R[i], l->N_L[i]);
        o->S_H      = o->sigma_HG / o->sigma_H;
        o->S_F      = o->sigma_FG / o->sigma_F;
    }
    return out;
}
