/* solid/part_gear.c: what does a gear look like, as it is turned and with its teeth? */
#include "element/bevel_blank.h"
#include "solid/body_parts.h"

#include <math.h>

/* ---- cylindrical gears ----------------------------------------------------------------------
 */

/* A mesh of the gear whose geometry is known; gear 1 or 2 of it, or TS_GEAR_ALONE: none. */
static ts_gear_index mesh_of(const ts_scene_job *job, uint32_t gear, uint32_t *mesh)
{
    for (*mesh = 0; *mesh < job->train->mesh_count; (*mesh)++) {
        const ts_mesh *one = &job->train->meshes[*mesh];
        if (one->kind == TS_MESH_CYLINDRICAL && job->motion->meshes[*mesh].solved &&
            (one->driver == gear || one->driven == gear))
            return one->driver == gear ? TS_GEAR_1 : TS_GEAR_2;
    }
    return TS_GEAR_ALONE;
}

/* From the hole to the tips, round the rim and the web. */
static size_t blank_points(const ts_gear_blank *it, double r_a, double z, ts_section_point *out)
{
    const double half = 0.5 * it->b, web = 0.5 * it->b_s, r_R = it->r_f - it->s_R;
    size_t       count = 0;

    out[count++] = (ts_section_point){z - half, r_a};
    out[count++] = (ts_section_point){z + half, r_a};
    if (!ts_gear_blank_is_light(it)) {
        out[count++] = (ts_section_point){z + half, it->r_s};
        out[count++] = (ts_section_point){z - half, it->r_s};
        return count;
    }
    for (int side = 1; side >= -1; side -= 2) {
        const double edge[3] = {half, web, web}, r[3] = {r_R, r_R, it->r_s};
        for (int k = 0; k < 3; k++) {
            const int i  = side > 0 ? k : 2 - k;
            out[count++] = (ts_section_point){z + side * edge[i], r[i]};
        }
    }
    return count;
}

const char *ts_shape_gear(const ts_scene_job *job, const ts_mass_part *of, ts_part *part)
{
    uint32_t             g = 0, m = 0;
    ts_cylindrical_frame frame;
    ts_cylindrical_gear  one;
    ts_section_point     points[8];

    while (g < job->train->gear_count &&
           (job->train->gears[g].role == TS_GEAR_BEVEL || job->train->gears[g].node != of->node))
        g++;
    const ts_gear_index index = mesh_of(job, g, &m);
    if (of->missing != NULL || index == TS_GEAR_ALONE)
        return of->missing != NULL ? of->missing : "the geometry of its teeth";
    if (!job->motion->shafts[of->shaft].placed)
        return "its place";
    const ts_gear *gear = &job->train->gears[g];
    ts_cylindrical_pair_gear(&job->motion->meshes[m].pair, index, &frame, &one);
    const ts_gear_blank blank = ts_mass_gear_blank(job->mass, gear, 0.5 * one.d_f);
    const double        z = job->places[g].z, half = 0.5 * blank.b;
    part->gear = g;
    part->teeth =
        (ts_part_teeth){.phase  = job->places[g].phase,
                        .z_1    = z - half,
                        .z_2    = z + half,
                        .twist  = (double)gear->hand * frame.tan_beta * blank.b / (0.5 * one.d),
                        .r_root = 0.5 * one.d_f,
                        .r_tip  = 0.5 * one.d_a,
                        .z      = one.in.z};
    const ts_outline_fault fault =
        ts_tooth_outline(&frame, &one, job->chord_error, job->arena, &part->teeth.shape);
    if (fault != TS_OUTLINE_FINE) {
        part->teeth.shape.count = 0;
        part->teeth.fault       = ts_outline_fault_says(fault);
    }
    ts_place_along(job, part, 1.0);
    ts_keep_section(job, points, blank_points(&blank, 0.5 * one.d_a, z, points), part);
    return NULL;
}

/* ---- bevel gears ----------------------------------------------------------------------------- */

/* From the apex of the pitch cone along the axis: crowns, the outer roots, a flat back. */
static size_t crown_points(const ts_mesh_motion *turn, int gear, double r_s, ts_section_point *out)
{
    const double   delta = gear == 0 ? turn->bevel.delta_1 : turn->bevel.delta_2;
    const double   h_fe = turn->teeth.h_fe[gear], h_fi = turn->teeth.h_fi[gear];
    const double   t_fo = turn->bevel.R_e * cos(delta) + h_fe * sin(delta);
    const double   t_fi = turn->teeth.R_i * cos(delta) + h_fi * sin(delta);
    ts_bevel_blank blank;

    ts_bevel_blank_solve(&turn->bevel, &turn->teeth, &blank, NULL);
    out[0] = (ts_section_point){t_fi, 0.5 * blank.d_fi[gear]};
    out[1] = (ts_section_point){blank.t_xi[gear], 0.5 * blank.d_ai[gear]};
    out[2] = (ts_section_point){blank.t_xo[gear], 0.5 * blank.d_ae[gear]};
    out[3] = (ts_section_point){t_fo, 0.5 * blank.d_fe[gear]};
    out[4] = (ts_section_point){t_fo, r_s};
    out[5] = (ts_section_point){t_fi, r_s};
    return 6;
}

/* Where no teeth stand on the cones: the pitch cone between toe and heel. */
static size_t cone_points(const ts_bevel_pair *pair, int gear, double r_s, ts_section_point *out)
{
    const double delta = gear == 0 ? pair->delta_1 : pair->delta_2;
    const double heel = pair->R_e, toe = pair->R_e - pair->in.b;

    out[0] = (ts_section_point){toe * cos(delta), toe * sin(delta)};
    out[1] = (ts_section_point){heel * cos(delta), heel * sin(delta)};
    out[2] = (ts_section_point){heel * cos(delta), r_s};
    out[3] = (ts_section_point){toe * cos(delta), r_s};
    return 4;
}

static void place_bevel(const ts_scene_job *job, uint32_t m, int gear, ts_part *part)
{
    const ts_mesh         *mesh  = &job->train->meshes[m];
    const ts_shaft_motion *at    = &job->motion->shafts[part->shaft];
    const bool             front = mesh->bevels->side.value == TS_FRONT;

    if (job->train->shafts[part->shaft].kind != TS_SHAFT_TOWER)
        ts_place_along(job, part, front ? -1.0 : 1.0);
    else if (gear == 0) /* at its outer end, the gear towards the engine */
        ts_place_across(job, part, at->clock, at->radius, -1.0);
    else
        ts_place_across(job, part, at->clock, 0.0, 1.0);
}

const char *ts_shape_bevel(const ts_scene_job *job, const ts_mass_part *of, ts_part *part)
{
    uint32_t         m = 0;
    ts_section_point points[6];

    while (m < job->train->mesh_count &&
           (job->train->meshes[m].kind != TS_MESH_BEVEL || job->train->meshes[m].node != of->node))
        m++;
    if (of->missing != NULL || m == job->train->mesh_count)
        return of->missing != NULL ? of->missing : "the geometry of its cone";
    const ts_mesh_motion *turn  = &job->motion->meshes[m];
    const int             gear  = job->train->meshes[m].driver_shaft == of->shaft ? 0 : 1;
    const double          delta = gear == 0 ? turn->bevel.delta_1 : turn->bevel.delta_2;
    const double          toe   = (turn->bevel.R_e - turn->bevel.in.b) * sin(delta);
    const double          r_s   = ts_mass_bevel_bore(job->mass, job->train, of->shaft, toe);
    if (!job->motion->shafts[of->shaft].placed)
        return "its place";
    part->gear = gear == 0 ? job->train->meshes[m].driver : job->train->meshes[m].driven;
    place_bevel(job, m, gear, part);
    ts_keep_section(job, points,
                    turn->teeth_fault == NULL ? crown_points(turn, gear, r_s, points)
                                              : cone_points(&turn->bevel, gear, r_s, points),
                    part);
    return NULL;
}
