/* check/rule/rating_range.c: where does the rating of teeth leave the range of its standard? */
#include "check/visit.h"

/* Of the load that sets the mesh; what is said elsewhere, or of light loads, is left to the JSON.
 */
#define LOAD_REMARKS                                                                               \
    (TS_REMARK(TS_REMARK_LOAD_HIGH) | TS_REMARK(TS_REMARK_STRESS_RATIO) |                          \
     TS_REMARK(TS_REMARK_FACE_PART))

/* Within the range of the standard, and told where the tooth is computed. */
#define NO_RANGE TS_REMARK(TS_REMARK_THIN_TEETH)

static ts_remarks remarks_of(const ts_check *check, uint32_t mesh)
{
    const ts_mesh_strength *strength = &check->teeth->strength[mesh];
    ts_remarks              remarks  = check->teeth->prepared[mesh].remarks & ~NO_RANGE;
    if (strength->life.condition >= 0)
        remarks |=
            check->teeth->cases[(size_t)strength->life.condition * check->train->mesh_count + mesh]
                .rating.remarks &
            LOAD_REMARKS;
    return remarks;
}

/* "...; says (clause)" */
static const char *add(ts_check *check, const char *before, const char *says, const char *clause)
{
    return before == NULL ? ts_phrase(check, "%s (%s)", says, clause)
                          : ts_phrase(check, "%s; %s (%s)", before, says, clause);
}

/* What of the heat was carried on beyond its formula; limits of the friction are left to the JSON.
 */
#define HEAT_REMARKS                                                                               \
    ((unsigned)TS_SCUFFING_HIGH_RATIO | (unsigned)TS_SCUFFING_OVERLAP |                            \
     (unsigned)TS_SCUFFING_PITCH_POINT | (unsigned)TS_SCUFFING_STAGE)

static const char *heat_remarks(ts_check *check, uint32_t mesh, const char *says)
{
    unsigned remarks = 0;

    if (check->rubbing == NULL || check->rubbing->mesh[mesh].missing != NULL)
        return says;
    for (uint32_t c = 0; c < check->drive->condition_count; c++)
        if (ts_rubbing_stands(check->rubbing, mesh, c))
            remarks |= check->rubbing->cases[(size_t)c * check->train->mesh_count + mesh].remarks &
                       HEAT_REMARKS;
    for (int i = 0; i < TS_SCUFFING_REMARKS; i++) {
        const ts_scuffing_remark remark = (ts_scuffing_remark)(1 << i);

        if ((remarks & (unsigned)remark) != 0)
            says = add(check, says, ts_scuffing_remark_says(remark),
                       ts_scuffing_remark_clause(remark));
    }
    return says;
}

static const char *cylindrical_remarks(ts_check *check, uint32_t mesh)
{
    const ts_remarks remarks = remarks_of(check, mesh);
    const char      *says    = NULL;

    for (int kind = 0; kind < TS_REMARK_COUNT; kind++) {
        const ts_remark_text *text = ts_remark_text_of((ts_remark_kind)kind);
        if (ts_remarks_have(remarks, (ts_remark_kind)kind))
            says = add(check, says, text->says, text->clause);
    }
    return says;
}

/* Those of the mesh alone.  Undercut has a rule of its own, and a cutter that is not told is on the
 * safe side. */
static const char *bevel_remarks(ts_check *check, uint32_t mesh)
{
    const ts_bevels       *bevels  = &check->teeth->bevels;
    const ts_bevel_remarks remarks = bevels->meshes[bevels->number[mesh]].prepared.remarks &
                                     ~(TS_BEVEL_REMARK(TS_BEVEL_REMARK_UNDERCUT) |
                                       TS_BEVEL_REMARK(TS_BEVEL_REMARK_CUTTER_UNKNOWN));
    const char *says = NULL;

    for (int kind = 0; kind < (int)TS_BEVEL_REMARK_COUNT; kind++) {
        const ts_bevel_remark_text *text = ts_bevel_remark_text_of((ts_bevel_remark_kind)kind);
        if (ts_bevel_remarks_have(remarks, (ts_bevel_remark_kind)kind))
            says = add(check, says, text->says, text->clause);
    }
    return says;
}

static void judge(ts_check *check, uint32_t mesh)
{
    const ts_mesh *record  = &check->train->meshes[mesh];
    const char    *first   = record->kind == TS_MESH_BEVEL ? bevel_remarks(check, mesh)
                                                           : cylindrical_remarks(check, mesh);
    const char    *says    = heat_remarks(check, mesh, first);
    ts_finding    *finding = ts_judge_fact(check, record->node, TS_EVERY_CONDITION, says == NULL);

    if (finding != NULL)
        ts_says(check, finding, "%s: %s", ts_mesh_name(check, mesh), says != NULL ? says : "");
}

/* What cannot be rated at all is said by the rules that ask for its safety. */
static void run(ts_check *check)
{
    for (uint32_t m = 0; check->teeth != NULL && m < check->train->mesh_count; m++)
        if (isfinite(check->teeth->strength[m].reserve))
            judge(check, m);
    ts_skip(check, "no mesh is loaded");
}

const ts_rule ts_rule_rating_range = {
    .id       = "E1-rating-range",
    .title    = "Range of the tooth rating",
    .question = "Does every rated mesh lie inside the ranges that its standard was made for?",
    .why    = "A formula goes on where its tests ended; the number is then a guess, and should be "
              "read as one.",
    .level  = TS_NOTE,
    .source = "ISO 6336-1, -2, -3:2019, ISO/TS 6336-20, -21:2017; bevels: ISO 10300-1, -2, -3:2014 "
              "(clauses from memory)",
    .hint   = "confirm the strength of this mesh by test or experience",
    .run    = run,
};
