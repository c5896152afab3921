/* rating/line_load.c: with what forces and torques do meshes and pads work on a line? */
#include "rating/drive_lines_parts.h"

#include <math.h>

/* ---- frames ---------------------------------------------------------------------------------- */

static void set(double out[3], double x, double y, double z)
{
    out[0] = x;
    out[1] = y;
    out[2] = z;
}

static double dot(const double a[3], const double b[3])
{
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

static void cross(const double a[3], const double b[3], double out[3])
{
    set(out, a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]);
}

static double side_of(const ts_mesh *mesh)
{
    return mesh->bevels->side.value == TS_REAR ? 1.0 : -1.0;
}

/* Along the radial shaft (power/mesh_force.c), the way of the flanks at the spool, square to both.
 */
static void frame_tower(const ts_lines *lines, ts_line *line)
{
    const ts_train       *train = lines->motion->train;
    const uint32_t        m     = train->shafts[line->shaft].mesh;
    const ts_mesh_motion *mesh  = &lines->motion->meshes[m];
    const double          Sigma = mesh->bevel.in.Sigma, side = side_of(&train->meshes[m]);

    set(line->axis, sin(Sigma) * mesh->e[0], sin(Sigma) * mesh->e[1], side * cos(Sigma));
    set(line->across, mesh->tau[0], mesh->tau[1], 0.0);
    cross(line->axis, line->across, line->up);
}

static void frame(const ts_lines *lines, ts_line *line)
{
    const int sense = lines->motion->shafts[line->shaft].sense;

    line->sense = sense == 0 ? (double)NAN : (double)sense;
    if (line->kind == TS_LINE_BOX || line->kind == TS_LINE_STUB) {
        set(line->axis, 0.0, 0.0, 1.0);
        set(line->across, 1.0, 0.0, 0.0);
        set(line->up, 0.0, 1.0, 0.0);
        return;
    }
    frame_tower(lines, line);
}

/* ---- meshes ---------------------------------------------------------------------------------- */

/* From the axis of gear g (0 driver, 1 driven) of a mesh to where its teeth touch, m. */
static void to_contact(const ts_lines *lines, uint32_t m, int g, const ts_line *line, double out[3])
{
    const ts_train       *train = lines->motion->train;
    const ts_mesh_motion *mesh  = &lines->motion->meshes[m];
    const double          r     = g == 0 ? mesh->r_1 : mesh->r_2;

    if (line->kind == TS_LINE_BOX || line->kind == TS_LINE_STUB) {
        const double way = g == 0 ? r : -r;
        set(out, way * mesh->e[0], way * mesh->e[1], 0.0);
        return;
    }
    /* Towards the gear on the engine-parallel shaft: across the radial shaft, on the bevels' side.
     */
    const double z[3]  = {0.0, 0.0, side_of(&train->meshes[m])};
    const double along = dot(z, line->axis), length = sqrt(1.0 - along * along);
    for (int i = 0; i < 3; i++)
        out[i] = r * (z[i] - along * line->axis[i]) / length;
}

static void into_frame(const ts_line *line, const double v[3], double out[3])
{
    out[0] = dot(v, line->axis);
    out[1] = dot(v, line->across);
    out[2] = dot(v, line->up);
}

/* Square to the axis, but for rounding. */
void ts_line_arm(const ts_lines *lines, uint32_t m, int g, const ts_line *line, double r[3])
{
    double to[3];

    to_contact(lines, m, g, line, to);
    into_frame(line, to, r);
    r[0] = 0.0;
}

void ts_line_press(const ts_lines *lines, uint32_t m, int g, const ts_mesh_load *load,
                   ts_line_gear_load *out)
{
    const ts_mesh *mesh = &lines->motion->train->meshes[m];
    const ts_line *line = &lines->lines[lines->of_gear[g == 0 ? mesh->driver : mesh->driven]];
    double         r[3], F[3], M[3], force[3];

    for (int i = 0; i < 3; i++)
        force[i] = g == 0 ? -load->force[i] : load->force[i];
    ts_line_arm(lines, m, g, line, r);
    into_frame(line, force, F);
    cross(r, F, M);
    M[0] = line->sense * (g == 0 ? -load->T[0] : load->T[1]);
    for (int i = 0; i < 3; i++) {
        out->F[i] += F[i];
        out->M[i] += M[i];
    }
}

static void add_mesh(const ts_lines_case *c, uint32_t m, uint32_t condition, int g)
{
    const ts_mesh      *mesh = &c->train->meshes[m];
    const ts_mesh_load *load = &c->lines->power->mesh[(size_t)condition * c->train->mesh_count + m];
    const uint32_t      gear = g == 0 ? mesh->driver : mesh->driven;
    const uint32_t      number = c->lines->of_gear[gear];

    if (number == TS_NOWHERE || load->flow == TS_FLOW_NONE)
        return;
    ts_line_press(c->lines, m, g, load,
                  &ts_line_case_at(c, number, condition)->load[c->lines->seat_of[gear]]);
}

/* ---- ends ------------------------------------------------------------------------------------ */

static const ts_mesh_load *mesh_load(const ts_lines_case *c, uint32_t condition, uint32_t m)
{
    return &c->lines->power->mesh[(size_t)condition * c->train->mesh_count + m];
}

/* The mesh that a radial shaft drives. */
static uint32_t box_mesh(const ts_train *train, uint32_t tower)
{
    for (uint32_t m = 0; m < train->mesh_count; m++)
        if (train->meshes[m].driver_shaft == tower)
            return m;
    return TS_NOWHERE;
}

/* N.m that the radial shaft carries outwards. */
static double tower_torque(const ts_lines_case *c, const ts_line *line, uint32_t condition,
                           bool at_box)
{
    const uint32_t m =
        at_box ? box_mesh(c->train, line->shaft) : c->train->shafts[line->shaft].mesh;
    return m == TS_NOWHERE ? 0.0 : mesh_load(c, condition, m)->T[at_box ? 0 : 1];
}

static void end_torques(const ts_lines_case *c, const ts_line *line, uint32_t condition,
                        double pad[2])
{
    const ts_shaft *shaft = &c->train->shafts[line->shaft];

    pad[0] = pad[1] = 0.0;
    switch (line->kind) {
    case TS_LINE_STUB: {
        const uint32_t gear = line->gears[0].gear;
        for (uint32_t m = 0; m < c->train->mesh_count; m++)
            if (c->train->meshes[m].driver == gear)
                pad[0] = line->sense * mesh_load(c, condition, m)->T[0];
        return;
    }
    case TS_LINE_INNER:
        pad[1] = -line->sense * tower_torque(c, line, condition, true);
        return;
    case TS_LINE_TUBE:
        pad[0] = line->sense * tower_torque(c, line, condition, false);
        pad[1] = -line->sense * tower_torque(c, line, condition, true);
        return;
    case TS_LINE_OUTER:
        pad[0] = line->sense * tower_torque(c, line, condition, false);
        return;
    case TS_LINE_BOX:
        for (int face = 0; face < 2; face++)
            if (shaft->pad[face] != TS_NOWHERE)
                pad[face] =
                    -line->sense *
                    c->lines->power->pad[(size_t)condition * c->train->pad_count + shaft->pad[face]]
                        .T;
        return;
    }
}

static bool all_known(const ts_line *line, const ts_line_case *one)
{
    double sum = one->pad[0] + one->pad[1] + one->omega;

    for (int g = 0; g < line->gear_count; g++)
        for (int i = 0; i < 3; i++)
            sum += one->load[g].F[i] + one->load[g].M[i];
    return isfinite(sum);
}

void ts_lines_load(const ts_lines_case *c)
{
    for (uint32_t l = 0; l < c->lines->count; l++)
        frame(c->lines, &c->lines->lines[l]);
    for (uint32_t condition = 0; condition < c->drive->condition_count; condition++) {
        for (uint32_t l = 0; l < c->lines->count; l++)
            *ts_line_case_at(c, l, condition) = (ts_line_case){.known = false};
        for (uint32_t m = 0; m < c->train->mesh_count; m++) {
            add_mesh(c, m, condition, 0);
            add_mesh(c, m, condition, 1);
        }
        for (uint32_t l = 0; l < c->lines->count; l++) {
            const ts_line *line = &c->lines->lines[l];
            ts_line_case  *one  = ts_line_case_at(c, l, condition);

            end_torques(c, line, condition, one->pad);
            one->omega =
                c->lines->motion->speed[(size_t)condition * c->train->shaft_count + line->shaft];
            one->known = all_known(line, one);
        }
    }
}
