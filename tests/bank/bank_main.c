/* bank/bank_main.c: runs files of published cases through the functions of the program.
 *
 *   towershaft-bank FILE...
 *
 * Exit 0: none differs; 1: some case differs, recalled ones too; 2: a file is no bank of cases.
 * A case whose own `agrees` is false is a known misprint: it is shown and does not count as a
 * difference, unless the program computes the misprint.
 */
#include "bank/bank_run.h"

#include <stdio.h>

static void print_counts(const ts_bank_count *count)
{
    const size_t *memory = count->memory, *published = count->published;
    const size_t  known = memory[TS_BANK_KNOWN] + published[TS_BANK_KNOWN];

    printf("\n%zu differ as their own notes say, not counted below\n", known);
    printf("from memory, not counted below: %zu agree, %zu differ, %zu not covered\n",
           memory[TS_BANK_AGREES], memory[TS_BANK_DIFFERS], memory[TS_BANK_NOT_COVERED]);
    printf("%zu agree, %zu differ, %zu not covered\n", published[TS_BANK_AGREES],
           published[TS_BANK_DIFFERS], published[TS_BANK_NOT_COVERED]);
}

int main(int count_of_words, char **words)
{
    ts_bank_count count = {0};
    const char   *twice = ts_binding_twice();

    if (twice != NULL) {
        fprintf(stderr, "towershaft-bank: two bindings are called %s\n", twice);
        return 3;
    }
    if (count_of_words < 2) {
        fputs("usage: towershaft-bank FILE...\n", stderr);
        return 2;
    }
    for (int i = 1; i < count_of_words; i++)
        if (!ts_bank_run_file(words[i], stdout, stderr, &count))
            return 2;
    print_counts(&count);
    const size_t differ = count.published[TS_BANK_DIFFERS] + count.memory[TS_BANK_DIFFERS];
    return fflush(stdout) != 0 ? 3 : differ > 0 ? 1 : 0;
}
