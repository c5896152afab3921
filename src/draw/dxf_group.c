/* draw/dxf_group.c: which layers has a DXF file, and how does it write a handle? */
#include "draw/dxf_group.h"

/* Colours are of the index that every reader knows; widths are of ISO 128-2, hundredths of mm. */
static const struct {
    const char *name, *line;
    int         colour, width;
} layers[TS_DXF_LAYERS] = {
    [TS_DXF_CASING]     = {"ENGINE-CASING", "CONTINUOUS", 8, 50},
    [TS_DXF_COWL]       = {"COWL-LINE", "PHANTOM", 1, 35},
    [TS_DXF_KEEP_OUT]   = {"KEEP-OUT", "HIDDEN", 1, 35},
    [TS_DXF_ARC]        = {"ARC-OF-AXES", "CHAIN", 8, 18},
    [TS_DXF_BOX]        = {"BOX-WALL", "CONTINUOUS", 7, 35},
    [TS_DXF_AXIS]       = {"AXES", "CHAIN", 7, 18},
    [TS_DXF_TIP]        = {"GEAR-TIP", "CONTINUOUS", 7, 35},
    [TS_DXF_PITCH]      = {"GEAR-PITCH", "CHAIN", 5, 18},
    [TS_DXF_ROOT]       = {"GEAR-ROOT", "CONTINUOUS", 8, 18},
    [TS_DXF_BEVEL]      = {"BEVEL-GEAR", "CONTINUOUS", 7, 35},
    [TS_DXF_TOWER]      = {"RADIAL-SHAFT", "CONTINUOUS", 7, 35},
    [TS_DXF_SHAFT]      = {"SHAFT", "CONTINUOUS", 7, 35},
    [TS_DXF_BODY_FRONT] = {"BODY-FRONT", "CONTINUOUS", 4, 25},
    [TS_DXF_BODY_REAR]  = {"BODY-REAR", "CONTINUOUS", 3, 25},
    [TS_DXF_WORDS]      = {"WORDS", "CONTINUOUS", 7, 18},
    [TS_DXF_SIZES]      = {"DIMENSIONS", "CONTINUOUS", 8, 18},
    [TS_DXF_SHEET]      = {"TITLE", "CONTINUOUS", 7, 18},
    [TS_DXF_REFERENCE]  = {"REFERENCE-100MM", "CONTINUOUS", 6, 35},
};

const char *ts_dxf_layer_name(ts_dxf_layer layer)
{
    return layers[layer].name;
}

void ts_dxf_layer_record(ts_buffer *out, ts_dxf_layer layer)
{
    ts_buffer_print(out, "  2\n%s\n 70\n0\n 62\n%d\n  6\n%s\n370\n%d\n", layers[layer].name,
                    layers[layer].colour, layers[layer].line, layers[layer].width);
}

void ts_dxf_hex(ts_buffer *out, uint32_t value, int digits)
{
    static const char marks[] = "0123456789ABCDEF";
    for (int d = digits > 0 ? digits : 8; d-- > 0;)
        if (digits > 0 || d == 0 || value >> 4 * d != 0)
            ts_buffer_bytes(out, &marks[value >> 4 * d & 15], 1);
}

void ts_dxf_handle(ts_buffer *out, int code, uint32_t handle)
{
    ts_buffer_print(out, "%s%d\n", code < 10 ? "  " : "", code);
    ts_dxf_hex(out, handle, 0);
    ts_buffer_add(out, "\n");
}
