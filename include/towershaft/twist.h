/* towershaft/twist.h: how does the drive swing in torsion?
 *
 * Natural frequencies and shapes of every tree of a drive from its spool: inertia from the masses
 * of the parts, stiffness of meshes from their rating, of shafts from their sections.  Where an
 * overrunning clutch lets a starter go, once running and once cranked.
 */
#ifndef TOWERSHAFT_TWIST_H
#define TOWERSHAFT_TWIST_H

#include "towershaft/study.h"

/* The modes of a study that was read, for a terminal or by docs/schema/twist.schema.json.
 * *computed: could all trees be computed?  TS_NOT_UNDERSTOOD: no drive was read. */
TS_API ts_status ts_twist_write(ts_study *study, bool json, const ts_page_options *page,
                                bool *computed, const ts_sink *sink);

/* One natural frequency.  The mode after the last has a frequency of NaN. */
typedef struct ts_mode_view {
    double      frequency; /* Hz; 0: turns as a whole                                   */
    const char *strains;   /* where most strain energy is: the part on the spool's side */
    double      strain;    /* its share of it                                           */
    const char *moves;     /* what moves most, seen from the spool                      */
} ts_mode_view;

/* `spool` names the tree.  Texts live until the study is read again. */
TS_API ts_mode_view ts_study_mode(ts_study *study, const char *spool, bool cranked, size_t mode);

#endif
