/* base/zip.c: how do several files stand in one? */
#include "base/zip.h"

#include "base/assert.h"

#include <string.h>

/* Polynomial 0xEDB88320, bits turned round; a byte at a time without a table. */
uint32_t ts_crc32(const char *bytes, size_t length)
{
    uint32_t sum = UINT32_MAX;
    for (size_t i = 0; i < length; i++) {
        sum ^= (unsigned char)bytes[i];
        for (int bit = 0; bit < 8; bit++)
            sum = sum >> 1 ^ (sum & 1 ? UINT32_C(0xEDB88320) : 0);
    }
    return ~sum;
}

static void put(ts_buffer *out, uint32_t value, int bytes)
{
    for (int i = 0; i < bytes; i++) {
        const char one = (char)(value >> 8 * i & 0xFF);
        ts_buffer_bytes(out, &one, 1);
    }
}

/* What stands alike before a file and in the list at the end: version 2.0, no flags, not
 * compressed, midnight of the first of January 1980. */
static void put_facts(ts_zip *zip, size_t i)
{
    put(zip->out, 20, 2);
    put(zip->out, 0, 2);
    put(zip->out, 0, 2);
    put(zip->out, 0, 2);
    put(zip->out, 0x0021, 2);
    put(zip->out, zip->sum[i], 4);
    put(zip->out, zip->length[i], 4);
    put(zip->out, zip->length[i], 4);
    put(zip->out, (uint32_t)strlen(zip->name[i]), 2);
    put(zip->out, 0, 2);
}

void ts_zip_begin(ts_zip *zip, ts_buffer *out)
{
    *zip = (ts_zip){.out = out};
}

void ts_zip_add(ts_zip *zip, const char *name, const ts_buffer *file)
{
    const size_t i = zip->count++;
    TS_ASSERT(i < TS_ZIP_FILES_MOST);
    TS_ASSERT(zip->out->length + file->length < UINT32_MAX);
    const char *bytes = file->bytes != NULL ? file->bytes : "";
    zip->name[i]      = name;
    zip->sum[i]       = ts_crc32(bytes, file->length);
    zip->length[i]    = (uint32_t)file->length;
    zip->at[i]        = (uint32_t)zip->out->length;
    put(zip->out, 0x04034B50, 4);
    put_facts(zip, i);
    ts_buffer_add(zip->out, name);
    ts_buffer_bytes(zip->out, bytes, file->length);
    zip->out->failed = zip->out->failed || file->failed;
}

void ts_zip_finish(ts_zip *zip)
{
    const uint32_t begin = (uint32_t)zip->out->length;
    for (size_t i = 0; i < zip->count; i++) {
        put(zip->out, 0x02014B50, 4);
        put(zip->out, 20, 2);
        put_facts(zip, i);
        put(zip->out, 0, 2);
        put(zip->out, 0, 2);
        put(zip->out, 0, 2);
        put(zip->out, 0, 4);
        put(zip->out, zip->at[i], 4);
        ts_buffer_add(zip->out, zip->name[i]);
    }
    const uint32_t size = (uint32_t)zip->out->length - begin;
    put(zip->out, 0x06054B50, 4);
    put(zip->out, 0, 4);
    put(zip->out, (uint32_t)zip->count, 2);
    put(zip->out, (uint32_t)zip->count, 2);
    put(zip->out, size, 4);
    put(zip->out, begin, 4);
    put(zip->out, 0, 2);
}
