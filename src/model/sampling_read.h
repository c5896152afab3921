/* model/sampling_read.h: text to the model of a study, with every error of the file in one run. */
#ifndef TS_MODEL_SAMPLING_READ_H
#define TS_MODEL_SAMPLING_READ_H

#include "model/reader.h"
#include "model/sampling_file.h"

/* Reads `bytes` as a study file; limits, messages and status as of ts_read_drive.  The addresses,
 * rules and quantities in it are judged by whoever has the drive. */
ts_status ts_read_sampling(ts_text bytes, const ts_file_places *places, ts_sampling_file *file);

#endif
