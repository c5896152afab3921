/* check/rule/losses_covered.c: do the ratings count with the power that comes through each mesh? */
#include "check/visit.h"

static const ts_formula most_formula = {
    .symbol  = "P_covered",
    .meaning = "power into the mesh that the ratings cover",
    .unit    = "W",
    .text    = "P_rated*(1 + above)",
    .source  = "`power above rated` of the limits",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_P",
    .meaning = "reserve of the power that the ratings cover",
    .unit    = "1",
    .text    = "P_covered/P_a - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* What enters a mesh by the rated flow, and by that with its losses, by the worse method. */
typedef struct entering {
    int32_t condition; /* -1: no power enters it where it lasts */
    int     method;
    double  P_rated, P_a; /* W */
} entering;

static double larger(const double P[2])
{
    return fmax(fabs(P[0]), fabs(P[1]));
}

static entering in_condition(const ts_check *check, uint32_t m, uint32_t c)
{
    const double P[2] = {larger(ts_heat_power_at(check->heat, 0, c, m)),
                         larger(ts_heat_power_at(check->heat, 1, c, m))};

    return (entering){.condition = (int32_t)c,
                      .method    = P[1] > P[0],
                      .P_rated   = larger(ts_load_of(check, m, c)->P),
                      .P_a       = fmax(P[0], P[1])};
}

/* Where it lasts, and the teeth are pressed hardest: power over speed. */
static entering hardest(const ts_check *check, uint32_t m)
{
    entering found = {.condition = -1};
    double   most  = 0.0;

    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        const double   v_t  = check->motion->velocity[(size_t)c * check->train->mesh_count + m];
        const entering here = in_condition(check, m, c);
        if (!ts_heat_lasts(check->drive, c) || !(here.P_rated >= 0.0) || !(here.P_a / v_t > most))
            continue;
        most  = here.P_a / v_t;
        found = here;
    }
    return found;
}

/* Pads behind it take nothing, so that a share of the power is nothing too. */
static void tell_unrated(ts_check *check, uint32_t m, const entering *at, ts_finding *finding)
{
    ts_says(check, finding,
            "with all losses %s pass %s at %s, and their teeth, shafts and bearings are rated with "
            "no power at all",
            ts_mesh_name(check, m), ts_shown(check, at->P_a, TS_KIND_POWER),
            ts_condition_name(check, at->condition));
    ts_remedy(check, finding,
              "state the power that is taken behind this mesh at %s, or drive nothing there: a "
              "`loss` is a share, and bears nothing without it",
              ts_condition_name(check, at->condition));
}

static void judge(ts_check *check, uint32_t m)
{
    const entering at    = hardest(check, m);
    const double   above = check->drive->limits.power_above_rated.value;

    if (at.condition < 0)
        return;
    const double  P_rated = at.P_rated, P_a = at.P_a;
    const ts_node node = check->heat->places[m].node[at.method];

    ts_workings_about(check->workings, node, at.condition);
    ts_workings_assumed(check->workings, "above", above, "1", "`power above rated` of the limits");
    ts_workings_assumed(check->workings, "P_rated", P_rated, "W",
                        "the larger of P_1 and P_2 of the mesh by the rated flow");
    const double P_covered =
        TS_STEP(check->workings, most_formula, P_rated * (1.0 + above), P_rated, above);
    ts_question question  = ts_question_about(check, node, at.condition);
    question.value        = P_a;
    question.limit        = P_covered;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_POWER;
    question.symbol       = "P_a";
    question.limit_symbol = "P_covered";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    if (!(P_rated > 0.0)) {
        tell_unrated(check, m, &at, finding);
        return;
    }
    ts_says(check, finding,
            "with all losses %s pass %s at %s, %s (%s) more than the %s that their teeth, shafts "
            "and bearings are rated with",
            ts_mesh_name(check, m), ts_shown(check, P_a, TS_KIND_POWER),
            ts_condition_name(check, at.condition), ts_shown(check, P_a - P_rated, TS_KIND_POWER),
            ts_shown_percent(check, P_a / P_rated - 1.0), ts_shown(check, P_rated, TS_KIND_POWER));
    const double share = ts_heat_share_to_state(check->heat, (uint32_t)at.condition, m);
    if (share > check->train->meshes[m].loss.value)
        ts_remedy(check, finding,
                  "state a `loss` of %s in this mesh, where it has %s, and see the "
                  "column `to state` of `oil`",
                  ts_shown_percent(check, share),
                  ts_shown_percent(check, check->train->meshes[m].loss.value));
}

static void run(ts_check *check)
{
    if (check->heat == NULL || check->heat->missing != NULL) {
        ts_skip(check, "losses could not be computed: J5-oil-rise says why");
        return;
    }
    if (!ts_limit_known(check, &check->drive->limits.power_above_rated, "power above rated",
                        "above", TS_KIND_NUMBER))
        return;
    for (uint32_t m = 0; m < check->train->mesh_count; m++)
        judge(check, m);
    ts_skip(check, "no mesh passes power in a condition that lasts");
}

const ts_rule ts_rule_losses_covered = {
    .id       = "J1-losses-covered",
    .title    = "Losses covered by the ratings",
    .question = "Do the ratings count with the power that comes through each mesh once all is lost "
                "that is computed?",
    .why      = "Shafts, bearings and teeth are rated with the stated `loss` of each mesh; drag of "
                "bearings, windage and oil come through them too.",
    .level    = TS_WARN,
    .source   = "common practice, no source; losses by ISO/TR 14179 and NASA TP-1622 (from memory)",
    .hint     = "state more `loss` in the mesh and in those behind it",
    .run      = run,
};
