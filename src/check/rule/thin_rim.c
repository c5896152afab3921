/* check/rule/thin_rim.c: is every rim thick enough for its teeth? */
#include "check/visit.h"

static const ts_formula share_formula = {
    .symbol  = "s_R_over_h_t",
    .meaning = "thickness of the rim over the height of its teeth",
    .unit    = "1",
    .text    = "s_R/((d_a - d_f)/2)",
    .source  = "ISO 6336-3:2019, clause 9 (from memory)",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_s_R_over_h_t",
    .meaning = "reserve of the rim",
    .unit    = "1",
    .text    = "s_R_over_h_t/s_R_over_h_t_least - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* A mesh of the gear whose geometry is known, or TS_NOWHERE. */
static uint32_t mesh_of(const ts_check *check, uint32_t gear)
{
    for (uint32_t m = 0; m < check->train->mesh_count; m++) {
        const ts_mesh *mesh = &check->train->meshes[m];
        if (mesh->kind == TS_MESH_CYLINDRICAL && (mesh->driver == gear || mesh->driven == gear) &&
            check->motion->meshes[m].solved)
            return m;
    }
    return TS_NOWHERE;
}

static void judge(ts_check *check, uint32_t gear, double least)
{
    const ts_gear *record = &check->train->gears[gear];
    const uint32_t mesh   = mesh_of(check, gear);
    if (!ts_measure_known(record->rim)) {
        ts_not_computable(check, record->node, TS_EVERY_CONDITION, "the rim of %s",
                          ts_gear_name(check, gear));
        return;
    }
    if (mesh == TS_NOWHERE) {
        ts_not_computable(check, record->node, TS_EVERY_CONDITION, "the tooth height of %s",
                          ts_gear_name(check, gear));
        return;
    }
    const ts_cylindrical_pair *pair   = &check->motion->meshes[mesh].pair;
    const bool                 first  = check->train->meshes[mesh].driver == gear;
    const ts_node              about  = record->node;
    const ts_node              lender = check->train->meshes[mesh].node;
    const double               d_a    = first ? pair->d_a1 : pair->d_a2;
    const double               d_f = first ? pair->d_f1 : pair->d_f2, s_R = record->rim.value;
    ts_workings_about(check->workings, about, TS_EVERY_CONDITION);
    ts_workings_given(check->workings, "s_R", s_R, "m", record->rim.node);
    ts_borrow(check, about, (ts_input){"d_a", d_a}, lender, first ? "d_a1" : "d_a2");
    ts_borrow(check, about, (ts_input){"d_f", d_f}, lender, first ? "d_f1" : "d_f2");
    ts_question question = ts_question_about(check, about, TS_EVERY_CONDITION);
    question.value =
        TS_STEP(check->workings, share_formula, s_R / ((d_a - d_f) / 2.0), s_R, d_a, d_f);
    question.limit        = least;
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = "s_R_over_h_t";
    question.limit_symbol = "s_R_over_h_t_least";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "the rim of %s is %s times as thick as its teeth are high, less than %s",
            ts_gear_name(check, gear), ts_shown_apart(check, question.value, least, TS_KIND_NUMBER),
            ts_shown(check, least, TS_KIND_NUMBER));
    ts_remedy(check, finding, "make the rim %s at least",
              ts_shown_outward(check, least * (d_a - d_f) / 2.0, TS_KIND_LENGTH, 1));
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.rim_to_tooth;
    if (!ts_limit_known(check, limit, "rim to tooth height", "s_R_over_h_t_least", TS_KIND_NUMBER))
        return;
    for (uint32_t g = 0; g < check->train->gear_count; g++)
        if (check->train->gears[g].role != TS_GEAR_BEVEL &&
            check->train->gears[g].rim.standing != TS_ABSENT)
            judge(check, g, limit->value);
    ts_skip(check, "every gear is solid");
}

const ts_rule ts_rule_thin_rim = {
    .id       = "E1-thin-rim",
    .title    = "Thin rims",
    .question = "Is the rim of every gear thick enough to hold its teeth?",
    .why      = "Under a thin rim the crack does not cut off a tooth but runs through the rim, and "
                "the gear bursts.",
    .level    = TS_WARN,
    .source   = "ISO 6336-3:2019, clause 9 (from memory)",
    .hint     = "make the rim thicker",
    .run      = run,
};
