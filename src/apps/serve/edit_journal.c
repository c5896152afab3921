/* How is it kept on the disk what was done? */
#include "apps/serve/edit_journal.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <unistd.h>

/* "act 00000123 00000002 00000002 00000017 0123456789abcdef\n", the three texts, "\n" */
#define HEAD_LENGTH 57
#define PART_MOST   (WORKSPACE_FILE_MOST + 1)

static const char *const kind_names[] = {"all", "act", "und", "red"};

/* FNV-1a, 64 bits (from memory; the test holds it to the published values). */
static uint64_t sum_of(uint64_t sum, const char *bytes, size_t length)
{
    for (size_t i = 0; i < length; i++)
        sum = (sum ^ (unsigned char)bytes[i]) * UINT64_C(0x100000001b3);
    return sum;
}

static uint64_t sum_record(const journal_record *record)
{
    char      numbers[64];
    const int size =
        snprintf(numbers, sizeof numbers, "%d %zx %zx %zx %zx", (int)record->kind, record->from,
                 record->gone_length, record->came_length, record->says_length);
    uint64_t sum = sum_of(UINT64_C(0xcbf29ce484222325), numbers, (size_t)size);
    sum          = sum_of(sum, record->gone, record->gone_length);
    sum          = sum_of(sum, record->came, record->came_length);
    return sum_of(sum, record->says, record->says_length);
}

/* ---- reading -------------------------------------------------------------------------------- */

static bool read_hex(const char *at, size_t digits, uint64_t *value)
{
    *value = 0;
    for (size_t i = 0; i < digits; i++) {
        const char byte = at[i];
        const int  one  = byte >= '0' && byte <= '9'   ? byte - '0'
                          : byte >= 'a' && byte <= 'f' ? byte - 'a' + 10
                                                       : -1;
        if (one < 0)
            return false;
        *value = *value * 16 + (uint64_t)one;
    }
    return true;
}

static bool read_kind(const char *at, journal_kind *kind)
{
    for (size_t i = 0; i < sizeof kind_names / sizeof kind_names[0]; i++)
        if (memcmp(at, kind_names[i], 3) == 0) {
            *kind = (journal_kind)i;
            return true;
        }
    return false;
}

/* The bytes of the record at `at`; 0: no whole, sound record stands there. */
static size_t read_record(const char *at, size_t left, journal_record *out)
{
    uint64_t number[4] = {0}, sum;
    if (left < HEAD_LENGTH || !read_kind(at, &out->kind) || at[HEAD_LENGTH - 1] != '\n')
        return 0;
    for (size_t i = 0; i < 4; i++)
        if (at[3 + 9 * i] != ' ' || !read_hex(at + 4 + 9 * i, 8, &number[i]) ||
            number[i] > PART_MOST)
            return 0;
    if (at[39] != ' ' || !read_hex(at + 40, 16, &sum))
        return 0;
    const size_t size = HEAD_LENGTH + (size_t)(number[1] + number[2] + number[3]) + 1;
    if (left < size || at[size - 1] != '\n')
        return 0;
    out->from        = (size_t)number[0];
    out->gone_length = (size_t)number[1];
    out->came_length = (size_t)number[2];
    out->says_length = (size_t)number[3];
    out->gone        = at + HEAD_LENGTH;
    out->came        = out->gone + out->gone_length;
    out->says        = out->came + out->came_length;
    return sum == sum_record(out) ? size : 0;
}

static const char *read_bytes(int file, growing *into)
{
    char block[16384];
    for (;;) {
        const ssize_t got = read(file, block, sizeof block);
        if (got < 0 && errno == EINTR)
            continue;
        if (got < 0)
            return strerror(errno);
        if (got == 0)
            return into->failed ? "out of memory" : NULL;
        growing_add(into, block, (size_t)got);
    }
}

static void visit_all(edit_journal *journal, const growing *bytes, journal_visit visit,
                      void *context)
{
    while (journal->length < bytes->length) {
        journal_record record;
        const size_t   size =
            read_record(bytes->bytes + journal->length, bytes->length - journal->length, &record);
        const bool fits = size > 0 && (record.kind == JOURNAL_BASE) == !journal->begun;
        if (!fits || !visit(context, &record))
            return;
        journal->begun = true;
        journal->length += size;
    }
}

const char *edit_journal_open(edit_journal *journal, const workspace *place, journal_visit visit,
                              void *context)
{
    *journal = (edit_journal){
        .file = workspace_open_file(place, place->journal, O_RDWR | O_CREAT | O_NOFOLLOW, 0600)};
    if (journal->file < 0)
        return strerror(errno);
    if (flock(journal->file, LOCK_EX | LOCK_NB) != 0)
        return "it is open in another towershaft";
    growing     bytes = {0};
    const char *why   = read_bytes(journal->file, &bytes);
    if (why == NULL) {
        visit_all(journal, &bytes, visit, context);
        if (journal->length < bytes.length && ftruncate(journal->file, (off_t)journal->length) != 0)
            why = strerror(errno);
    }
    growing_forget(&bytes);
    return why;
}

bool edit_journal_restart(edit_journal *journal)
{
    journal->length = 0;
    journal->begun  = false;
    return ftruncate(journal->file, 0) == 0 && fsync(journal->file) == 0;
}

/* ---- writing -------------------------------------------------------------------------------- */

static void write_record(growing *out, const journal_record *record)
{
    char head[HEAD_LENGTH + 1];
    snprintf(head, sizeof head, "%s %08zx %08zx %08zx %08zx %016llx\n", kind_names[record->kind],
             record->from, record->gone_length, record->came_length, record->says_length,
             (unsigned long long)sum_record(record));
    growing_add(out, head, HEAD_LENGTH);
    growing_add(out, record->gone, record->gone_length);
    growing_add(out, record->came, record->came_length);
    growing_add(out, record->says, record->says_length);
    growing_add(out, "\n", 1);
}

static bool put_bytes(const edit_journal *journal, const char *bytes, size_t length)
{
    size_t done = 0;
    while (done < length) {
        const ssize_t written =
            pwrite(journal->file, bytes + done, length - done, (off_t)(journal->length + done));
        if (written < 0 && errno == EINTR)
            continue;
        if (written <= 0)
            return false;
        done += (size_t)written;
    }
    return fdatasync(journal->file) == 0;
}

bool edit_journal_add(edit_journal *journal, const journal_record *record)
{
    growing bytes = {0};
    write_record(&bytes, record);
    const bool good = !bytes.failed && put_bytes(journal, bytes.bytes, bytes.length);
    if (good) {
        journal->length += bytes.length;
        journal->begun = true;
    } else {
        (void)!ftruncate(journal->file, (off_t)journal->length);
    }
    growing_forget(&bytes);
    return good;
}

void edit_journal_shorten(edit_journal *journal, size_t length)
{
    journal->length = length;
    (void)!(ftruncate(journal->file, (off_t)length) == 0 && fdatasync(journal->file) == 0);
}

void edit_journal_close(edit_journal *journal)
{
    if (journal->file >= 0)
        close(journal->file);
    journal->file = -1;
}
