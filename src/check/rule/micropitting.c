/* check/rule/micropitting.c: is the oil film thick enough to keep the flanks from turning grey? */
#include "check/scuffing_safety.h"
#include "check/tooth_safety.h"
#include "check/visit.h"

static const ts_formula reserve_formula = {
    .symbol  = "reserve_S_lambda",
    .meaning = "reserve of the film",
    .unit    = "1",
    .text    = "S_lambda/S_lambdamin - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* The film over the roughness goes with its inverse, but for the friction: a first guess. */
static void complain(ts_check *check, uint32_t m, const ts_film_of_case *film,
                     const ts_question *question, ts_finding *finding)
{
    const ts_gear   *driver = &check->train->gears[check->train->meshes[m].driver];
    const ts_measure rough  = driver->system->flank_roughness;
    const bool       us     = check->units == TS_UNITS_US;
    const double     scale  = us ? 1e6 / 0.0254 : 1e6; /* roughness is told in microinches there */
    const char      *unit   = us ? "uin" : "um";

    ts_says(check, finding,
            "at %s the least film of %s is %s of the roughness, %s, and the safety against "
            "micropitting %s, less than %s%s",
            ts_condition_name(check, question->condition), ts_mesh_name(check, m),
            ts_shown(check, film->lambda_GFmin, TS_KIND_NUMBER), film->where,
            ts_shown_apart(check, question->value, question->limit, TS_KIND_NUMBER),
            ts_shown(check, question->limit, TS_KIND_NUMBER),
            ts_flank_words(check, m, question->condition));
    ts_remedy(check, finding,
              "make the flanks as smooth as %s %s R_z where they have %s %s, or feed cooler oil",
              ts_shown_outward(check, scale * rough.value * question->value / question->limit,
                               TS_KIND_NUMBER, -1),
              unit, ts_shown(check, scale * rough.value, TS_KIND_NUMBER), unit);
}

static void judge(ts_check *check, uint32_t m, uint32_t c)
{
    const ts_film_of_case *film = &check->rubbing->films[(size_t)c * check->train->mesh_count + m];
    ts_question question = ts_question_about(check, check->train->meshes[m].node, (int32_t)c);

    if (film->missing != NULL || isnan(film->S_lambda)) {
        (void)ts_not_computable(check, question.object, question.condition, "%s of %s",
                                film->missing != NULL ? film->missing : "the oil film",
                                ts_mesh_name(check, m));
        return;
    }
    question.value        = film->S_lambda;
    question.limit        = check->rubbing->S_lambdamin;
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = "S_lambda";
    question.limit_symbol = "S_lambdamin";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding != NULL)
        complain(check, m, film, &question, finding);
}

static bool is_asked(const ts_check *check, uint32_t m, uint32_t c)
{
    return check->train->meshes[m].kind == TS_MESH_CYLINDRICAL && ts_rubbing_asked(check, m, c) &&
           check->rubbing->mesh[m].missing == NULL && !isnan(check->rubbing->oil.theta_oil[c]);
}

/* What the file lacks of the oil is said by the rules that ask for scuffing. */
static void run(ts_check *check)
{
    const ts_drive *drive = check->drive;

    if (check->rubbing == NULL || drive->oil.micropitting_stage.standing != TS_GIVEN) {
        ts_skip(check, "the oil has no `micropitting stage`: films are told and not judged");
        return;
    }
    if (!ts_limit_known(check, &drive->limits.film_safety, "film safety", "S_lambdamin",
                        TS_KIND_NUMBER))
        return;
    for (uint32_t m = 0; m < check->train->mesh_count; m++)
        for (uint32_t c = 0; c < drive->condition_count; c++)
            if (is_asked(check, m, c))
                judge(check, m, c);
    ts_skip(check, "no cylindrical mesh is loaded");
}

const ts_rule ts_rule_micropitting = {
    .id    = "E4-micropitting",
    .title = "Micropitting, an indication",
    .question =
        "Is the oil film of every cylindrical mesh as thick as the micropitting test of the "
        "oil asks?",
    .why    = "Grey flanks lose their form, and pitting begins there; thin oils at high "
              "temperatures run with films of half the roughness and less.",
    .level  = TS_NOTE,
    .source = "ISO/TS 6336-22:2018, method B (from memory), which indicates and never governs",
    .hint   = "make the flanks smoother, feed cooler oil, or show by test that the oil stands it",
    .run    = run,
};
