/* base/zip.h: several files in one, as they stand (ZIP without compression).
 *
 * APPNOTE 6.3 of the format, method 0 (from memory).  Every file has the same date, so that the
 * same files give the same bytes.  At most 64 files and 4 GB, both asserted.
 */
#ifndef TS_BASE_ZIP_H
#define TS_BASE_ZIP_H

#include "base/buffer.h"

#define TS_ZIP_FILES_MOST 64

typedef struct ts_zip {
    ts_buffer  *out;
    const char *name[TS_ZIP_FILES_MOST]; /* not copied */
    uint32_t    sum[TS_ZIP_FILES_MOST], length[TS_ZIP_FILES_MOST], at[TS_ZIP_FILES_MOST];
    size_t      count;
} ts_zip;

void ts_zip_begin(ts_zip *zip, ts_buffer *out);
/* `name` in ASCII with slashes; it must live until the end.  A failed buffer fails `out`. */
void ts_zip_add(ts_zip *zip, const char *name, const ts_buffer *file);
void ts_zip_finish(ts_zip *zip);

/* The check sum of ISO 3309, as ZIP and PNG have it. */
uint32_t ts_crc32(const char *bytes, size_t length);

#endif
