/* check/rule/rating_range.c: where does the rating of teeth leave the range of its standard? */
#include "check/visit.h"

/* Of the load that sets the mesh; what is said elsewhere, or of light loads, is left to the JSON.
 */
#define LOAD_REMARKS                                                                               \
    (TS_REMARK(TS_REMARK_LOAD_HIGH) | TS_REMARK(TS_REMARK_STRESS_RATIO) |                          \
     TS_REMARK(TS_REMARK_FACE_PART))

static ts_remarks remarks_of(const ts_check *check, uint32_t mesh)
{
    const ts_mesh_strength *strength = &check->teeth->strength[mesh];
    ts_remarks              remarks  = check->teeth->prepared[mesh].remarks;
    if (strength->life.condition >= 0)
        remarks |=
            check->teeth->cases[(size_t)strength->life.condition * check->train->mesh_count + mesh]
                .rating.remarks &
            LOAD_REMARKS;
    return remarks;
}

static void judge(ts_check *check, uint32_t mesh)
{
    const ts_remarks remarks = remarks_of(check, mesh);
    ts_finding      *finding =
        ts_judge_fact(check, check->train->meshes[mesh].node, TS_EVERY_CONDITION, remarks == 0);
    if (finding == NULL)
        return;
    const char *says = NULL;
    for (int kind = 0; kind < TS_REMARK_COUNT; kind++) {
        if (!ts_remarks_have(remarks, (ts_remark_kind)kind))
            continue;
        const ts_remark_text *text = ts_remark_text_of((ts_remark_kind)kind);
        says = says == NULL ? ts_phrase(check, "%s (%s)", text->says, text->clause)
                            : ts_phrase(check, "%s; %s (%s)", says, text->says, text->clause);
    }
    ts_says(check, finding, "%s: %s", ts_mesh_name(check, mesh), says != NULL ? says : "");
}

/* What cannot be rated at all is said by the rules that ask for its safety. */
static void run(ts_check *check)
{
    for (uint32_t m = 0; check->teeth != NULL && m < check->train->mesh_count; m++)
        if (check->train->meshes[m].kind == TS_MESH_CYLINDRICAL &&
            isfinite(check->teeth->strength[m].reserve))
            judge(check, m);
    ts_skip(check, "no cylindrical mesh is loaded");
}

const ts_rule ts_rule_rating_range = {
    .id       = "E1-rating-range",
    .title    = "Range of the tooth rating",
    .question = "Does every rated mesh lie inside the ranges that its standard was made for?",
    .why    = "A formula goes on where its tests ended; the number is then a guess, and should be "
              "read as one.",
    .level  = TS_NOTE,
    .source = "ISO 6336-1, -2, -3:2019 (clauses from memory)",
    .hint   = "confirm the strength of this mesh by test or experience",
    .run    = run,
};
