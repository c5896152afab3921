/* Which names may conditions, spools and accessories have? */
#include "model/reading.h"

#define NAME_BYTES_MOST 40

/* Nothing of a rate file refers to a name, so that there no word is taken. */
static const char *name_fault(const ts_reading *reading, ts_text name)
{
    if (name.length == 0 || name.length > NAME_BYTES_MOST)
        return "is not 1 to 40 bytes long";
    if (ts_text_trim(name).length != name.length)
        return "begins or ends with a blank";
    for (size_t i = 0; i < name.length; i++) {
        const char byte = name.at[i];
        if (byte == '/' || byte == ':' || byte == '@' || byte == '\t')
            return "holds a sign that addresses use";
    }
    const bool taken = reading->tables == &ts_drive_tables;
    for (size_t i = 0; taken && ts_reserved_words[i] != NULL; i++) {
        if (ts_text_is(name, ts_reserved_words[i]))
            return "is a word of the notation itself";
    }
    return NULL;
}

void ts_judge_name(ts_reading *reading, ts_node node)
{
    const ts_text name  = reading->source->nodes[node].key;
    const char   *fault = name_fault(reading, name);
    if (fault == NULL)
        return;
    ts_complain(reading,
                &(ts_fault){.code     = "bad-name",
                            .node     = node,
                            .at_key   = true,
                            .expected = "a name without /, : and @, of at most 40 bytes"},
                "the name `%.*s` %s", (int)ts_quoted(name).length, name.at, fault);
}
