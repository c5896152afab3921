/* draw/pdf_catalog.c: how does a reader aloud learn that the text is tagged?
 *
 * Cairo 1.16 writes the tree of tags, but not the mark that says so (ISO 32000-1, 14.7.1), nor the
 * language.  Its catalog is the last object, so that words added there move nothing but the table
 * of objects behind it, whose place the end of the file tells.
 */
#include "draw/pdf_catalog.h"

#include <stdlib.h>
#include <string.h>

static const char words[] = "   /MarkInfo << /Marked true >>\n   /Lang (en)\n"
                            "   /ViewerPreferences << /DisplayDocTitle true >>\n";

/* Where `what` stands last in the bytes; NULL: nowhere. */
static const char *last_of(const char *bytes, size_t length, const char *what)
{
    const size_t size = strlen(what);
    for (size_t at = length < size ? 0 : length - size + 1; at-- > 0;)
        if (memcmp(bytes + at, what, size) == 0)
            return bytes + at;
    return NULL;
}

void ts_pdf_tell(const ts_buffer *pdf, ts_buffer *out)
{
    static const char end[] = ">>\nendobj\nxref\n", start[] = "startxref\n";
    const char       *close = last_of(pdf->bytes, pdf->length, end);
    const char       *place = last_of(pdf->bytes, pdf->length, start);
    const char       *after = place != NULL ? strchr(place + sizeof start - 1, '\n') : NULL;
    if (close == NULL || after == NULL) {
        ts_buffer_bytes(out, pdf->bytes, pdf->length);
        return;
    }
    const char  *number = place + sizeof start - 1;
    const size_t table  = (size_t)strtoul(number, NULL, 10) + sizeof words - 1;
    ts_buffer_bytes(out, pdf->bytes, (size_t)(close - pdf->bytes));
    ts_buffer_bytes(out, words, sizeof words - 1);
    ts_buffer_bytes(out, close, (size_t)(number - close));
    ts_buffer_print(out, "%zu", table);
    ts_buffer_bytes(out, after, pdf->length - (size_t)(after - pdf->bytes));
}
