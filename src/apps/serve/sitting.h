/* apps/serve/sitting.h: one file while it is worked on: what it says, what it said, what follows.
 *
 * The text here and the file on the disk are the same after every call, so there is nothing that
 * could be forgotten to be saved.  Every change is one act that can be taken back, also a change
 * that another program made.
 */
#ifndef TS_APPS_SERVE_SITTING_H
#define TS_APPS_SERVE_SITTING_H

#include "apps/serve/edit_journal.h"
#include "towershaft/towershaft.h"

#include <stdbool.h>
#include <stdint.h>

/* One act that can be taken back. */
typedef struct sitting_act {
    size_t from;
    char  *gone, *came, *says; /* owned; says ends with NUL, the others have lengths */
    size_t gone_length, came_length;
    bool   outside; /* another program did it */
} sitting_act;

/* A text that was computed in one way. */
typedef struct sitting_told {
    ts_study *study;
    uint64_t  of; /* serial of the text; 0: none */
} sitting_told;

typedef struct sitting {
    workspace    place;
    edit_journal journal;
    const char  *shown; /* the path as the user gave it */
    growing      text;
    uint64_t     serial; /* one more after every change of the text */
    sitting_act *acts;
    size_t       act_count, act_room;
    size_t       done;     /* acts that the text has in it; the others can be done again */
    growing      sound;    /* the text, or the last that could be computed               */
    uint64_t     computed; /* serial of that text; 0: none could                         */
    bool         us;       /* the page that asks has customary units: an act is told in them */
    sitting_told told[2];  /* of that text: sentences in metric, in customary units      */
    sitting_told workings; /* of that text, with every step kept                         */
    ts_study    *opened;   /* of the text when the sitting began, for the comparison     */
    growing      messages; /* JSON of what is wrong with the text; empty: nothing        */
    uint64_t     outside;  /* serial at which another program's change was found         */
    double       on_disk;  /* ms for which the last act waited for the disk               */
} sitting;

/* NULL, or why the file cannot be worked on (one sentence). */
const char *sitting_open(sitting *here, const char *path);
void        sitting_close(sitting *here);

typedef enum sitting_end {
    SITTING_DONE,
    SITTING_REFUSED, /* it cannot be computed, and only what can was wanted; nothing is done */
    SITTING_OUTSIDE, /* another program changed the file meanwhile: taken in, nothing else done */
    SITTING_NOTHING, /* there is nothing to take back or do again, or nothing would change */
    SITTING_FAULT    /* memory or disk; the file stands as it was */
} sitting_end;

/* The text becomes `bytes`: one act, described by `says`.  `sound`: only if it can be computed. */
sitting_end sitting_put(sitting *here, const char *bytes, size_t length, const char *says,
                        bool sound);
sitting_end sitting_undo(sitting *here);
sitting_end sitting_redo(sitting *here);
/* Looks whether the file was changed by somebody else, and takes that in.  True when it was. */
bool sitting_look_outside(sitting *here);

/* The text after the first `acts` acts, with those that were taken back counted too; false without
 * memory. */
bool sitting_text_after(const sitting *here, size_t acts, growing *text);

/* The study of the text that was computed last, with sentences in these units; NULL: none. */
ts_study *sitting_study(sitting *here, bool us);
/* The same in whichever units it is there already; NULL: none. */
ts_study *sitting_newest(const sitting *here);
/* The study with every step kept, of the text that was computed last; NULL: none. */
ts_study        *sitting_workings(sitting *here);
ts_study_options sitting_options(bool workings, bool us);

#endif
