/* Is a tree that is moved along with an edit ever another than that of the new text?
 *
 * The input is two bytes that tell where the edit begins, one how many bytes go (0 to 7) and how
 * many come (0 to 15), those that come, and the file.  Where the file is sound and the tree can be
 * moved along, the parser must find no fault in the new text, and the same tree.
 */
#include "model/tree_read.h"
#include "model/tree_shift.h"
#include "support/same_tree.h"

#include <stdlib.h>
#include <string.h>

static void require(bool condition)
{
    if (!condition)
        abort();
}

static bool read_tree(ts_text bytes, ts_arena *arena, ts_source *out)
{
    ts_diagnostics *list   = ts_diagnostics_open(arena, "fuzz.yaml", bytes);
    const ts_status status = ts_read_tree(bytes, "fuzz.yaml", arena, list, out);

    require(status == TS_OK || status == TS_NOT_UNDERSTOOD);
    return status == TS_OK && ts_diagnostics_count(list) == 0;
}

static void check_shift(ts_text old, ts_text now)
{
    ts_arena      *arena = ts_arena_open(NULL);
    ts_source      before, moved, read;
    ts_file_places places = {"fuzz.yaml", arena, ts_diagnostics_open(arena, "fuzz.yaml", now),
                             &moved};

    if (read_tree(old, arena, &before)) {
        ts_model             model;
        const ts_file_places own = {"fuzz.yaml", arena,
                                    ts_diagnostics_open(arena, "fuzz.yaml", old), &before};
        /* As a study has it: its values were read, and left marks in the nodes. */
        (void)ts_read_nodes(TS_WANT_EITHER, &own, &model);
        const ts_status status = ts_shift_tree(&before, now, &places);
        require(status == TS_OK || status == TS_NOT_UNDERSTOOD);
        require(ts_diagnostics_count(places.list) == 0);
        if (status == TS_OK) {
            require(read_tree(now, arena, &read));
            require(same_tree(&moved, &read) == NULL);
        }
    }
    ts_arena_close(arena);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    const size_t head = 3, come = size > head ? data[2] & 15 : 0;

    if (size < head + come + 1)
        return 0;
    const size_t length = size - head - come;
    const size_t from   = ((size_t)data[0] << 8 | data[1]) % length;
    const size_t goes   = (size_t)data[2] >> 4 & 7;
    const size_t to     = from + goes < length ? from + goes : length;
    /* Copies of just this size, so that a byte read past the end is noticed. */
    char *old = malloc(length), *now = malloc(length - (to - from) + come + 1);

    if (old != NULL && now != NULL) {
        memcpy(old, data + head + come, length);
        memcpy(now, old, from);
        memcpy(now + from, data + head, come);
        memcpy(now + from + come, old + to, length - to);
        check_shift((ts_text){old, length}, (ts_text){now, length - (to - from) + come});
    }
    free(old);
    free(now);
    return 0;
}
