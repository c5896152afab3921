/* How does a spreadsheet get every number of the answer? */
#include "report/results.h"

#include "base/zip.h"
#include "report/answer_json.h"
#include "report/json_quantity.h"
#include "report/page.h"
#include "report/result_cells.h"

#include <math.h>
#include <string.h>

typedef struct writer {
    const ts_answer *answer;
    ts_units         units;
    ts_cells         cells;
    ts_buffer        text;      /* of one cell                                */
    bool             one_table; /* results have the columns of judgements too */
} writer;

/* What was put together in w->text, as a word or as digits. */
static void put_made(writer *w, bool digits)
{
    const char *text = w->text.bytes != NULL && w->text.length > 0 ? w->text.bytes : "";
    if (digits)
        w->cells.number(&w->cells, text);
    else
        w->cells.word(&w->cells, text);
    w->cells.out->failed = w->cells.out->failed || w->text.failed;
    ts_buffer_clear(&w->text);
}

static void word(writer *w, const char *text)
{
    w->cells.word(&w->cells, text != NULL ? text : "");
}

/* The shortest number that means the same in this unit. */
static void put_number(writer *w, double si, const ts_unit *unit)
{
    const bool is_si = unit == NULL || unit == ts_kind_si(unit->kind);
    if (isfinite(si) && is_si)
        ts_buffer_number(&w->text, si);
    else if (isfinite(si))
        ts_quantity_print(&w->text, si, unit);
    if (!w->text.failed && w->text.length > 0) /* without the unit */
        w->text.bytes[strcspn(w->text.bytes, " ")] = '\0';
    put_made(w, true);
}

static void place(writer *w, ts_node node, const char *symbol, int32_t condition)
{
    ts_source_address(w->answer->source, node, &w->text);
    put_made(w, false);
    word(w, symbol);
    word(w, condition >= 0 ? ts_answer_condition(w->answer, condition) : NULL);
}

static void hear(void *context, double si, ts_kind kind, ts_node node, const char *symbol,
                 int32_t condition)
{
    writer        *w    = context;
    const ts_unit *unit = ts_kind_shown(kind, w->units);
    place(w, node, symbol, condition);
    put_number(w, si, unit);
    word(w, unit != NULL ? unit->name : NULL);
    if (w->one_table) {
        for (int i = 0; i < 3; i++)
            word(w, NULL);
        word(w, "result");
    }
    w->cells.end_row(&w->cells);
}

static void judgement(writer *w, const ts_judgement *one)
{
    const ts_unit *si    = one->unit != NULL ? ts_unit_named_any(ts_text_of(one->unit)) : NULL;
    const bool     is_si = si != NULL && si == ts_kind_si(si->kind);
    const ts_unit *unit  = is_si ? ts_kind_shown(si->kind, w->units) : NULL;
    place(w, one->node, one->symbol, one->condition);
    put_number(w, one->value, unit);
    word(w, unit != NULL ? unit->name : one->unit);
    put_number(w, one->limit, unit);
    put_number(w, one->margin, NULL);
    word(w, one->rule);
    word(w, one->passed ? "passed" : "not passed");
    w->cells.end_row(&w->cells);
}

static void heads(writer *w, bool judged)
{
    static const char *const names[] = {"address", "symbol", "condition", "value", "unit",
                                        "limit",   "margin", "rule",      "is"};
    for (int i = 0; i < (judged ? 9 : 5); i++)
        word(w, names[i]);
    w->cells.end_row(&w->cells);
}

/* Every number of the answer, in the order of its JSON, which nobody reads here. */
static void results(writer *w)
{
    const ts_listener listener = {hear, w};
    ts_answer         heard    = *w->answer;
    ts_buffer         unread;
    heard.listener = &listener;
    ts_buffer_open(&unread, w->answer->allocator);
    ts_answer_json(&heard, &unread);
    w->cells.out->failed = w->cells.out->failed || unread.failed;
    ts_buffer_close(&unread);
}

static void judgements(writer *w)
{
    for (size_t i = 0; i < w->answer->outcome->judgement_count; i++)
        judgement(w, &w->answer->outcome->judgements[i]);
}

void ts_results_csv(const ts_answer *answer, ts_units units, ts_buffer *out)
{
    writer w = {.answer = answer, .units = units, .cells = ts_cells_csv(out), .one_table = true};
    ts_buffer_open(&w.text, answer->allocator);
    heads(&w, true);
    results(&w);
    judgements(&w);
    ts_buffer_close(&w.text);
}

/* ---- workbook ---------------------------------------------------------------------------------
 */

#define XML "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n"
#define OOX "http://schemas.openxmlformats.org/"

static const char types[] =
    XML "<Types xmlns=\"" OOX "package/2006/content-types\">"
        "<Default Extension=\"rels\" ContentType=\"application/"
        "vnd.openxmlformats-package.relationships+xml\"/>"
        "<Override PartName=\"/xl/workbook.xml\" ContentType=\"application/"
        "vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml\"/>"
        "<Override PartName=\"/xl/worksheets/sheet1.xml\" ContentType=\"application/"
        "vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml\"/>"
        "<Override PartName=\"/xl/worksheets/sheet2.xml\" ContentType=\"application/"
        "vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml\"/>"
        "<Override PartName=\"/xl/worksheets/sheet3.xml\" ContentType=\"application/"
        "vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml\"/></Types>\n";

static const char package[] =
    XML "<Relationships xmlns=\"" OOX "package/2006/relationships\"><Relationship Id=\"rId1\" "
        "Type=\"" OOX "officeDocument/2006/relationships/officeDocument\" "
        "Target=\"xl/workbook.xml\"/></Relationships>\n";

static const char book[] =
    XML "<workbook xmlns=\"" OOX "spreadsheetml/2006/main\" xmlns:r=\"" OOX
        "officeDocument/2006/relationships\"><sheets>"
        "<sheet name=\"results\" sheetId=\"1\" r:id=\"rId1\"/>"
        "<sheet name=\"judgements\" sheetId=\"2\" r:id=\"rId2\"/>"
        "<sheet name=\"of\" sheetId=\"3\" r:id=\"rId3\"/></sheets></workbook>\n";

#define SHEET_OF(n)                                                                                \
    "<Relationship Id=\"rId" n "\" Type=\"" OOX "officeDocument/2006/relationships/worksheet\" "   \
    "Target=\"worksheets/sheet" n ".xml\"/>"

static const char parts[] =
    XML "<Relationships xmlns=\"" OOX "package/2006/relationships\">" SHEET_OF("1") SHEET_OF("2")
        SHEET_OF("3") "</Relationships>\n";

/* What the numbers are of, a line each. */
static void about(writer *w)
{
    const ts_answer *answer    = w->answer;
    const char      *rows[][2] = {
             {"drive", answer->drive->title.text}, {"revision", answer->drive->revision.text},
             {"file", answer->source->name},       {"SHA-256", answer->sha256},
             {"towershaft", answer->version},      {"caution", answer->caution}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        word(w, rows[i][0]);
        word(w, rows[i][1]);
        w->cells.end_row(&w->cells);
    }
}

static void add_sheet(ts_zip *zip, writer *w, const char *name, void (*rows)(writer *w))
{
    ts_buffer sheet;
    ts_buffer_open(&sheet, w->answer->allocator);
    w->cells = ts_cells_sheet(&sheet);
    ts_buffer_add(&sheet, XML "<worksheet xmlns=\"" OOX "spreadsheetml/2006/main\"><sheetData>\n");
    rows(w);
    ts_buffer_add(&sheet, "</sheetData></worksheet>\n");
    ts_zip_add(zip, name, &sheet);
    ts_buffer_close(&sheet);
}

static void result_rows(writer *w)
{
    heads(w, false);
    results(w);
}

static void judgement_rows(writer *w)
{
    heads(w, true);
    judgements(w);
}

static void add_text(ts_zip *zip, const ts_answer *answer, const char *name, const char *text)
{
    ts_buffer file;
    ts_buffer_open(&file, answer->allocator);
    ts_buffer_add(&file, text);
    ts_zip_add(zip, name, &file);
    ts_buffer_close(&file);
}

void ts_results_workbook(const ts_answer *answer, ts_units units, ts_buffer *out)
{
    writer w = {.answer = answer, .units = units};
    ts_zip zip;
    ts_zip_begin(&zip, out);
    ts_buffer_open(&w.text, answer->allocator);
    add_text(&zip, answer, "[Content_Types].xml", types);
    add_text(&zip, answer, "_rels/.rels", package);
    add_text(&zip, answer, "xl/workbook.xml", book);
    add_text(&zip, answer, "xl/_rels/workbook.xml.rels", parts);
    add_sheet(&zip, &w, "xl/worksheets/sheet1.xml", result_rows);
    add_sheet(&zip, &w, "xl/worksheets/sheet2.xml", judgement_rows);
    add_sheet(&zip, &w, "xl/worksheets/sheet3.xml", about);
    ts_zip_finish(&zip);
    ts_buffer_close(&w.text);
}
