/* apps/cli/step_program.h: the program that turns bodies into a STEP file.
 *
 * It is a program of its own, so that the command needs no modelling kernel and survives one that
 * fails: it gets the JSON of the bodies (docs/schema/solids.schema.json) on its standard input and
 * has its time to give the file on its standard output.
 */
#ifndef TS_APPS_CLI_STEP_PROGRAM_H
#define TS_APPS_CLI_STEP_PROGRAM_H

#include "apps/cli/files.h"

#define STEP_PROGRAM "towershaft-step"

/* Is it beside this program, or on the path; runs it.  EXIT_HOLDS with the file in `to`, or, said
 * why, EXIT_FAULT. */
int step_program(const collector *bodies, collector *to);

#endif
