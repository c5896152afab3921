/* What does a study tell of its shafts and bearings? */
#include "study/study.h"

#include "towershaft/lines.h"

#include <math.h>

static const char *missing_of(const ts_line *line)
{
    return line->fault != NULL ? line->fault : line->missing;
}

size_t ts_study_line_count(const ts_study *study)
{
    return study->solved ? study->lines.count : 0;
}

ts_line_view ts_study_line(const ts_study *study, size_t index)
{
    const double nan  = (double)NAN;
    ts_line_view view = {.length = nan, .S_F = nan, .S_D = nan};

    if (index >= ts_study_line_count(study))
        return view;
    const ts_line *line = &study->lines.lines[index];
    view.name           = line->name;
    view.kind           = ts_line_kind_name(line->kind);
    view.bearings       = (size_t)line->bearing_count;
    view.missing        = missing_of(line);
    if (view.missing != NULL)
        return view;
    view.length = line->length;
    if (line->weakest_F >= 0)
        view.S_F = line->notches[line->weakest_F].S_F;
    if (line->weakest_D >= 0)
        view.S_D = line->notches[line->weakest_D].S_D;
    return view;
}

ts_bearing_view ts_study_bearing(const ts_study *study, size_t index, size_t bearing)
{
    const double    nan  = (double)NAN;
    ts_bearing_view view = {.bore = nan, .outside = nan, .life = nan, .S_0 = nan, .n_dm = nan};

    if (index >= ts_study_line_count(study))
        return view;
    const ts_line *line = &study->lines.lines[index];
    if (bearing >= (size_t)line->bearing_count)
        return view;
    const ts_line_bearing *b = &line->bearings[bearing];
    view.place               = b->place;
    view.missing             = b->there ? b->fault : "the file says that there is none";
    if (view.missing == NULL)
        view.missing = missing_of(line);
    if (view.missing != NULL)
        return view;
    view.form    = ts_bearing_form_name(b->bearing.form);
    view.series  = b->series;
    view.rows    = b->bearing.rows;
    view.chosen  = !b->given;
    view.bore    = b->bearing.d;
    view.outside = b->bearing.D;
    view.life    = b->rating.L_nmh;
    view.S_0     = b->rating.S_0;
    view.n_dm    = b->rating.n_dm;
    return view;
}

double ts_study_bearing_set_life(const ts_study *study)
{
    return study->solved ? study->lines.set_life : (double)NAN;
}
