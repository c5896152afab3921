/* towershaft/ratio.h: which tooth numbers give a ratio, and which cannot?
 *
 * All pairs of tooth numbers for a ratio with its tolerance, exactly counted; the closest and the
 * lightest; why nothing is closer, by the Stern-Brocot tree; and where a ratio cannot be had with
 * hunting teeth, the reason.  Also trains of two meshes, over an idler or over a cluster.
 * docs/method/ratio.md tells how.
 */
#ifndef TOWERSHAFT_RATIO_H
#define TOWERSHAFT_RATIO_H

#include "towershaft/study.h"

typedef struct ts_ratio_options {
    const char *wanted;    /* "56/24", "2.333" or "2.3..2.4": turns of the driver for one of the
                              driven wheel, which is driven teeth over driving teeth */
    const char *tolerance; /* "0.5 %"; NULL: 1 %; not with "2.3..2.4"  */
    const char *teeth;     /* "17..97", of every gear; NULL: that        */
    const char *train;     /* "pair", "idler" or "cluster"; NULL: pair   */
    const char *centre;    /* "90 mm", of a pair; NULL: free             */
    const char *module;    /* "1.5 mm"; needed with a centre             */
    const char *pressure_angle; /* NULL: 20 deg                          */
    bool        sharing;        /* also trains whose meshes share a divisor   */
    size_t      answers;        /* how long the lists of the best; 0: five    */
    bool        json;           /* by docs/schema/ratio.schema.json           */
} ts_ratio_options;

/* Writes the answer; *found: is there a train within the tolerance?  The study only takes the
 * messages: TS_NOT_UNDERSTOOD when a wish cannot be read. */
TS_API ts_status ts_ratio_write(ts_study *study, const ts_ratio_options *options,
                                const ts_page_options *page, bool *found, const ts_sink *sink);

#endif
