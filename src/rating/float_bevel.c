/* rating/float_bevel.c: what play, contact and face does a bevel keep that moves with its spool,
 * and how far may it move? */
#include "rating/float_parts.h"

#include "motion/value_note.h"

#include <math.h>

#define MOVED "derived: projections on the normal of the pitch cones and on the face"
#define WORST "derived: the sum of all that closes the teeth, each at its worst"

static const ts_formula c_in_formula   = {"c_in", "the most by which the teeth close", "m",
                                          "s_in*sin(delta_1) + r*cos(delta_1) + c_warm", MOVED};
static const ts_formula c_out_formula  = {"c_out", "the most by which they open", "m",
                                          "s_out*sin(delta_1) + r*cos(delta_1) - c_cool", MOVED};
static const ts_formula j_low_formula  = {"j_least", "least normal backlash, whatever moves", "m",
                                          "j_bn - t_j - 2*c_in*sin(alpha_n)", WORST};
static const ts_formula j_high_formula = {"j_most", "greatest normal backlash, whatever moves", "m",
                                          "j_bn + t_j + 2*c_out*sin(alpha_n)", WORST};
static const ts_formula dj_in_formula = {"dj_in", "backlash that the axial travel alone takes", "m",
                                         "2*s_in*sin(delta_1)*sin(alpha_n)", MOVED};
static const ts_formula dj_out_formula = {"dj_out", "backlash that it adds", "m",
                                          "2*s_out*sin(delta_1)*sin(alpha_n)", MOVED};
static const ts_formula out_formula    = {"e_out", "way of the teeth along the face, outwards", "m",
                                          "s_out*cos(delta_1) + r*sin(delta_1)", MOVED};
static const ts_formula in_formula     = {"e_in", "way of the teeth along the face, inwards", "m",
                                          "s_in*cos(delta_1) + r*sin(delta_1)", MOVED};
static const ts_formula left_formula = {"b_left", "least common face", "m", "b - max(e_in, e_out)",
                                        MOVED};
static const ts_formula eps_formula  = {
     "eps_least", "least transverse contact ratio of the virtual gears", "1",
     "max(0, (sqrt(r_va1^2 - r_vb1^2) + sqrt(r_va2^2 - r_vb2^2) - "
      "sqrt((a_v + c_out)^2 - (r_vb1 + r_vb2)^2))/p_vet)",
     "ISO 10300-1:2014, annex A, at the centre distance a_v + c_out"};

static const ts_formula bind_formula  = {"s_bind", "travel into mesh that takes all the backlash",
                                         "m",
                                         "((j_bn - t_j)/(2*sin(alpha_n)) - r*cos(delta_1) - "
                                          "c_warm)/sin(delta_1)",
                                         WORST};
static const ts_formula tip_formula   = {"s_tip", "travel into mesh at which tips meet roots", "m",
                                         "(c_tip - r*cos(delta_1) - c_warm)/sin(delta_1)", WORST};
static const ts_formula hands_formula = {
    "s_hands", "travel out of mesh at which only one pair of teeth is left", "m",
    "(sqrt((r_vb1 + r_vb2)^2 + (sqrt(r_va1^2 - r_vb1^2) + sqrt(r_va2^2 - r_vb2^2) - p_vet)^2) - "
    "a_v - r*cos(delta_1) + c_cool)/sin(delta_1)",
    "derived: eps_valpha = 1 of ISO 10300-1:2014, annex A, solved for the centre distance"};
static const ts_formula apart_formula = {
    "s_apart", "travel out of mesh at which nothing touches", "m",
    "(min(r_va1 + r_va2, sqrt((r_vb1 + r_vb2)^2 + (sqrt(r_va1^2 - r_vb1^2) + "
    "sqrt(r_va2^2 - r_vb2^2))^2)) - a_v - r*cos(delta_1) + c_cool)/sin(delta_1)",
    "derived: tips pass each other, or eps_valpha = 0"};
static const ts_formula edge_formula = {
    "s_edge", "travel at which the contact pattern reaches the end of the face", "m",
    "(b - b_veff - r*sin(delta_1))/cos(delta_1)", MOVED};

typedef struct ends {
    double s_in, s_out;
} ends;

static ends ends_of(const ts_float_job *job, const double s[2])
{
    const double forward = fmax(0.0, -s[0]), rearward = fmax(0.0, s[1]);

    return job->body > 0.0 ? (ends){forward, rearward} : (ends){rearward, forward};
}

static void note_inputs(ts_float_job *job, const ends *moved, double r)
{
    const ts_spool *spool = &job->drive->spools[job->drive->drive[job->item->drive].spool];
    const char     *own   = "in bearings of its own the bevel does not move with the spool";
    const bool      rides = moved->s_in > 0.0 || moved->s_out > 0.0 || r > 0.0;

    if (rides) {
        ts_workings_given(job->workings, "s_in", moved->s_in, "m", spool->axial_travel.node);
        ts_workings_given(job->workings, "s_out", moved->s_out, "m", spool->axial_travel.node);
        if (spool->radial_travel.standing == TS_GIVEN)
            ts_workings_given(job->workings, "r", r, "m", spool->radial_travel.node);
        else
            ts_workings_assumed(job->workings, "r", r, "m", "no radial travel is told");
    } else {
        ts_workings_assumed(job->workings, "s_in", 0.0, "m", own);
        ts_workings_assumed(job->workings, "s_out", 0.0, "m", own);
        ts_workings_assumed(job->workings, "r", 0.0, "m", own);
    }
    if (!job->played)
        return;
    TS_NOTE_MEASURE(job->workings, job->drive, "j_bn", job->take_off->backlash, "m", "backlash");
    TS_NOTE_MEASURE(job->workings, job->drive, "t_j", job->take_off->tolerance, "m",
                    "backlash tolerance");
}

static void borrow(ts_float_job *job, const char *symbol, double value, const char *theirs)
{
    ts_workings_borrow(job->workings, symbol, value,
                       (ts_subject){job->mesh->node, TS_EVERY_CONDITION}, theirs);
}

#define FROM_MESH "half of the diameter of the virtual gear of the bevels"

static void note_teeth(ts_float_job *job)
{
    const ts_bevel_seat *seat = &job->item->seat;

    borrow(job, "delta_1", job->turn->bevel.delta_1, "delta_1");
    borrow(job, "alpha_n", job->turn->bevel.in.alpha_n, "alpha_n");
    borrow(job, "b", job->turn->bevel.in.b, "b");
    borrow(job, "b_veff", job->turn->virt.b_veff, "b_veff");
    borrow(job, "a_v", seat->a_v, "a_v");
    borrow(job, "p_vet", seat->p_vet, "p_vet");
    ts_workings_assumed(job->workings, "r_va1", seat->r_a1, "m", FROM_MESH);
    ts_workings_assumed(job->workings, "r_va2", seat->r_a2, "m", FROM_MESH);
    ts_workings_assumed(job->workings, "r_vb1", seat->r_b1, "m", FROM_MESH);
    ts_workings_assumed(job->workings, "r_vb2", seat->r_b2, "m", FROM_MESH);
    borrow(job, "c_tip", job->turn->teeth.c, "c");
}

static void keep(ts_float_job *job, ts_float_option *option, const ends *moved, double r)
{
    const double delta_1 = job->turn->bevel.delta_1, alpha_n = job->turn->bevel.in.alpha_n;
    const double b = job->turn->bevel.in.b, j_bn = job->take_off->backlash.value;
    const double t_j = job->take_off->tolerance.value, s_in = moved->s_in, s_out = moved->s_out;
    const double c_warm = job->item->warm[1], c_cool = job->item->warm[0];
    const ts_bevel_seat *seat = &job->item->seat;
    const double r_va1 = seat->r_a1, r_va2 = seat->r_a2, r_vb1 = seat->r_b1, r_vb2 = seat->r_b2;
    const double a_v = seat->a_v, p_vet = seat->p_vet;
    const double c_in = TS_FLOAT_STEP(
        job, c_in_formula, ts_bevel_closing(s_in, r, delta_1) + c_warm, s_in, delta_1, r, c_warm);
    const double c_out =
        TS_FLOAT_STEP(job, c_out_formula, ts_bevel_closing(s_out, r, delta_1) - c_cool, s_out,
                      delta_1, r, c_cool);

    option->j[0] = option->j[1] = (double)NAN;
    if (job->played) {
        option->j[0] =
            TS_FLOAT_STEP(job, j_low_formula, j_bn - t_j - ts_bevel_play_taken(c_in, alpha_n), j_bn,
                          t_j, c_in, alpha_n);
        option->j[1] =
            TS_FLOAT_STEP(job, j_high_formula, j_bn + t_j + ts_bevel_play_taken(c_out, alpha_n),
                          j_bn, t_j, c_out, alpha_n);
    }
    option->dj[0] = -TS_FLOAT_STEP(
        job, dj_in_formula, ts_bevel_play_taken(ts_bevel_closing(s_in, 0.0, delta_1), alpha_n),
        s_in, delta_1, alpha_n);
    option->dj[1] = TS_FLOAT_STEP(
        job, dj_out_formula, ts_bevel_play_taken(ts_bevel_closing(s_out, 0.0, delta_1), alpha_n),
        s_out, delta_1, alpha_n);
    const double e_out =
        TS_FLOAT_STEP(job, out_formula, ts_bevel_along(s_out, r, delta_1), s_out, delta_1, r);
    const double e_in =
        TS_FLOAT_STEP(job, in_formula, ts_bevel_along(s_in, r, delta_1), s_in, delta_1, r);

    option->shift[0] = -e_in;
    option->shift[1] = e_out;
    option->b_left   = TS_FLOAT_STEP(job, left_formula, b - fmax(e_in, e_out), b, e_in, e_out);
    option->eps = TS_FLOAT_STEP(job, eps_formula, ts_bevel_moved_ratio(seat, -c_out), r_va1, r_vb1,
                                r_va2, r_vb2, a_v, c_out, p_vet);
}

typedef struct ways {
    double bind, tip, hands, apart, edge; /* m of travel; the ways of the bevel */
} ways;

static ways ways_of(ts_float_job *job, double r)
{
    const double         delta_1 = job->turn->bevel.delta_1, alpha_n = job->turn->bevel.in.alpha_n;
    const double         b = job->turn->bevel.in.b, b_veff = job->turn->virt.b_veff;
    const double         j_bn = job->take_off->backlash.value, t_j = job->take_off->tolerance.value;
    const double         c_warm = job->item->warm[1], c_cool = job->item->warm[0];
    const double         c_tip = job->turn->teeth.c;
    const ts_bevel_seat *seat  = &job->item->seat;
    const double r_va1 = seat->r_a1, r_va2 = seat->r_a2, r_vb1 = seat->r_b1, r_vb2 = seat->r_b2;
    const double a_v = seat->a_v, p_vet = seat->p_vet;
    const double across = r * cos(delta_1), sine = sin(delta_1);

    double bind = (double)NAN;

    if (job->played)
        bind =
            TS_FLOAT_STEP(job, bind_formula,
                          (ts_bevel_closing_of_play(j_bn - t_j, alpha_n) - across - c_warm) / sine,
                          j_bn, t_j, alpha_n, r, delta_1, c_warm);
    return (ways){
        .bind = bind,
        .tip  = TS_FLOAT_STEP(job, tip_formula, (c_tip - across - c_warm) / sine, c_tip, r, delta_1,
                              c_warm),
        .hands = TS_FLOAT_STEP(job, hands_formula,
                               (-ts_bevel_closing_of_one_pair(seat) - across + c_cool) / sine,
                               r_vb1, r_vb2, r_va1, r_va2, p_vet, a_v, r, delta_1, c_cool),
        .apart = TS_FLOAT_STEP(job, apart_formula,
                               (-ts_bevel_closing_apart(seat) - across + c_cool) / sine, r_va1,
                               r_va2, r_vb1, r_vb2, a_v, r, delta_1, c_cool),
        .edge  = TS_FLOAT_STEP(job, edge_formula, (b - b_veff - r * sin(delta_1)) / cos(delta_1), b,
                               b_veff, r, delta_1),
    };
}

static void stop(ts_float_option *option, int end, double way, ts_float_cause cause)
{
    const double at = fmax(0.0, way);

    if (isnan(way) || at >= fabs(option->stop[end]))
        return;
    option->stop[end]  = end == 0 ? -at : at;
    option->cause[end] = cause;
}

void ts_float_bevel(ts_float_job *job, ts_float_option *option, const double s[2], double r)
{
    const ends moved = ends_of(job, s);

    note_inputs(job, &moved, r);
    note_teeth(job);
    keep(job, option, &moved, r);
}

/* The rotor's bevel: everything stops at its teeth. */
void ts_float_fixed(ts_float_job *job, ts_float_option *option)
{
    const int in = job->body > 0.0 ? 0 : 1, out = 1 - in;

    ts_float_bevel(job, option, job->item->s, job->item->r);
    const ends   moved   = ends_of(job, job->item->s);
    const ways   way     = ways_of(job, job->item->r);
    const double delta_1 = job->turn->bevel.delta_1;

    stop(option, in, way.bind, TS_FLOAT_BINDS);
    stop(option, in, way.tip, TS_FLOAT_TIPS);
    stop(option, in, way.edge, TS_FLOAT_EDGE);
    stop(option, out, way.hands, TS_FLOAT_HANDS);
    stop(option, out, way.edge, TS_FLOAT_EDGE);
    option->apart[out] = out == 0 ? -fmax(0.0, way.apart) : fmax(0.0, way.apart);
    const double r     = job->item->r;
    const double into  = (fmin(way.bind, way.tip) - moved.s_in) * sin(delta_1) / cos(delta_1) + r;
    const double away  = (way.hands - moved.s_out) * sin(delta_1) / cos(delta_1) + r;
    const double edge =
        (way.edge - fmax(moved.s_in, moved.s_out)) * cos(delta_1) / sin(delta_1) + r;

    option->r_stop = fmax(0.0, fmin(edge, fmin(into, away)));
    ts_float_note_loads(job);
    ts_workings_assumed(job->workings, "m_more", 0.0, "kg", "the others are held against it");
    option->F_a = job->F_a;
    option->F_r = job->F_r;
}
