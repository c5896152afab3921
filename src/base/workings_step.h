/* base/workings_step.h: the macro TS_STEP, spelled out once for up to sixteen inputs.
 *
 * `result` is evaluated once and returned unchanged, so results are bit-equal with and without
 * workings.  The array of inputs is built only where it is needed, behind the test of `workings`,
 * which is therefore read twice: pass a variable.
 */
#ifndef TS_BASE_WORKINGS_STEP_H
#define TS_BASE_WORKINGS_STEP_H

#define TS_IN_1(a)                                                                                 \
    {                                                                                              \
#a, (a)                                                                                    \
    }
#define TS_IN_2(a, ...)  {#a, (a)}, TS_IN_1(__VA_ARGS__)
#define TS_IN_3(a, ...)  {#a, (a)}, TS_IN_2(__VA_ARGS__)
#define TS_IN_4(a, ...)  {#a, (a)}, TS_IN_3(__VA_ARGS__)
#define TS_IN_5(a, ...)  {#a, (a)}, TS_IN_4(__VA_ARGS__)
#define TS_IN_6(a, ...)  {#a, (a)}, TS_IN_5(__VA_ARGS__)
#define TS_IN_7(a, ...)  {#a, (a)}, TS_IN_6(__VA_ARGS__)
#define TS_IN_8(a, ...)  {#a, (a)}, TS_IN_7(__VA_ARGS__)
#define TS_IN_9(a, ...)  {#a, (a)}, TS_IN_8(__VA_ARGS__)
#define TS_IN_10(a, ...) {#a, (a)}, TS_IN_9(__VA_ARGS__)
#define TS_IN_11(a, ...) {#a, (a)}, TS_IN_10(__VA_ARGS__)
#define TS_IN_12(a, ...) {#a, (a)}, TS_IN_11(__VA_ARGS__)
#define TS_IN_13(a, ...) {#a, (a)}, TS_IN_12(__VA_ARGS__)
#define TS_IN_14(a, ...) {#a, (a)}, TS_IN_13(__VA_ARGS__)
#define TS_IN_15(a, ...) {#a, (a)}, TS_IN_14(__VA_ARGS__)
#define TS_IN_16(a, ...) {#a, (a)}, TS_IN_15(__VA_ARGS__)
#define TS_IN_PICK(a1, a2, a3, a4, a5, a6, a7, a8, a9, a10, a11, a12, a13, a14, a15, a16, name,    \
                   ...)                                                                            \
    name
#define TS_INPUTS(...)                                                                             \
    TS_IN_PICK(__VA_ARGS__, TS_IN_16, TS_IN_15, TS_IN_14, TS_IN_13, TS_IN_12, TS_IN_11, TS_IN_10,  \
               TS_IN_9, TS_IN_8, TS_IN_7, TS_IN_6, TS_IN_5, TS_IN_4, TS_IN_3, TS_IN_2, TS_IN_1, )  \
    (__VA_ARGS__)

/* Checked builds prove every step and so always need the inputs. */
#ifdef TS_CHECKED
#define TS_STEP_NEEDS_INPUTS(workings) 1
#else
#define TS_STEP_NEEDS_INPUTS(workings) TS_STEP_IS_NOTED(workings)
#endif

#define TS_STEP(workings, formula, result, ...)                                                    \
    ts_step_list((workings), &(formula), (result),                                                 \
                 TS_STEP_NEEDS_INPUTS(workings) ? (const ts_input[]){TS_INPUTS(__VA_ARGS__)}       \
                                                : NULL,                                            \
                 sizeof((const ts_input[]){TS_INPUTS(__VA_ARGS__)}) / sizeof(ts_input))

#endif
