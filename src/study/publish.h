/* study/publish.h: a manuscript about a study, and how it gets on paper or into a browser. */
#ifndef TS_STUDY_PUBLISH_H
#define TS_STUDY_PUBLISH_H

#include "base/manuscript.h"
#include "draw/typeset.h"
#include "study/entitle.h"

typedef struct ts_paper_wish {
    bool     pdf; /* else HTML */
    ts_paper paper;
    ts_units units; /* of the pictures */
    bool     large; /* large print */
} ts_paper_wish;

/* Of a sink whose context is an open buffer. */
int ts_study_keep(void *buffer, const char *bytes, size_t length);

/* subject: of its pictures.  TS_NO_MEMORY where the manuscript failed. */
ts_status ts_study_publish(ts_study *study, const ts_manuscript *manuscript,
                           const ts_paper_wish *wish, const ts_drawing_subject *subject,
                           const ts_sink *sink);

#endif
