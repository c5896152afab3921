/* report/json_quantity.h: one number of the answer as JSON, with its address and its source. */
#ifndef TS_REPORT_JSON_QUANTITY_H
#define TS_REPORT_JSON_QUANTITY_H

#include "base/json_writer.h"
#include "quantity/quantity.h"
#include "report/answer.h"

/* Program, version, caution, and the file that was read with its hash: how every answer begins. */
void ts_json_head(ts_json *json, const ts_answer *answer);

/* Which number of the answer is meant. */
typedef struct ts_json_place {
    ts_node     node;
    int32_t     condition;
    const char *symbol;
} ts_json_place;

/* {"value", "unit", "symbol", "address", "source"}, in the metric unit in which people see the
 * kind; NaN becomes null with "because". */
void ts_json_quantity(ts_json *json, const ts_answer *answer, double si, ts_kind kind,
                      ts_json_place place);

/* A finite SI value in that unit: the shortest number that means the same, so that 24600 rpm of the
 * file is 24600 and not 24599.999999999996. */
double ts_json_shown(ts_json *json, double si, const ts_unit *unit);

/* "drive/hp/box/clockwise/2:F_t@take-off" */
void ts_json_address(const ts_answer *answer, ts_json_place place, ts_buffer *out);

/* To nine digits, for those beyond hang on the mathematical library; null unless finite. */
void ts_json_rounded(ts_json *json, double value);
void ts_json_rounded_at(ts_json *json, const char *key, double value);

/* Key and address of a node. */
void ts_json_node(ts_json *json, const ts_answer *answer, const char *key, ts_node node);

/* A string that was made in pieces. */
void ts_json_made(ts_json *json, const ts_buffer *made);

#endif
