/* How is the page made that a caller asks for? */
#include "study/outlet.h"

ts_page ts_outlet_page(const ts_page_options *options, ts_buffer *out)
{
    const int columns = options == NULL || options->columns == 0 ? 100 : options->columns;
    return (ts_page){
        .out     = out,
        .columns = columns < 60 ? 60 : (columns > 400 ? 400 : columns),
        .colour  = options != NULL && options->colour,
        .all     = options != NULL && options->all,
        .units   = options != NULL && options->us ? TS_UNITS_US : TS_UNITS_METRIC,
    };
}
