/* study/stock.c: what lasts from one drive to the next, and until when? */
#include "study/stock.h"

struct ts_study_stock {
    ts_arena         *lasting; /* it stands in it itself */
    ts_memo          *memo;
    ts_lines_catalog *catalog;
    const ts_source  *tree; /* of whoever lent it */
    size_t            users;
};

ts_study_stock *ts_stock_open(const ts_allocator *allocator, size_t depth)
{
    ts_arena       *lasting = ts_arena_open(allocator);
    ts_study_stock *stock   = lasting != NULL ? TS_TAKE(lasting, ts_study_stock, 1) : NULL;

    if (stock == NULL) {
        ts_arena_close(lasting);
        return NULL;
    }
    *stock = (ts_study_stock){lasting, ts_memo_open(allocator, depth),
                              ts_lines_catalog_open(lasting), NULL, 1};
    if (stock->memo != NULL && stock->catalog != NULL)
        return stock;
    ts_stock_leave(stock);
    return NULL;
}

ts_study_stock *ts_stock_share(ts_study_stock *stock)
{
    if (stock != NULL)
        stock->users++;
    return stock;
}

void ts_stock_leave(ts_study_stock *stock)
{
    if (stock == NULL || --stock->users > 0)
        return;
    ts_memo_close(stock->memo);
    ts_arena_close(stock->lasting);
}

ts_memo *ts_stock_memo(const ts_study_stock *stock)
{
    return stock != NULL ? stock->memo : NULL;
}

ts_lines_catalog *ts_stock_catalog(const ts_study_stock *stock)
{
    return stock != NULL ? stock->catalog : NULL;
}

const ts_source *ts_stock_tree(const ts_study_stock *stock)
{
    return stock != NULL ? stock->tree : NULL;
}

void ts_stock_lend_tree(ts_study_stock *stock, const ts_source *tree)
{
    if (stock != NULL)
        stock->tree = tree;
}

void ts_stock_take_back(ts_study_stock *stock, const ts_source *tree)
{
    if (stock != NULL && stock->tree == tree)
        stock->tree = NULL;
}
