/* towershaft/lines.h: how strong is every shaft, and how long does every bearing last?
 *
 * A line is one body that turns in bearings of its own: a box shaft, the gearshafts at both ends of
 * a radial shaft and the tube between them, the shaft of a take-off (docs/method/drive_lines.md).
 * Only for a solved study; SI, NaN where a number is not known.
 */
#ifndef TOWERSHAFT_LINES_H
#define TOWERSHAFT_LINES_H

#include "towershaft/study.h"

typedef struct ts_line_view {
    const char *name;   /* "fuel pump", "hp tower shaft, inner end"; NULL: there is no such line */
    const char *kind;   /* "box", "inner", "tube", "outer", "stub"                            */
    double      length; /* m                                                                  */
    double      S_F;    /* least static safety of all sections and conditions (DIN 743)       */
    double      S_D;    /* least fatigue safety likewise                                      */
    size_t      bearings; /* seats of it: 0 to 2                                                */
    const char *missing;  /* NULL, or why it is not computed                                    */
} ts_line_view;

TS_API size_t       ts_study_line_count(const ts_study *study);
TS_API ts_line_view ts_study_line(const ts_study *study, size_t index);

typedef struct ts_bearing_view {
    const char *place;  /* "front", "inner gear"; NULL: there is no such seat                  */
    const char *form;   /* "deep groove", "angular contact", "cylindrical roller"              */
    const char *series; /* of ISO 15; NULL: none                                               */
    int         rows;   /* 2: a pair                                                           */
    bool        chosen; /* by the program, and not told by the file                            */
    double      bore, outside; /* m                                                             */
    double      life;          /* s, modified, all conditions together (ISO 281)                */
    double      S_0;           /* least static safety (ISO 76)                                  */
    double      n_dm;          /* mm times rpm, the greatest                                    */
    const char *missing;       /* NULL, or why it is not rated                                  */
} ts_bearing_view;

TS_API ts_bearing_view ts_study_bearing(const ts_study *study, size_t line, size_t bearing);
/* s, modified life of all bearings together. */
TS_API double ts_study_bearing_set_life(const ts_study *study);

#endif
