/* support/read_file.h: a whole file, for tests; a test without its file fails. */
#ifndef TS_SUPPORT_READ_FILE_H
#define TS_SUPPORT_READ_FILE_H

#include "base/text.h"

/* The bytes of the file and a zero after them.  The path is relative to the source root, where
 * tests run.  The caller frees `.at` with free_file. */
ts_text read_file(const char *path);
void    free_file(ts_text bytes);

#endif
