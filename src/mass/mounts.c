/* mass/mounts.c: what do the three mounts of a box bear under its weight?
 *
 * Scheme    Mount 1 holds in all directions, mount 2 across the line to mount 1, mount 3 across the
 *           plane of all three: six unknowns, so nothing is strained when the casing grows.
 * Axes      e along the line from 1 to 2, n normal to the plane of the three, f = n x e.
 * Loads     Weight, under the load factors one by one; and weight at rest with the torque that the
 *           tube of the radial shaft brings into the box.  Accessories are bolted to it: what their
 *           drives take their housings give back, and so do bearings and meshes, so that this
 * torque about the radial shaft's axis is all that is left in steady running.
 */
#include "mass/mass_parts.h"

#include "motion/value_note.h"

#include <math.h>

#define G_N     9.80665 /* m/s2, standard acceleration of free fall, ISO 80000-3 */
#define STATICS "derived: equilibrium of forces and of moments about mount 1"

static const ts_formula weight_formula     = {"G", "weight of the box with its accessories", "N",
                                              "m_box*g_n", "derived: mass times gravity"};
static const ts_formula moment_formulas[3] = {
    {"M_e", "moment of the weight about mount 1, along the line to mount 2", "N.m",
     "G*(s_z*e_x - s_x*e_z)", STATICS},
    {"M_f", "the same, across that line in the plane of the mounts", "N.m", "G*(s_z*f_x - s_x*f_z)",
     STATICS},
    {"M_n", "the same, across that plane", "N.m", "G*(s_z*n_x - s_x*n_z)", STATICS},
};
static const ts_formula force_formulas[3] = {
    {"R_3n", "force of mount 3 on the box, across the plane of the mounts", "N", "-M_e/q", STATICS},
    {"R_2f", "force of mount 2 on the box, in that plane", "N", "-M_n/L", STATICS},
    {"R_2n", "force of mount 2 on the box, across that plane", "N", "(M_f - R_3n*p)/L", STATICS},
};
static const ts_formula resultant_formulas[3] = {
    {"R_mount1", "load of mount 1 under the weight of the box", "N",
     "sqrt(R_1x^2 + R_1y^2 + R_1z^2)", STATICS},
    {"R_mount2", "load of mount 2 under the weight of the box", "N", "sqrt(R_2f^2 + R_2n^2)",
     STATICS},
    {"R_mount3", "load of mount 3 under the weight of the box", "N", "abs(R_3n)", STATICS},
};
static const ts_formula worst_formulas[3] = {
    {"R_worst1", "greatest load of mount 1 under the load factors", "N", "n_g*R_g1",
     "derived: linear in the load"},
    {"R_worst2", "greatest load of mount 2 under the load factors", "N", "n_g*R_g2",
     "derived: linear in the load"},
    {"R_worst3", "greatest load of mount 3 under the load factors", "N", "n_g*R_g3",
     "derived: linear in the load"},
};

static const ts_formula torque_formulas[3] = {
    {"M_et", "moment of the radial shaft's torque along the line to mount 2", "N.m",
     "way*T*(a_x*e_x + a_y*e_y + a_z*e_z)", STATICS},
    {"M_ft", "the same, across that line in the plane of the mounts", "N.m",
     "way*T*(a_x*f_x + a_y*f_y + a_z*f_z)", STATICS},
    {"M_nt", "the same, across that plane", "N.m", "way*T*(a_x*n_x + a_y*n_y + a_z*n_z)", STATICS},
};
static const ts_formula running_formulas[3] = {
    {"R_3n", "force of mount 3 on the box, across the plane of the mounts", "N", "-(M_e + M_et)/q",
     STATICS},
    {"R_2f", "force of mount 2 on the box, in that plane", "N", "-(M_n + M_nt)/L", STATICS},
    {"R_2n", "force of mount 2 on the box, across that plane", "N", "(M_f + M_ft - R_3n*p)/L",
     STATICS},
};
static const ts_formula run_formulas[3] = {
    {"R_run1", "load of mount 1 under weight and torque", "N", "sqrt(R_1x^2 + R_1y^2 + R_1z^2)",
     STATICS},
    {"R_run2", "load of mount 2 under weight and torque", "N", "sqrt(R_2f^2 + R_2n^2)", STATICS},
    {"R_run3", "load of mount 3 under weight and torque", "N", "abs(R_3n)", STATICS},
};

double ts_overhung_moment(const ts_accessory *accessory)
{
    if (!ts_measure_known(accessory->mass) || !ts_measure_known(accessory->overhang))
        return (double)NAN;
    return accessory->mass.value * G_N * accessory->overhang.value;
}

/* ---- vectors ----------------------------------------------------------------------------------
 */

typedef struct vector {
    double x, y, z;
} vector;

static vector less(vector a, vector b)
{
    return (vector){a.x - b.x, a.y - b.y, a.z - b.z};
}

static vector times(vector a, double by)
{
    return (vector){a.x * by, a.y * by, a.z * by};
}

static vector plus(vector a, vector b)
{
    return (vector){a.x + b.x, a.y + b.y, a.z + b.z};
}

static double dot(vector a, vector b)
{
    return a.x * b.x + a.y * b.y + a.z * b.z;
}

static vector cross(vector a, vector b)
{
    return (vector){a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}

static double length(vector a)
{
    return sqrt(dot(a, a));
}

/* ---- the frame of the mounts ------------------------------------------------------------------
 */

typedef struct frame {
    vector at[3];
    vector e, f, n;
    double L, p, q; /* mount 2 at L e; mount 3 at p e + q f, from mount 1 */
} frame;

/* False when the three stand in one line. */
static bool make_frame(frame *it)
{
    const vector two = less(it->at[1], it->at[0]), three = less(it->at[2], it->at[0]);
    const vector across = cross(two, three);

    it->L = length(two);
    if (!(it->L > 1e-6) || !(length(across) > 1e-6 * it->L * length(three)))
        return false;
    it->e = times(two, 1.0 / it->L);
    it->n = times(across, 1.0 / length(across));
    it->f = cross(it->n, it->e);
    it->p = dot(three, it->e);
    it->q = dot(three, it->f);
    return true;
}

typedef struct answers {
    vector R[3];
    double R_3n, R_2f, R_2n;
    double M_e, M_f, M_n;
} answers;

/* What the mounts answer to a force on the centre of mass, s from mount 1, and to a couple. */
static answers answer_to(const frame *it, vector force, vector s, vector couple)
{
    const vector M = plus(cross(s, force), couple);
    answers      out;

    out.M_e  = dot(M, it->e);
    out.M_f  = dot(M, it->f);
    out.M_n  = dot(M, it->n);
    out.R_3n = -out.M_e / it->q;
    out.R_2f = -out.M_n / it->L;
    out.R_2n = (out.M_f - out.R_3n * it->p) / it->L;
    out.R[2] = times(it->n, out.R_3n);
    out.R[1] = plus(times(it->f, out.R_2f), times(it->n, out.R_2n));
    out.R[0] = times(plus(force, plus(out.R[1], out.R[2])), -1.0);
    return out;
}

/* ---- where they stand -------------------------------------------------------------------------
 */

static vector polar(double radius, double clock, double z)
{
    return (vector){radius * sin(clock), radius * cos(clock), z};
}

static void given_places(const ts_mass_job *job, uint32_t d, frame *it)
{
    const ts_box *box     = &job->drive->drive[d].box;
    const double  station = job->drive->drive[d].tower_shaft.station.value;

    for (int i = 0; i < 3; i++) {
        const ts_mount *mount = &box->mounts[i];
        it->at[i] = polar(mount->radius.value, mount->clock.value, station + mount->aft.value);
    }
}

/* Two at the ends of the front face, one behind the input. */
static bool assumed_places(const ts_mass_job *job, uint32_t d, frame *it)
{
    const ts_box *box = &job->drive->drive[d].box;
    const double  R = box->arc.radius.value, half = box->depth.value / 2.0;
    const double  z     = job->drive->drive[d].tower_shaft.station.value;
    double        first = INFINITY, last = -INFINITY, input = NAN;

    for (uint32_t s = 0; s < job->train->shaft_count; s++) {
        const ts_shaft        *shaft = &job->train->shafts[s];
        const ts_shaft_motion *at    = &job->motion->shafts[s];
        const double           r     = job->mass->shape[s].r_tip;
        if (shaft->kind != TS_SHAFT_BOX || shaft->drive != d || !at->placed)
            continue;
        const double away = asin(fmin(1.0, (isnan(r) ? 0.05 * R : r) / R));
        first             = fmin(first, at->clock - away);
        last              = fmax(last, at->clock + away);
        input             = isnan(input) ? at->clock : input;
    }
    if (!ts_measure_known(box->arc.radius) || !ts_measure_known(box->depth) || isnan(input))
        return false;
    it->at[0] = polar(R, first, z - half);
    it->at[1] = polar(R, last, z - half);
    it->at[2] = polar(R, input, z + half);
    return true;
}

/* ---- loads ------------------------------------------------------------------------------------
 */

static const vector ways[TS_SHAKES] = {
    [TS_SHAKE_DOWN] = {0, -1, 0},    [TS_SHAKE_UP] = {0, 1, 0},    [TS_SHAKE_FORWARD] = {0, 0, -1},
    [TS_SHAKE_REARWARD] = {0, 0, 1}, [TS_SHAKE_LEFT] = {-1, 0, 0}, [TS_SHAKE_RIGHT] = {1, 0, 0},
};

static ts_measure factor_of(const ts_weighing *mass, ts_shake shake)
{
    const ts_measure all[TS_SHAKES] = {mass->down,     mass->up,       mass->forward,
                                       mass->rearward, mass->sideward, mass->sideward};
    return all[shake];
}

static const char *const factor_keys[TS_SHAKES] = {"down",     "up",       "forward",
                                                   "rearward", "sideward", "sideward"};

static void note_point(ts_workings *workings, const char *const *names, vector v, const char *unit,
                       const char *why)
{
    ts_workings_assumed(workings, names[0], v.x, unit, why);
    ts_workings_assumed(workings, names[1], v.y, unit, why);
    ts_workings_assumed(workings, names[2], v.z, unit, why);
}

static void note_weight(const ts_mass_job *job, uint32_t d, const frame *it, vector s,
                        const answers *found)
{
    static const char *const
               e_names[3] = {"e_x", "e_y", "e_z"},
        *const f_names[3] = {"f_x", "f_y", "f_z"}, *const n_names[3] = {"n_x", "n_y", "n_z"},
        *const s_names[3] = {"s_x", "s_y", "s_z"}, *const R_names[3] = {"R_1x", "R_1y", "R_1z"};
    ts_workings *const w     = job->workings;
    const double       m_box = job->mass->boxes[d].installed.value, g_n = G_N, G = m_box * G_N;
    const double       s_x = s.x, s_z = s.z, e_x = it->e.x, e_z = it->e.z, f_x = it->f.x;
    const double       f_z = it->f.z, n_x = it->n.x, n_z = it->n.z, L = it->L, p = it->p, q = it->q;
    const double       M_e = found->M_e, M_f = found->M_f, M_n = found->M_n;
    const double       R_3n = found->R_3n, R_2f = found->R_2f, R_2n = found->R_2n;
    const double       R_1x = found->R[0].x, R_1y = found->R[0].y, R_1z = found->R[0].z;
    const char        *given = job->mass->boxes[d].mounts_assumed
                                   ? "mounts at the ends of the front face and behind the input; the file "
                                     "says none"
                                   : "from the mounts of the file";

    note_point(w, e_names, it->e, "1", given);
    note_point(w, f_names, it->f, "1", given);
    note_point(w, n_names, it->n, "1", given);
    note_point(w, s_names, s, "m", "the centre of mass of the box, from mount 1");
    ts_workings_assumed(w, "L", L, "m", given);
    ts_workings_assumed(w, "p", p, "m", given);
    ts_workings_assumed(w, "q", q, "m", given);
    ts_workings_assumed(w, "g_n", g_n, "m/s2", "standard acceleration of free fall, ISO 80000-3");
    (void)TS_STEP(w, weight_formula, G, m_box, g_n);
    (void)TS_STEP(w, moment_formulas[0], M_e, G, s_z, e_x, s_x, e_z);
    (void)TS_STEP(w, moment_formulas[1], M_f, G, s_z, f_x, s_x, f_z);
    (void)TS_STEP(w, moment_formulas[2], M_n, G, s_z, n_x, s_x, n_z);
    (void)TS_STEP(w, force_formulas[0], R_3n, M_e, q);
    (void)TS_STEP(w, force_formulas[1], R_2f, M_n, L);
    (void)TS_STEP(w, force_formulas[2], R_2n, M_f, R_3n, p, L);
    note_point(w, R_names, found->R[0], "N", "what is left of the weight for mount 1");
    (void)TS_STEP(w, resultant_formulas[0], length(found->R[0]), R_1x, R_1y, R_1z);
    (void)TS_STEP(w, resultant_formulas[1], length(found->R[1]), R_2f, R_2n);
    (void)TS_STEP(w, resultant_formulas[2], length(found->R[2]), R_3n);
}

static void find_worst(const ts_mass_job *job, uint32_t d, const frame *it, vector s)
{
    static const char *const names[3] = {"R_g1", "R_g2", "R_g3"};
    ts_box_mass             *box      = &job->mass->boxes[d];
    const double             G        = box->installed.value * G_N;
    double                   alone[3] = {0.0, 0.0, 0.0};

    for (int shake = 0; shake < TS_SHAKES; shake++) {
        const ts_measure factor = factor_of(&job->drive->mass, (ts_shake)shake);
        const answers    found  = answer_to(it, times(ways[shake], G), s, (vector){0.0, 0.0, 0.0});
        for (int i = 0; i < 3 && ts_measure_known(factor); i++) {
            const double R = length(found.R[i]);
            if (!(factor.value * R > box->mounts[i].most))
                continue;
            alone[i]             = R;
            box->mounts[i].most  = factor.value * R;
            box->mounts[i].shake = (ts_shake)shake;
        }
    }
    for (int i = 0; i < 3 && job->workings != NULL && box->mounts[i].most > 0.0; i++) {
        const ts_shake   shake     = box->mounts[i].shake;
        const ts_measure factor    = factor_of(&job->drive->mass, shake);
        ts_input         inputs[2] = {{"n_g", factor.value}, {names[i], alone[i]}};
        TS_NOTE_MEASURE(job->workings, job->drive, "n_g", factor, "1", factor_keys[shake]);
        ts_workings_row(job->workings, names[i], alone[i], "N",
                        "derived: load of the mount when the weight of the box acts that way");
        ts_step_list(job->workings, &worst_formulas[i], box->mounts[i].most, inputs, 2);
    }
}

/* ---- with the torque of the radial shaft ------------------------------------------------------
 */

/* Outwards along the radial shaft, and the way in which it turns about that. */
static vector tower_axis(const ts_mass_job *job, uint32_t tower, double *way)
{
    const ts_mesh        *record = &job->train->meshes[job->train->shafts[tower].mesh];
    const ts_mesh_motion *mesh   = &job->motion->meshes[job->train->shafts[tower].mesh];
    const double          Sigma = mesh->bevel.in.Sigma, sine = sin(Sigma);
    const double          side  = record->bevels->side.value == TS_REAR ? 1.0 : -1.0;
    const int             sense = job->motion->shafts[tower].sense;

    *way = sense == 0 ? (double)NAN : (double)sense;
    return (vector){sine * mesh->e[0], sine * mesh->e[1], side * cos(Sigma)};
}

static void note_running(const ts_mass_job *job, uint32_t d, const frame *it, uint32_t tower,
                         int32_t condition, const answers *still, const answers *found)
{
    static const char *const
               e_names[3] = {"e_x", "e_y", "e_z"},
        *const f_names[3] = {"f_x", "f_y", "f_z"}, *const n_names[3] = {"n_x", "n_y", "n_z"},
        *const a_names[3] = {"a_x", "a_y", "a_z"}, *const R_names[3] = {"R_1x", "R_1y", "R_1z"};
    ts_workings *const w    = job->workings;
    const uint32_t     mesh = job->train->shafts[tower].mesh;
    const ts_node      box  = job->drive->drive[d].box.node;
    const ts_subject   rest = {box, TS_EVERY_CONDITION};
    double             way;
    const vector       a = tower_axis(job, tower, &way);
    const double       T = job->power->mesh[(size_t)condition * job->train->mesh_count + mesh].T[1];
    const double       a_x = a.x, a_y = a.y, a_z = a.z, e_x = it->e.x, e_y = it->e.y, e_z = it->e.z;
    const double       f_x = it->f.x, f_y = it->f.y, f_z = it->f.z, n_x = it->n.x, n_y = it->n.y;
    const double       n_z = it->n.z, L = it->L, p = it->p, q = it->q;
    const double       M_e = still->M_e, M_f = still->M_f, M_n = still->M_n;
    const double       M_et = found->M_e - M_e, M_ft = found->M_f - M_f, M_nt = found->M_n - M_n;
    const double       R_3n = found->R_3n, R_2f = found->R_2f, R_2n = found->R_2n;
    const double       R_1x = found->R[0].x, R_1y = found->R[0].y, R_1z = found->R[0].z;

    ts_workings_about(w, box, condition);
    ts_workings_borrow(w, "T", T, (ts_subject){job->train->meshes[mesh].node, condition}, "T_2");
    ts_workings_row(w, "way", way, "1", "sense of the radial shaft, seen along it outwards");
    note_point(w, a_names, a, "1", "outwards along the radial shaft");
    note_point(w, e_names, it->e, "1", "from mount 1 to mount 2");
    note_point(w, f_names, it->f, "1", "across that in the plane of the mounts");
    note_point(w, n_names, it->n, "1", "across that plane");
    (void)TS_STEP(w, torque_formulas[0], M_et, way, T, a_x, e_x, a_y, e_y, a_z, e_z);
    (void)TS_STEP(w, torque_formulas[1], M_ft, way, T, a_x, f_x, a_y, f_y, a_z, f_z);
    (void)TS_STEP(w, torque_formulas[2], M_nt, way, T, a_x, n_x, a_y, n_y, a_z, n_z);
    ts_workings_borrow(w, "M_e", M_e, rest, "M_e");
    ts_workings_borrow(w, "M_f", M_f, rest, "M_f");
    ts_workings_borrow(w, "M_n", M_n, rest, "M_n");
    ts_workings_row(w, "L", L, "m", "derived: by the places of the mounts");
    ts_workings_row(w, "p", p, "m", "derived: by the places of the mounts");
    ts_workings_row(w, "q", q, "m", "derived: by the places of the mounts");
    (void)TS_STEP(w, running_formulas[0], R_3n, M_e, M_et, q);
    (void)TS_STEP(w, running_formulas[1], R_2f, M_n, M_nt, L);
    (void)TS_STEP(w, running_formulas[2], R_2n, M_f, M_ft, R_3n, p, L);
    note_point(w, R_names, found->R[0], "N", "what is left of the weight for mount 1");
    (void)TS_STEP(w, run_formulas[0], length(found->R[0]), R_1x, R_1y, R_1z);
    (void)TS_STEP(w, run_formulas[1], length(found->R[1]), R_2f, R_2n);
    (void)TS_STEP(w, run_formulas[2], length(found->R[2]), R_3n);
}

/* The radial shaft of a box; TS_NOWHERE: there is none. */
static uint32_t tower_of(const ts_train *train, uint32_t d)
{
    for (uint32_t s = 0; s < train->shaft_count; s++)
        if (train->shafts[s].kind == TS_SHAFT_TOWER && train->shafts[s].drive == d)
            return s;
    return TS_NOWHERE;
}

static void run_under_torque(const ts_mass_job *job, uint32_t d, const frame *it, vector s,
                             const answers *still)
{
    ts_box_mass   *box   = &job->mass->boxes[d];
    const double   G     = box->installed.value * G_N;
    const uint32_t tower = tower_of(job->train, d);

    for (int i = 0; i < 3; i++) {
        box->mounts[i].run    = box->mounts[i].rest;
        box->mounts[i].run_at = TS_EVERY_CONDITION;
    }
    for (uint32_t c = 0; tower != TS_NOWHERE && c < job->drive->condition_count; c++) {
        double       way;
        const vector a = tower_axis(job, tower, &way);
        const double T =
            job->power->mesh[(size_t)c * job->train->mesh_count + job->train->shafts[tower].mesh]
                .T[1];
        const answers found = answer_to(it, (vector){0.0, -G, 0.0}, s, times(a, way * T));

        for (int i = 0; i < 3; i++) {
            const double R = length(found.R[i]);
            if (isnan(box->mounts[i].run) || R <= box->mounts[i].run)
                continue;
            box->mounts[i].run    = R;
            box->mounts[i].run_at = (int32_t)c;
        }
        if (job->workings != NULL && isfinite(length(found.R[0])))
            note_running(job, d, it, tower, (int32_t)c, still, &found);
    }
}

/* NULL: the loads can be found. */
static const char *missing_of(const ts_mass_job *job, uint32_t d, frame *it)
{
    ts_box_mass  *box    = &job->mass->boxes[d];
    const ts_box *record = &job->drive->drive[d].box;

    if (isnan(box->x + box->y + box->z) || !(box->installed.value > 0.0))
        return "the centre of mass of the box is not known";
    box->mounts_assumed = record->mount_count != 3;
    if (!box->mounts_assumed)
        given_places(job, d, it);
    else if (!assumed_places(job, d, it))
        return "radius or depth of the box is not known";
    return make_frame(it) ? NULL : "its mounts stand in one line";
}

void ts_mass_mounts(const ts_mass_job *job, uint32_t d)
{
    ts_box_mass *box = &job->mass->boxes[d];
    frame        it;

    box->missing = missing_of(job, d, &it);
    for (int i = 0; i < 3; i++)
        box->mounts[i] = (ts_mount_load){.x = (double)NAN, .y = (double)NAN, .z = (double)NAN};
    if (box->missing != NULL)
        return;
    const vector  s     = less((vector){box->x, box->y, box->z}, it.at[0]);
    const double  G     = box->installed.value * G_N;
    const answers found = answer_to(&it, (vector){0.0, -G, 0.0}, s, (vector){0.0, 0.0, 0.0});

    for (int i = 0; i < 3; i++)
        box->mounts[i] = (ts_mount_load){.x    = it.at[i].x,
                                         .y    = it.at[i].y,
                                         .z    = it.at[i].z,
                                         .R    = {found.R[i].x, found.R[i].y, found.R[i].z},
                                         .rest = length(found.R[i])};
    ts_workings_about(job->workings, job->drive->drive[d].box.node, TS_EVERY_CONDITION);
    if (job->workings != NULL)
        note_weight(job, d, &it, s, &found);
    find_worst(job, d, &it, s);
    run_under_torque(job, d, &it, s, &found);
}
