/* check/rule/face_to_diameter.c: is any pinion so wide that its teeth cannot share the load? */
#include "check/visit.h"

static const ts_formula slenderness_formula = {
    .symbol  = "b_over_d",
    .meaning = "face width in mesh over reference diameter of the smaller gear",
    .unit    = "1",
    .text    = "b/d",
    .source  = "common practice, no source",
};
static const ts_formula straddled_formula = {
    .symbol  = "reserve_b_over_d",
    .meaning = "reserve of face width over diameter, straddled",
    .unit    = "1",
    .text    = "b_over_d_straddled/b_over_d - 1",
    .source  = "reserve = capacity / demand - 1",
};
static const ts_formula overhung_formula = {
    .symbol  = "reserve_b_over_d",
    .meaning = "reserve of face width over diameter, overhung",
    .unit    = "1",
    .text    = "b_over_d_overhung/b_over_d - 1",
    .source  = "reserve = capacity / demand - 1",
};

typedef struct pinion {
    uint32_t shaft;
    bool     first; /* the driver of the mesh */
    double   d;
} pinion;

static pinion pinion_of(const ts_check *check, uint32_t mesh)
{
    const ts_mesh             *record = &check->train->meshes[mesh];
    const ts_cylindrical_pair *pair   = &check->motion->meshes[mesh].pair;
    const bool                 first  = pair->d_1 <= pair->d_2;
    return (pinion){first ? record->driver_shaft : record->driven_shaft, first,
                    first ? pair->d_1 : pair->d_2};
}

static double working_face(const ts_check *check, uint32_t mesh)
{
    const ts_mesh   *record = &check->train->meshes[mesh];
    const ts_measure b_1    = check->train->gears[record->driver].face;
    const ts_measure b_2    = check->train->gears[record->driven].face;
    if (!ts_measure_known(b_1) || !ts_measure_known(b_2))
        return NAN;
    return b_1.value < b_2.value ? b_1.value : b_2.value;
}

static void note_parts(const ts_check *check, uint32_t mesh, const pinion *smaller, double b)
{
    const ts_mesh *record = &check->train->meshes[mesh];
    const ts_gear *driver = &check->train->gears[record->driver];
    const ts_gear *driven = &check->train->gears[record->driven];
    ts_workings_about(check->workings, record->node, TS_EVERY_CONDITION);
    ts_workings_given(check->workings, "b", b, "m",
                      driver->face.value < driven->face.value ? driver->face.node
                                                              : driven->face.node);
    ts_borrow(check, record->node, (ts_input){"d", smaller->d}, record->node,
              smaller->first ? "d_1" : "d_2");
}

static void judge_mesh(ts_check *check, uint32_t mesh)
{
    const ts_mesh      *record   = &check->train->meshes[mesh];
    const pinion        smaller  = pinion_of(check, mesh);
    const ts_box_shaft *shaft    = check->train->shafts[smaller.shaft].record;
    const bool          overhung = shaft->support.value == TS_OVERHUNG;
    const ts_limits    *limits   = &check->drive->limits;
    const double        b = working_face(check, mesh), d = smaller.d;
    if (isnan(b)) {
        ts_not_computable(check, record->node, TS_EVERY_CONDITION, "a face width of %s",
                          ts_mesh_name(check, mesh));
        return;
    }
    const double most =
        overhung ? limits->face_to_diameter_overhung.value : limits->face_to_diameter.value;
    if (check->workings != NULL)
        note_parts(check, mesh, &smaller, b);
    ts_question question  = ts_question_about(check, record->node, TS_EVERY_CONDITION);
    question.value        = TS_STEP(check->workings, slenderness_formula, b / d, b, d);
    question.limit        = most;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = "b_over_d";
    question.limit_symbol = overhung ? "b_over_d_overhung" : "b_over_d_straddled";
    question.reserve      = overhung ? &overhung_formula : &straddled_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "in %s %s of face width bear on a pinion of %s diameter: %s, where %s "
            "allows %s",
            ts_mesh_name(check, mesh), ts_shown(check, b, TS_KIND_LENGTH),
            ts_shown(check, d, TS_KIND_LENGTH),
            ts_shown_apart(check, question.value, most, TS_KIND_NUMBER),
            overhung ? "an overhung shaft" : "a straddled shaft",
            ts_shown(check, most, TS_KIND_NUMBER));
    ts_remedy(check, finding, "make the face %s at most, or the pinion larger",
              ts_shown_outward(check, most * d, TS_KIND_LENGTH, -1));
}

static void run(ts_check *check)
{
    const ts_limits *limits = &check->drive->limits;
    if (!ts_limit_known(check, &limits->face_to_diameter, "face to diameter", "b_over_d_straddled",
                        TS_KIND_NUMBER) ||
        !ts_limit_known(check, &limits->face_to_diameter_overhung, "face to diameter overhung",
                        "b_over_d_overhung", TS_KIND_NUMBER))
        return;
    for (uint32_t i = 0; i < check->train->mesh_count; i++)
        if (check->train->meshes[i].kind == TS_MESH_CYLINDRICAL && check->motion->meshes[i].solved)
            judge_mesh(check, i);
    ts_skip(check, "no cylindrical mesh has a geometry");
}

const ts_rule ts_rule_face_to_diameter = {
    .id       = "C2-face-to-diameter",
    .title    = "Face width to diameter",
    .question = "Is every face width small enough against the diameter of its pinion?",
    .why      = "A wide pinion twists and bends under its load, and one end of the teeth carries "
                "nearly all of it; beyond its bearings, twice so.",
    .level    = TS_REFUSE,
    .source   = "common practice, no source",
    .hint     = "make the face narrower or the pinion larger",
    .run      = run,
};
