/* report/report_chapter.h: the chapters of the report on one drive, for every outlet alike. */
#ifndef TS_REPORT_REPORT_CHAPTER_H
#define TS_REPORT_REPORT_CHAPTER_H

#include "base/manuscript.h"
#include "effect/effect.h"
#include "rating/tooth_data.h"
#include "report/answer.h"
#include "report/oil_report.h"
#include "report/page.h"
#include "report/twist_report.h"

/* What a chapter is written with. */
typedef struct ts_chapter {
    const ts_answer *answer;
    ts_manuscript   *manuscript;
    ts_page          page; /* units and how values are printed; its text goes to `cell` */
    ts_buffer        cell; /* one text being put together                               */
} ts_chapter;

void ts_chapter_open(ts_chapter *chapter, const ts_answer *answer, ts_units units,
                     ts_manuscript *manuscript);
/* Carries failures over to the manuscript. */
void ts_chapter_close(ts_chapter *chapter);

/* Each in its own file, in this order. */
void ts_chapter_summary(ts_chapter *chapter);
void ts_chapter_findings(ts_chapter *chapter);
void ts_chapter_assumptions(ts_chapter *chapter);
void ts_chapter_turning(ts_chapter *chapter); /* speeds, senses, powers */
void ts_chapter_arrangement(ts_chapter *chapter);
void ts_chapter_teeth(ts_chapter *chapter, const ts_tooth_data *data);
void ts_chapter_shafts(ts_chapter *chapter);
void ts_chapter_float(ts_chapter *chapter);
void ts_chapter_heat(ts_chapter *chapter, const ts_oil_answer *oil);
void ts_chapter_necks(ts_chapter *chapter);
void ts_chapter_torsion(ts_chapter *chapter, const ts_twist_answer *twist);
void ts_chapter_mass(ts_chapter *chapter);
void ts_chapter_effects(ts_chapter *chapter, const ts_effects *effects);
void ts_chapter_reserves(ts_chapter *chapter);
void ts_chapter_rules(ts_chapter *chapter);
void ts_chapter_sources(ts_chapter *chapter); /* of the rules; the answer must have its workings */
/* Below a heading of the caller's; the answer must have kept its workings. */
void ts_chapter_all_workings(ts_chapter *chapter);

/* The tables of the terminal page as tables of the manuscript; what each tells must be there. */
void ts_mesh_cells(ts_chapter *chapter);
void ts_strength_cells(ts_chapter *chapter);
void ts_rubbing_cells(ts_chapter *chapter); /* says so when it is not */
void ts_line_cells(ts_chapter *chapter);
void ts_spline_cells(ts_chapter *chapter);
void ts_float_cells(ts_chapter *chapter);
void ts_selectivity_cells(ts_chapter *chapter);
void ts_evidence_cells(ts_chapter *chapter);
void ts_mass_cells(ts_chapter *chapter);

/* Sentences of the terminal page, each a paragraph. */
void ts_chapter_sentences(ts_chapter *chapter,
                          void (*part)(const ts_answer *answer, ts_page *page));

/* A cell from what stands in chapter->cell, or from a text. */
void ts_chapter_cell(ts_chapter *chapter);
void ts_chapter_word(ts_chapter *chapter, const char *text);
/* A value in the unit shown for its kind, without it; "?" when not computable. */
void ts_chapter_value(ts_chapter *chapter, double si, ts_kind kind, int digits);
/* A length of a drawing (m) into chapter->cell: to a micrometre, or 0.00001 in. */
void ts_chapter_fine(ts_chapter *chapter, double si);
/* "address:symbol@condition" into chapter->cell. */
void ts_chapter_place(ts_chapter *chapter, ts_node node, const char *symbol, int32_t condition);
/* "+12.3 %" into chapter->cell. */
void ts_chapter_margin(ts_chapter *chapter, double margin);

#endif
