/* apps/serve/serve.h: the workbench: one file, one local page. */
#ifndef TS_APPS_SERVE_SERVE_H
#define TS_APPS_SERVE_SERVE_H

#include <stdbool.h>

typedef struct serve_options {
    const char *path;
    unsigned    port;    /* 0: any that is free                      */
    bool        browser; /* ask the desktop to open the page          */
} serve_options;

/* Opens the file, prints the address of the page, and answers until a signal (INT, TERM, HUP) or
 * the page ends it.  0, or 2 when the file or the port cannot be had, or 3 on a fault of the
 * machine. */
int serve_run(const serve_options *options);

#endif
