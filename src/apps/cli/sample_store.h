/* apps/cli/sample_store.h: where finished samples are kept: an SQLite file, or memory.
 *
 * Tables about, input, output, finding, sample (docs/study-file.md).  Samples are written in
 * transactions that reach the disk before they count, so that a kill at any instant leaves a whole
 * file with every sample that was told as finished, and none twice.
 */
#ifndef TS_APPS_CLI_SAMPLE_STORE_H
#define TS_APPS_CLI_SAMPLE_STORE_H

#include "apps/cli/command.h"

typedef struct sample_store sample_store;

/* Opens the file, or makes it; `path` NULL keeps all in memory.  NULL with a message on stderr and
 * the exit code when it cannot, or when the file holds something else. */
sample_store *sample_store_open(const char *path, const ts_sampling *sampling, int *exit_code);
void          sample_store_close(sample_store *store); /* NULL is allowed */

/* How many samples are there. */
uint64_t sample_store_count(const sample_store *store);

/* A bit for every sample of the study: is it there?  Bytes of sample_map_length. */
const unsigned char *sample_store_map(const sample_store *store);
size_t               sample_map_length(uint64_t due);

/* Keeps samples, all or none; false with a message. */
bool sample_store_keep(sample_store *store, const ts_sampling_row *rows, size_t count);

/* Reads what there is for ts_sampling_write; good until the store is closed.  False with a message.
 */
bool sample_store_found(sample_store *store, ts_sampling_found *found);

#endif
