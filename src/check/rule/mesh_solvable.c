/* check/rule/mesh_solvable.c: can the two gears of every mesh run together at all? */
#include "check/nearest_bevel.h"
#include "check/nearest_pair.h"
#include "check/visit.h"

static const double pi = 3.14159265358979323846;

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

/* "the module 1.5 mm of fuel pump, or 2 mm of breather" */
static const char *of_either(ts_check *check, const ts_mesh *mesh, const char *what, double first,
                             double second, ts_kind kind)
{
    return ts_phrase(check, "give both the %s %s of %s, or %s of %s", what,
                     ts_shown(check, first, kind), ts_gear_name(check, mesh->driver),
                     ts_shown(check, second, kind), ts_gear_name(check, mesh->driven));
}

/* What two gears must share, and do not; NULL: nothing of the kind. */
static const char *shared(ts_check *check, const ts_mesh *mesh)
{
    const ts_gear *a = &check->train->gears[mesh->driver];
    const ts_gear *b = &check->train->gears[mesh->driven];

    if (fabs(a->m_n.value - b->m_n.value) > 0.0)
        return of_either(check, mesh, "module", a->m_n.value, b->m_n.value, TS_KIND_LENGTH);
    if (fabs(a->alpha_n.value - b->alpha_n.value) > 0.0)
        return of_either(check, mesh, "pressure angle", a->alpha_n.value, b->alpha_n.value,
                         TS_KIND_ANGLE);
    if (fabs(a->beta.value - b->beta.value) > 0.0)
        return of_either(check, mesh, "helix angle", a->beta.value, b->beta.value, TS_KIND_ANGLE);
    return NULL;
}

/* The limit that shifts must keep so that the teeth have a centre distance, where they do not. */
static void say_shifts(ts_check *check, uint32_t m, ts_finding *finding)
{
    const ts_cylindrical_pair_input *in  = &check->motion->meshes[m].pair.in;
    const double                     sum = in->x_1 + in->x_2, bound = ts_shift_sum_bound(in);

    if (sum <= bound)
        ts_says(check, finding,
                "%s cannot run together: their profile shifts add to %s, and leave a centre "
                "distance above %s only",
                ts_mesh_name(check, m), ts_shown_apart(check, sum, bound, TS_KIND_NUMBER),
                ts_shown(check, bound, TS_KIND_NUMBER));
}

/* What the rack must stay below so that its fillet fits between its flanks; NULL: it fits. */
static const char *rack_remedy(ts_check *check, const ts_cylindrical_pair_input *in)
{
    const double deep = pi / (4.0 * tan(in->alpha_n)); /* where the flanks of the rack meet */
    const double most = ts_basic_rack_rho_most(&in->rack, in->alpha_n);

    if (!(in->rack.h_fPs < deep))
        return ts_phrase(check,
                         "use a dedendum below %s where it is %s, or a smaller pressure angle",
                         ts_shown_outward(check, deep, TS_KIND_NUMBER, -1),
                         ts_shown_apart(check, in->rack.h_fPs, deep, TS_KIND_NUMBER));
    if (in->rack.rho_fPs > most)
        return ts_phrase(check, "use a root radius of at most %s where it is %s",
                         ts_shown_outward(check, most, TS_KIND_NUMBER, -1),
                         ts_shown_apart(check, in->rack.rho_fPs, most, TS_KIND_NUMBER));
    return NULL;
}

static void help(ts_check *check, uint32_t m, ts_finding *finding)
{
    const ts_mesh *mesh   = &check->train->meshes[m];
    const char    *remedy = NULL;

    if (mesh->kind == TS_MESH_CYLINDRICAL && check->motion->meshes[m].pair.in.z_1 > 0) {
        say_shifts(check, m, finding);
        remedy = rack_remedy(check, &check->motion->meshes[m].pair.in);
        remedy = remedy != NULL ? remedy : ts_pair_remedy(check, m, -1, TS_FLAW_UNSOLVED);
    } else if (mesh->kind == TS_MESH_CYLINDRICAL) {
        remedy = shared(check, mesh);
    } else {
        remedy = ts_bevel_remedy(check, m, TS_BEVEL_FLAW_UNSOLVED);
    }
    if (remedy != NULL)
        ts_remedy(check, finding, "%s", remedy);
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
        if (finding == NULL)
            continue;
        ts_says(check, finding, "%s cannot run together: %s", ts_mesh_name(check, i),
                motion->fault);
        help(check, i, finding);
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
