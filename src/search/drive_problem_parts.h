/* search/drive_problem_parts.h: what is shared by those who put the question of a drive file?  Of
 * drive_problem*.c alone. */
#ifndef TS_SEARCH_DRIVE_PROBLEM_PARTS_H
#define TS_SEARCH_DRIVE_PROBLEM_PARTS_H

#include "model/source.h"
#include "search/drive_problem.h"

/* A spool at rest has no pitch-line velocity.  Whoever asks for widths leaves such conditions out;
 * the bands are held to this speed. */
#define TS_REST_SPEED 1e-9 /* rad/s */

typedef struct ts_problem_maker {
    const ts_drive_question *question;
    const ts_drive          *drive;
    ts_arena                *arena;
    ts_diagnostics          *list;
    ts_drive_problem        *out;
    bool                     sound, no_memory;
} ts_problem_maker;

/* A message at the key of that node, or at none (0); `says` has one %s for the name. */
void ts_problem_complain(ts_problem_maker *m, ts_node node, const char *says, const char *name,
                         const char *expected);

/* Each fills in its part of `m->out`; faults and want of memory are told to `m`. */
void ts_problem_take_accessories(ts_problem_maker *m);
void ts_problem_take_boxes(ts_problem_maker *m);
/* Bevels and radial shafts that may stand between a spool and its box, which weigh `mass` with the
 * box as they stand. */
void ts_problem_take_take_offs(ts_problem_maker *m, size_t tapped, double mass);

/* NULL: nothing is said of that box. */
const ts_box_freedom *ts_box_freedom_of(const ts_problem_maker *m, int32_t spool);
/* ts_face_choice, or -1 for both, as TS_FACE_ bits. */
uint32_t ts_faces_of_choice(int choice);
/* Spans written out, each number once; at most `room`. */
size_t ts_write_out(const ts_tally_spans *spans, uint32_t *z, size_t room);

static inline double ts_known_or(ts_measure measure, double other)
{
    return ts_measure_known(measure) ? measure.value : other;
}

#endif
