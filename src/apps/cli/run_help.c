/* How is it used? */
#include "apps/cli/arguments.h"
#include "apps/cli/terminal.h"

#include <stdio.h>
#include <string.h>
#include <unistd.h>

static const char job[] =
    "Arranges, sizes and judges a turbine engine's accessory drive: from a text file to every\n"
    "shaft's speed, sense, power and torque, the findings, the pictures, and the reason of any "
    "number.";

#define COLUMNS_WITHOUT_TERMINAL 100
#define NAME_WIDTH               10

static void list(int columns)
{
    printf("towershaft %s\n", ts_version());
    print_paragraphs(job, 0, columns);
    printf("\nusage: towershaft COMMAND ...\n\n");
    for (size_t i = 0; i < command_count; i++) {
        printf("  %-*s", NAME_WIDTH, commands[i].name);
        print_paragraphs(commands[i].says, 2 + NAME_WIDTH, columns);
    }
    printf("\n");
    print_paragraphs("towershaft help COMMAND says more.  Exit codes: 0 holds, or is told where "
                     "nothing is judged, 1 does not hold, 2 the input cannot be understood or "
                     "computed, 3 a fault of the program or of the "
                     "machine.",
                     0, columns);
    printf("\n");
    print_paragraphs(ts_caution(), 0, columns);
}

/* "  --units metric|us"; many choices go on below, broken behind a stroke. */
static void option_head(const option_row *row, int columns)
{
    int         column = printf("  %s%s%s", row->letter != NULL ? row->letter : "",
                        row->letter != NULL ? ", " : "", row->word);
    const char *at     = row->takes != NULL ? row->takes : "";
    column += *at != '\0' ? printf(" ") : 0;
    while (*at != '\0') {
        const char *stroke = strchr(at, '|');
        const int   length = stroke != NULL ? (int)(stroke - at) + 1 : (int)strlen(at);
        if (column + length > columns)
            column = printf("\n      ") - 1;
        column += printf("%.*s", length, at);
        at += length;
    }
    printf("\n      ");
}

static void explain(const command_row *command, int columns)
{
    printf("usage: towershaft %s %s\n\n%s.\n", command->name, command->operands, command->says);
    if (command->more[0] != '\0') {
        printf("\n");
        print_paragraphs(command->more, 0, columns);
    }
    if (command->option_count > 0)
        printf("\noptions\n");
    for (size_t i = 0; i < command->option_count; i++) {
        const option_row *row = &option_rows[command->options[i]];
        option_head(row, columns);
        print_paragraphs(row->says, 6, columns);
    }
}

/* Backslashes, and a dash or a full stop where roff would take it for something else. */
static void roff(const char *text)
{
    bool begin = true;
    for (; *text != '\0'; text++) {
        if (begin && (*text == '.' || *text == '\''))
            printf("\\&");
        if (*text == '\\')
            printf("\\e");
        else if (*text == '-')
            printf("\\-");
        else
            putchar(*text);
        begin = *text == '\n';
    }
}

static void manual_command(const command_row *command)
{
    printf(".SS \"%s %s\"\n", command->name, command->operands);
    roff(command->says);
    printf(".\n");
    if (command->more[0] != '\0') {
        printf(".PP\n");
        roff(command->more);
        printf("\n");
    }
    for (size_t i = 0; i < command->option_count; i++) {
        const option_row *row = &option_rows[command->options[i]];
        printf(".TP\n.B ");
        if (row->letter != NULL) {
            roff(row->letter);
            printf(", ");
        }
        roff(row->word);
        if (row->takes != NULL) {
            printf(" ");
            roff(row->takes);
        }
        printf("\n");
        roff(row->says);
        printf("\n");
    }
}

static void manual(void)
{
    printf(".TH TOWERSHAFT 1 \"\" \"towershaft %s\" \"Engineering\"\n.SH NAME\n", ts_version());
    printf("towershaft \\- arrange, size and judge a turbine engine's accessory drive\n");
    printf(".SH SYNOPSIS\n.B towershaft\n.I COMMAND\n\\&...\n.SH DESCRIPTION\n");
    roff(job);
    printf("\n.SH COMMANDS\n");
    for (size_t i = 0; i < command_count; i++)
        manual_command(&commands[i]);
    printf(
        ".SH EXIT STATUS\n.TP\n.B 0\nThe drive holds, or the answer is told where nothing is "
        "judged.\n.TP\n.B 1\nIt does not hold.\n.TP\n.B 2\n"
        "The input cannot be understood or computed.\n.TP\n.B 3\nA fault of the program or of the "
        "machine.\n.SH ENVIRONMENT\n.TP\n.B NO_COLOR\nNo colour, whatever the terminal takes.\n"
        ".SH CAUTIONS\n");
    roff(ts_caution());
    printf("\n");
}

int run_help(const arguments *given)
{
    const int columns = terminal_columns(STDOUT_FILENO, COLUMNS_WITHOUT_TERMINAL);
    if (given->value[OPTION_MAN] != NULL) {
        manual();
        return EXIT_HOLDS;
    }
    if (given->operand_count == 0) {
        list(columns);
        return EXIT_HOLDS;
    }
    const command_row *command = command_named(given->operand[0]);
    if (command == NULL) {
        fprintf(stderr, "towershaft help: no command %s\n", given->operand[0]);
        return EXIT_NOT_UNDERSTOOD;
    }
    explain(command, columns);
    return EXIT_HOLDS;
}
