/* check/rule/mesh_solvable.c: can the two gears of every mesh run together at all? */
#include "check/visit.h"

static const char *unknown_of_gear(const ts_gear *gear)
{
    if (!ts_measure_known(gear->m_n))
        return "the module";
    if (!ts_measure_known(gear->alpha_n))
        return "the pressure angle";
    if (!ts_measure_known(gear->beta))
        return gear->system != NULL ? "the helix angle" : "the spiral angle";
    if (gear->system == NULL)
        return ts_measure_known(gear->face) ? NULL : "the face width";
    if (!ts_measure_known(gear->x))
        return "the profile shift";
    if (!ts_measure_known(gear->system->addendum) || !ts_measure_known(gear->system->dedendum) ||
        !ts_measure_known(gear->system->root_radius))
        return "the basic rack";
    return NULL;
}

static const char *unknown_of_mesh(const ts_check *check, const ts_mesh *mesh)
{
    const char *what = unknown_of_gear(&check->train->gears[mesh->driver]);
    if (what == NULL)
        what = unknown_of_gear(&check->train->gears[mesh->driven]);
    if (what == NULL && mesh->bevels != NULL && !ts_measure_known(mesh->bevels->shaft_angle))
        what = "the shaft angle";
    return what;
}

static void run(ts_check *check)
{
    for (uint32_t i = 0; i < check->train->mesh_count; i++) {
        const ts_mesh        *mesh    = &check->train->meshes[i];
        const ts_mesh_motion *motion  = &check->motion->meshes[i];
        const char           *unknown = motion->solved ? NULL : unknown_of_mesh(check, mesh);
        if (unknown != NULL) {
            ts_not_computable(check, mesh->node, TS_EVERY_CONDITION, "%s of %s", unknown,
                              ts_mesh_name(check, i));
            continue;
        }
        ts_finding *finding = ts_judge_fact(check, mesh->node, TS_EVERY_CONDITION, motion->solved);
        if (finding != NULL)
            ts_says(check, finding, "%s cannot run together: %s", ts_mesh_name(check, i),
                    motion->fault);
    }
    ts_skip(check, "the drive has no mesh");
}

const ts_rule ts_rule_mesh_solvable = {
    .id       = "C6-mesh-solvable",
    .title    = "Mesh geometry",
    .question = "Can the two gears of every mesh run together, and at which centre distance?",
    .why      = "Gears of two modules, pressure angles or helix angles do not mesh, and some "
                "profile shifts leave no centre distance at all. Whatever stands further out then "
                "has no place either.",
    .level    = TS_REFUSE,
    .source   = "ISO 21771:2007; for bevels ISO 23509:2016",
    .hint     = "give both gears the same module, pressure angle and helix angle, and shifts that "
                "leave a centre distance",
    .run      = run,
};
