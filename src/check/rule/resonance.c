/* check/rule/resonance.c: does any mesh live in the resonance of its teeth? */
#include "check/tooth_safety.h"
#include "check/visit.h"

static const ts_formula share_formula = {
    .symbol  = "resonance_share",
    .meaning = "share of its running time that the mesh spends in main resonance",
    .unit    = "1",
    .text    = "t_resonance/t_running",
    .source  = "derived: time in conditions at main resonance over the time of all that turn it",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_resonance_share",
    .meaning = "reserve of the time at resonance",
    .unit    = "1",
    .text    = "resonance_share_most/resonance_share - 1",
    .source  = "reserve = capacity / demand - 1",
};

typedef struct stay {
    double  resonance, running; /* s */
    double  longest;
    int32_t condition; /* the longest of those at resonance */
} stay;

static stay stay_of(const ts_check *check, uint32_t mesh)
{
    stay out = {0.0, 0.0, 0.0, TS_EVERY_CONDITION};
    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        const ts_mesh_case *one = &check->teeth->cases[(size_t)c * check->train->mesh_count + mesh];
        const double        t   = ts_condition_seconds(&check->drive->conditions[c]);
        if (!one->loaded)
            continue;
        out.running += t;
        if (one->rating.range != TS_SPEED_RESONANCE)
            continue;
        out.resonance += t;
        if (t > out.longest || out.condition == TS_EVERY_CONDITION) {
            out.longest   = t;
            out.condition = (int32_t)c;
        }
    }
    return out;
}

/* ---- what the standard lets run there -------------------------------------------------------- */

#define GRADE_MOST 5 /* coarser teeth should not run there, whatever else is done */

static int64_t grade_of(const ts_check *check, uint32_t mesh)
{
    const ts_mesh *record = &check->train->meshes[mesh];
    return record->kind == TS_MESH_BEVEL
               ? record->bevels->accuracy.value
               : check->train->gears[record->driver].system->accuracy.value;
}

/* Spur teeth whose tips are not relieved; flanks of bevels are crowned, helical ones overlap. */
static bool is_unmodified(const ts_check *check, uint32_t mesh)
{
    const ts_mesh *record = &check->train->meshes[mesh];
    const ts_gear *gear   = &check->train->gears[record->driver];
    return record->kind == TS_MESH_CYLINDRICAL && !(gear->beta.value > 0.0) &&
           !(gear->system->tip_relief.value > 0.0);
}

/* ---- words ----------------------------------------------------------------------------------- */

#define LIGHT 50e3 /* N/m: flanks may part below, ISO 6336-1:2019, clause 6.5.2 (from memory) */

static const char *reason(ts_check *check, uint32_t mesh, const ts_mesh_case *one)
{
    const double w_t = one->rating.w_t;
    if (grade_of(check, mesh) > GRADE_MOST)
        return "; teeth coarser than grade 5 should not";
    if (is_unmodified(check, mesh))
        return "; spur teeth without tip relief should not";
    if (w_t < LIGHT && check->train->meshes[mesh].kind == TS_MESH_CYLINDRICAL)
        return ts_phrase(check,
                         "; at %s it is so lightly loaded that its flanks may part, and K_v says "
                         "little",
                         ts_shown(check, w_t, TS_KIND_STIFFNESS));
    return "";
}

static void advise(ts_check *check, ts_finding *finding, uint32_t mesh, const ts_mesh_case *one,
                   int32_t condition)
{
    if (grade_of(check, mesh) > GRADE_MOST)
        ts_remedy(check, finding,
                  "make the teeth to grade 5, with a tip relief, or choose other "
                  "tooth numbers, rims or module");
    else if (is_unmodified(check, mesh) && one->rating.cp > 0.0)
        ts_remedy(check, finding,
                  "relieve the tips by %s, which is what the teeth give at %s, or choose other "
                  "tooth numbers, rims or module",
                  ts_shown(check, one->rating.w_t / one->rating.cp, TS_KIND_LENGTH),
                  ts_condition_name(check, condition));
}

static void judge(ts_check *check, uint32_t mesh, double most)
{
    const stay    times = stay_of(check, mesh);
    const ts_node node  = check->train->meshes[mesh].node;
    if (!(times.running > 0.0))
        return;
    const double t_resonance = times.resonance, t_running = times.running;
    ts_workings_about(check->workings, node, TS_EVERY_CONDITION);
    ts_workings_row(
        check->workings, "t_resonance", t_resonance, "s",
        "derived: the sum of `hours`, or `events` times `lasts`, of conditions at resonance");
    ts_workings_row(check->workings, "t_running", t_running, "s",
                    "derived: the same sum of all conditions that load the mesh");
    ts_question question = ts_question_about(check, node, TS_EVERY_CONDITION);
    question.value =
        TS_STEP(check->workings, share_formula, t_resonance / t_running, t_resonance, t_running);
    question.limit        = most;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = "resonance_share";
    question.limit_symbol = "resonance_share_most";
    question.reserve      = &reserve_formula;
    if (grade_of(check, mesh) <= GRADE_MOST && !is_unmodified(check, mesh))
        question.level = TS_NOTE;
    ts_finding *finding = ts_judge(check, &question);
    if (finding == NULL)
        return;
    const ts_mesh_case *one =
        &check->teeth->cases[(size_t)times.condition * check->train->mesh_count + mesh];
    ts_says(check, finding,
            "%s spends %s of its time at the resonance of its teeth, most of it at %s, where it "
            "runs at %s of the resonance speed with K_v = %s%s",
            ts_mesh_name(check, mesh), ts_shown_percent(check, question.value),
            ts_condition_name(check, times.condition),
            ts_shown(check, one->rating.N, TS_KIND_NUMBER),
            ts_shown(check, one->rating.K_v, TS_KIND_NUMBER), reason(check, mesh, one));
    advise(check, finding, mesh, one, times.condition);
}

/* What cannot be rated is said by the rules that ask for its safety. */
static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.time_at_resonance;
    if (check->teeth != NULL &&
        !ts_limit_known(check, limit, "time at resonance", "resonance_share_most", TS_KIND_NUMBER))
        return;
    for (uint32_t m = 0; check->teeth != NULL && m < check->train->mesh_count; m++)
        if (ts_mesh_is_rated(check, m))
            judge(check, m, limit->value);
    ts_skip(check, "no mesh is rated");
}

const ts_rule ts_rule_resonance = {
    .id       = "E1-resonance",
    .title    = "Resonance of the teeth",
    .question = "Does every mesh spend little of its time at the main resonance of its teeth?",
    .why   = "There the teeth add most load to themselves, and how much hangs on damping that no "
             "standard knows; the rating counts what it can, in K_v.",
    .level = TS_WARN,
    .source =
        "ISO 6336-1:2019, clause 6.5 (from memory): N_S to 1.15, not for spur teeth without "
        "profile "
        "modification nor for grade 6 and coarser; bevels: ISO "
        "10300-1:2014, clause 7.6 (from memory): 0.75 to 1.25; the share: common practice, no "
        "source",
    .hint = "have it analysed, or choose other tooth numbers, rims or module",
    .run  = run,
};
