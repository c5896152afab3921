/* towershaft/arrange.h: which accessory goes where, with which teeth, for the least mass?
 *
 * Takes the demands of a drive file (accessories, boxes, limits, and what `arrange` says may be
 * chosen) and searches every arrangement that they allow.  The answer is the lightest, with the
 * proof that nothing lighter exists, and further ones that differ in order, face or box; or the
 * statement that there is none.  docs/method/arrange.md tells how, and what the proof rests on.
 *
 * Every answer is put into the file, read again and judged by all rules, which share nothing with
 * the search.
 */
#ifndef TOWERSHAFT_ARRANGE_H
#define TOWERSHAFT_ARRANGE_H

#include "towershaft/figure.h"
#include "towershaft/sampling.h"
#include "towershaft/study.h"

#include <stddef.h>

typedef struct ts_arrange_options {
    /* Addresses of pads, shafts, branches or boxes: accessories there keep their box, face, side of
     * the input, and speed. */
    const char *const *keep;
    size_t             keep_count;
    /* NULL, or a file whose `accessories` (in block form) join those of the drive first. */
    const char *added, *added_name;
    size_t      added_length;
    /* Places to ask about: "fuel pump on lp", "hydraulic pump on hp rear clockwise", "breather on
     * hp input", "fuel pump with oil pump" (one shaft).  Each is answered by the demand that
     * forbids it or by what it costs. */
    const char *const *why_not;
    size_t             why_not_count;
    /* In how many steps the wrap is taken back to see what that costs; 0: not at all. */
    size_t front;
    /* "10 %": which answer is the lightest when all loads are up to so much less or more; "50 rpm":
     * when every band is up to so much narrower at each end; NULL: not asked. */
    const char *loads, *bands;
    /* NULL, or a study file that was opened (its drive need not be taken), of method random: every
     * answer is put under its samples, the same for all. */
    const ts_sampling *samples;
    size_t             answers; /* how many; 0: five                                      */
    size_t             workers; /* threads; 0: one.  The answer is the same for any number */
    size_t             memory;  /* bytes at most; 0: no limit                             */
    /* NULL, or asked often from one thread: true ends the search with what it has. */
    bool (*stop)(void *context);
    void *context;
    /* NULL, or told now and then from the same thread: the lightest so far (kg; infinite: none),
     * what nothing is lighter than, and how many ways to drive a box, of how many, are closed. */
    void (*progress)(void *context, double found, double bound, size_t done, size_t count);
    /* NULL, or told how many of the samples are computed. */
    void (*sampled)(void *context, uint64_t done, uint64_t due);
    /* NULL, or told the file with each answer in its boxes, the lightest first, when the search has
     * ended; `holds` by all rules. */
    void (*answer)(void *context, size_t index, bool holds, const char *bytes, size_t length);
    /* NULL, or how the answers are drawn side by side, with the front where it was asked for; the
     * figure, condition and mesh of these options are not read.  The picture goes to the sink. */
    const ts_figure_options *picture;
    const ts_sink           *picture_sink;
    bool json; /* the answer by docs/schema/arrange.schema.json, else for a terminal */
} ts_arrange_options;

typedef enum ts_arranged {
    TS_ARRANGED,        /* proven: nothing lighter exists                   */
    TS_ARRANGED_SO_FAR, /* the search was ended; a gap may be left          */
    TS_ARRANGED_NOTHING /* proven: no arrangement meets every demand        */
} ts_arranged;

/* Arranges the drive of a study that was read.  The answer goes to `sink`; the file with the best
 * arrangement in its boxes to `file` unless that is NULL or there is none.  The study then holds
 * the arranged drive.  TS_NOT_UNDERSTOOD: the file lacks what the search needs, or an address
 * leads nowhere; see ts_study_message. */
TS_API ts_status ts_arrange_write(ts_study *study, const ts_arrange_options *options,
                                  const ts_page_options *page, ts_arranged *ended,
                                  const ts_sink *sink, const ts_sink *file);

/* Is an answer that ts_arrange_write gave as JSON, its certificate, true of this drive?  Lays out
 * every answer again, weighs and judges it, and goes through the account of what was searched, with
 * other code than the search.  Of `options` the added file and the number of threads are read; what
 * was kept stands in the certificate.  *holds: nothing is wrong; the reasons go to `sink`. */
TS_API ts_status ts_arrange_verify_write(ts_study *study, const ts_arrange_options *options,
                                         const char *certificate, size_t length, const char *name,
                                         const ts_page_options *page, bool *holds,
                                         const ts_sink *sink);

#endif
