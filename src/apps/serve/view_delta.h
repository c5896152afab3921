/* apps/serve/view_delta.h: what of a view has changed since a page saw it?
 *
 * A view is one JSON object whose members are values or lists.  A delta tells the members that have
 * changed as `whole`, and of a list that kept its length the items that have, as `parts`.
 */
#ifndef TS_APPS_SERVE_VIEW_DELTA_H
#define TS_APPS_SERVE_VIEW_DELTA_H

#include "apps/serve/growing.h"

#include <stdbool.h>

#define VIEW_SHA_DIGITS 64
#define VIEWS_KEPT      3 /* so that several pages may be a step apart */

typedef struct view_kept {
    char    sha[VIEW_SHA_DIGITS + 1]; /* of the file, as the view itself tells it; "": none */
    growing text;
    growing members, items; /* where they stand in the text: view_delta.c */
} view_kept;

/* Of one kind of units, the newest first. */
typedef struct view_shelf {
    view_kept kept[VIEWS_KEPT];
} view_shelf;

/* `out` is `fresh` as it stands, or, where `seen` is the sum of a view that is still kept, what has
 * changed since; without memory for that it is `fresh`, too, which is taken over in any case.
 * `out` has `failed` set where there is no memory for either. */
void view_delta_answer(view_shelf *shelf, const char *seen, growing *fresh, growing *out);
void view_delta_forget(view_shelf *shelf);

#endif
