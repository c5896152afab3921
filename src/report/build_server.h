/* report/build_server.h: findings for build servers: SARIF 2.1.0 and JUnit XML. */
#ifndef TS_REPORT_BUILD_SERVER_H
#define TS_REPORT_BUILD_SERVER_H

#include "report/answer.h"

/* OASIS SARIF 2.1.0: one run, one result a finding; waived findings are suppressed with their
 * reason; not computable ones are errors, for nothing that matters may pass unseen. */
void ts_sarif(const ts_answer *answer, ts_buffer *out);

/* JUnit XML as build servers read it (a widely used form without a standard): one case a rule,
 * failed when the rule has an open refusal or could not be computed. */
void ts_junit(const ts_answer *answer, ts_buffer *out);

#endif
