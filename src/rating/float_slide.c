/* rating/float_slide.c: how far does the spline of a stub, or the face of a wide spur, slide, and
 * what do they cost? */
#include "rating/float_parts.h"

#include "motion/value_note.h"

#include <math.h>

#define SLIDES "steel that begins to slide; common practice, no source"
#define MADE   "common practice, no source"
#define MADE_FOR                                                                                   \
    1.25 /* slide or overlap of a scheme that the file does not choose, over the travel */
#define FRICTION   0.15   /* dry at the start of its slide                                    */
#define ENGAGED    0.6    /* length of the stub's spline over its pitch diameter              */
#define HUB        1.3    /* outside of its hub over its pitch diameter                       */
#define OFFSET     1.5e-4 /* m  that a spline bears; order of magnitude of SAE AS966         */
#define RIM        3.0    /* rim of a spur gear below its roots, in modules                   */
#define LEAST_FACE 6.0    /* of a spur, in modules                                            */
#define K_FIRST    1.5    /* product of the load factors of a first size                      */
#define SIGMA_HP   1.0e9  /* Pa                                                               */
#define Z_FIRST    4.75e5 /* sqrt(Pa)  2.5 times 1.9e5 of steel on steel                     */

static const ts_formula slide_formula   = {"F_slide", "push of the spline while it slides", "N",
                                           "2*mu*T_1/(D*cos(alpha_D))",
                                           "derived: friction of the force on the flanks"};
static const ts_formula thrust_formula  = {"F_thrust", "greatest push on what locates bevel 1", "N",
                                           "F_a + F_slide", "derived: the sum is the most"};
static const ts_formula engaged_formula = {"L_least", "least engaged length", "m",
                                           "L_e - max(s_forward, s_rearward)",
                                           "derived: whichever way the spline comes out"};
static const ts_formula hub_formula     = {"m_hub", "mass of the hub of the spline", "kg",
                                           "rho*pi/4*(d_o^2 - d_h^2)*L", "derived: a ring"};
static const ts_formula stub_formula    = {"m_more", "mass beyond that of a fixed bevel", "kg",
                                           "m_shaft + m_bearings + m_hub", "derived: the sum"};

static const ts_formula face_formula = {
    "b_s", "face of a spur that bears the load", "m",
    "max(6*m_n, 2*K*T_1*Z^2*(u + 1)/(u*d_s^2*sigma_HP^2))",
    "ISO 6336-2:2019, contact stress solved for the face; a first size"};
static const ts_formula spur_slide_formula = {"F_slide", "push of the spurs while they slide", "N",
                                              "2*mu*T_1/(d_s*cos(alpha_s))",
                                              "derived: friction of the force on the flanks"};
static const ts_formula across_formula = {"F_across", "greatest force across, on all its bearings",
                                          "N", "F_r + 2*T_1/(d_s*cos(alpha_s))",
                                          "derived: the sum of two forces is their most"};
static const ts_formula narrow_formula = {
    "b_engaged", "least common face of the spurs", "m",
    "b_s - max(0, s_rearward - s_forward - s_most)",
    "derived: the faces stand even in the middle of the travel"};
static const ts_formula ring_formula = {"m_spurs", "mass of both spurs as rings", "kg",
                                        "rho*pi/4*(d_o^2 - d_h^2)*L", "derived: a ring"};
static const ts_formula spur_formula = {"m_more", "mass beyond that of a fixed bevel", "kg",
                                        "m_shaft + m_bearings + m_spurs", "derived: the sum"};
static const ts_formula play_formula = {"r_most", "radial travel that takes their backlash", "m",
                                        "j_bn/(2*sin(alpha_s))",
                                        "derived: both flanks, as of cylindrical gears"};

/* ---- stub ------------------------------------------------------------------------------------ */

static void stub_limits(ts_float_job *job, ts_float_option *option)
{
    const ts_span *told = &job->take_off->slide;
    const double  *s    = job->item->s;
    const bool     is   = told->standing == TS_GIVEN || told->standing == TS_ASSUMED;

    option->made     = !is;
    option->slide[0] = is ? told->low : MADE_FOR * fmin(0.0, s[0]);
    option->slide[1] = is ? told->high : MADE_FOR * fmax(0.0, s[1]);
    for (int end = 0; end < 2; end++) {
        option->stop[end]  = option->slide[end];
        option->cause[end] = TS_FLOAT_BOTTOMS;
    }
    option->left   = fmin(s[0] - option->slide[0], option->slide[1] - s[1]);
    option->r_stop = OFFSET;
}

static double stub_spline(ts_float_job *job, ts_float_option *option)
{
    const double s_forward = fmax(0.0, -job->item->s[0]), s_rearward = fmax(0.0, job->item->s[1]);
    const double D = job->stand_in != NULL ? job->stand_in->d_journal : job->turn->bevel.d_m1 / 2.0;
    const bool   is  = ts_measure_known(job->take_off->engaged);
    const double L_e = is ? job->take_off->engaged.value : ENGAGED * D;

    ts_workings_assumed(job->workings, "D", D, "m", "the journal of the stub; " MADE);
    if (is)
        TS_NOTE_MEASURE(job->workings, job->drive, "L_e", job->take_off->engaged, "m", "engaged");
    else
        ts_workings_assumed(job->workings, "L_e", L_e, "m", "0.6 of the pitch diameter; " MADE);
    ts_workings_assumed(job->workings, "s_forward", s_forward, "m",
                        "the axial travel, without sign");
    ts_workings_assumed(job->workings, "s_rearward", s_rearward, "m",
                        "the axial travel, without sign");
    option->engaged  = TS_FLOAT_STEP(job, engaged_formula, L_e - fmax(s_forward, s_rearward), L_e,
                                     s_forward, s_rearward);
    option->apart[0] = -L_e;
    option->apart[1] = L_e;
    option->made     = option->made || !is;
    return D;
}

void ts_float_stub(ts_float_job *job, ts_float_option *option)
{
    const double still[2] = {0.0, 0.0};
    const double alpha_D = 3.14159265358979323846 / 6.0, mu = FRICTION, T_1 = job->T_1;

    ts_float_bevel(job, option, still, 0.0);
    ts_float_note_loads(job);
    stub_limits(job, option);
    const double D = stub_spline(job, option), F_a = job->F_a;

    ts_workings_assumed(job->workings, "mu", mu, "1", SLIDES);
    ts_workings_assumed(job->workings, "alpha_D", alpha_D, "rad", "30 degrees; ANSI B92.1");
    const double F_slide =
        TS_FLOAT_STEP(job, slide_formula, 2.0 * mu * T_1 / (D * cos(alpha_D)), mu, T_1, D, alpha_D);

    option->F_a          = TS_FLOAT_STEP(job, thrust_formula, F_a + F_slide, F_a, F_slide);
    option->F_r          = job->F_r;
    const double m_shaft = ts_float_shaft_mass(job), m_bearings = ts_float_bearing_mass(job);
    const double m_hub = ts_float_ring(job, &hub_formula, HUB * D, D,
                                       -option->apart[0] + option->slide[1] - option->slide[0]);

    option->m =
        TS_FLOAT_STEP(job, stub_formula, m_shaft + m_bearings + m_hub, m_shaft, m_bearings, m_hub);
    option->parts = 4; /* shaft, two bearings, hub */
}

/* ---- wide spur ------------------------------------------------------------------------------- */

static double spur_face(ts_float_job *job, double d_s, double m_n)
{
    const double T_1 = job->T_1, K = K_FIRST, Z = Z_FIRST, sigma_HP = SIGMA_HP, u = 1.0;

    ts_workings_assumed(job->workings, "m_n", m_n, "m",
                        "the mean normal module of the bevels; " MADE);
    ts_workings_assumed(job->workings, "d_s", d_s, "m",
                        "the outer pitch diameter of bevel 1, which passes round the rotor; " MADE);
    ts_workings_assumed(job->workings, "K", K, "1", "load factors of a first size; " MADE);
    ts_workings_assumed(job->workings, "Z", Z, "1", "sqrt(Pa), steel on steel, 20 degrees; " MADE);
    ts_workings_assumed(job->workings, "u", u, "1", "the idler is as large as the rotor's spur");
    ts_workings_assumed(job->workings, "sigma_HP", sigma_HP, "Pa", "of a first size; " MADE);
    return TS_FLOAT_STEP(job, face_formula,
                         fmax(LEAST_FACE * m_n, 2.0 * K * T_1 * Z * Z * (u + 1.0) /
                                                    (u * d_s * d_s * sigma_HP * sigma_HP)),
                         m_n, K, T_1, Z, u, d_s, sigma_HP);
}

static void spur_limits(ts_float_job *job, ts_float_option *option, double b_s)
{
    const ts_measure *told      = &job->take_off->overlap;
    const double      s_forward = job->item->s[0], s_rearward = job->item->s[1];
    const double      stroke = s_rearward - s_forward, middle = (s_rearward + s_forward) / 2.0;
    const bool        is     = ts_measure_known(*told);
    const double      s_most = is ? told->value : MADE_FOR * stroke;

    option->made = !is;
    ts_workings_assumed(job->workings, "s_forward", s_forward, "m", "the axial travel");
    ts_workings_assumed(job->workings, "s_rearward", s_rearward, "m", "the axial travel");
    if (is)
        TS_NOTE_MEASURE(job->workings, job->drive, "s_most", *told, "m", "overlap");
    else
        ts_workings_assumed(job->workings, "s_most", s_most, "m",
                            "a quarter more than the travel; " MADE);
    option->slide[0] = middle - s_most / 2.0;
    option->slide[1] = middle + s_most / 2.0;
    option->left     = (s_most - stroke) / 2.0;
    option->engaged  = TS_FLOAT_STEP(job, narrow_formula, b_s - fmax(0.0, stroke - s_most), b_s,
                                     s_rearward, s_forward, s_most);
    for (int end = 0; end < 2; end++) {
        option->stop[end]  = option->slide[end];
        option->cause[end] = TS_FLOAT_NARROW;
        option->apart[end] = option->slide[end] + (end == 0 ? -b_s : b_s);
    }
}

static void spur_loads(ts_float_job *job, ts_float_option *option, double d_s)
{
    const double alpha_s = 3.14159265358979323846 / 9.0, mu = FRICTION, T_1 = job->T_1;
    const double F_a = job->F_a, F_r = job->F_r, j_bn = job->take_off->backlash.value;

    ts_workings_assumed(job->workings, "mu", mu, "1", SLIDES);
    ts_workings_assumed(job->workings, "alpha_s", alpha_s, "rad", "20 degrees; ISO 53");
    const double F_slide = TS_FLOAT_STEP(
        job, spur_slide_formula, 2.0 * mu * T_1 / (d_s * cos(alpha_s)), mu, T_1, d_s, alpha_s);

    option->F_a    = TS_FLOAT_STEP(job, thrust_formula, F_a + F_slide, F_a, F_slide);
    option->F_r    = TS_FLOAT_STEP(job, across_formula, F_r + 2.0 * T_1 / (d_s * cos(alpha_s)), F_r,
                                   T_1, d_s, alpha_s);
    option->r_stop = (double)NAN;
    if (job->played)
        option->r_stop =
            TS_FLOAT_STEP(job, play_formula, j_bn / (2.0 * sin(alpha_s)), j_bn, alpha_s);
}

void ts_float_spur(ts_float_job *job, ts_float_option *option)
{
    const double still[2] = {0.0, 0.0};
    const double d_s = job->turn->bevel.d_e1, m_n = job->turn->bevel.m_mn;

    ts_float_bevel(job, option, still, 0.0);
    ts_float_note_loads(job);
    const double b_s = spur_face(job, d_s, m_n);

    spur_limits(job, option, b_s);
    spur_loads(job, option, d_s);
    const double wide    = option->slide[1] - option->slide[0];
    const double m_shaft = ts_float_shaft_mass(job), m_bearings = ts_float_bearing_mass(job);
    const double m_spurs =
        ts_float_ring(job, &ring_formula, d_s, d_s - 2.0 * (1.25 + RIM) * m_n, 2.0 * b_s + wide);

    option->m      = TS_FLOAT_STEP(job, spur_formula, m_shaft + m_bearings + m_spurs, m_shaft,
                                   m_bearings, m_spurs);
    option->parts  = 5; /* two spurs, shaft, two bearings */
    option->meshes = 1;
}
