/* What do inertia, sections and mesh stiffness of a study make of its torsion? */
#include "study/twisting.h"

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

ts_status ts_study_twist(const ts_study *study, ts_arena *arena, ts_twist_answer *out)
{
    ts_drive_twist *items  = TS_TAKE(arena, ts_drive_twist, 2 * study->drive.drive_count);
    double         *mesh_k = TS_TAKE(arena, double, study->train.mesh_count);
    if (items == NULL || mesh_k == NULL)
        return TS_NO_MEMORY;
    for (uint32_t m = 0; m < study->train.mesh_count; m++)
        mesh_k[m] = mesh_stiffness(study, m);
    *out = (ts_twist_answer){items, 0};
    for (uint32_t d = 0; d < study->drive.drive_count; d++)
        for (int cranked = 0; cranked < (ts_drive_twist_has_clutch(&study->mass, d) ? 2 : 1);
             cranked++) {
            const ts_twist_question question = {&study->drive, &study->mass, mesh_k, d,
                                                cranked == 1};
            const ts_status status = ts_drive_twist_solve(&question, arena, &items[out->count++]);
            if (status != TS_OK)
                return status;
        }
    return TS_OK;
}

ts_status ts_twist_write(ts_study *study, bool json, const ts_page_options *options, bool *computed,
                         const ts_sink *sink)
{
    *computed = false;
    if (!study->solved)
        return TS_NOT_UNDERSTOOD;
    ts_arena *arena = ts_arena_open(study->allocator);
    if (arena == NULL)
        return TS_NO_MEMORY;
    const ts_answer answer = ts_study_answer(study);
    ts_twist_answer twist;
    ts_buffer       out;
    ts_buffer_open(&out, study->allocator);
    ts_page   page   = ts_outlet_page(options, &out);
    ts_status status = ts_study_twist(study, arena, &twist);
    if (status == TS_OK && json)
        ts_twist_json(&twist, &answer, &out);
    else if (status == TS_OK)
        ts_twist_page(&twist, &answer, &page);
    if (status == TS_OK)
        status = ts_buffer_send(&out, sink);
    *computed = status == TS_OK;
    for (size_t i = 0; status == TS_OK && i < twist.count; i++)
        *computed =
            *computed && twist.items[i].missing == NULL && twist.items[i].fault == TS_TWIST_FINE;
    ts_buffer_close(&out);
    ts_arena_close(arena);
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
    const ts_mode_view none = {.frequency = (double)NAN, .strains = "", .moves = ""};
    ts_twist_answer    twist;
    if (!study->solved || ts_study_twist(study, study->arena, &twist) != TS_OK)
        return none;
    for (size_t i = 0; i < twist.count; i++) {
        const ts_spool_drive *drive = &study->drive.drive[twist.items[i].drive];
        if (twist.items[i].cranked == cranked &&
            strcmp(study->drive.spools[drive->spool].name, spool) == 0)
            return view_of(&twist.items[i], mode);
    }
    return none;
}
