/* Which files make the page? */
#include "apps/serve/asset.h"

#include <string.h>

typedef asset embedded_file;

#include "page_files.inc"

#define COUNT (sizeof embedded_files / sizeof embedded_files[0])

const asset *asset_find(const char *path, size_t length)
{
    for (size_t i = 0; i < COUNT; i++)
        if (strlen(embedded_files[i].path) == length &&
            memcmp(embedded_files[i].path, path, length) == 0)
            return &embedded_files[i];
    return NULL;
}

const asset *asset_page(void)
{
    return asset_find("/index.html", strlen("/index.html"));
}

const char *asset_kind(const asset *one)
{
    static const struct {
        const char *ending, *kind;
    } kinds[] = {
        {".html", "text/html; charset=utf-8"},
        {".js", "text/javascript; charset=utf-8"},
        {".css", "text/css; charset=utf-8"},
        {".otf", "font/otf"},
        {".svg", "image/svg+xml"},
        {".txt", "text/plain; charset=utf-8"},
    };
    const char *dot = strrchr(one->path, '.');
    for (size_t i = 0; dot != NULL && i < sizeof kinds / sizeof kinds[0]; i++)
        if (strcmp(dot, kinds[i].ending) == 0)
            return kinds[i].kind;
    return "application/octet-stream";
}
