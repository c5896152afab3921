/* support/solved_file.c: what do motion and power say of a drive file? */
#include "support/solved_file.h"

#include "model/reader.h"
#include "support/close.h"

void solved_file_open(solved_file *file, ts_text text, bool with_workings)
{
    file->arena    = ts_arena_open(NULL);
    file->list     = ts_diagnostics_open(file->arena, "drive.yaml", text);
    file->workings = with_workings ? ts_workings_open(file->arena) : NULL;
    file->status =
        ts_read_drive(text, "drive.yaml", file->arena, file->list, &file->source, &file->drive);
    if (file->status == TS_OK)
        file->status = ts_train_build(&file->drive, file->arena, file->list, &file->train);
    if (file->status == TS_OK)
        file->status = ts_motion_prepare(&file->drive, &file->train, file->arena, &file->motion);
    if (file->status == TS_OK)
        file->status = ts_power_prepare(&file->drive, &file->motion, file->arena, &file->power);
    if (file->status == TS_OK)
        file->status = ts_motion_solve(&file->drive, &file->motion, file->list, file->workings);
    if (file->status == TS_OK)
        file->status = ts_power_solve(&file->drive, &file->power, file->workings);
}

void solved_file_close(solved_file *file)
{
    ts_arena_close(file->arena);
}

uint32_t solved_file_shaft(const solved_file *file, const char *address)
{
    ts_node       deepest;
    const ts_node node = ts_source_find(&file->source, ts_text_of(address), &deepest);

    for (uint32_t s = 0; s < file->train.shaft_count; s++)
        if (node != 0 && file->train.shafts[s].node == node)
            return s;
    fail_msg("there is no shaft at %s", address);
    return 0;
}
