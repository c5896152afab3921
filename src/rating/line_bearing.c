/* rating/line_bearing.c: how does each bearing of a line come to its size, its life and its
 * stiffness? */
#include "rating/drive_lines_parts.h"

#include <math.h>

/* ---- stiffness ------------------------------------------------------------------------------- */

/* A. Palmgren, Ball and Roller Bearing Engineering (from memory), in mm and N, at a fifth of the
 * elements' load on the most loaded one. */
static double stiffness(const ts_bearing *bearing, double F_r)
{
    const double Q      = 5.0 * F_r / (bearing->rows * bearing->inside.Z * cos(bearing->alpha));
    const bool   roller = bearing->form == TS_BEARING_CYLINDRICAL_ROLLER;
    const double give =
        roller ? 7.68e-5 * pow(Q, 0.9) / pow(bearing->inside.L_we * 1e3, 0.8)
               : 4.36e-4 * cbrt(Q * Q / (bearing->inside.D_w * 1e3)) / cos(bearing->alpha);

    return F_r / (give * 1e-3);
}

/* Linear at the greatest load that it meets; an idle one at a hundredth of its capacity. */
static void stiffen(const ts_lines_case *c, uint32_t number, int k)
{
    ts_line_bearing *b    = &c->lines->lines[number].bearings[k];
    double           most = b->ability.C_0r / 100.0;

    if (ts_measure_known(b->seat->stiffness)) {
        b->k_r = b->seat->stiffness.value;
        return;
    }
    for (uint32_t i = 0; i < c->drive->condition_count; i++)
        most = fmax(most, ts_line_case_at(c, number, i)->reaction[k].F_r);
    b->F_ref = most;
    b->k_r   = stiffness(&b->bearing, most);
}

/* ---- the line -------------------------------------------------------------------------------- */

static const char *missing_of(const ts_lines_case *c, uint32_t number)
{
    for (uint32_t i = 0; i < c->drive->condition_count; i++)
        if (!ts_line_case_at(c, number, i)->known)
            return "the forces of a condition";
    return NULL;
}

/* m, of one row, by the table; by its layout where it is of no series. */
static double row_width(const ts_lines_case *c, const ts_line_bearing *b)
{
    double one = b->width / b->bearing.rows;

    for (int s = 0; s < TS_LINE_SERIES && b->series != NULL; s++) {
        const size_t size = ts_lines_size_of(c->lines->catalog, s, b->bearing.d);
        if (size < c->lines->catalog->size_count &&
            c->lines->catalog->sizes[size].series == b->series)
            one = c->lines->catalog->sizes[size].B;
    }
    return one;
}

static void choose(const ts_lines_case *c, uint32_t number, int k)
{
    ts_bearing_duty  duties[TS_CONDITIONS_MOST];
    ts_line_bearing *b     = &c->lines->lines[number].bearings[k];
    const int        count = ts_line_list_duties(c, number, k, duties);

    b->fault = NULL;
    b->given = b->seat->series.standing == TS_GIVEN && ts_measure_known(b->seat->bore);
    if (!ts_line_choose_bearing(c, number, k, duties, count)) {
        if (!ts_line_is_own(b->seat)) {
            b->fault = "no generic bearing of that form, series and bore is in the table";
            b->k_r   = (double)NAN;
            return;
        }
        ts_line_begin_own(b);
    }
    const double one = row_width(c, b);
    b->bulk          = ts_line_bulk(b->bearing.d, b->bearing.D, one * b->bearing.rows);
    b->width = (ts_measure_known(b->seat->width) ? b->seat->width.value : one) * b->bearing.rows;
    if (ts_line_is_own(b->seat)) {
        b->given = ts_measure_known(b->seat->bore);
        ts_line_overlay_own(b);
    }
}

/* Member by member: records with bytes between them are no question. */
static void ask_bearing(ts_memo *memo, const ts_line_bearing *line_bearing)
{
    const ts_bearing         *b         = &line_bearing->bearing;
    const ts_bearing_inside  *in        = &b->inside;
    const ts_bearing_ability *a         = &line_bearing->ability;
    const ts_load_factors    *f         = &a->factors;
    const int                 words[]   = {(int)b->form, b->rows, in->Z, (int)f->within};
    const double              numbers[] = {
                     b->alpha, b->d,    b->D,    b->C_r, b->C_0r,      in->D_w,       in->L_we,
                     in->D_pw, in->f_i, in->f_e, a->d_m, a->gamma,     a->f_c,        a->f_0,
                     a->C_r,   a->C_0r, a->C_u,  a->p,   a->still.X_0, a->still.Y_0,  f->e,
                     f->X_1,   f->Y_1,  f->X_2,  f->Y_2, a->room.D_pw, a->room.power, a->room.root};

    ts_memo_ask(memo, words, sizeof words);
    ts_memo_ask(memo, numbers, sizeof numbers);
}

static ts_duty_rating duty_of(const ts_lines_case *c, uint32_t number, int k, int condition,
                              const ts_bearing_duty *duty)
{
    const ts_line_bearing *b    = &c->lines->lines[number].bearings[k];
    ts_memo               *memo = c->lines->memo;
    bool                   known;

    ask_bearing(memo, b);
    ts_memo_ask(memo, duty, sizeof *duty); /* doubles alone */
    ts_line_ask_want(c);
    const size_t place =
        ((size_t)number * TS_LINE_BEARINGS_MOST + (size_t)k) * c->drive->condition_count +
        (size_t)condition;
    ts_duty_rating *kept = ts_memo_answer(memo, TS_MEMO_DUTY, place, sizeof *kept, &known);
    if (known)
        return *kept;
    const ts_duty_rating found =
        ts_line_rate_duty(&b->bearing, &b->ability, duty, &c->lines->want, NULL);
    if (kept != NULL)
        *kept = found;
    return found;
}

/* What is asked of the bearing once it stays: its life, how stiff it is, whether it idles. */
static void rate(const ts_lines_case *c, uint32_t number, int k)
{
    ts_bearing_duty  duties[TS_CONDITIONS_MOST];
    ts_duty_rating   ratings[TS_CONDITIONS_MOST];
    ts_line_bearing *b     = &c->lines->lines[number].bearings[k];
    const int        count = ts_line_list_duties(c, number, k, duties);

    for (int i = 0; i < count; i++) {
        ratings[i]                                       = duty_of(c, number, k, i, &duties[i]);
        ts_line_case_at(c, number, (uint32_t)i)->duty[k] = ratings[i];
    }
    b->rating = ts_line_add_up(duties, ratings, count);
    stiffen(c, number, k);
    ts_line_judge_slip(c, number, k);
}

void ts_line_bear(const ts_lines_case *c, uint32_t number)
{
    ts_line *line = &c->lines->lines[number];

    ts_line_choose_locating(c, line);
    for (uint32_t i = 0; i < c->drive->condition_count; i++)
        if (ts_line_case_at(c, number, i)->known)
            ts_line_react(line, ts_line_case_at(c, number, i));
    line->missing = missing_of(c, number);
    if (line->missing != NULL)
        return;
    for (int k = 0; k < line->bearing_count; k++)
        if (line->bearings[k].there)
            choose(c, number, k);
    if (line->quarrel != NULL)
        line->fault = line->quarrel;
    else if (line->slides)
        line->fault = "a cylindrical roller bearing cannot hold it along its axis";
    for (int k = 0; k < line->bearing_count; k++)
        if (line->bearings[k].there && line->bearings[k].fault != NULL && line->fault == NULL)
            line->fault = "a bearing of it is not known";
}

void ts_line_rate(const ts_lines_case *c, uint32_t number)
{
    const ts_line *line = &c->lines->lines[number];

    for (int k = 0; k < line->bearing_count && line->missing == NULL; k++)
        if (line->bearings[k].there && line->bearings[k].fault == NULL)
            rate(c, number, k);
}
