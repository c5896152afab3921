/* study/figures.h: what the pictures of a study are drawn from, and how a choice by name is read.
 */
#ifndef TS_STUDY_FIGURES_H
#define TS_STUDY_FIGURES_H

#include "draw/figure.h"
#include "study/study.h"
#include "towershaft/figure.h"

/* The position of `word` in `list`, or -1 with a message that names what there is. */
int ts_study_choose(ts_study *study, const char *what, const char *word, const char *const *list,
                    size_t count);
/* The number of a condition, -1 for NULL; false, and said, when there is none of that name. */
bool ts_study_choose_condition(ts_study *study, const char *word, int32_t *condition);

/* The number of an accessory, or -1 with a message. */
int32_t ts_study_choose_accessory(ts_study *study, const char *name, ts_arena *arena);

/* False with a message of the study for an unknown figure, format, ground, condition or mesh. */
bool ts_study_figure(ts_study *study, const ts_figure_options *from, ts_draw_options *to);

/* The outcomes of all failures, and which of them `at` asks for: a part by name or address, then
 * perhaps ": " and its failure; a part alone, or NULL: the failure of it, or of any accessory that
 * seizes, by which most stops.  TS_NOT_UNDERSTOOD with a message. */
ts_status ts_study_show_failure(ts_study *study, const char *at, ts_arena *arena,
                                ts_drawing_subject *subject);

/* Is there any font?  False with a message; what sets text ends the program without one. */
bool ts_study_has_font(ts_study *study);

/* What the figures of a solved study are about; `verdict` is its sentence. */
ts_drawing_subject ts_study_subject(const ts_study *study, const char *verdict);

/* The seizure that is drawn: of that accessory, or of the one with a neck that takes most torque.
 */
ts_status ts_study_drawn_seizure(ts_study *study, const char *accessory, const char *condition,
                                 ts_drawn_seizure *out);
/* The jolt that is drawn: "generator 1: short", "slam"; NULL: a slam. */
ts_status ts_study_drawn_jolt(ts_study *study, const char *at, const char *condition,
                              ts_drawn_seizure *out);

#endif
