/* apps/serve/edit_journal.h: every act, in the order in which it was done, on the disk.
 *
 * The journal stands beside the file as .NAME.towershaft-journal and only ever grows.  It begins
 * with the whole text; every record behind it is an act (which bytes gave way to which), an undo or
 * a redo.  A record is on the disk (fsync) before the file is touched, so after a crash the last
 * record tells what was about to be done.  Each carries a check sum: a torn end is cut off.
 */
#ifndef TS_APPS_SERVE_EDIT_JOURNAL_H
#define TS_APPS_SERVE_EDIT_JOURNAL_H

#include "apps/serve/growing.h"
#include "apps/serve/workspace.h"

#include <stdbool.h>
#include <stdint.h>

typedef enum journal_kind { JOURNAL_BASE, JOURNAL_ACT, JOURNAL_UNDO, JOURNAL_REDO } journal_kind;

/* text[from, from + gone_length) became `came`. */
typedef struct journal_record {
    journal_kind kind;
    size_t       from;
    const char  *gone, *came, *says;
    size_t       gone_length, came_length, says_length;
} journal_record;

typedef struct edit_journal {
    int    file;
    size_t length; /* bytes of whole records */
    bool   begun;  /* it has its base        */
} edit_journal;

/* Called for every whole record from the first on; false ends the reading: what the record says
 * cannot be. */
typedef bool (*journal_visit)(void *context, const journal_record *record);

/* Opens or makes the journal, keeps others from it, and reads it.  NULL, or why not. */
const char *edit_journal_open(edit_journal *journal, const workspace *place, journal_visit visit,
                              void *context);
/* Empties it: the next record must be a base.  Only for one that does not fit its file. */
bool edit_journal_restart(edit_journal *journal);
/* On the disk when this returns true; else the journal is as it was. */
bool edit_journal_add(edit_journal *journal, const journal_record *record);
/* Forgets what was added since it was so long: it was not done.  A disk that is full can do this,
 * and where it cannot either, the next record is written over it; a sitting that opens before then
 * finds the file one step behind, as after a crash. */
void edit_journal_shorten(edit_journal *journal, size_t length);
void edit_journal_close(edit_journal *journal);

#endif
