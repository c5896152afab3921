/* study/sampling.h: a study of a drive whose values vary, while it is open. */
#ifndef TS_STUDY_SAMPLING_H
#define TS_STUDY_SAMPLING_H

#include "model/sampling_file.h"
#include "sample/design.h"
#include "study/study.h"
#include "towershaft/sampling.h"

/* One value of the drive that varies. */
typedef struct ts_sampled_input {
    const char    *name;       /* its address                                  */
    size_t         start, end; /* bytes of the value in the drive file         */
    ts_node        node;       /* of that value                                */
    ts_kind        kind;
    const ts_unit *unit;  /* in which the drive writes it; NULL: a plain number */
    bool           whole; /* a whole number without a unit stands there         */
} ts_sampled_input;

/* One number that is watched. */
typedef struct ts_sampled_output {
    const char *name, *unit;
    const char *rule;      /* of a margin or value; NULL: a number by its address */
    const char *number;    /* that address                                        */
    bool        value;     /* the value judged, not its margin                    */
    ts_node     node;      /* 0: of any object; else it, or a part of it      */
    int32_t     condition; /* TS_EVERY_CONDITION: of any                          */
} ts_sampled_output;

struct ts_sampling {
    ts_study          *paper;   /* the study file: its bytes, arena and messages      */
    ts_study          *nominal; /* the drive as it stands; NULL before it was taken   */
    ts_source          tree;    /* its nodes as they were read, before any value was  */
    ts_sampling_file   file;
    ts_sampled_input  *inputs; /* in the order of the study file */
    size_t             input_count;
    uint32_t          *by_place; /* inputs in the order of their bytes */
    ts_sample_law     *laws;
    double            *asis;
    unsigned          *steps;
    ts_sampled_output *outputs;
    size_t             output_count;
    ts_design          design;
    bool               workings; /* some output needs them */
    char               identity[65];
    const char        *drive_hash, *method, *samples, *seed;
};

/* Finds what varies, in the nominal drive (sampling_input.c). */
ts_status ts_sampling_find_inputs(ts_sampling *sampling);
/* What is watched (sampling_watch.c). */
ts_status ts_sampling_find_outputs(ts_sampling *sampling);

/* A message about a place in the study file. */
void ts_sampling_say(ts_sampling *sampling, const ts_diagnostic *what, ts_node node);

/* What is watched in a solved study, [output_count]; NaN where it cannot be had. */
void ts_sampled_values(const ts_sampling *sampling, ts_study *study, double *values);

/* The text of one value, appended to `out`. */
void ts_sampling_print_value(const ts_sampling *sampling, size_t input, double value,
                             ts_buffer *out);

/* The drive file with `values` in the place of those that vary, appended to `out`. */
void ts_sampling_splice(const ts_sampling *sampling, const double *values, ts_buffer *out);

/* One sample after the other, on one thread (sampling_frame.c).  What does not follow from the
 * values that vary is kept from one to the next; the answer is bitwise that of the drive file of
 * the sample, read and solved by itself. */
typedef struct ts_sampling_frame {
    const ts_sampling *sampling;
    ts_study          *study; /* the last sample */
    ts_arena          *lasting;
    ts_source          tree; /* of this sample */
    ts_buffer          words, text;
} ts_sampling_frame;
ts_status ts_sampling_frame_open(const ts_sampling *sampling, ts_sampling_frame *frame);
void      ts_sampling_frame_close(ts_sampling_frame *frame);
/* TS_NOT_UNDERSTOOD: as a drive file it is refused, for the reason in the messages of the study. */
ts_status ts_sampling_frame_solve(ts_sampling_frame *frame, const double *values);

/* The number of a finding, from its rule and place. */
uint64_t ts_sampled_finding(const ts_finding *finding);

#endif
