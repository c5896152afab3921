/* apps/serve/launch_key.h: secrets that nobody can guess. */
#ifndef TS_APPS_SERVE_LAUNCH_KEY_H
#define TS_APPS_SERVE_LAUNCH_KEY_H

#include <stdbool.h>
#include <stddef.h>

#define LAUNCH_KEY_DIGITS 64 /* 256 bits */

typedef struct launch_key {
    char text[LAUNCH_KEY_DIGITS + 1]; /* hexadecimal */
} launch_key;

/* From the kernel's generator; false when it gives nothing. */
bool launch_key_make(launch_key *key);

/* Compares in a time that does not depend on where they differ. */
bool launch_key_equal(const char *a, const char *b, size_t length);

#endif
