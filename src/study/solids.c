/* study/solids.c: which bodies does a solved study give away? */
#include "towershaft/solids.h"

#include "solid/bodies_json.h"
#include "solid/glb.h"
#include "study/study.h"

typedef ts_status writer(const ts_study *study, const ts_solids *solids, ts_arena *arena,
                         ts_buffer *out);

/* The outline of a tooth is as coarse as a viewer may have it, so that a page gets few points. */
static ts_status write_by(ts_study *study, writer *write, const ts_sink *sink)
{
    if (!ts_study_ask(study, TS_WANT_DRIVE))
        return TS_NOT_UNDERSTOOD;
    ts_arena *arena = ts_arena_open(study->allocator);
    if (arena == NULL)
        return TS_NO_MEMORY;
    ts_solids solids;
    ts_buffer out;
    ts_buffer_open(&out, study->allocator);
    ts_status status =
        ts_solids_of(&study->drive, &study->mass, TS_GLB_CHORD_ERROR, arena, &solids);
    if (status == TS_OK)
        status = write(study, &solids, arena, &out);
    if (status == TS_OK)
        status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    ts_arena_close(arena);
    return status;
}

static ts_status as_json(const ts_study *study, const ts_solids *solids, ts_arena *arena,
                         ts_buffer *out)
{
    ts_json json;
    (void)arena;
    ts_json_begin(&json, out, true);
    ts_solids_write(solids, &study->source, ts_version(), ts_caution(), &json);
    ts_buffer_add(out, "\n");
    return TS_OK;
}

static ts_status as_glb(const ts_study *study, const ts_solids *solids, ts_arena *arena,
                        ts_buffer *out)
{
    ts_buffer generator;
    ts_buffer_open(&generator, study->allocator);
    ts_buffer_print(&generator, "towershaft %s", ts_version());
    const ts_status status = generator.failed
                                 ? TS_NO_MEMORY
                                 : ts_glb_write(solids, generator.bytes, ts_caution(), arena, out);
    ts_buffer_close(&generator);
    return status;
}

ts_status ts_study_write_solids(ts_study *study, const ts_sink *sink)
{
    return write_by(study, as_json, sink);
}

ts_status ts_study_write_glb(ts_study *study, const ts_sink *sink)
{
    return write_by(study, as_glb, sink);
}
