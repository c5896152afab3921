/* towershaft/size.h: how wide must the teeth be?
 *
 * Keeps the arrangement of a drive and chooses the face widths of its cylindrical gears: the
 * narrowest, in steps, with which every mesh keeps the safeties of the file (`limits`) over all
 * conditions of its life, such that no gear alone can be a step narrower and none made wider saves
 * its mass at those near to it.
 */
#ifndef TOWERSHAFT_SIZE_H
#define TOWERSHAFT_SIZE_H

#include "towershaft/study.h"

typedef struct ts_size_options {
    const char *step; /* a length as in a drive file, 0.001 mm to 100 mm; NULL: "0.5 mm"        */
    bool        json; /* the answer by docs/schema/size.schema.json, else for a terminal        */
} ts_size_options;

/* Sizes the drive of a study that was read.  The answer goes to `sink`; the file with the new
 * widths, every other byte as it was, to `file` unless that is NULL or a mesh does not hold.  The
 * study then holds the sized drive: its verdict and findings are those of the new file.  *fits: do
 * all meshes hold that could be rated?  TS_NOT_UNDERSTOOD: no drive was read, the step is no
 * length, or a width cannot be written; see ts_study_message. */
TS_API ts_status ts_size_write(ts_study *study, const ts_size_options *options,
                               const ts_page_options *page, bool *fits, const ts_sink *sink,
                               const ts_sink *file);

#endif
