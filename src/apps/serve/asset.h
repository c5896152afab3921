/* apps/serve/asset.h: the files of the page, which the program carries inside itself. */
#ifndef TS_APPS_SERVE_ASSET_H
#define TS_APPS_SERVE_ASSET_H

#include <stddef.h>

typedef struct asset {
    const char          *path; /* "/page.js" */
    const char          *says;
    const unsigned char *bytes;
    size_t               length;
} asset;

/* By the path of a request; "/" is not among them.  NULL: there is none. */
const asset *asset_find(const char *path, size_t length);
/* The page itself. */
const asset *asset_page(void);
/* "text/javascript; charset=utf-8" */
const char *asset_kind(const asset *one);

#endif
