/* search/arrange_certificate.c: does the proof of an answer hang together? */
#include "search/arrange_verify.h"

#include <math.h>

static size_t records_of(const ts_arrange_result *r, uint32_t box, uint32_t choice)
{
    size_t count = 0;
    for (size_t i = 0; i < r->pair_count; i++)
        count += r->pairs[i].box == box && r->pairs[i].choice == choice ? 1 : 0;
    return count;
}

/* Answers that differ by rounding alone count as equally light. */
static bool is_closed(const ts_arrange_result *r, const ts_pair_record *p)
{
    const double limit = r->bound * (1.0 - 1e-9);
    switch (p->end) {
    case TS_PAIR_NO_WAY:
        return isinf(p->bound);
    case TS_PAIR_BY_BOUND:
        return p->bound >= limit;
    case TS_PAIR_SEARCHED:
        return p->labels.made ==
               p->labels.kept + p->labels.cut_by_bound + p->labels.cut_by_dominance;
    case TS_PAIR_OPEN:
    default:
        return false;
    }
}

ts_certificate_check ts_arrange_check_certificate(const ts_arrange_problem *problem,
                                                  const ts_arrange_result  *result)
{
    ts_certificate_check check = {.answer = TS_RULE_NONE};

    if (result->count > 0)
        check.answer = ts_arrange_verify(problem, &result->answers[0]);
    for (uint32_t b = 0; b < problem->box_count; b++)
        for (uint32_t c = 0; c < problem->boxes[b].choice_count; c++)
            check.missing += records_of(result, b, c) == 1 ? 0 : 1;
    for (size_t i = 0; i < result->pair_count && result->end == TS_ARRANGE_PROVEN; i++)
        check.not_closed += is_closed(result, &result->pairs[i]) ? 0 : 1;
    return check;
}
