/* report/manuscript_html.c: how does a manuscript become a page for a browser? */
#include "report/manuscript_html.h"

#include "base/markup.h"

#include <string.h>

static const char style[] =
    ":root{color-scheme:light dark}\n"
    "body{font:16px/1.5 \"B612\",Verdana,\"DejaVu Sans\",sans-serif;max-width:70rem;margin:2rem "
    "auto;padding:0 1rem;color:#16202a;background:#fff}\n"
    "h1{font-size:1.7rem;line-height:1.25;margin:0 0 .3rem}\n"
    "h2{font-size:1.3rem;margin:2.4rem 0 .6rem;border-bottom:2px solid currentColor}\n"
    "h3{font-size:1.05rem;margin:1.6rem 0 .4rem}\n"
    "p,dd{max-width:48rem}\n"
    "table{border-collapse:collapse;font-size:.85rem;margin:.6rem 0 1.2rem;font-variant-numeric:"
    "tabular-nums}\n"
    "caption{text-align:left;font-weight:bold;padding:.3rem 0}\n"
    "th,td{padding:.15rem .6rem;text-align:left;vertical-align:top;border-bottom:1px solid "
    "#9aa5b0}\n"
    "th{border-bottom:2px solid currentColor}\n"
    ".n{text-align:right;white-space:nowrap}\n"
    ".faint{color:#4c5863}\n"
    ".box{border:2px solid currentColor;padding:.6rem .9rem;margin:1rem 0}\n"
    ".warning{border-width:4px;font-weight:bold}\n"
    "dl{display:grid;grid-template-columns:max-content 1fr;gap:.3rem .8rem}\n"
    "dd{margin:0}\n"
    ".wide{overflow-x:auto}\n"
    "pre{font:.8rem/1.4 \"B612 Mono\",\"DejaVu Sans Mono\",monospace;overflow-x:auto}\n"
    "figure{margin:1rem 0}\n"
    "figure img{width:100%;height:auto;background:#fff}\n"
    "figcaption{font-size:.85rem}\n"
    "a{color:inherit}\n"
    "@media(prefers-color-scheme:dark){body{color:#e6ebf0;background:#12181e}.faint{color:#a9b4bf}"
    "}\n"
    "@media print{body{max-width:none;margin:0;font-size:10pt;color:#000;background:#fff}"
    ".fresh{break-before:page}"
    "tr,figure,.box{break-inside:avoid}h2,h3{break-after:avoid}}\n";

/* "<p class="faint">text</p>" */
static void element(ts_buffer *out, const char *open, const char *text, const char *close)
{
    ts_buffer_add(out, open);
    ts_markup_text(out, text);
    ts_buffer_add(out, close);
}

/* RFC 4648, section 4. */
static void base64(ts_buffer *out, const char *bytes, size_t length)
{
    static const char letters[] =
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    for (size_t i = 0; i < length; i += 3) {
        const size_t   left    = length - i;
        const uint32_t a       = (unsigned char)bytes[i];
        const uint32_t b       = left > 1 ? (unsigned char)bytes[i + 1] : 0;
        const uint32_t c       = left > 2 ? (unsigned char)bytes[i + 2] : 0;
        const uint32_t all     = a << 16 | b << 8 | c;
        const char     four[4] = {letters[all >> 18], letters[all >> 12 & 63],
                              left > 1 ? letters[all >> 6 & 63] : '=',
                              left > 2 ? letters[all & 63] : '='};
        ts_buffer_bytes(out, four, sizeof four);
    }
}

/* ---- blocks ---------------------------------------------------------------------------------- */

static void heading(const ts_block *block, ts_buffer *out)
{
    const char *name = block->level == 1 ? "h2" : "h3";
    ts_buffer_print(out, "<%s id=\"s%s\"%s>%s ", name, block->label,
                    block->fresh ? " class=\"fresh\"" : "", block->label);
    ts_markup_text(out, block->text);
    ts_buffer_print(out, "</%s>\n", name);
}

static void cells(const ts_block *table, size_t row, ts_buffer *out)
{
    ts_buffer_add(out, "<tr>");
    for (size_t c = 0; c < table->column_count; c++) {
        ts_buffer_add(out, table->columns[c].number ? "<td class=\"n\">" : "<td>");
        ts_markup_text(out, table->cells[row * table->column_count + c]);
        ts_buffer_add(out, "</td>");
    }
    ts_buffer_add(out, "</tr>\n");
}

static void table(const ts_block *block, ts_buffer *out)
{
    ts_buffer_add(out, "<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"");
    element(out, "", block->text, "\"><table>\n<caption>");
    element(out, "", block->text, "</caption>\n<thead><tr>");
    for (size_t c = 0; c < block->column_count; c++)
        element(out,
                block->columns[c].number ? "<th scope=\"col\" class=\"n\">" : "<th scope=\"col\">",
                block->columns[c].head, "</th>");
    ts_buffer_add(out, "</tr></thead>\n<tbody>\n");
    for (size_t r = 0; r < ts_block_rows(block); r++)
        cells(block, r, out);
    ts_buffer_add(out, "</tbody></table></div>\n");
}

static void figure(const ts_block *block, const ts_figure_source *figures, ts_buffer *out)
{
    ts_buffer svg;
    ts_buffer_open(&svg, out->allocator);
    const ts_status status = figures->svg(figures->context, block, &svg);
    if (status == TS_OK && !svg.failed) {
        ts_buffer_add(out, "<figure><img alt=\"");
        ts_markup_text(out, block->text);
        ts_buffer_add(out, "\" src=\"data:image/svg+xml;base64,");
        base64(out, svg.bytes, svg.length);
        element(out, "\"><figcaption>", block->text, "</figcaption></figure>\n");
    } else {
        element(out, "<p class=\"box\">This picture cannot be drawn: ", block->text, "</p>\n");
    }
    out->failed = out->failed || svg.failed || status == TS_NO_MEMORY;
    ts_buffer_close(&svg);
}

/* Neighbouring items are one list. */
static const ts_block *items(const ts_block *block, ts_buffer *out)
{
    const ts_block *last = block;
    ts_buffer_add(out, "<dl>\n");
    for (; block != NULL && block->kind == TS_BLOCK_ITEM; block = block->next) {
        element(out, "<dt>", block->label != NULL ? block->label : "", "</dt>");
        element(out, block->tone == TS_BLOCK_FAINT ? "<dd class=\"faint\">" : "<dd>", block->text,
                "</dd>\n");
        last = block;
    }
    ts_buffer_add(out, "</dl>\n");
    return last;
}

/* Returns the last block that was written. */
static const ts_block *block_out(const ts_block *block, const ts_figure_source *figures,
                                 ts_buffer *out)
{
    switch (block->kind) {
    case TS_BLOCK_HEADING:
        heading(block, out);
        break;
    case TS_BLOCK_TEXT:
        element(out, block->tone == TS_BLOCK_FAINT ? "<p class=\"faint\">" : "<p>", block->text,
                "</p>\n");
        break;
    case TS_BLOCK_BOX:
        element(out,
                block->tone == TS_BLOCK_WARNING ? "<p class=\"box warning\">" : "<p class=\"box\">",
                block->text, "</p>\n");
        break;
    case TS_BLOCK_LINES:
        element(out, "<pre tabindex=\"0\">", block->text, "</pre>\n");
        break;
    case TS_BLOCK_TABLE:
        table(block, out);
        break;
    case TS_BLOCK_FIGURE:
        figure(block, figures, out);
        break;
    case TS_BLOCK_ITEM:
        return items(block, out);
    }
    return block;
}

/* ---- the page -------------------------------------------------------------------------------- */

/* Half as large again; on paper 16 pt, the least that is called large print (common practice, no
 * source). */
static const char large_style[] = "html{font-size:150%}body{font-size:1rem}\n"
                                  "@media print{html{font-size:16pt}body{font-size:16pt}}\n";

static void head(const ts_manuscript *manuscript, bool large, ts_buffer *out)
{
    ts_buffer_add(out, "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
                       "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src "
                       "'none'; img-src data:; style-src 'unsafe-inline'\">\n"
                       "<meta name=\"viewport\" content=\"width=device-width\">\n");
    element(out, "<title>", manuscript->title, "</title>\n<style>\n");
    ts_buffer_add(out, style);
    if (large)
        ts_buffer_add(out, large_style);
    ts_buffer_add(out, "</style>\n</head>\n<body>\n<header>\n");
    element(out, "<h1>", manuscript->title, "</h1>\n<p class=\"faint\">revision ");
    element(out, "", manuscript->revision, " \xC2\xB7 ");
    element(out, "", manuscript->file, " \xC2\xB7 SHA-256 ");
    element(out, "", manuscript->hash, " \xC2\xB7 towershaft ");
    element(out, "", manuscript->version, "</p>\n");
    element(out, "<p class=\"box warning\">", manuscript->caution, "</p>\n</header>\n");
}

static void contents(const ts_manuscript *manuscript, ts_buffer *out)
{
    ts_buffer_add(out, "<nav aria-label=\"Contents\"><ul>\n");
    for (const ts_block *block = manuscript->first; block != NULL; block = block->next) {
        if (block->kind != TS_BLOCK_HEADING || block->level > 1)
            continue;
        ts_buffer_print(out, "<li><a href=\"#s%s\">%s ", block->label, block->label);
        element(out, "", block->text, "</a></li>\n");
    }
    ts_buffer_add(out, "</ul></nav>\n<main>\n");
}

void ts_manuscript_html(const ts_manuscript *manuscript, const ts_figure_source *figures, bool large,
                        ts_buffer *out)
{
    head(manuscript, large, out);
    contents(manuscript, out);
    for (const ts_block *block = manuscript->first; block != NULL; block = block->next)
        block = block_out(block, figures, out);
    ts_buffer_add(out, "</main>\n</body>\n</html>\n");
}
