/* study/arranging.h: what the parts of one call that arranges a drive share. */
#ifndef TS_STUDY_ARRANGING_H
#define TS_STUDY_ARRANGING_H

#include "report/arrange_report.h"
#include "search/drive_width.h"
#include "search/locked_memory.h"
#include "study/arranged_text.h"
#include "towershaft/arrange.h"

enum { STRUCK_MOST = TS_TAKE_OFFS_MOST * TS_ARRANGE_BOXES };

/* Everything that one call needs; what it takes stands in `arena`. */
typedef struct ts_arranging {
    ts_study                 *study;
    const ts_arrange_options *options;
    ts_arena                 *arena;
    bool                      is_locked;
    ts_locked_memory          locked; /* for all threads, with the limit of the options */
    ts_allocator              shared;
    ts_drive_problem          problem;
    ts_drive_problem          loose;   /* with the file's own bands: nothing keeps its speed */
    ts_present                present; /* what stands in the file */
    ts_arrange_rule           present_rule;
    ts_drive_width           *widths;
    ts_arrange_result         result;
    bool                      searched;
    uint32_t             further; /* so many answers, for none of those asked for holds; or 0 */
    ts_text             *texts;   /* [answer] the file with it */
    ts_arranged_verdict *verdicts;
    ts_certificate_check certificate;
    ts_conflict          conflict;
    bool                 explained; /* did the explanation come to its end? */
    size_t               chosen;
    ts_front             front;
    ts_robust            robust;
    ts_why_not          *why_not;
    size_t               why_not_count; /* that were answered */
    ts_struck            struck[STRUCK_MOST];
    size_t               struck_count;
    char                 sha256[65], added_sha256[65]; /* of the files, before anything was added */
} ts_arranging;

/* Puts an arrangement into the file, widens its faces as the rating of the whole drive asks, and
 * has all rules judge it.  One that cannot be read again is told as such. */
ts_status ts_arranging_judge(ts_arranging *a, ts_arrangement *found, ts_text *text,
                             ts_arranged_verdict *out);

/* Takes study and options; adds accessories when there are some to add.  To be closed even when it
 * fails. */
ts_status ts_arranging_open(ts_arranging *a);
void      ts_arranging_close(ts_arranging *a);
/* Demands that whoever stands at or below the addresses to keep stays there; TS_NOT_UNDERSTOOD with
 * a message where nobody does. */
ts_status ts_arranging_keep(const ts_arranging *a, ts_extra_demand **extra, size_t *count);
/* The problem with what is kept, and the widths of its meshes. */
ts_status ts_arranging_prepare(ts_arranging *a);

/* Notes a refusal in a verdict where it is about bevels or a radial shaft. */
void ts_arranging_note_refusal(const ts_arranging *a, const char *says, const char *address,
                               ts_arranged_verdict *out);
/* Leaves take-offs out of the search with which every answer is refused by its own parts; false:
 * there was none, or nothing would be left to drive the box. */
bool ts_arranging_strike(ts_arranging *a, const ts_arranged_verdict *verdicts);
bool ts_arranging_leave_out(ts_arranging *a, const ts_struck *one);

/* How every search of this call is done. */
ts_arrange_wish ts_arranging_wish(const ts_arranging *a);

/* The lightest for each wrap, when that was asked. */
ts_status ts_arranging_find_front(ts_arranging *a);

/* How far loads and bands may be off, before the search; then what that does to the answers. */
bool      ts_arranging_read_robust(ts_arranging *a);
ts_status ts_arranging_find_robust(ts_arranging *a);

/* Can the samples that were asked for tell chances?  Before the search; false with a message. Then,
 * when the answers were judged, how often each of them holds (arrange_samples.c). */
bool      ts_arranging_read_samples(ts_arranging *a);
ts_status ts_arranging_find_samples(ts_arranging *a);

/* The answers side by side, when that was asked. */
ts_status ts_arranging_draw(ts_arranging *a);

/* The places of `why_not`, before the search; then what it would take to have them. */
ts_status ts_arranging_read_places(ts_arranging *a);
ts_status ts_arranging_answer_places(ts_arranging *a);

#endif
