/* base/assert.h: our own mistakes stop the program in every build that tests run; never input. */
#ifndef TS_BASE_ASSERT_H
#define TS_BASE_ASSERT_H

/* Prints file, line and condition to stderr and aborts.  In release builds without TS_CHECKED the
 * condition is not evaluated. */
_Noreturn void ts_assert_failed(const char *file, int line, const char *condition);

#ifdef TS_CHECKED
#define TS_ASSERT(condition)                                                                       \
    ((condition) ? (void)0 : ts_assert_failed(__FILE__, __LINE__, #condition))
#else
#define TS_ASSERT(condition) ((void)sizeof(!!(condition)))
#endif

#endif
