/* Which pad is asked about, and where does its sheet go? */
#include "towershaft/sheet.h"

#include "report/manuscript_page.h"
#include "report/sheet_report.h"
#include "study/figures.h"
#include "study/outlet.h"
#include "study/publish.h"

#include <string.h>

enum { FORMAT_JSON, FORMAT_PDF, FORMAT_HTML, FORMAT_COUNT, FORMAT_TERMINAL };

typedef struct wish {
    uint32_t      pad;
    ts_study     *against; /* NULL: nothing is compared */
    uint32_t      issued;  /* its pad                   */
    int           format;
    ts_paper_wish paper;
} wish;

static bool choose_form(ts_study *study, const ts_sheet_options *options, wish *out)
{
    static const char *const formats[] = {"json", "pdf", "html"};
    static const char *const papers[]  = {"A4", "Letter"};
    int                      paper     = TS_PAPER_A4;
    out->format                        = FORMAT_TERMINAL;
    if (options->format != NULL)
        out->format = ts_study_choose(study, "format", options->format, formats, FORMAT_COUNT);
    if (options->paper != NULL)
        paper = ts_study_choose(study, "paper", options->paper, papers, 2);
    out->paper = (ts_paper_wish){.pdf = out->format == FORMAT_PDF, .paper = (ts_paper)paper};
    return out->format >= 0 && paper >= 0;
}

/* The pad of the same accessory in the drive that was issued last. */
static bool choose_issued(ts_study *study, const ts_sheet_options *options, wish *out)
{
    ts_study *old = options->against;
    out->against  = old;
    out->issued   = TS_NOWHERE;
    if (old == NULL)
        return true;
    for (size_t a = 0; old->solved && a < old->drive.accessory_count; a++)
        if (strcmp(old->drive.accessories[a].name, options->accessory) == 0)
            out->issued = ts_train_pad_of(&old->train, (int32_t)a);
    if (out->issued == TS_NOWHERE)
        ts_study_say(study, "no-issued-pad",
                     "the drive that was issued has no pad for that accessory",
                     "a drive in which it stands on a shaft", NULL);
    else if (strcmp(old->drive.title.text, study->drive.title.text) != 0)
        ts_study_say(study, "another-drive", "the drive that was issued has another title",
                     "an older state of the same drive", NULL);
    return out->issued != TS_NOWHERE && strcmp(old->drive.title.text, study->drive.title.text) == 0;
}

static bool choose(ts_study *study, const ts_sheet_options *options, ts_arena *arena, wish *out)
{
    const int32_t accessory = ts_study_choose_accessory(study, options->accessory, arena);
    if (accessory < 0 || !choose_form(study, options, out))
        return false;
    out->pad = ts_train_pad_of(&study->train, accessory);
    if (out->pad == TS_NOWHERE)
        ts_study_say(study, "no-pad", "that accessory stands on no pad of this drive",
                     "an accessory that stands at the front or rear of a shaft", NULL);
    return out->pad != TS_NOWHERE && choose_issued(study, options, out);
}

static ts_status deliver(ts_study *study, const wish *asked, const ts_page_options *options,
                         ts_arena *arena, const ts_sink *sink)
{
    const ts_answer answer = ts_study_answer(study);
    ts_sheet        sheet, issued;
    ts_manuscript   manuscript;
    ts_buffer       out;
    ts_answer       old;
    if (!ts_sheet_make(&answer, asked->pad, arena, &sheet))
        return TS_NO_MEMORY;
    if (asked->against != NULL) {
        old = ts_study_answer(asked->against);
        if (!ts_sheet_make(&old, asked->issued, arena, &issued))
            return TS_NO_MEMORY;
        sheet.before = &issued;
    }
    ts_study_manuscript(study, arena, &manuscript);
    ts_sheet_write(&sheet, &manuscript);
    if (asked->format == FORMAT_PDF || asked->format == FORMAT_HTML) {
        const ts_drawing_subject subject = ts_study_subject(study, NULL); /* it has no picture */
        return ts_study_publish(study, &manuscript, &asked->paper, &subject, sink);
    }
    ts_buffer_open(&out, study->allocator);
    ts_page page = ts_outlet_page(options, &out);
    if (asked->format == FORMAT_JSON)
        ts_sheet_json(&sheet, &out);
    else
        ts_manuscript_page(&manuscript, &page);
    const ts_status status =
        out.failed || manuscript.failed ? TS_NO_MEMORY : ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}

ts_status ts_sheet_write_to(ts_study *study, const ts_sheet_options *options,
                            const ts_page_options *page, const ts_sink *sink)
{
    wish asked;
    if (!ts_study_ask(study, TS_WANT_DRIVE))
        return TS_NOT_UNDERSTOOD;
    ts_arena *arena = ts_arena_open(study->allocator);
    if (arena == NULL)
        return TS_NO_MEMORY;
    const ts_status status = choose(study, options, arena, &asked)
                                 ? deliver(study, &asked, page, arena, sink)
                             : ts_arena_failed(arena) ? TS_NO_MEMORY
                                                      : ts_study_refused(study);
    ts_arena_close(arena);
    return status;
}
