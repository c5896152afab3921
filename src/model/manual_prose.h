/* model/manual_prose.h: the part of the manual that no table can tell. */
#ifndef TS_MODEL_MANUAL_PROSE_H
#define TS_MODEL_MANUAL_PROSE_H

/* Markdown, paragraph by paragraph; NULL after the last. */
extern const char *const ts_manual_prose[];   /* of the drive file */
extern const char *const ts_rate_prose[];     /* of the rate file  */
extern const char *const ts_sampling_prose[]; /* of the study file */

#endif
