/* study/stock.h: what lasts from one drive to the next, where many are solved that differ little.
 */
#ifndef TS_STUDY_STOCK_H
#define TS_STUDY_STOCK_H

#include "base/memo.h"
#include "rating/drive_lines.h"

/* Studies that share it are used by one thread at a time; the last of them closes it. */
typedef struct ts_study_stock ts_study_stock;

ts_study_stock *ts_stock_open(const ts_allocator *allocator); /* NULL: without memory */
ts_study_stock *ts_stock_share(ts_study_stock *stock);        /* NULL stays NULL      */
void            ts_stock_leave(ts_study_stock *stock);        /* NULL is allowed      */

/* NULL of a study without a stock: nothing is remembered, and the catalogue is opened anew. */
ts_memo          *ts_stock_memo(const ts_study_stock *stock);
ts_lines_catalog *ts_stock_catalog(const ts_study_stock *stock);

#endif
