/* support/case_count.h: how many cases does a test try?
 *
 * The tests of the release build try all of them.  Under the sanitizers, which take ten times as
 * long and look at memory and arithmetic rather than at answers, a test tries as many as it takes
 * to go every way through the code.
 */
#ifndef TS_SUPPORT_CASE_COUNT_H
#define TS_SUPPORT_CASE_COUNT_H

#ifdef TS_SANITIZED
#define TS_CASES(all, sanitized) (sanitized)
#else
#define TS_CASES(all, sanitized) (all)
#endif

#endif
