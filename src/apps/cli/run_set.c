/* What if this value were another? */
#include "apps/cli/session.h"

#include <string.h>

static int answer(const arguments *given, const char *value, const char *written)
{
    const bool json = given->value[OPTION_JSON] != NULL;
    if (!json) {
        printf("%s: %s%s%s\n", written, given->operand[1], value == NULL ? " removed" : " = ",
               value == NULL ? "" : value);
        return EXIT_HOLDS;
    }
    const ts_act_field fields[] = {
        {"file", given->operand[0]},
        {"address", given->operand[1]},
        {"value", value},
        {"written", written},
    };
    collector     collected;
    const ts_sink sink = collector_sink(&collected);
    int           code = ts_act_write("set", fields, 4, &sink) == TS_OK ? EXIT_HOLDS : EXIT_FAULT;
    if (code == EXIT_HOLDS)
        code = output_send(&collected);
    collector_forget(&collected);
    return code;
}

int run_set(const arguments *given)
{
    const bool  unset = given->value[OPTION_UNSET] != NULL;
    const char *value = given->operand_count > 2 ? given->operand[2] : NULL;
    if (unset == (value != NULL)) {
        fprintf(stderr, "towershaft set: give a VALUE, or --unset without one\n");
        return EXIT_NOT_UNDERSTOOD;
    }
    if (strcmp(given->operand[0], "-") == 0 && given->value[OPTION_OUTPUT] == NULL) {
        fprintf(stderr, "towershaft set: standard input needs -o FILE\n");
        return EXIT_NOT_UNDERSTOOD;
    }
    file_bytes file;
    int        code = EXIT_FAULT;
    if (!file_read(given->operand[0], &file, &code))
        return code;
    ts_study *study = NULL;
    collector collected;
    ts_sink   sink   = collector_sink(&collected);
    ts_status status = ts_study_open(NULL, &study);
    if (status == TS_OK)
        status = ts_study_set_bytes(study, given->operand[0], file.bytes, file.length,
                                    given->operand[1], unset ? NULL : value, &sink);
    const char *target =
        given->value[OPTION_OUTPUT] != NULL ? given->value[OPTION_OUTPUT] : given->operand[0];
    code = status == TS_OK ? file_save(target, collected.bytes, collected.length)
                           : complain(study, status, given->value[OPTION_JSON] != NULL);
    if (code == EXIT_HOLDS)
        code = answer(given, unset ? NULL : value, target);
    collector_forget(&collected);
    file_forget(&file);
    ts_study_close(study);
    return code;
}
