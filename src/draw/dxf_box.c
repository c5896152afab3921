/* draw/dxf_box.c: which discs does the wall of a box go round? */
#include "draw/dxf_box.h"

#include "draw/dxf_wall.h"

ts_status ts_dxf_box(const ts_face *face, uint32_t d, double aside, ts_dxf *dxf)
{
    const ts_scene *scene = face->scene;
    const ts_train *train = scene->train;
    ts_wall_disc   *discs = TS_TAKE(scene->arena, ts_wall_disc, train->shaft_count);
    size_t         *disc  = TS_TAKE(scene->arena, size_t, train->shaft_count);
    size_t          count = 0;
    if (discs == NULL || disc == NULL)
        return TS_NO_MEMORY;
    for (uint32_t s = 0; s < train->shaft_count; s++) {
        if (!face->shafts[s].shown || train->shafts[s].drive != d)
            continue;
        const ts_shaft_motion *at   = &scene->motion->shafts[s];
        const uint32_t         m    = train->shafts[s].mesh;
        const uint32_t         from = m != TS_NOWHERE ? train->meshes[m].driver_shaft : s;
        const bool             near = face->shafts[from].shown;
        disc[s]                     = count;
        discs[count] =
            (ts_wall_disc){.at     = {aside + (face->front ? -at->x : at->x), at->y},
                           .r      = face->shafts[s].r_gear + TS_LOOK_FIGURE_BOX_WALL_MM * 1e-3,
                           .joined = near ? disc[from] : count};
        count++;
    }
    return ts_dxf_wall(dxf, TS_DXF_BOX, discs, count, scene->arena);
}
