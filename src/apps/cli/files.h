/* apps/cli/files.h: bytes in, bytes out, with the reason when it fails. */
#ifndef TS_APPS_CLI_FILES_H
#define TS_APPS_CLI_FILES_H

#include "apps/cli/command.h"

#include <stdio.h>

typedef struct file_bytes {
    char  *bytes;
    size_t length;
} file_bytes;

/* Reads a whole file ("-" is standard input), at most a little more than the notation allows.
 * False with a message on stderr; then *exit_code says which. */
bool file_read(const char *path, file_bytes *out, int *exit_code);
void file_forget(file_bytes *file);

/* Collects what a writer sends. */
typedef struct collector {
    char  *bytes;
    size_t length, room;
} collector;
ts_sink collector_sink(collector *into);
void    collector_forget(collector *into);

/* Sends what was collected to standard output, or whole or not at all to the file of -o. */
int output_deliver(const arguments *given, const collector *from);

/* Sends it to standard output, whatever -o says; EXIT_FAULT with a message when it cannot. */
int output_send(const collector *from);

/* The exit code at the very end: what was printed without asking may still be lost.  EXIT_FAULT
 * stays as it is, for whoever gave it has said why. */
int output_end(int code);

/* Saves bytes at `path` whole or not at all; EXIT_FAULT with a message when it cannot. */
int file_save(const char *path, const char *bytes, size_t length);

/* "pdf" of "out/report.pdf"; NULL when the name has no ending, or is none. */
const char *file_ending(const char *path);

/* Says why a call could not be done, and gives the exit code. */
int complain(const ts_study *study, ts_status status, bool json);

#endif
