/* Which libraries draw, and which font do they really find? */
#include "draw/picture_library.h"

#include "draw/look.h"

#include <cairo.h>
#include <pango/pangocairo.h>
#include <stdio.h>
#include <string.h>

const char *ts_cairo_version(void)
{
    return cairo_version_string();
}

const char *ts_pango_version(void)
{
    return pango_version_string();
}

bool ts_picture_font(char *family, size_t room)
{
    PangoFontMap         *map     = pango_cairo_font_map_new();
    PangoContext         *context = pango_font_map_create_context(map);
    PangoFontDescription *wanted  = pango_font_description_from_string(TS_LOOK_TYPE_FAMILY_TEXT);
    PangoFont            *found   = pango_font_map_load_font(map, context, wanted);
    PangoFontDescription *taken   = found != NULL ? pango_font_describe(found) : NULL;
    const char           *name = taken != NULL ? pango_font_description_get_family(taken) : "none";
    snprintf(family, room, "%s", name);
    const bool right = strcmp(name, TS_LOOK_TYPE_FAMILY_TEXT) == 0;
    pango_font_description_free(taken);
    if (found != NULL)
        g_object_unref(found);
    pango_font_description_free(wanted);
    g_object_unref(context);
    g_object_unref(map);
    return right;
}
