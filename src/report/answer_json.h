/* report/answer_json.h: the answer of `check` as JSON, by docs/schema/check.schema.json. */
#ifndef TS_REPORT_ANSWER_JSON_H
#define TS_REPORT_ANSWER_JSON_H

#include "report/json_quantity.h"

void ts_answer_json(const ts_answer *answer, ts_buffer *out);

/* Parts, each in its own file. */
void ts_json_findings(ts_json *json, const ts_answer *answer);
void ts_json_turning(ts_json *json, const ts_answer *answer);  /* shafts, pads   */
void ts_json_carrying(ts_json *json, const ts_answer *answer); /* meshes, spools */
void ts_json_mass(ts_json *json, const ts_answer *answer);
void ts_json_splines(ts_json *json, const ts_answer *answer);                 /* of the pads */
void ts_json_lines(ts_json *json, const ts_answer *answer);                   /* their bearings */
void ts_json_strength(ts_json *json, const ts_answer *answer, uint32_t mesh); /* of a mesh */
void ts_json_bevel_opinion(ts_json *json, const ts_answer *answer, uint32_t mesh);
void ts_json_float(ts_json *json, const ts_answer *answer);                  /* take-offs */
void ts_json_selectivity(ts_json *json, const ts_answer *answer);            /* necks          */
void ts_json_opinion(ts_json *json, const ts_answer *answer, uint32_t mesh); /* the same    */
/* Scuffing, and films where they were asked for. */
void ts_json_rubbing(ts_json *json, const ts_answer *answer, uint32_t mesh);

#endif
