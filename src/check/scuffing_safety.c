/* check/scuffing_safety.c: do the flanks of every mesh keep one of their two safeties against
 * scuffing? */
#include "check/scuffing_safety.h"

#include "check/oil_told.h"
#include "check/tooth_safety.h"
#include "check/visit.h"

typedef struct method_words {
    const char *S, *S_min, *key;
    ts_formula  reserve;
    const char *of; /* which temperature */
} method_words;

#define WORDS(name, least, key_, of_)                                                              \
    {                                                                                              \
        .S = (name), .S_min = (least), .key = (key_), .of = (of_), .reserve = {                    \
            .symbol  = "reserve_" name,                                                            \
            .meaning = "reserve of the safety against scuffing",                                   \
            .unit    = "1",                                                                        \
            .text    = name "/" least " - 1",                                                      \
            .source  = "reserve = capacity / demand - 1"                                           \
        }                                                                                          \
    }
static const method_words words_of[2] = {
    [TS_BY_FLASH]    = WORDS("S_B", "S_Bmin", "flash safety", "hottest contact"),
    [TS_BY_INTEGRAL] = WORDS("S_intS", "S_intSmin", "integral safety", "integral temperature"),
};

static const ts_scuffing_case *case_of(const ts_check *check, uint32_t mesh, uint32_t condition)
{
    return &check->rubbing->cases[(size_t)condition * check->train->mesh_count + mesh];
}

bool ts_rubbing_asked(const ts_check *check, uint32_t mesh, uint32_t condition)
{
    return check->motion->meshes[mesh].solved && ts_rubbing_stands(check->rubbing, mesh, condition);
}

static bool anything_rubs_in(const ts_check *check, uint32_t condition)
{
    for (uint32_t m = 0; m < check->train->mesh_count; m++)
        if (ts_rubbing_asked(check, m, condition))
            return true;
    return false;
}

static bool anything_rubs(const ts_check *check)
{
    for (uint32_t c = 0; c < check->drive->condition_count; c++)
        if (anything_rubs_in(check, c))
            return true;
    return false;
}

bool ts_oil_is_unknown(ts_check *check)
{
    if (!anything_rubs(check) || check->rubbing->oil.missing == NULL)
        return false;
    if (ts_oil_is_told(check, TS_NEEDS_VISCOSITY | TS_NEEDS_DENSITY, NULL))
        (void)ts_not_computable(check, check->drive->oil.node, TS_EVERY_CONDITION, "%s",
                                check->rubbing->oil.missing);
    return true;
}

/* ---- remedies -------------------------------------------------------------------------------- */

/* The temperature at which flanks scuff, of a temperature that they reach at safety S. */
static double limit_at(const ts_check *check, const ts_scuffing_case *one,
                       ts_scuffing_method method, uint32_t condition, double S)
{
    const double theta_oil = check->rubbing->oil.theta_oil[condition];

    return method == TS_BY_FLASH ? theta_oil + S * (one->theta_Bmax - theta_oil)
                                 : 273.15 + S * (one->theta_int - 273.15);
}

/* By both methods the limit rises with the square of the load stage from 80 degrees Celsius on. */
static double stage_wanted(const ts_check *check, const ts_scuffing_case *one,
                           ts_scuffing_method method, uint32_t condition, double S, double S_min)
{
    const double is     = limit_at(check, one, method, condition, S) - 353.15;
    const double wanted = limit_at(check, one, method, condition, S_min) - 353.15;

    return wanted > 0.0 && is > 0.0 ? check->rubbing->oil.S_FZG * sqrt(wanted / is) : (double)NAN;
}

static void advise(ts_check *check, uint32_t m, const ts_question *question,
                   ts_scuffing_method method, ts_finding *finding)
{
    const uint32_t          c   = (uint32_t)question->condition;
    const ts_scuffing_case *one = case_of(check, m, c);
    const ts_oil           *oil = &check->drive->oil;
    const double stage = stage_wanted(check, one, method, c, question->value, question->limit);

    if (isnan(stage))
        ts_remedy(check, finding, "take load off these teeth, or make them wider");
    else if (ts_measure_known(oil->scuffing_stage))
        ts_remedy(
            check, finding,
            "use an oil of load stage %s or more where it is %s, smoother flanks, or cooler oil",
            ts_shown_outward(check, stage, TS_KIND_NUMBER, 1),
            ts_shown(check, oil->scuffing_stage.value, TS_KIND_NUMBER));
    else
        ts_remedy(check, finding,
                  "use an oil with a scuffing temperature of %s or more where it is %s, smoother "
                  "flanks, or cooler oil",
                  ts_shown_outward(check, 353.15 + 2.25 * check->rubbing->oil.X_L * stage * stage,
                                   TS_KIND_TEMPERATURE, 1),
                  ts_shown(check, oil->theta_S.value, TS_KIND_TEMPERATURE));
}

/* ---- questions ------------------------------------------------------------------------------- */

static const char *why_missing(const ts_scuffing_case *one)
{
    for (int i = 0; i < TS_SCUFFING_REMARKS; i++) {
        const ts_scuffing_remark remark = (ts_scuffing_remark)(1 << i);

        if ((one->remarks & (unsigned)remark) != 0 &&
            (remark == TS_SCUFFING_OVERLAP || remark == TS_SCUFFING_PITCH_POINT))
            return ts_scuffing_remark_says(remark);
    }
    return NULL;
}

static void say_missing(ts_check *check, uint32_t m, int32_t condition, const char *missing,
                        const char *why)
{
    const char *name = ts_mesh_name(check, m);
    ts_finding *finding =
        ts_not_computable(check, check->train->meshes[m].node, condition, "%s of %s",
                          missing != NULL ? missing : "the heat", name);
    if (finding == NULL || missing != NULL || why == NULL)
        return;
    ts_says(check, finding, "the heat of %s cannot be told: %s", name, why);
    ts_remedy(check, finding,
              "judge it by the flash temperature alone, or waive this with the "
              "reason");
}

/* What the method lacks is no line of the file: teeth or loads are such that it does not hold. */
static void say_beyond(ts_check *check, uint32_t m, const char *missing)
{
    const char *name    = ts_mesh_name(check, m);
    ts_finding *finding = ts_not_computable(check, check->train->meshes[m].node, TS_EVERY_CONDITION,
                                            "the heat of %s", name);

    ts_says(check, finding, "the heat of %s cannot be told: the method wants %s", name, missing);
    ts_remedy(check, finding, "mend the teeth of this mesh, which other rules complain of");
}

static void complain(ts_check *check, uint32_t m, const ts_question *question,
                     ts_scuffing_method method, ts_finding *finding)
{
    const ts_scuffing_case *one   = case_of(check, m, (uint32_t)question->condition);
    const bool              flash = method == TS_BY_FLASH;

    ts_says(check, finding,
            "at %s the %s of %s is %s%s%s, and the safety against scuffing %s, less than %s%s",
            ts_condition_name(check, question->condition), words_of[method].of,
            ts_mesh_name(check, m),
            ts_shown(check, flash ? one->theta_Bmax : one->theta_int, TS_KIND_TEMPERATURE),
            flash ? ", " : "", flash ? one->hot_spot : "",
            ts_shown_apart(check, question->value, question->limit, TS_KIND_NUMBER),
            ts_shown(check, question->limit, TS_KIND_NUMBER),
            ts_flank_words(check, m, question->condition));
    advise(check, m, question, method, finding);
}

static void judge(ts_check *check, uint32_t m, uint32_t c, ts_scuffing_method method)
{
    const method_words     *words = &words_of[method];
    const ts_scuffing_case *one   = case_of(check, m, c);
    ts_question question = ts_question_about(check, check->train->meshes[m].node, (int32_t)c);

    question.value = method == TS_BY_FLASH ? one->S_B : one->S_intS;
    if (isnan(question.value)) {
        say_missing(check, m, (int32_t)c, NULL, why_missing(one));
        return;
    }
    question.limit  = method == TS_BY_FLASH ? check->rubbing->S_Bmin : check->rubbing->S_intSmin;
    question.bound  = TS_AT_LEAST;
    question.kind   = TS_KIND_NUMBER;
    question.symbol = words->S;
    question.limit_symbol = words->S_min;
    question.reserve      = &words->reserve;
    if (question.value >= 1.0) /* a middling risk */
        question.level = TS_WARN;
    ts_finding *finding = ts_judge(check, &question);
    if (finding != NULL)
        complain(check, m, &question, method, finding);
}

static void judge_mesh(ts_check *check, uint32_t m, ts_scuffing_method method)
{
    const ts_mesh_rubbing *mesh = &check->rubbing->mesh[m];

    if (mesh->missing != NULL) {
        say_missing(check, m, TS_EVERY_CONDITION, mesh->missing, NULL);
        return;
    }
    const char *beyond = NULL;

    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        if (!ts_rubbing_asked(check, m, c) || isnan(check->rubbing->oil.theta_oil[c]))
            continue;
        if (case_of(check, m, c)->missing != NULL)
            beyond = case_of(check, m, c)->missing;
        else
            judge(check, m, c, method);
    }
    if (beyond != NULL)
        say_beyond(check, m, beyond);
}

static bool limit_is_unknown(ts_check *check)
{
    if (ts_oil_is_unknown(check))
        return true;
    if (!anything_rubs(check) || !isnan(check->rubbing->oil.S_FZG))
        return false;
    (void)ts_not_computable(check, check->drive->oil.node, TS_EVERY_CONDITION,
                            "a scuffing temperature above 80 degC, or the load stage, of the oil");
    return true;
}

static bool is_asked(const ts_check *check, uint32_t m, ts_scuffing_method method)
{
    if (method == TS_BY_FLASH && check->train->meshes[m].kind == TS_MESH_BEVEL)
        return false;
    for (uint32_t c = 0; c < check->drive->condition_count; c++)
        if (ts_rubbing_asked(check, m, c))
            return true;
    return false;
}

void ts_judge_scuffing(ts_check *check, ts_scuffing_method method)
{
    const method_words *words  = &words_of[method];
    const ts_limits    *limits = &check->drive->limits;

    if (check->rubbing != NULL) {
        if (!ts_limit_known(
                check, method == TS_BY_FLASH ? &limits->flash_safety : &limits->integral_safety,
                words->key, words->S_min, TS_KIND_NUMBER) ||
            limit_is_unknown(check))
            return;
        (void)ts_oil_is_told(check, TS_NEEDS_FEED, anything_rubs_in);
        for (uint32_t m = 0; m < check->train->mesh_count; m++)
            if (is_asked(check, m, method))
                judge_mesh(check, m, method);
    }
    ts_skip(check, "no mesh is loaded");
}
