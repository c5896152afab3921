/* search/tooth_width_says.c: what sets a width, in words? */
#include "search/tooth_width_says.h"

/* "crank, other flank: pitting of the pinion" */
static void add_failure(ts_buffer *out, const ts_width_scene *scene, const ts_gear_width *width)
{
    const ts_flank_life *life = &width->fails.life;

    if (life->condition >= 0) {
        const size_t at = (size_t)life->condition * scene->train->mesh_count + life->mesh;
        ts_buffer_print(out, "%s%s: ", scene->drive->conditions[life->condition].name,
                        scene->power->mesh[at].flow == TS_FLOW_INWARD ? ", other flank" : "");
    }
    ts_buffer_print(out, "%s of the %s", ts_rated_stress_says(width->fails.stress),
                    ts_mesh_side_says(scene->train, width->mesh, width->fails.gear));
}

void ts_width_says(ts_buffer *out, const ts_width_scene *scene, const ts_gear_width *width)
{
    const ts_train *train = scene->train;

    if (width->mesh == TS_NOWHERE) {
        ts_buffer_add(out, "kept");
        return;
    }
    const ts_mesh *mesh   = &train->meshes[width->mesh];
    const char    *driver = train->shafts[mesh->driver_shaft].name;
    const char    *driven = train->shafts[mesh->driven_shaft].name;
    if (width->need == TS_WIDTH_LEAST)
        ts_buffer_add(out, "least width");
    else if (width->need == TS_WIDTH_KEPT)
        ts_buffer_add(out, "greatest width");
    else
        add_failure(out, scene, width);
    if (mesh->driver == width->gear)
        ts_buffer_print(out, ", with %s", driven);
    else if (mesh->driven == width->gear)
        ts_buffer_print(out, ", with %s", driver);
    else
        ts_buffer_print(out, ", of %s with %s", driver, driven);
}
