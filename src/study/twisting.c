/* What do inertia, sections and mesh stiffness of a study make of its torsion? */
#include "study/twisting.h"

#include "element/bevel_tolerance.h"
#include "element/tooth_tolerance.h"
#include "study/outlet.h"
#include "towershaft/twist.h"

#include <math.h>
#include <string.h>

/* N/m along the line of action; the stiffest of all conditions, for teeth under little load only
 * seem soft.  NaN: the mesh could not be rated. */
static double mesh_stiffness(const ts_study *study, uint32_t m)
{
    const ts_train *train = &study->train;
    const ts_mesh  *mesh  = &train->meshes[m];
    const double    b =
        fmin(train->gears[mesh->driver].face.value, train->gears[mesh->driven].face.value);
    double c_gamma = (double)NAN;
    for (size_t c = 0; c < study->drive.condition_count; c++) {
        const ts_bevels *bevels = &study->teeth.bevels;
        const bool       loaded = study->teeth.cases[c * train->mesh_count + m].loaded;
        double           here   = (double)NAN;
        if (loaded && mesh->kind == TS_MESH_BEVEL)
            here = bevels->cases[c * bevels->count + bevels->number[m]].rating.c_gamma;
        else if (loaded)
            here = study->teeth.cases[c * train->mesh_count + m].rating.c_gamma_alpha;
        if (here > 0.0 && isfinite(here))
            c_gamma = isnan(c_gamma) ? here : fmax(c_gamma, here);
    }
    return c_gamma * b;
}

/* ---- what shakes it ---------------------------------------------------------------------------
 */

/* Half of the tolerances on one pitch and on all of them, along the line of action. */
typedef struct mesh_errors {
    double *teeth; /* [mesh]            */
    double *turn;  /* [2 * mesh + side] */
} mesh_errors;

static void err_as_bevels(const ts_study *study, uint32_t m, const mesh_errors *out)
{
    const ts_bevel_pair *pair = &study->motion.meshes[m].bevel;
    const double         B    = (double)study->train.meshes[m].bevels->accuracy.value;
    /* Pitches are transverse, and so is the spring. */
    const double cosine = cos(atan(tan(pair->in.alpha_n) / cos(pair->in.beta_m)));
    double       pitch  = 0.0;

    for (int side = 0; side < 2; side++) {
        const double d_m = side == 0 ? pair->d_m1 : pair->d_m2;
        pitch            = fmax(pitch, ts_bevel_pitch_tolerance(d_m, pair->m_mn, B, side, NULL));
        out->turn[2 * m + (uint32_t)side] =
            ts_bevel_cumulative_tolerance(d_m, pair->m_mn, B, side, NULL) * cosine / 2.0;
    }
    out->teeth[m] = pitch * cosine / 2.0;
}

static void err_as_cylindrical(const ts_study *study, uint32_t m, const mesh_errors *out)
{
    const ts_mesh_motion *turn  = &study->motion.meshes[m];
    const ts_mesh        *mesh  = &study->train.meshes[m];
    double                pitch = 0.0, cosine = 1.0;

    for (int side = 0; side < 2; side++) {
        const ts_gear *gear         = &study->train.gears[side == 0 ? mesh->driver : mesh->driven];
        const ts_tolerance_input in = {.m_n   = gear->m_n.value,
                                       .d     = side == 0 ? turn->pair.d_1 : turn->pair.d_2,
                                       .b     = (double)NAN,
                                       .beta  = gear->beta.value,
                                       .class = (int)gear->system->accuracy.value};
        const ts_tooth_tolerance T  = ts_tooth_tolerance_2013(&in, NULL);
        cosine = cos(turn->pair.alpha_t); /* pitches are transverse, and so is the spring */
        pitch  = fmax(pitch, T.f_p);
        out->turn[2 * m + (uint32_t)side] = T.F_p * cosine / 2.0;
    }
    out->teeth[m] = pitch * cosine / 2.0;
}

static bool take_errors(const ts_study *study, ts_arena *arena, mesh_errors *out)
{
    const uint32_t count = study->train.mesh_count;

    *out = (mesh_errors){TS_TAKE(arena, double, count + 1), TS_TAKE(arena, double, 2 * count + 1)};
    if (out->teeth == NULL || out->turn == NULL)
        return false;
    for (uint32_t m = 0; m < count; m++) {
        out->teeth[m] = out->turn[2 * m] = out->turn[2 * m + 1] = (double)NAN;
        if (!study->motion.meshes[m].solved)
            continue;
        if (study->train.meshes[m].kind == TS_MESH_BEVEL)
            err_as_bevels(study, m, out);
        else
            err_as_cylindrical(study, m, out);
    }
    return true;
}

/* ---- all trees --------------------------------------------------------------------------------
 */

typedef struct trees {
    ts_drive_twist  *items;
    ts_drive_forced *forced;
    double          *mesh_k;
    mesh_errors      errors;
} trees;

static ts_status add_tree(const ts_study *study, ts_arena *arena, trees *all, size_t at,
                          const ts_twist_question *question)
{
    const ts_forced_question shaken = {&study->drive, &study->power, &all->items[at],
                                       all->errors.teeth, all->errors.turn};
    const ts_status          status = ts_drive_twist_solve(question, arena, &all->items[at]);

    return status == TS_OK ? ts_drive_force(&shaken, arena, &all->forced[at]) : status;
}

ts_status ts_study_twist(const ts_study *study, ts_arena *arena, ts_twist_answer *out)
{
    trees all = {.items  = TS_TAKE(arena, ts_drive_twist, 2 * study->drive.drive_count),
                 .forced = TS_TAKE(arena, ts_drive_forced, 2 * study->drive.drive_count),
                 .mesh_k = TS_TAKE(arena, double, study->train.mesh_count)};

    if (all.items == NULL || all.forced == NULL || all.mesh_k == NULL ||
        !take_errors(study, arena, &all.errors))
        return TS_NO_MEMORY;
    for (uint32_t m = 0; m < study->train.mesh_count; m++)
        all.mesh_k[m] = mesh_stiffness(study, m);
    *out = (ts_twist_answer){all.items, all.forced, 0};
    for (uint32_t d = 0; d < study->drive.drive_count; d++)
        for (int cranked = 0; cranked < (ts_drive_twist_has_clutch(&study->mass, d) ? 2 : 1);
             cranked++) {
            const ts_twist_question question = {&study->drive, &study->mass, all.mesh_k, d,
                                                cranked == 1};
            const ts_status         status = add_tree(study, arena, &all, out->count++, &question);
            if (status != TS_OK)
                return status;
        }
    return TS_OK;
}

typedef struct wish {
    bool json, computed;
} wish;

static ts_status tell(ts_telling *it, void *about)
{
    wish           *what = about;
    ts_twist_answer twist;
    const ts_status status = ts_study_twist(it->study, it->arena, &twist);

    if (status != TS_OK)
        return status;
    if (what->json)
        ts_twist_json(&twist, &it->answer, it->page.out);
    else
        ts_twist_page(&twist, &it->answer, &it->page);
    what->computed = true;
    for (size_t i = 0; i < twist.count; i++)
        what->computed = what->computed && twist.items[i].missing == NULL &&
                         twist.items[i].fault == TS_TWIST_FINE;
    return TS_OK;
}

ts_status ts_twist_write(ts_study *study, bool json, const ts_page_options *options, bool *computed,
                         const ts_sink *sink)
{
    wish            what   = {.json = json};
    const ts_status status = ts_outlet_tell(study, options, tell, &what, sink);

    *computed = status == TS_OK && what.computed;
    return status;
}

static ts_mode_view view_of(const ts_drive_twist *twist, size_t mode)
{
    const size_t  n = twist->model.body_count, m = twist->model.spring_count;
    ts_mode_view  view  = {.frequency = (double)NAN, .strains = "", .moves = ""};
    const double *shape = &twist->modes.shape[mode * n];
    double        most  = 0.0;
    if (twist->missing != NULL || mode >= twist->modes.count)
        return view;
    view.frequency = twist->modes.omega[mode] / 6.28318530717958647693;
    for (size_t i = 0; i < m; i++)
        if (twist->modes.strain[mode * m + i] > view.strain) {
            view.strain  = twist->modes.strain[mode * m + i];
            view.strains = twist->parts[twist->joints[i].from].name;
        }
    for (size_t i = 0; i < n; i++)
        if (fabs(shape[i] / twist->parts[i].ratio) > most) {
            most       = fabs(shape[i] / twist->parts[i].ratio);
            view.moves = twist->parts[i].name;
        }
    return view;
}

ts_mode_view ts_study_mode(ts_study *study, const char *spool, bool cranked, size_t mode)
{
    for (size_t i = 0; study->solved && i < study->twist.count; i++) {
        const ts_drive_twist *twist = &study->twist.items[i];
        const ts_spool_drive *drive = &study->drive.drive[twist->drive];
        if (twist->cranked == cranked && strcmp(study->drive.spools[drive->spool].name, spool) == 0)
            return view_of(twist, mode);
    }
    return (ts_mode_view){.frequency = (double)NAN, .strains = "", .moves = ""};
}
