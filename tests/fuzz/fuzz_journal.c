/* Can any bytes of a journal break what reads it after a sudden end?
 *
 * What it keeps are whole records from the first on; one that is added then is read back.
 */
#include "fuzz/fuzz.h"

#include "apps/serve/edit_journal.h"

#include <fcntl.h>
#include <unistd.h>

static bool count(void *context, const journal_record *record)
{
    size_t *seen = context;
    require(record->gone_length == 0 || record->gone != NULL);
    ++*seen;
    return true;
}

static void write_whole(const workspace *place, const uint8_t *data, size_t size)
{
    const int file = workspace_open_file(place, place->journal, O_WRONLY | O_CREAT | O_TRUNC, 0600);
    require(file >= 0 && write(file, data, size) == (ssize_t)size);
    close(file);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static workspace place;
    static char      folder[] = P_tmpdir "/towershaft-fuzz-XXXXXX";
    size_t           before = 0, after = 0;
    edit_journal     journal;
    if (place.name[0] == '\0') {
        char path[64];
        require(mkdtemp(folder) != NULL);
        snprintf(path, sizeof path, "%s/a.yaml", folder);
        FILE *file = fopen(path, "w");
        require(file != NULL && fputs("towershaft: 1\n", file) >= 0 && fclose(file) == 0);
        require(workspace_open(&place, path) == NULL);
    }
    write_whole(&place, data, size);
    if (edit_journal_open(&journal, &place, count, &before) != NULL)
        return 0;
    const journal_record act = {before == 0 ? JOURNAL_BASE : JOURNAL_ACT, 0, "", "b", "c", 0, 1, 1};
    require(edit_journal_add(&journal, &act));
    edit_journal_close(&journal);
    require(edit_journal_open(&journal, &place, count, &after) == NULL);
    require(after == before + 1);
    edit_journal_close(&journal);
    return 0;
}
