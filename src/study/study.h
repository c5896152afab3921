/* study/study.h: what a study holds while it is open: the file, the model, the answer. */
#ifndef TS_STUDY_STUDY_H
#define TS_STUDY_STUDY_H

#include "oil/drive_heat.h"
#include "rate/rated.h"
#include "rating/drive_float.h"
#include "rating/drive_rubbing.h"
#include "rating/drive_splines.h"
#include "rating/drive_webs.h"
#include "rating/drive_whirl.h"
#include "report/answer.h"
#include "report/twist_report.h"
#include "study/stock.h"
#include "towershaft/study.h"

struct ts_study {
    const ts_allocator *allocator;
    ts_allocator        own;         /* a copy, so that the caller's need not live on    */
    ts_arena           *arena;       /* of the file, the model and the answer    */
    ts_arena           *asked;       /* of the question that is being answered   */
    ts_diagnostics     *diagnostics; /* NULL before the first read               */
    const char         *name;
    ts_text             bytes;
    ts_study_options    options;
    bool                solved;  /* as a drive      */
    bool                rated;   /* as a rate file  */
    bool                is_rate; /* what was read   */
    bool                is_text; /* `told` is the tree of `bytes`, which had no error */

    ts_source        source;
    ts_source        told; /* as the file was read, before parts without a place were added */
    ts_drive         drive;
    ts_train         train;
    ts_motion        motion;
    ts_power         power;
    ts_mass          mass;
    ts_lines         lines;
    ts_teeth         teeth;
    ts_opinion       opinion;
    ts_necks         necks;
    ts_select        select;
    ts_rubbing       rubbing;
    ts_floats        floats;
    ts_splines       splines;
    ts_heat          heat;
    ts_arena        *swaying;      /* emptied and filled by every solve: what swings, and how     */
    ts_allocator     swaying_from; /* the arena above                                     */
    ts_twist_answer  twist;
    ts_whirls        whirls;
    ts_webs          webs;
    ts_check_outcome outcome;
    ts_workings     *workings;  /* NULL unless asked for */
    const char     **addresses; /* of findings; NULL, and each of them, until it is asked for */
    ts_study_stock  *stock;     /* NULL: nothing lasts   */

    ts_rate_file rate; /* a rate file in place of the drive */
    ts_rated     elements;
    char        *sha256; /* 65 bytes of the arena, empty until asked for: ts_study_sha256 */
};

/* The digest of the bytes that were read, worked out when it is first asked for: it signs answers,
 * and nothing of a solve depends on it. */
const char *ts_study_sha256(const ts_study *study);

/* The answer as the report rooms want it.  Only for a solved study. */
ts_answer ts_study_answer(const ts_study *study);

/* Forgets everything and begins a list of messages about `bytes`. */
ts_status ts_study_begin(ts_study *study, const char *name, const char *bytes, size_t length);

/* The same in the memory of the last drive; the bytes are the caller's. */
ts_status ts_study_begin_again(ts_study *study, const char *name, ts_text bytes);

/* Begins a question: what was said and taken for the one before is forgotten, and `asked` is empty.
 * False where that kind of file was not read, or could not be: what reading said of it stays.
 * A question must not be asked within another, whose memory it would empty. */
bool ts_study_ask(ts_study *study, ts_file_wanted about);

/* The status of a question that could not be followed: TS_NOT_UNDERSTOOD, or TS_NO_MEMORY where a
 * list of names, or what was to be said, did not find room. */
ts_status ts_study_refused(const ts_study *study);

/* As ts_study_read, of nodes that were read once, which are copied: the bytes are those of another
 * text, and messages about places in it are not to be shown.  Whoever gets TS_NOT_UNDERSTOOD reads
 * the text itself for them.  The memory of the last drive is used again. */
ts_status ts_study_read_nodes(ts_study *study, const char *name, const ts_source *nodes,
                              const ts_study_options *options);

/* Text to model to flat train, and the memory of all that follows. */
ts_status ts_study_build(ts_study *study);

/* Motion, power, teeth and check of a study that is built; takes no memory beyond what building
 * reserved.
 */
ts_status ts_study_solve(ts_study *study);

/* Computes the elements of a rate file. */
ts_status ts_study_rate(ts_study *study);

/* A message of the study's own about the call, not about a line of the file. */
void ts_study_say(ts_study *study, const char *code, const char *says, const char *expected,
                  const char *nearest);

#endif
