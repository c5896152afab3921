/* study/stock.h: what lasts from one drive to the next, where many are solved that differ little.
 */
#ifndef TS_STUDY_STOCK_H
#define TS_STUDY_STOCK_H

#include "base/memo.h"
#include "model/source.h"
#include "rating/drive_lines.h"

/* Studies that share it are used by one thread at a time; the last of them closes it. */
typedef struct ts_study_stock ts_study_stock;

/* `depth`: how many drives back a part of a solve is remembered.  NULL: without memory. */
ts_study_stock *ts_stock_open(const ts_allocator *allocator, size_t depth);
ts_study_stock *ts_stock_share(ts_study_stock *stock); /* NULL stays NULL      */
void            ts_stock_leave(ts_study_stock *stock); /* NULL is allowed      */

/* NULL of a study without a stock: nothing is remembered, and the catalogue is opened anew. */
ts_memo          *ts_stock_memo(const ts_study_stock *stock);
ts_lines_catalog *ts_stock_catalog(const ts_study_stock *stock);

/* The tree of the text that was read last, by a study that is still open; NULL: none is. */
const ts_source *ts_stock_tree(const ts_study_stock *stock);
/* It stands until it is taken back, or another takes its place.  NULL stocks take nothing. */
void ts_stock_lend_tree(ts_study_stock *stock, const ts_source *tree);
void ts_stock_take_back(ts_study_stock *stock, const ts_source *tree);

#endif
