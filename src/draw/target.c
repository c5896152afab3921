/* draw/target.c: which thing on the picture is a finding about? */
#include "draw/target.h"

bool ts_target_same(ts_target a, ts_target b)
{
    return a.kind == b.kind && a.index == b.index;
}

static ts_target pad_target(const ts_train *train, uint32_t p)
{
    return (ts_target){train->pads[p].shaft == TS_NOWHERE ? TS_TARGET_NONE : TS_TARGET_PAD, p};
}

static ts_target shaft_target(const ts_train *train, uint32_t s)
{
    static const ts_target_kind kinds[] = {[TS_SHAFT_SPOOL] = TS_TARGET_SPOOL,
                                           [TS_SHAFT_TOWER] = TS_TARGET_TOWER,
                                           [TS_SHAFT_BOX]   = TS_TARGET_SHAFT};
    return (ts_target){kinds[train->shafts[s].kind], s};
}

static ts_target in_train(const ts_train *train, ts_node node)
{
    for (uint32_t p = 0; p < train->pad_count; p++)
        if (train->pads[p].node == node)
            return pad_target(train, p);
    for (uint32_t s = 0; s < train->shaft_count; s++)
        if (train->shafts[s].node == node)
            return shaft_target(train, s);
    for (uint32_t g = 0; g < train->gear_count; g++)
        if (train->gears[g].node == node && train->gears[g].role == TS_GEAR_STEP)
            return shaft_target(train, train->gears[g].shaft);
    for (uint32_t m = 0; m < train->mesh_count; m++)
        if (train->meshes[m].node == node)
            return shaft_target(train, train->meshes[m].driven_shaft);
    return (ts_target){TS_TARGET_NONE, 0};
}

/* What stands for a whole box and for its place: the shaft through which power enters. */
static ts_target box_target(const ts_scene *scene, ts_node node)
{
    const ts_train *train = scene->train;
    for (uint32_t s = 0; s < train->shaft_count; s++) {
        const ts_shaft *shaft = &train->shafts[s];
        if (shaft->kind != TS_SHAFT_BOX || shaft->drive >= scene->drive->drive_count ||
            shaft->mesh == TS_NOWHERE || train->meshes[shaft->mesh].kind != TS_MESH_BEVEL)
            continue;
        const ts_box *box = &scene->drive->drive[shaft->drive].box;
        if (box->node == node || box->arc.node == node)
            return shaft_target(train, s);
    }
    return (ts_target){TS_TARGET_NONE, 0};
}

static ts_target in_drive(const ts_scene *scene, ts_node node)
{
    const ts_drive *drive = scene->drive;
    const ts_train *train = scene->train;
    for (uint32_t p = 0; p < train->pad_count; p++)
        if (train->pads[p].accessory >= 0 &&
            drive->accessories[train->pads[p].accessory].node == node)
            return pad_target(train, p);
    for (uint32_t i = 0; i < drive->engine.keep_out_count; i++)
        if (drive->engine.keep_out[i].node == node)
            return (ts_target){TS_TARGET_KEEP_OUT, i};
    for (uint32_t s = 0; s < train->shaft_count; s++) {
        const ts_shaft *shaft = &train->shafts[s];
        if (shaft->drive == TS_NOWHERE || shaft->drive >= drive->drive_count)
            continue;
        const ts_spool_drive *one = &drive->drive[shaft->drive];
        if (shaft->kind == TS_SHAFT_TOWER &&
            (one->tower_shaft.node == node || one->take_off.node == node))
            return shaft_target(train, s);
    }
    return box_target(scene, node);
}

static const ts_source *source_of(const ts_scene *scene)
{
    return scene->subject->source ? scene->subject->source : scene->drive->source;
}

ts_target ts_node_target(const ts_scene *scene, ts_node node)
{
    const ts_source *source = source_of(scene);
    while (node != 0) {
        ts_target found = in_train(scene->train, node);
        if (found.kind == TS_TARGET_NONE)
            found = in_drive(scene, node);
        if (found.kind != TS_TARGET_NONE)
            return found;
        if (!source || node > source->node_count + source->made_count)
            break;
        node = source->nodes[node].parent;
    }
    return (ts_target){TS_TARGET_NONE, 0};
}

ts_target ts_finding_target(const ts_scene *scene, const ts_finding *finding)
{
    return ts_node_target(scene, finding->node);
}

void ts_add_node_name(ts_buffer *out, const ts_scene *scene, ts_node node)
{
    const ts_target  target = ts_node_target(scene, node);
    const ts_source *source = source_of(scene);
    switch (target.kind) {
    case TS_TARGET_PAD:
        ts_buffer_add(out, scene->train->pads[target.index].name);
        return;
    case TS_TARGET_SPOOL:
    case TS_TARGET_TOWER:
        ts_buffer_add(out, scene->train->shafts[target.index].name);
        return;
    case TS_TARGET_SHAFT:
        ts_buffer_print(out, "%u ", scene->train->shafts[target.index].number);
        ts_buffer_add(out, scene->train->shafts[target.index].name);
        return;
    case TS_TARGET_KEEP_OUT:
    case TS_TARGET_NONE:
        break;
    }
    if (source && node != 0 && node <= source->node_count + source->made_count)
        ts_source_address(source, node, out);
}
