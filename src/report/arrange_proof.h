/* report/arrange_proof.h: why is nothing lighter, or what is known so far, step by step? */
#ifndef TS_REPORT_ARRANGE_PROOF_H
#define TS_REPORT_ARRANGE_PROOF_H

#include "report/arrange_report.h"

void ts_arrange_proof(const ts_arrange_told *told, ts_page *page);

#endif
