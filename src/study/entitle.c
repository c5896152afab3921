/* What stands at the head of a manuscript about a study? */
#include "study/entitle.h"

#include "towershaft/study.h"

void ts_study_manuscript(const ts_study *study, ts_arena *arena, ts_manuscript *manuscript)
{
    const ts_drive *drive = &study->drive;
    ts_manuscript_begin(manuscript, arena);
    manuscript->title    = drive->title.text != NULL ? drive->title.text : study->name;
    manuscript->revision = drive->revision.text != NULL ? drive->revision.text : "not told";
    manuscript->file     = study->name;
    manuscript->hash     = ts_study_sha256(study);
    manuscript->version  = ts_version();
    manuscript->caution  = ts_caution();
}

void ts_study_entitle(ts_manuscript *manuscript, const char *what)
{
    ts_buffer text;
    ts_buffer_open(&text, ts_arena_allocator(manuscript->arena));
    ts_buffer_print(&text, "%s: %s", manuscript->title, what);
    const char *kept =
        text.failed ? NULL : ts_arena_copy(manuscript->arena, text.bytes, text.length);
    ts_buffer_close(&text);
    manuscript->title  = kept != NULL ? kept : manuscript->title;
    manuscript->failed = manuscript->failed || kept == NULL;
}
