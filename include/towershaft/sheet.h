/* towershaft/sheet.h: what does the maker of an accessory need to know of its pad?
 *
 * Speeds with their bands, sense, torques and powers in every condition, what the neck breaks at,
 * the spline, body, mass and overhang, the place of the pad, the oil, and the assumptions and
 * findings that concern it: every value in metric and US customary units beside each other.
 */
#ifndef TOWERSHAFT_SHEET_H
#define TOWERSHAFT_SHEET_H

#include "towershaft/study.h"

typedef struct ts_sheet_options {
    const char *accessory; /* its name                                                        */
    const char *format;    /* NULL: for a terminal; "json" by docs/schema/sheet.schema.json;
                              "pdf", "html"                                                   */
    const char *paper;     /* of a PDF: "A4", "Letter"; NULL: A4                              */
    ts_study   *against;   /* of the drive as it was issued last: what changed since then bears a
                              bar and what it was; NULL: nothing is compared.  Only read         */
} ts_sheet_options;

/* Of a study that was read.  TS_NOT_UNDERSTOOD: no drive was read, it knows no such accessory, that
 * accessory stands on no pad, here or in the drive that was issued, or the format or paper is
 * unknown; the messages say which. */
TS_API ts_status ts_sheet_write_to(ts_study *study, const ts_sheet_options *options,
                                   const ts_page_options *page, const ts_sink *sink);

#endif
