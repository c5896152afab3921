/* What could the next word be?  Scripts for the shells, and the words behind them. */
#include "apps/cli/session.h"

#include <string.h>

static void bash_options(const command_row *command)
{
    for (size_t i = 0; i < command->option_count; i++)
        printf(" %s", option_rows[command->options[i]].word);
}

static void bash_values(void)
{
    for (int i = 0; i < OPTION_COUNT; i++) {
        const option_row *row = &option_rows[i];
        if (row->takes == NULL || strchr(row->takes, '|') == NULL)
            continue;
        printf("    %s) words='", row->word);
        for (const char *at = row->takes; *at != '\0'; at++)
            putchar(*at == '|' ? ' ' : *at);
        printf("' ;;\n");
    }
}

static void bash(void)
{
    printf("# bash completion of towershaft, printed by `towershaft complete bash`\n"
           "_towershaft() {\n"
           "  local now=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} words=\n"
           "  COMPREPLY=()\n"
           "  if [ \"$COMP_CWORD\" -eq 1 ]; then\n    words='");
    for (size_t i = 0; i < command_count; i++)
        printf("%s%s", i > 0 ? " " : "", commands[i].name);
    printf("'\n  else\n    case $before in\n");
    bash_values();
    printf("    *) case ${COMP_WORDS[1]} in\n");
    for (size_t i = 0; i < command_count; i++) {
        if (commands[i].option_count == 0)
            continue;
        printf("      %s) words='", commands[i].name);
        bash_options(&commands[i]);
        printf("' ;;\n");
    }
    printf("      help) words='");
    for (size_t i = 0; i < command_count; i++)
        printf("%s%s", i > 0 ? " " : "", commands[i].name);
    printf(
        "' ;;\n      esac ;;\n    esac\n  fi\n"
        "  if [ \"${COMP_WORDS[1]}\" = why ] || [ \"${COMP_WORDS[1]}\" = set ]; then\n"
        "    if [ \"$COMP_CWORD\" -eq 3 ]; then\n"
        "      local IFS=$'\\n'\n"
        "      COMPREPLY=($(towershaft complete address \"${COMP_WORDS[2]}\" \"$now\" "
        "2>/dev/null))\n"
        "      return\n    fi\n  fi\n"
        "  if [ -n \"$words\" ] && { [ \"$COMP_CWORD\" -eq 1 ] || [ \"${now#-}\" != \"$now\" ] ||\n"
        "       [ \"${before#--}\" != \"$before\" ]; }; then\n"
        "    COMPREPLY=($(compgen -W \"$words\" -- \"$now\"))\n"
        "  else\n    COMPREPLY=($(compgen -f -- \"$now\"))\n  fi\n}\n"
        "complete -o filenames -F _towershaft towershaft\n");
}

static void zsh(void)
{
    printf("#compdef towershaft\n# zsh completion of towershaft\nautoload -U bashcompinit\n"
           "bashcompinit\n");
    bash();
}

static void fish(void)
{
    printf("# fish completion of towershaft\n");
    for (size_t i = 0; i < command_count; i++) {
        const command_row *command = &commands[i];
        printf("complete -c towershaft -n __fish_use_subcommand -a %s -d '%s'\n", command->name,
               command->says);
        for (size_t j = 0; j < command->option_count; j++) {
            const option_row *row = &option_rows[command->options[j]];
            printf("complete -c towershaft -n '__fish_seen_subcommand_from %s' -l %s%s -d '%s'\n",
                   command->name, row->word + 2, row->takes != NULL ? " -r" : "", row->says);
        }
    }
}

/* Behind the scripts: addresses of FILE that begin so. */
static int addresses(const arguments *given)
{
    int       code = EXIT_FAULT;
    ts_study *study =
        session_open(given->operand[1],
                     &(ts_study_options){.workings = true, .file = TS_WANT_EITHER}, false, &code);
    if (study == NULL)
        return code;
    collector     collected;
    const ts_sink sink   = collector_sink(&collected);
    const char   *prefix = given->operand_count > 2 ? given->operand[2] : "";
    if (ts_study_write_addresses(study, prefix, &sink) == TS_OK)
        code = output_deliver(given, &collected);
    collector_forget(&collected);
    ts_study_close(study);
    return code;
}

int run_complete(const arguments *given)
{
    const char *shell = given->operand[0];
    if (strcmp(shell, "address") == 0 && given->operand_count > 1)
        return addresses(given);
    if (strcmp(shell, "bash") == 0)
        bash();
    else if (strcmp(shell, "zsh") == 0)
        zsh();
    else if (strcmp(shell, "fish") == 0)
        fish();
    else {
        fprintf(stderr, "towershaft complete: no shell %s; there is: bash zsh fish\n", shell);
        return EXIT_NOT_UNDERSTOOD;
    }
    return EXIT_HOLDS;
}
