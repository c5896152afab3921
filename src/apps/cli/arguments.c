/* What did the user ask for? */
#include "apps/cli/arguments.h"

#include <stdio.h>
#include <string.h>

const command_row *command_named(const char *name)
{
    for (size_t i = 0; i < command_count; i++)
        if (strcmp(commands[i].name, name) == 0)
            return &commands[i];
    return NULL;
}

/* Letters that both words begin with: enough to guess a mistyped command, option or choice. */
static size_t common_start(const char *a, const char *b)
{
    size_t n = 0;
    while (a[n] != '\0' && a[n] != '|' && a[n] == b[n])
        n++;
    return n;
}

static bool nearer(const char *word, const char *candidate, size_t *best)
{
    const size_t same = common_start(word, candidate);
    if (same <= *best)
        return false;
    *best = same;
    return true;
}

const char *command_nearest(const char *name)
{
    const char *nearest = NULL;
    size_t      best    = 0;
    for (size_t i = 0; i < command_count; i++)
        if (nearer(name, commands[i].name, &best))
            nearest = commands[i].name;
    return nearest;
}

static const option_row *option_named(const command_row *command, const char *word, size_t length)
{
    for (size_t i = 0; i < command->option_count; i++) {
        const option_row *row = &option_rows[command->options[i]];
        if ((strlen(row->word) == length && strncmp(row->word, word, length) == 0) ||
            (row->letter != NULL && strlen(row->letter) == length &&
             strncmp(row->letter, word, length) == 0))
            return row;
    }
    return NULL;
}

static void complain_of_option(const command_row *command, const char *word)
{
    const char *nearest = NULL;
    size_t      best    = 2; /* the two dashes say nothing */
    for (size_t i = 0; i < command->option_count; i++)
        if (nearer(word, option_rows[command->options[i]].word, &best))
            nearest = option_rows[command->options[i]].word;
    fprintf(stderr, "towershaft %s: no option %s", command->name, word);
    if (nearest != NULL)
        fprintf(stderr, "; did you mean %s?", nearest);
    fprintf(stderr, "\n(towershaft help %s)\n", command->name);
}

/* "-0.2..0.7 mm" and "-5 deg" are values, not options. */
static bool is_option(const char *word)
{
    return word[0] == '-' && word[1] != '\0' && strchr("0123456789.", word[1]) == NULL;
}

/* Of an option that may stand more than once. */
static bool take_another(const command_row *command, const option_row *row, const char **values,
                         int *count, const char *value)
{
    if (*count == KEEP_MOST) {
        fprintf(stderr, "towershaft %s: %s may stand %d times at most\n", command->name, row->word,
                KEEP_MOST);
        return false;
    }
    values[(*count)++] = value;
    return true;
}

static bool take_option(const command_row *command, int count, char **words, int *at,
                        arguments *out)
{
    const char       *word   = words[*at];
    const char       *equals = word[1] == '-' ? strchr(word, '=') : NULL;
    const size_t      length = equals != NULL ? (size_t)(equals - word) : strlen(word);
    const option_row *row    = option_named(command, word, length);
    if (row == NULL) {
        complain_of_option(command, word);
        return false;
    }
    if (row->takes == NULL && equals != NULL) {
        fprintf(stderr, "towershaft %s: %s takes no value\n", command->name, row->word);
        return false;
    }
    if (row->takes == NULL) {
        out->value[row->id] = "";
        return true;
    }
    if (equals == NULL && *at + 1 >= count) {
        fprintf(stderr, "towershaft %s: %s needs a value: %s\n", command->name, row->word,
                row->takes);
        return false;
    }
    out->value[row->id] = equals != NULL ? equals + 1 : words[++*at];
    if (row->id == OPTION_KEEP)
        return take_another(command, row, out->keep, &out->keep_count, out->value[row->id]);
    if (row->id == OPTION_WHY_NOT)
        return take_another(command, row, out->why_not, &out->why_not_count, out->value[row->id]);
    return true;
}

bool arguments_read(const command_row *command, int count, char **words, arguments *out)
{
    memset(out, 0, sizeof *out);
    bool only_operands = false;
    for (int i = 0; i < count; i++) {
        if (!only_operands && strcmp(words[i], "--") == 0) {
            only_operands = true;
        } else if (!only_operands && is_option(words[i])) {
            if (!take_option(command, count, words, &i, out))
                return false;
        } else if (out->operand_count >= command->operands_most) {
            fprintf(stderr, "towershaft %s: one word too many: %s\nusage: towershaft %s %s\n",
                    command->name, words[i], command->name, command->operands);
            return false;
        } else {
            out->operand[out->operand_count++] = words[i];
        }
    }
    if (out->operand_count < command->operands_least) {
        fprintf(stderr, "usage: towershaft %s %s\n(towershaft help %s)\n", command->name,
                command->operands, command->name);
        return false;
    }
    return true;
}

static void complain_of_choice(const option_row *row, const char *want)
{
    const char *nearest = NULL;
    size_t      best    = 0;

    fprintf(stderr, "towershaft: %s %s: expected %s", row->word, want, row->takes);
    for (const char *at = row->takes; at != NULL; at = strchr(at, '|')) {
        at += *at == '|';
        if (nearer(want, at, &best))
            nearest = at;
    }
    if (nearest != NULL)
        fprintf(stderr, "; did you mean %.*s?", (int)strcspn(nearest, "|"), nearest);
    fprintf(stderr, "\n");
}

bool arguments_choice(const arguments *given, option_id option, const char **chosen)
{
    const option_row *row  = &option_rows[option];
    const char       *want = given->value[option];
    if (want == NULL)
        return true;
    for (const char *at = row->takes; at != NULL; at = strchr(at, '|')) {
        at += *at == '|';
        const size_t length = strcspn(at, "|");
        if (strlen(want) == length && strncmp(want, at, length) == 0) {
            *chosen = want;
            return true;
        }
    }
    complain_of_choice(row, want);
    return false;
}
