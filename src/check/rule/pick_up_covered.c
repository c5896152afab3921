/* check/rule/pick_up_covered.c: is all oil taken away in every attitude? */
#include "check/visit.h"

/* The sump from which least is taken. */
static size_t worst_sump(const ts_pack *pack, uint32_t attitude)
{
    const double *taken = &pack->taken[(size_t)attitude * pack->told->sump_count];
    size_t        worst = 0;

    for (size_t i = 1; i < pack->told->sump_count; i++)
        if (taken[i] < taken[worst])
            worst = i;
    return worst;
}

/* "fore, aft": the pick-ups of a sump that lie dry. */
static const char *dry_ones(ts_check *check, const ts_pack *pack, uint32_t attitude,
                            const ts_sump *sump)
{
    const ts_pack_dip *dips = &pack->dips[(size_t)attitude * TS_PACK_ELEMENTS];
    const char        *out  = "";

    for (uint32_t e = 1; e < pack->element_count; e++)
        if (pack->elements[e].sump == sump && !dips[e].covered)
            out = out[0] == '\0' ? pack->elements[e].name
                                 : ts_phrase(check, "%s, %s", out, pack->elements[e].name);
    return out;
}

static void judge_attitude(ts_check *check, const ts_pack *pack, uint32_t a)
{
    const size_t   worst    = worst_sump(pack, a);
    const ts_sump *sump     = &pack->told->sumps[worst];
    const double   taken    = pack->taken[(size_t)a * pack->told->sump_count + worst];
    const ts_node  node     = a == 0 ? pack->told->node : pack->told->attitudes[a - 1].node;
    ts_question    question = ts_question_about(check, node, TS_EVERY_CONDITION);

    question.value      = taken;
    question.limit      = 1.0;
    question.bound      = TS_AT_LEAST;
    question.kind       = TS_KIND_NUMBER;
    ts_finding *finding = ts_judge(check, &question);
    if (finding == NULL)
        return;
    const char *dry = dry_ones(check, pack, a, sump);
    ts_says(check, finding,
            "%s, the scavenge elements of the sump %s take %s times the oil that comes to it%s%s",
            a == 0 ? "level"
                   : ts_phrase(check, "in the attitude %s", pack->told->attitudes[a - 1].name),
            sump->name, ts_shown(check, taken, TS_KIND_NUMBER), dry[0] != '\0' ? "; dry: " : "",
            dry);
}

static void judge(ts_check *check, const ts_pack *pack)
{
    for (uint32_t a = 0; a < ts_pack_attitudes(pack); a++)
        judge_attitude(check, pack, a);
}

static void run(ts_check *check)
{
    ts_visit_packs(check, judge);
}

const ts_rule ts_rule_pick_up_covered = {
    .id       = "J3-pick-up-covered",
    .title    = "Pick-ups in attitude",
    .question = "Do the pick-ups that oil still covers take all oil away, in every attitude that "
                "the file tells?",
    .why      = "A pick-up that lies dry draws air alone, and the oil stays in the sump until the "
                "attitude ends.",
    .level    = TS_WARN,
    .source   = "derived: the surface lies across what the oil feels, in a sump taken as a box",
    .hint     = "move a pick-up to where the oil gathers, or let another element reach there",
    .run      = run,
};
