/* towershaft/report.h: everything about one drive on paper, or as one page for a browser.
 *
 * Summary, findings, assumptions, speeds and powers, arrangement, teeth, rules with their sources,
 * published cases that this build reproduces, and on request the workings of the numbers.  The
 * same study gives the same bytes.
 */
#ifndef TOWERSHAFT_REPORT_H
#define TOWERSHAFT_REPORT_H

#include "towershaft/study.h"

typedef struct ts_report_options {
    const char *format;   /* "pdf", "html"; "csv", "xlsx": every number and judgement, a row each */
    const char *paper;    /* "A4", "Letter"; NULL: A4.  HTML does not ask                      */
    const char *workings; /* NULL: none; "governing": of the numbers nearest to their limits;
                             "all": of every number, each once.  Needs workings to be kept   */
    const char *sheets;   /* NULL: the report; "teeth": instead of it, a data sheet a gear;
                             "shims": mounting distances, shims and backlash of every mesh.
                             Sheets go as "txt" too, the shims as "json"                        */
    bool seizures; /* also a seizure of every accessory, followed in time: up to a second each */
    bool us;       /* customary units                                                  */
} ts_report_options;

/* TS_NOT_UNDERSTOOD with a message for an unknown format, paper or workings, or when the study
 * holds no solved drive. */
TS_API ts_status ts_report_write(ts_study *study, const ts_report_options *options,
                                 const ts_sink *sink);

/* Every step behind the answer as data (docs/method/recheck.md), and the stand-alone Python script
 * that redoes them.  The study must have kept its workings. */
TS_API ts_status ts_recheck_write(ts_study *study, const ts_sink *sink);
TS_API ts_status ts_recheck_script_write(const ts_sink *sink);

#endif
