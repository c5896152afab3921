/* report/effects_report.h: what stops when a part fails, for people and as JSON. */
#ifndef TS_REPORT_EFFECTS_REPORT_H
#define TS_REPORT_EFFECTS_REPORT_H

#include "base/json_writer.h"
#include "effect/effect.h"
#include "report/answer.h"
#include "report/page.h"
#include "report/report_chapter.h"

/* The whole matrix and the causes of every effect. */
void ts_effects_page(const ts_effects *effects, const ts_answer *answer, ts_page *page);
/* What is told, and how. */
extern const ts_column ts_effects_card_columns[2];
/* One part in all its modes, as at `condition`: a card for who maintains the engine. */
void ts_effects_card(const ts_effects *effects, ts_failing of, uint32_t at, uint32_t condition,
                     ts_chapter *chapter);
/* Paragraphs of certification rules, what bears on them, and with which reserves. */
void ts_evidence_page(const ts_answer *answer, ts_page *page);
void ts_evidence_json(ts_json *json, const ts_answer *answer);
void ts_effects_json(const ts_effects *effects, const ts_answer *answer, ts_buffer *out);

/* Ways in which parts cannot fail, each with its reason; of one part alone. */
void ts_effects_lacks_page(const ts_effects *effects, ts_page *page);
void ts_effects_lacks_card(const ts_effects *effects, ts_failing of, uint32_t at,
                           ts_chapter *chapter);
void ts_effects_lacks_cells(const ts_effects *effects, ts_chapter *chapter);
void ts_effects_lacks_json(ts_json *json, const ts_effects *effects, const ts_answer *answer);
/* Gears whose chips may pass no plug. */
void ts_effects_blind_page(const ts_effects *effects, ts_page *page);

/* ---- words ----------------------------------------------------------------------------------- */

/* "hp spool > hp tower shaft", "idler 3", "shaft of generator", "generator", "cover on idler 3,
 * rear": no two parts have the same. */
void    ts_effects_part(const ts_effects *effects, ts_failing of, uint32_t at, ts_buffer *out);
ts_node ts_effects_node(const ts_effects *effects, ts_failure failure);
/* "engine stops", "no start", "main bus lost", ...: for the matrix. */
void ts_effects_brief(const ts_effects *effects, const ts_outcome *outcome, ts_buffer *out);
/* What it means for the engine, and what the authorities' rules call it. */
void ts_effects_class(const ts_effects *effects, const ts_outcome *outcome, ts_buffer *out);
/* What the crew or who maintains the engine would see. */
void ts_effects_seen(const ts_effects *effects, ts_failure failure, const ts_outcome *outcome,
                     ts_buffer *out);
/* "metal at the chip plug in the lines fore, aft of the sump gearbox" */
void ts_chip_way_words(const ts_drive *drive, const ts_chip_way *way, ts_buffer *out);
void ts_effects_metal(const ts_effects *effects, ts_failure failure, ts_buffer *out);
/* "generator, breather": what suffers so much; "none". */
void ts_effects_pads(const ts_effects *effects, const ts_outcome *outcome, ts_goes goes,
                     ts_buffer *out);
/* "the neck of generator breaks"; false: which part, is not known, and it says so. */
bool ts_effects_breaks(const ts_effects *effects, const ts_breakage *broken, ts_buffer *out);
void ts_effects_effect(const ts_effect *effect, ts_buffer *out); /* "the engine stops" */

#endif
