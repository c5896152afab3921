/* What do the checks ask, is the program well, and what does the notation allow? */
#include "apps/cli/session.h"

#include <string.h>

static int deliver(const arguments *given, collector *collected, ts_status status)
{
    const int code =
        status == TS_OK ? output_deliver(given, collected) : complain(NULL, TS_NO_MEMORY, false);
    collector_forget(collected);
    return code;
}

int run_rules(const arguments *given)
{
    const char *only    = given->operand_count > 0 ? given->operand[0] : NULL;
    const char *nearest = NULL;
    if (only != NULL && ts_rule_find(only, &nearest) == SIZE_MAX && !ts_rule_topic(only)) {
        fprintf(stderr, "towershaft rules: no rule %s", only);
        if (nearest != NULL)
            fprintf(stderr, "; did you mean %s?", nearest);
        fprintf(stderr, " (towershaft rules lists all; a capability such as B2, its own)\n");
        return EXIT_NOT_UNDERSTOOD;
    }
    ts_page_options page;
    if (!page_options(given, &page))
        return EXIT_NOT_UNDERSTOOD;
    collector     collected;
    const ts_sink sink = collector_sink(&collected);
    return deliver(given, &collected,
                   ts_rules_write(only, given->value[OPTION_JSON] != NULL, page.columns, &sink));
}

int run_doctor(const arguments *given)
{
    bool            well = false;
    ts_page_options page;
    if (!page_options(given, &page))
        return EXIT_NOT_UNDERSTOOD;
    collector       collected;
    const ts_sink   sink = collector_sink(&collected);
    const ts_status status =
        ts_doctor_write(given->value[OPTION_JSON] != NULL, page.columns, &well, &sink);
    const int code = deliver(given, &collected, status);
    if (code != EXIT_HOLDS)
        return code;
    return well ? EXIT_HOLDS : EXIT_FAULT;
}

static int list_notations(const arguments *given)
{
    collector     collected;
    const ts_sink sink   = collector_sink(&collected);
    ts_status     status = TS_OK;
    if (given->value[OPTION_JSON] != NULL) {
        ts_act_field fields[16];
        size_t       count = 0;
        for (; ts_notation_name(count) != NULL && count < 16; count++)
            fields[count] = (ts_act_field){ts_notation_name(count), ts_notation_says(count)};
        status = ts_act_write("notation", fields, count, &sink);
    } else {
        for (size_t i = 0; ts_notation_name(i) != NULL; i++)
            printf("%-24s %s\n", ts_notation_name(i), ts_notation_says(i));
    }
    return deliver(given, &collected, status);
}

int run_notation(const arguments *given)
{
    if (given->operand_count == 0)
        return list_notations(given);
    for (size_t i = 0; ts_notation_name(i) != NULL; i++) {
        if (strcmp(ts_notation_name(i), given->operand[0]) != 0)
            continue;
        collector     collected;
        const ts_sink sink = collector_sink(&collected);
        return deliver(given, &collected, ts_notation_write(given->operand[0], &sink));
    }
    fprintf(stderr, "towershaft notation: nothing called %s; there is:\n", given->operand[0]);
    for (size_t i = 0; ts_notation_name(i) != NULL; i++)
        fprintf(stderr, "  %s\n", ts_notation_name(i));
    return EXIT_NOT_UNDERSTOOD;
}
