/* towershaft/size.h: how wide must the teeth be, which bearings hold, how thick should necks be?
 *
 * Keeps the arrangement of a drive and chooses one of these; nothing else of the file changes.
 *
 * Teeth     Face widths of cylindrical gears: the narrowest, in steps, with which every mesh keeps
 *           the safeties of the file (`limits`) over all conditions of its life, such that no gear
 *           alone can be a step narrower and none made wider saves its mass at those near to it.
 * Bearings  Series and bore of every bearing: of those of the table the lightest of each shaft that
 *           hold for life, static safety, speed number and least load (ISO 281, ISO 76, `limits`).
 * Necks     Diameters of designed necks, in steps: where breaking too early is as likely as too
 *           late, as far as `neck factor` lets it.
 */
#ifndef TOWERSHAFT_SIZE_H
#define TOWERSHAFT_SIZE_H

#include "towershaft/study.h"

typedef enum ts_size_part { TS_SIZE_TEETH, TS_SIZE_BEARINGS, TS_SIZE_NECKS } ts_size_part;

typedef struct ts_size_options {
    const char *step; /* of widths and diameters: a length as in a drive file, 0.001 mm to 100 mm;
                         NULL: "0.5 mm" for teeth, "0.05 mm" for necks; bearings have none */
    bool json;        /* the answer by docs/schema/size.schema.json, size-bearings.schema.json or
                         size-necks.schema.json; else for a terminal */
    ts_size_part part;
} ts_size_options;

/* Sizes the drive of a study that was read.  The answer goes to `sink`; the file with the new
 * values, every other byte as it was, to `file` unless that is NULL or something does not hold.
 * The study then holds the sized drive: its verdict and findings are those of the new file.
 * *fits: does everything hold that could be rated?  TS_NOT_UNDERSTOOD: no drive was read, the step
 * is no length, or a value cannot be written; see ts_study_message. */
TS_API ts_status ts_size_write(ts_study *study, const ts_size_options *options,
                               const ts_page_options *page, bool *fits, const ts_sink *sink,
                               const ts_sink *file);

#endif
