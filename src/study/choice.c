/* Which of several things did the user name? */
#include "study/figures.h"

#include <string.h>

int ts_study_choose(ts_study *study, const char *what, const char *word, const char *const *list,
                    size_t count)
{
    for (size_t i = 0; i < count; i++)
        if (strcmp(list[i], word) == 0)
            return (int)i;
    ts_buffer says, expected;
    ts_buffer_open(&says, study->allocator);
    ts_buffer_open(&expected, study->allocator);
    ts_buffer_print(&says, "there is no %s called %s", what, word);
    for (size_t i = 0; i < count; i++)
        ts_buffer_print(&expected, "%s%s", i > 0 ? ", " : "", list[i]);
    if (!says.failed && !expected.failed)
        ts_study_say(study, "unknown-choice", says.bytes, expected.bytes,
                     ts_text_nearest(ts_text_of(word), list, count));
    ts_buffer_close(&says);
    ts_buffer_close(&expected);
    return -1;
}

int32_t ts_study_choose_accessory(ts_study *study, const char *name, ts_arena *arena)
{
    const size_t count = study->drive.accessory_count;
    const char **names = TS_TAKE(arena, const char *, count + 1);

    for (size_t i = 0; names != NULL && i < count; i++)
        names[i] = study->drive.accessories[i].name;
    return names == NULL ? -1 : ts_study_choose(study, "accessory", name, names, count);
}

bool ts_study_choose_condition(ts_study *study, const char *word, int32_t *condition)
{
    *condition = -1;
    if (word == NULL)
        return true;
    const size_t count = study->drive.condition_count;
    const char **names = TS_TAKE(study->asked, const char *, count);
    for (size_t c = 0; names != NULL && c < count; c++)
        names[c] = study->drive.conditions[c].name;
    *condition = names != NULL ? ts_study_choose(study, "condition", word, names, count) : -1;
    return *condition >= 0;
}
