/* catalog/evidence.c: which paragraphs of certification rules does an accessory drive meet? */
#include "catalog/evidence.h"

const ts_evidence ts_evidences[] = {
#include "evidence.inc"
};
const size_t ts_evidence_count = sizeof ts_evidences / sizeof ts_evidences[0];

bool ts_evidence_next(ts_text *rules, ts_text *id)
{
    size_t end = 0;

    while (end < rules->length && rules->at[end] != ' ')
        end++;
    *id = (ts_text){rules->at, end};
    if (end == 0)
        return false;
    while (end < rules->length && rules->at[end] == ' ')
        end++;
    *rules = (ts_text){rules->at + end, rules->length - end};
    return true;
}
