/* draw/dxf_frame.c: which tables does a reader of DXF files want to find round the shapes?
 *
 * The least that the published DXF reference for release 2000 asks for (from memory): header,
 * classes, nine tables, the blocks of the two spaces, and the dictionary of named objects.
 */
#include "draw/dxf_frame.h"

#include <math.h>

/* ---- header ------------------------------------------------------------------------------- */

static void corner(ts_buffer *out, const char *name, double x, double y)
{
    ts_buffer_print(out, "  9\n%s\n 10\n", name);
    ts_buffer_number(out, x);
    ts_buffer_add(out, "\n 20\n");
    ts_buffer_number(out, y);
    ts_buffer_add(out, "\n 30\n0\n");
}

/* $INSUNITS: 1 inches, 4 millimetres; $MEASUREMENT: 0 line types in inches, 1 in millimetres. */
static void header(const ts_dxf *dxf, double left, double low, double right, double high)
{
    const bool us  = dxf->units == TS_UNITS_US;
    ts_buffer *out = dxf->out;
    ts_buffer_print(out,
                    "  0\nSECTION\n  2\nHEADER\n  9\n$ACADVER\n  1\nAC1015\n  9\n$DWGCODEPAGE\n"
                    "  3\nANSI_1252\n  9\n$INSUNITS\n 70\n%d\n  9\n$MEASUREMENT\n 70\n%d\n",
                    us ? 1 : 4, us ? 0 : 1);
    ts_buffer_print(out, "  9\n$LTSCALE\n 40\n%s\n  9\n$LUNITS\n 70\n2\n  9\n$LUPREC\n 70\n4\n",
                    us ? "0.0393701" : "1");
    corner(out, "$EXTMIN", left, low);
    corner(out, "$EXTMAX", right, high);
    ts_buffer_add(out, "  9\n$HANDSEED\n");
    ts_dxf_handle(out, 5, dxf->handle);
    ts_buffer_add(out, "  0\nENDSEC\n");
}

static void classes(ts_buffer *out)
{
    static const char *const names[][2] = {{"ACDBDICTIONARYWDFLT", "AcDbDictionaryWithDefault"},
                                           {"ACDBPLACEHOLDER", "AcDbPlaceHolder"}};
    ts_buffer_add(out, "  0\nSECTION\n  2\nCLASSES\n");
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++)
        ts_buffer_print(out,
                        "  0\nCLASS\n  1\n%s\n  2\n%s\n  3\nObjectDBX Classes\n 90\n0\n280\n0\n"
                        "281\n0\n",
                        names[i][0], names[i][1]);
    ts_buffer_add(out, "  0\nENDSEC\n");
}

/* ---- tables ------------------------------------------------------------------------------- */

enum {
    TABLE_VPORT     = 0x1,
    TABLE_LINE      = 0x2,
    TABLE_LAYER     = 0x3,
    TABLE_STYLE     = 0x4,
    TABLE_VIEW      = 0x5,
    TABLE_UCS       = 0x6,
    TABLE_APPID     = 0x7,
    TABLE_DIMSTYLE  = 0x8,
    TABLE_BLOCK     = 0x9,
    OBJECTS_ROOT    = 0xA,
    OBJECTS_GROUP   = 0xB,
    OBJECTS_STYLES  = 0xC,
    OBJECTS_PLAIN   = 0xD,
    RECORD_VPORT    = 0xE,
    RECORD_STYLE    = 0xF,
    RECORD_APPID    = 0x10,
    RECORD_DIMSTYLE = 0x11,
    RECORD_LINE     = 0x12, /* and the five after it */
    BLOCK_PAPER     = 0x1C,
    BLOCK_PAPER_END = 0x1D,
    BLOCK_MODEL     = 0x20,
    BLOCK_MODEL_END = 0x21,
    RECORD_LAYER_0  = 0x30,
    RECORD_LAYER    = 0x31 /* and those after it */
};

static void table(ts_buffer *out, const char *name, uint32_t handle, int records)
{
    ts_buffer_print(out, "  0\nTABLE\n  2\n%s\n", name);
    ts_dxf_handle(out, 5, handle);
    ts_dxf_handle(out, 330, 0);
    ts_buffer_print(out, "100\nAcDbSymbolTable\n 70\n%d\n", records);
}

static void table_end(ts_buffer *out)
{
    ts_buffer_add(out, "  0\nENDTAB\n");
}

static void record(ts_buffer *out, const char *kind, uint32_t handle, uint32_t owner,
                   const char *class)
{
    ts_buffer_print(out, "  0\n%s\n", kind);
    ts_dxf_handle(out, 5, handle);
    ts_dxf_handle(out, 330, owner);
    ts_buffer_print(out, "100\nAcDbSymbolTableRecord\n100\n%s\n", class);
}

static void line_type(ts_buffer *out, uint32_t handle, const char *name, const char *strokes)
{
    record(out, "LTYPE", handle, TABLE_LINE, "AcDbLinetypeTableRecord");
    ts_buffer_print(out, "  2\n%s\n 70\n0\n  3\n\n 72\n65\n%s", name, strokes);
}

/* Strokes and gaps in mm as in data/look.json: hidden, chain and phantom lines of ISO 128-2. */
static void line_types(ts_buffer *out)
{
    table(out, "LTYPE", TABLE_LINE, 6);
    line_type(out, RECORD_LINE, "BYBLOCK", " 73\n0\n 40\n0\n");
    line_type(out, RECORD_LINE + 1, "BYLAYER", " 73\n0\n 40\n0\n");
    line_type(out, RECORD_LINE + 2, "CONTINUOUS", " 73\n0\n 40\n0\n");
    line_type(out, RECORD_LINE + 3, "HIDDEN",
              " 73\n2\n 40\n4.5\n 49\n3\n 74\n0\n 49\n-1.5\n 74\n0\n");
    line_type(out, RECORD_LINE + 4, "CHAIN",
              " 73\n4\n 40\n12.6\n 49\n9\n 74\n0\n 49\n-1.5\n 74\n0\n 49\n0.6\n 74\n0\n"
              " 49\n-1.5\n 74\n0\n");
    line_type(out, RECORD_LINE + 5, "PHANTOM",
              " 73\n6\n 40\n14.7\n 49\n9\n 74\n0\n 49\n-1.5\n 74\n0\n 49\n0.6\n 74\n0\n"
              " 49\n-1.5\n 74\n0\n 49\n0.6\n 74\n0\n 49\n-1.5\n 74\n0\n");
    table_end(out);
}

static void layer_end(ts_buffer *out)
{
    ts_dxf_handle(out, 390, OBJECTS_PLAIN);
}

static void layers(ts_buffer *out)
{
    table(out, "LAYER", TABLE_LAYER, TS_DXF_LAYERS + 1);
    record(out, "LAYER", RECORD_LAYER_0, TABLE_LAYER, "AcDbLayerTableRecord");
    ts_buffer_add(out, "  2\n0\n 70\n0\n 62\n7\n  6\nCONTINUOUS\n");
    layer_end(out);
    for (int layer = 0; layer < TS_DXF_LAYERS; layer++) {
        record(out, "LAYER", RECORD_LAYER + (uint32_t)layer, TABLE_LAYER, "AcDbLayerTableRecord");
        ts_dxf_layer_record(out, (ts_dxf_layer)layer);
        layer_end(out);
    }
    table_end(out);
}

/* What is seen when the file is opened: all of it. */
static void viewport(const ts_dxf *dxf, double left, double low, double right, double high)
{
    ts_buffer   *out  = dxf->out;
    const double wide = fmax(right - left, 1.0), tall = fmax(high - low, 1.0);
    const double shape = 1.5;
    table(out, "VPORT", TABLE_VPORT, 1);
    record(out, "VPORT", RECORD_VPORT, TABLE_VPORT, "AcDbViewportTableRecord");
    ts_buffer_add(out, "  2\n*ACTIVE\n 70\n0\n 10\n0\n 20\n0\n 11\n1\n 21\n1\n 12\n");
    ts_buffer_number(out, 0.5 * (left + right));
    ts_buffer_add(out, "\n 22\n");
    ts_buffer_number(out, 0.5 * (low + high));
    ts_buffer_add(out, "\n 40\n");
    ts_buffer_number(out, 1.1 * fmax(tall, wide / shape));
    ts_buffer_add(out, "\n 41\n1.5\n 42\n50\n 43\n0\n 44\n0\n 50\n0\n 51\n0\n 71\n0\n 72\n1000\n"
                       " 73\n1\n 74\n3\n 75\n0\n 76\n0\n 77\n0\n 78\n0\n");
    table_end(out);
}

static void other_tables(ts_buffer *out)
{
    table(out, "STYLE", TABLE_STYLE, 1);
    record(out, "STYLE", RECORD_STYLE, TABLE_STYLE, "AcDbTextStyleTableRecord");
    ts_buffer_add(out, "  2\nSTANDARD\n 70\n0\n 40\n0\n 41\n1\n 50\n0\n 71\n0\n 42\n2.5\n"
                       "  3\ntxt\n  4\n\n");
    table_end(out);
    table(out, "VIEW", TABLE_VIEW, 0);
    table_end(out);
    table(out, "UCS", TABLE_UCS, 0);
    table_end(out);
    table(out, "APPID", TABLE_APPID, 1);
    record(out, "APPID", RECORD_APPID, TABLE_APPID, "AcDbRegAppTableRecord");
    ts_buffer_add(out, "  2\nACAD\n 70\n0\n");
    table_end(out);
    table(out, "DIMSTYLE", TABLE_DIMSTYLE, 1);
    ts_buffer_add(out, "100\nAcDbDimStyleTable\n  0\nDIMSTYLE\n");
    ts_dxf_handle(out, 105, RECORD_DIMSTYLE);
    ts_dxf_handle(out, 330, TABLE_DIMSTYLE);
    ts_buffer_add(out, "100\nAcDbSymbolTableRecord\n100\nAcDbDimStyleTableRecord\n"
                       "  2\nSTANDARD\n 70\n0\n");
    table_end(out);
}

/* ---- the two spaces ----------------------------------------------------------------------- */

static void space_records(ts_buffer *out)
{
    table(out, "BLOCK_RECORD", TABLE_BLOCK, 2);
    record(out, "BLOCK_RECORD", TS_DXF_MODEL_SPACE, TABLE_BLOCK, "AcDbBlockTableRecord");
    ts_buffer_add(out, "  2\n*Model_Space\n");
    record(out, "BLOCK_RECORD", TS_DXF_PAPER_SPACE, TABLE_BLOCK, "AcDbBlockTableRecord");
    ts_buffer_add(out, "  2\n*Paper_Space\n");
    table_end(out);
}

static void space_block(ts_buffer *out, const char *name, uint32_t space, uint32_t handle,
                        bool paper)
{
    const char *on_paper = paper ? " 67\n1\n" : "";
    ts_buffer_add(out, "  0\nBLOCK\n");
    ts_dxf_handle(out, 5, handle);
    ts_dxf_handle(out, 330, space);
    ts_buffer_print(out,
                    "100\nAcDbEntity\n%s  8\n0\n100\nAcDbBlockBegin\n  2\n%s\n 70\n0\n 10\n0\n"
                    " 20\n0\n 30\n0\n  3\n%s\n  1\n\n  0\nENDBLK\n",
                    on_paper, name, name);
    ts_dxf_handle(out, 5, handle + 1);
    ts_dxf_handle(out, 330, space);
    ts_buffer_print(out, "100\nAcDbEntity\n%s  8\n0\n100\nAcDbBlockEnd\n", on_paper);
}

void ts_dxf_head(const ts_dxf *dxf, double left, double low, double right, double high)
{
    ts_buffer *out = dxf->out;
    header(dxf, left, low, right, high);
    classes(out);
    ts_buffer_add(out, "  0\nSECTION\n  2\nTABLES\n");
    viewport(dxf, left, low, right, high);
    line_types(out);
    layers(out);
    other_tables(out);
    space_records(out);
    ts_buffer_add(out, "  0\nENDSEC\n  0\nSECTION\n  2\nBLOCKS\n");
    space_block(out, "*Model_Space", TS_DXF_MODEL_SPACE, BLOCK_MODEL, false);
    space_block(out, "*Paper_Space", TS_DXF_PAPER_SPACE, BLOCK_PAPER, true);
    ts_buffer_add(out, "  0\nENDSEC\n");
}

static void dictionary(ts_buffer *out, const char *kind, uint32_t handle, uint32_t owner)
{
    ts_buffer_print(out, "  0\n%s\n", kind);
    ts_dxf_handle(out, 5, handle);
    ts_dxf_handle(out, 330, owner);
    ts_buffer_add(out, "100\nAcDbDictionary\n281\n1\n");
}

void ts_dxf_foot(ts_buffer *out)
{
    ts_buffer_add(out, "  0\nSECTION\n  2\nOBJECTS\n");
    dictionary(out, "DICTIONARY", OBJECTS_ROOT, 0);
    ts_buffer_add(out, "  3\nACAD_GROUP\n");
    ts_dxf_handle(out, 350, OBJECTS_GROUP);
    ts_buffer_add(out, "  3\nACAD_PLOTSTYLENAME\n");
    ts_dxf_handle(out, 350, OBJECTS_STYLES);
    dictionary(out, "DICTIONARY", OBJECTS_GROUP, OBJECTS_ROOT);
    dictionary(out, "ACDBDICTIONARYWDFLT", OBJECTS_STYLES, OBJECTS_ROOT);
    ts_buffer_add(out, "  3\nNormal\n");
    ts_dxf_handle(out, 350, OBJECTS_PLAIN);
    ts_buffer_add(out, "100\nAcDbDictionaryWithDefault\n");
    ts_dxf_handle(out, 340, OBJECTS_PLAIN);
    ts_buffer_add(out, "  0\nACDBPLACEHOLDER\n");
    ts_dxf_handle(out, 5, OBJECTS_PLAIN);
    ts_dxf_handle(out, 330, OBJECTS_STYLES);
    ts_buffer_add(out, "  0\nENDSEC\n  0\nEOF\n");
}
