/* draw/pdf_catalog.h: what a PDF says of itself beyond what cairo writes. */
#ifndef TS_DRAW_PDF_CATALOG_H
#define TS_DRAW_PDF_CATALOG_H

#include "base/buffer.h"

/* A copy of `pdf` in `out` whose catalog says that its text is tagged, in English, and that a
 * reader shows its title; the same bytes where the catalog is not the last object. */
void ts_pdf_tell(const ts_buffer *pdf, ts_buffer *out);

#endif
