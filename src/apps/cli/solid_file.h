/* apps/cli/solid_file.h: the bodies of a drive as a file in three dimensions. */
#ifndef TS_APPS_CLI_SOLID_FILE_H
#define TS_APPS_CLI_SOLID_FILE_H

#include "apps/cli/arguments.h"
#include "towershaft/solids.h"

/* Is an ending (NULL: none) one of glb, step, stp, json? */
bool solid_ending(const char *ending);

/* Can the options of a picture go with bodies?  False with a message. */
bool solid_options_fit(const arguments *given);

/* Saves the bodies of a solved study whole or not at all; EXIT_HOLDS, or said why. */
int solid_save(ts_study *study, const char *ending, const char *path);

#endif
