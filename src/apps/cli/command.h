/* apps/cli/command.h: what a command is: its words, its options, its work.
 *
 * Help, the manual page and the shell completions are all made from these tables.
 */
#ifndef TS_APPS_CLI_COMMAND_H
#define TS_APPS_CLI_COMMAND_H

#include "towershaft/towershaft.h"

#include <stdbool.h>
#include <stddef.h>

enum { EXIT_HOLDS = 0, EXIT_DOES_NOT_HOLD = 1, EXIT_NOT_UNDERSTOOD = 2, EXIT_FAULT = 3 };

#define OPERANDS_MOST 3
#define KEEP_MOST     32

/* Every option that any command knows; a command lists the ones that it takes. */
typedef enum option_id {
    OPTION_JSON,
    OPTION_SARIF,
    OPTION_JUNIT,
    OPTION_UNITS,
    OPTION_ALL,
    OPTION_TODAY,
    OPTION_OUTPUT,
    OPTION_COLOUR,
    OPTION_LIKE,
    OPTION_UNSET,
    OPTION_STEP,
    OPTION_FIGURE,
    OPTION_FORMAT,
    OPTION_CONDITION,
    OPTION_AT,
    OPTION_GROUND,
    OPTION_SCALE,
    OPTION_MAN,
    OPTION_WRITE,
    OPTION_KEEP,
    OPTION_ADD,
    OPTION_WITHIN,
    OPTION_ANSWERS,
    OPTION_THREADS,
    OPTION_MEMORY,
    OPTION_TOLERANCE,
    OPTION_TEETH,
    OPTION_TRAIN,
    OPTION_CENTRE,
    OPTION_MODULE,
    OPTION_PRESSURE_ANGLE,
    OPTION_SHARING,
    OPTION_PORT,
    OPTION_NO_BROWSER,
    OPTION_WHY_NOT,
    OPTION_FRONT,
    OPTION_PAPER,
    OPTION_WORKINGS,
    OPTION_VERIFY,
    OPTION_PROGRESS,
    OPTION_LOADS,
    OPTION_BANDS,
    OPTION_STUDY,
    OPTION_PICTURE,
    OPTION_RAMP,
    OPTION_NECK_OF,
    OPTION_RECHECK,
    OPTION_SHEETS,
    OPTION_SEIZURES,
    OPTION_CHOOSE,
    OPTION_AMBIENT,
    OPTION_OIL_TEMPERATURE,
    OPTION_GRID,
    OPTION_THROUGH,
    OPTION_SOAK,
    OPTION_SAMPLES,
    OPTION_NUMBERS,
    OPTION_KEY,
    OPTION_SLURM,
    OPTION_SAMPLE,
    OPTION_AGAINST,
    OPTION_LARGE,
    OPTION_TO,
    OPTION_COUNT
} option_id;

typedef struct option_row {
    option_id   id;
    const char *word;   /* "--units"                          */
    const char *letter; /* "-o" or NULL                       */
    const char *takes;  /* "metric|us"; NULL: takes nothing   */
    const char *says;
} option_row;

extern const option_row option_rows[OPTION_COUNT];

typedef struct arguments {
    const char *operand[OPERANDS_MOST];
    int         operand_count;
    const char *value[OPTION_COUNT]; /* "" for an option that takes nothing, NULL when not given;
                                        of one that stands more than once, the last */
    const char *keep[KEEP_MOST];     /* every value of --keep */
    int         keep_count;
    const char *why_not[KEEP_MOST]; /* every value of --why-not */
    int         why_not_count;
} arguments;

typedef struct command_row {
    const char      *name;
    const char      *operands;  /* "FILE ADDRESS" */
    const char      *completes; /* what each operand is: "file address", "new-file", "rule" ... */
    int              operands_least, operands_most;
    const char      *says; /* one line            */
    const char      *more; /* paragraphs for help */
    const option_id *options;
    size_t           option_count;
    int (*run)(const arguments *given);
} command_row;

extern const command_row commands[];
extern const size_t      command_count;

int run_new(const arguments *given);
int run_check(const arguments *given);
int run_arrange(const arguments *given);
int run_rate(const arguments *given);
int run_ratio(const arguments *given);
int run_oil(const arguments *given);
int run_necks(const arguments *given);
int run_twist(const arguments *given);
int run_whirl(const arguments *given);
int run_seize(const arguments *given);
int run_jolt(const arguments *given);
int run_start(const arguments *given);
int run_warm(const arguments *given);
int run_sheet(const arguments *given);
int run_effects(const arguments *given);
int run_brief(const arguments *given);
int run_size(const arguments *given);
int run_why(const arguments *given);
int run_set(const arguments *given);
int run_compare(const arguments *given);
int run_draw(const arguments *given);
int run_study(const arguments *given);
int run_report(const arguments *given);
int run_open(const arguments *given);
int run_rules(const arguments *given);
int run_doctor(const arguments *given);
int run_notation(const arguments *given);
int run_complete(const arguments *given);
int run_help(const arguments *given);

#endif
