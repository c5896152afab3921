/* draw/dxf_section.c: take-off, radial shaft and box input of every drive in section, in true size.
 *
 * The plane of the section holds the engine axis and the radial shaft: rearward to the right,
 * outward along the radial shaft upwards.  Bodies of revolution are cut through their axis, as
 * solid/bodies.h has them; one drive stands beside the other.
 */
#include "draw/dxf_view.h"
#include "solid/bodies.h"

#include <math.h>

#define CHORD_ERROR 1e-4 /* m; teeth of cylindrical gears are not shown */
#define BESIDE      0.1  /* m from one drive to the next                */
#define BEYOND      8e-3 /* m by which axes stand out                   */

typedef struct section {
    ts_scene        *scene;
    const ts_solids *solids;
    ts_dxf          *dxf;
    uint32_t         drive;
    double           e[2]; /* outward along the radial shaft, seen from behind */
    double           x;    /* where z = 0 of the engine stands on the drawing  */
} section;

/* z along and r from the axis of a part, into the plane. */
static ts_point seen(const section *it, const ts_part *part, double z, double r)
{
    const double out   = part->origin[0] * it->e[0] + part->origin[1] * it->e[1];
    const double a_out = part->axis[0] * it->e[0] + part->axis[1] * it->e[1];
    return (ts_point){it->x + part->origin[2] + z * part->axis[2] - r * a_out,
                      out + z * a_out + r * part->axis[2]};
}

static ts_dxf_layer layer_of(const ts_part *part)
{
    return part->kind == TS_SOLID_BEVEL   ? TS_DXF_BEVEL
           : part->kind == TS_SOLID_TOWER ? TS_DXF_TOWER
           : part->kind == TS_SOLID_GEAR  ? TS_DXF_TIP
                                          : TS_DXF_SHAFT;
}

/* Both halves of its section; the half is its own mirror image where it reaches the axis. */
static ts_status cut(const section *it, const ts_part *part)
{
    ts_point *points = TS_TAKE(it->scene->arena, ts_point, part->section_count);
    if (points == NULL)
        return TS_NO_MEMORY;
    for (int side = -1; side <= 1; side += 2) {
        for (size_t i = 0; i < part->section_count; i++)
            points[i] = seen(it, part, part->section[i].z, side * part->section[i].r);
        ts_dxf_path(it->dxf, layer_of(part), points, part->section_count, true);
    }
    for (int side = -1; side <= 1 && part->teeth.z != 0; side += 2) {
        const ts_gear *gear = &it->scene->train->gears[part->gear];
        const double r = 0.5 * gear->m_n.value / cos(gear->beta.value) * (double)gear->teeth.value;
        ts_dxf_line(it->dxf, TS_DXF_PITCH, seen(it, part, part->teeth.z_1 - 1.5e-3, side * r),
                    seen(it, part, part->teeth.z_2 + 1.5e-3, side * r));
    }
    return TS_OK;
}

/* The shaft that the radial shaft of this drive turns; TS_NOWHERE: none. */
static uint32_t input_of(const section *it)
{
    const ts_train *train = it->scene->train;
    for (uint32_t m = 0; m < train->mesh_count; m++)
        if (train->meshes[m].kind == TS_MESH_BEVEL &&
            train->shafts[train->meshes[m].driver_shaft].kind == TS_SHAFT_TOWER &&
            train->shafts[train->meshes[m].driven_shaft].drive == it->drive)
            return train->meshes[m].driven_shaft;
    return TS_NOWHERE;
}

static bool is_cut(const section *it, const ts_part *part)
{
    if (part->drive != it->drive || part->section_count == 0 || part->kind == TS_SOLID_BODY)
        return false;
    return part->kind == TS_SOLID_BEVEL || part->kind == TS_SOLID_TOWER ||
           part->shaft == input_of(it);
}

/* An axis, as far as its parts reach and a little beyond; then its name. */
static void axes(const section *it, double letters)
{
    for (size_t i = 0; i < it->solids->part_count; i++) {
        const ts_part *part = &it->solids->parts[i];
        double         low = INFINITY, high = -(double)INFINITY;
        if (!is_cut(it, part))
            continue;
        for (size_t k = 0; k < part->section_count; k++) {
            low  = fmin(low, part->section[k].z);
            high = fmax(high, part->section[k].z);
        }
        ts_dxf_line(it->dxf, TS_DXF_AXIS, seen(it, part, low - BEYOND, 0.0),
                    seen(it, part, high + BEYOND, 0.0));
        if (part->kind == TS_SOLID_TOWER || part->kind == TS_SOLID_SHAFT)
            ts_dxf_text(it->dxf, TS_DXF_WORDS, seen(it, part, high + 2.0 * BEYOND, 0.0), letters,
                        TS_DXF_LEFT, part->name != NULL ? part->name : "");
    }
}

/* From the one crossing of axes to the other. */
static void measure(const section *it, const ts_part *tower, double letters)
{
    const double x = it->dxf->right + 3.0 * letters, y = tower->section[0].z;
    double       high = y;
    ts_buffer   *text = ts_canvas_line(&it->scene->canvas);
    for (size_t k = 0; k < tower->section_count; k++)
        high = fmax(high, tower->section[k].z);
    ts_dxf_line(it->dxf, TS_DXF_SIZES, (ts_point){x, 0.0}, (ts_point){x, high});
    for (int end = 0; end < 2; end++)
        ts_dxf_line(it->dxf, TS_DXF_SIZES, (ts_point){x - letters, end * high},
                    (ts_point){x + letters, end * high});
    ts_add_value(text, it->scene, high, TS_KIND_LENGTH);
    ts_dxf_text(it->dxf, TS_DXF_SIZES, (ts_point){x + letters, 0.5 * high}, letters, TS_DXF_LEFT,
                text->bytes);
}

static const ts_part *tower_of(const ts_solids *solids, uint32_t drive)
{
    for (size_t i = 0; i < solids->part_count; i++)
        if (solids->parts[i].kind == TS_SOLID_TOWER && solids->parts[i].drive == drive)
            return &solids->parts[i];
    return NULL;
}

static ts_status one_drive(section *it)
{
    const ts_part *tower  = tower_of(it->solids, it->drive);
    double         first  = INFINITY;
    ts_status      status = TS_OK;
    if (tower == NULL)
        return TS_OK;
    it->e[0] = tower->axis[0];
    it->e[1] = tower->axis[1];
    for (size_t i = 0; i < it->solids->part_count; i++) {
        const ts_part *part = &it->solids->parts[i];
        for (size_t k = 0; k < part->section_count && is_cut(it, part); k++)
            for (int side = -1; side <= 1; side += 2)
                first =
                    fmin(first, seen(it, part, part->section[k].z, side * part->section[k].r).x);
    }
    it->x += (isfinite(it->dxf->right) ? it->dxf->right + BESIDE : 0.0) - first;
    for (size_t i = 0; status == TS_OK && i < it->solids->part_count; i++)
        if (is_cut(it, &it->solids->parts[i]))
            status = cut(it, &it->solids->parts[i]);
    const double letters = ts_dxf_letters(it->dxf);
    axes(it, letters);
    measure(it, tower, letters);
    return status;
}

ts_status ts_dxf_sections(ts_scene *scene, ts_dxf *dxf)
{
    ts_solids solids;
    if (scene->subject->mass == NULL)
        return TS_NOT_UNDERSTOOD;
    ts_status status =
        ts_solids_of(scene->drive, scene->subject->mass, CHORD_ERROR, scene->arena, &solids);
    for (uint32_t d = 0; status == TS_OK && d < scene->drive->drive_count; d++)
        status = one_drive(&(section){.scene = scene, .solids = &solids, .dxf = dxf, .drive = d});
    return status;
}
