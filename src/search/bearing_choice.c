/* search/bearing_choice.c: which bearings of the table are the lightest that hold? */
#include "search/bearing_choice.h"

#include "mass/mass.h"
#include "rating/drive_teeth.h"

#include <math.h>
#include <stdlib.h>

const char *ts_bearing_demand_says(ts_bearing_demand demand)
{
    static const char *const names[] = {
        [TS_DEMAND_LIFE] = "life",          [TS_DEMAND_STATIC] = "static safety",
        [TS_DEMAND_SPEED] = "speed number", [TS_DEMAND_LEAST_LOAD] = "least load",
        [TS_DEMAND_ROOM] = "room",
    };
    return names[demand];
}

#define SEATS TS_LINE_BEARINGS_MOST

typedef struct pair {
    double mass;
    int    at[SEATS]; /* of the options of each seat; 0 where it has none */
} pair;

typedef struct seat_options {
    ts_line_pick picks[TS_LINE_PICKS_MOST];
    double       mass[TS_LINE_PICKS_MOST];
    int          count; /* 0: the seat is kept */
} seat_options;

typedef struct chooser {
    const ts_drive  *drive;
    ts_lines        *lines;
    ts_bearing_plan *plan;
    ts_bearing_seat *told;    /* [line * SEATS + k], as the file has them          */
    ts_bearing_seat *seats;   /* the same, what is tried there                      */
    pair            *pairs;   /* of one line                                    */
    seat_options    *room;    /* [2 * SEATS], rollers first, then balls         */
    seat_options    *options; /* [SEATS], those in use                          */
} chooser;

/* ---- does it hold? --------------------------------------------------------------------------- */

/* The nearest to failing stays.  What cannot be computed has failed. */
static void ask(ts_bearing_margin *worst, ts_bearing_demand demand, double reserve, double value,
                double limit, int32_t condition)
{
    const double of = isnan(reserve) ? -1.0 : reserve;

    if (of < worst->reserve)
        *worst = (ts_bearing_margin){demand, of, value, limit, condition, NULL};
}

static int32_t longest(const chooser *s, uint32_t line)
{
    int32_t found = -1;
    double  most  = 0.0;

    for (uint32_t c = 0; c < s->drive->condition_count; c++) {
        const double t = ts_condition_seconds(&s->drive->conditions[c]);
        if (t > most && fabs(ts_line_at(s->lines, line, c)->omega) > 0.0) {
            most  = t;
            found = (int32_t)c;
        }
    }
    return found;
}

static int32_t fastest(const chooser *s, uint32_t line, int k)
{
    int32_t found = 0;

    for (uint32_t c = 1; c < s->drive->condition_count; c++)
        if (ts_line_at(s->lines, line, c)->duty[k].n_dm >
            ts_line_at(s->lines, line, (uint32_t)found)->duty[k].n_dm)
            found = (int32_t)c;
    return found;
}

static void ask_rollers(const chooser *s, uint32_t line, int k, ts_bearing_margin *worst)
{
    const ts_line_bearing *b     = &s->lines->lines[line].bearings[k];
    const ts_measure       limit = s->drive->limits.bearing_slip;
    const int32_t          at    = longest(s, line);

    if (b->bearing.form != TS_BEARING_CYLINDRICAL_ROLLER || at < 0 || !ts_measure_known(limit))
        return;
    const ts_duty_rating *duty  = &ts_line_at(s->lines, line, (uint32_t)at)->duty[k];
    const double          share = duty->P / duty->F_rmin;
    ask(worst, TS_DEMAND_LEAST_LOAD, share / limit.value - 1.0, share, limit.value, at);
}

static ts_bearing_margin margin_of(const chooser *s, uint32_t number, int k)
{
    const ts_line         *line   = &s->lines->lines[number];
    const ts_line_bearing *b      = &line->bearings[k];
    const ts_limits       *limits = &s->drive->limits;
    const double           lives  = b->rating.L_nmh / s->lines->life;
    ts_bearing_margin      worst  = {.reserve = (double)INFINITY, .condition = TS_EVERY_CONDITION};

    const char *fault = line->fault != NULL ? line->fault : b->fault;
    if (fault != NULL || line->missing != NULL)
        return (ts_bearing_margin){TS_DEMAND_ROOM, -(double)INFINITY,  (double)NAN,
                                   (double)NAN,    TS_EVERY_CONDITION, fault};
    if (ts_measure_known(limits->bearing_static_safety)) {
        const double least = limits->bearing_static_safety.value;
        ask(&worst, TS_DEMAND_STATIC, b->rating.S_0 / least - 1.0, b->rating.S_0, least,
            b->rating.worst_static);
    }
    if (ts_measure_known(limits->bearing_life) && s->plan->life_asked) {
        const double least = limits->bearing_life.value;
        ask(&worst, TS_DEMAND_LIFE, lives / least - 1.0, lives, least, b->rating.worst_life);
    }
    if (ts_measure_known(limits->bearing_speed_number)) {
        const double most = limits->bearing_speed_number.value;
        ask(&worst, TS_DEMAND_SPEED, most / b->rating.n_dm - 1.0, b->rating.n_dm, most,
            fastest(s, number, k));
    }
    ask_rollers(s, number, k, &worst);
    return worst;
}

/* ---- options --------------------------------------------------------------------------------- */

static double mass_of(const ts_line_pick *pick)
{
    return pick->rows * ts_mass_of_one_bearing(&pick->size, &pick->inside);
}

/* The lightest first; equal ones in the order of the table. */
static void list_options(const chooser *s, uint32_t line, int k, bool balls)
{
    seat_options *o = &s->options[k];

    o->count = 0;
    if (ts_lines_fixed_seat(&s->lines->lines[line].bearings[k]) != NULL)
        return;
    o->count = ts_lines_list_picks(s->drive, s->lines, line, k, balls, o->picks);
    if (balls && o->count == 0)
        o->count = ts_lines_list_picks(s->drive, s->lines, line, k, false, o->picks);
    for (int i = 0; i < o->count; i++) {
        const ts_line_pick pick = o->picks[i];
        const double       mass = mass_of(&pick);
        int                at   = i;

        for (; at > 0 && o->mass[at - 1] > mass; at--) {
            o->mass[at]  = o->mass[at - 1];
            o->picks[at] = o->picks[at - 1];
        }
        o->mass[at]  = mass;
        o->picks[at] = pick;
    }
}

static int by_mass(const void *a, const void *b)
{
    const pair *p = a, *q = b;

    if (p->mass != q->mass)
        return p->mass < q->mass ? -1 : 1;
    for (int k = 0; k < SEATS; k++)
        if (p->at[k] != q->at[k])
            return p->at[k] < q->at[k] ? -1 : 1;
    return 0;
}

static size_t list_pairs(const chooser *s)
{
    const int first = s->options[0].count, second = s->options[1].count;
    size_t    count = 0;

    for (int i = 0; i == 0 || i < first; i++)
        for (int j = 0; j == 0 || j < second; j++)
            s->pairs[count++] = (pair){(first > 0 ? s->options[0].mass[i] : 0.0) +
                                           (second > 0 ? s->options[1].mass[j] : 0.0),
                                       {i, j}};
    qsort(s->pairs, count, sizeof *s->pairs, by_mass);
    return count;
}

/* ---- trials ---------------------------------------------------------------------------------- */

static void try(const chooser *s, uint32_t line, const int at[SEATS])
{
    for (int k = 0; k < s->lines->lines[line].bearing_count; k++) {
        const size_t seat = line * SEATS + (size_t)k;
        s->seats[seat]    = s->told[seat];
        if (s->options[k].count > 0)
            ts_line_put_pick(&s->seats[seat], &s->options[k].picks[at[k]]);
    }
    s->plan->trials++;
    ts_lines_try_bearings(s->drive, s->lines, line);
}

/* Sum of what fails; 0: all hold. */
static double shortfall(const chooser *s, uint32_t line)
{
    double sum = 0.0;

    for (int k = 0; k < s->lines->lines[line].bearing_count; k++)
        if (s->options[k].count > 0)
            sum += fmin(0.0, margin_of(s, line, k).reserve);
    return -sum;
}

/* What is no nearer than this to holding is not worth its mass. */
#define NEARER 0.05

/* The lightest pair that holds, else that which falls short by least, or hardly more; how much that
 * is. */
static double search(const chooser *s, uint32_t line, pair *best)
{
    const size_t count = list_pairs(s);
    double       least = (double)INFINITY;

    *best = s->pairs[0];
    for (size_t i = 0; i < count && least > 0.0; i++) {
        try(s, line, s->pairs[i].at);
        const double falls = shortfall(s, line);
        if (falls == 0.0 || falls < least - NEARER) {
            least = falls;
            *best = s->pairs[i];
        }
    }
    return least;
}

/* What the next lighter one fails in, with the other bearing as it is. */
static void explain(const chooser *s, uint32_t line, const pair *best, ts_bearing_choice *choice)
{
    pair other = *best;
    int  at    = best->at[choice->k] - 1;

    for (; at >= 0 && !(s->options[choice->k].mass[at] < choice->after.mass); at--)
        ;
    choice->lightest = at < 0;
    if (choice->lightest)
        return;
    other.at[choice->k] = at;
    try(s, line, other.at);
    choice->lighter = (ts_bearing_margin){.reserve = (double)INFINITY};
    for (int k = 0; k < s->lines->lines[line].bearing_count; k++) {
        const ts_bearing_margin margin = margin_of(s, line, k);
        if (s->options[k].count == 0 || !(margin.reserve < choice->lighter.reserve))
            continue;
        choice->lighter   = margin;
        choice->lighter_k = k;
    }
}

/* ---- the plan -------------------------------------------------------------------------------- */

static ts_bearing_kind kind_of(const ts_line_bearing *b)
{
    const ts_bearing_size size = {b->series, b->bearing.d, b->bearing.D,
                                  b->width / b->bearing.rows};

    return (ts_bearing_kind){
        b->bearing.form, b->bearing.rows,
        b->series,       b->bearing.d,
        b->bearing.D,    b->bearing.rows * ts_mass_of_one_bearing(&size, &b->bearing.inside)};
}

static void begin_line(const chooser *s, uint32_t number)
{
    ts_line *line = &s->lines->lines[number];

    for (int k = 0; k < line->bearing_count; k++) {
        ts_line_bearing   *b      = &line->bearings[k];
        ts_bearing_choice *choice = &s->plan->choices[s->plan->count++];

        *choice = (ts_bearing_choice){.line   = number,
                                      .k      = k,
                                      .why    = ts_lines_fixed_seat(b),
                                      .stated = b->given,
                                      .was    = b->there && b->fault == NULL &&
                                             line->missing == NULL && b->bearing.D > 0.0};
        if (choice->was)
            choice->before = kind_of(b);
        if (line->missing != NULL)
            choice->why = line->missing;
        else if (!(line->d_journal > 0.0))
            choice->why = line->fault;
        const size_t seat = number * SEATS + (size_t)k;
        s->seats[seat] = s->told[seat] = *b->seat;
        b->seat                        = &s->seats[seat];
    }
}

static void finish_seat(const chooser *s, const pair *best, ts_bearing_choice *choice)
{
    choice->margin = margin_of(s, choice->line, choice->k);
    choice->state  = choice->margin.reserve >= 0.0 ? TS_BEARING_CHOSEN : TS_BEARING_NONE;
    choice->pick   = s->options[choice->k].picks[best->at[choice->k]];
    choice->after =
        (ts_bearing_kind){choice->pick.form,   choice->pick.rows,   choice->pick.size.series,
                          choice->pick.size.d, choice->pick.size.D, mass_of(&choice->pick)};
}

/* False where no seat of the line is free. */
static bool list_all(chooser *s, uint32_t line, ts_bearing_choice *first, seat_options *room)
{
    bool free = false;

    s->options = room;
    for (int k = 0; k < SEATS; k++)
        room[k].count = 0;
    for (int k = 0; k < s->lines->lines[line].bearing_count; k++) {
        if (first[k].why != NULL)
            continue;
        list_options(s, line, k, room != s->room);
        if (room[k].count == 0)
            first[k].why = "no bearing of the table has its form and bore";
        free = free || room[k].count > 0;
    }
    return free;
}

/* first: where its bearings begin among the choices. */
static void choose_line(chooser *s, uint32_t number, ts_bearing_choice *first)
{
    const int seats = s->lines->lines[number].bearing_count;
    pair      best, other;

    /* What may stand there is listed before anything else does. */
    const bool balls = list_all(s, number, first, s->room + SEATS);
    if (!list_all(s, number, first, s->room))
        return;
    const double falls = search(s, number, &best);
    if (falls > 0.0 && balls) {
        s->options = s->room + SEATS;
        /* The rollers again where balls do no better. */
        if (search(s, number, &other) < falls)
            best = other;
        else
            s->options = s->room;
    }
    try(s, number, best.at);
    for (int k = 0; k < seats; k++)
        if (s->options[k].count > 0)
            finish_seat(s, &best, &first[k]);
    for (int k = 0; k < seats; k++)
        if (s->options[k].count > 0 && first[k].state == TS_BEARING_CHOSEN)
            explain(s, number, &best, &first[k]);
    try(s, number, best.at);
}

static void add_up(ts_bearing_plan *plan)
{
    plan->fits        = true;
    plan->mass_before = plan->mass_after = 0.0;
    for (size_t i = 0; i < plan->count; i++) {
        const ts_bearing_choice *choice = &plan->choices[i];
        const double             before = choice->was ? choice->before.mass : (double)NAN;

        plan->fits = plan->fits && choice->state != TS_BEARING_NONE;
        if (choice->state == TS_BEARING_KEPT && !choice->was)
            continue;
        plan->mass_before += before;
        plan->mass_after += choice->state == TS_BEARING_KEPT ? before : choice->after.mass;
    }
}

/* Are times and oil of every condition known in which the drive turns? */
static bool asks_for_life(const ts_drive *drive, const ts_lines *lines)
{
    for (uint32_t c = 0; c < drive->condition_count; c++)
        if (isnan(lines->nu[c]))
            return false;
    return !isnan(lines->life);
}

ts_status ts_find_bearings(const ts_drive *drive, ts_lines *lines, ts_arena *arena,
                           ts_bearing_plan *plan)
{
    const size_t seats = (size_t)lines->count * SEATS, most = TS_LINE_PICKS_MOST;
    chooser      s = {.drive = drive,
                      .lines = lines,
                      .plan  = plan,
                      .told  = TS_TAKE(arena, ts_bearing_seat, seats),
                      .seats = TS_TAKE(arena, ts_bearing_seat, seats),
                      .pairs = TS_TAKE(arena, pair, most * most),
                      .room  = TS_TAKE(arena, seat_options, (size_t)2 * SEATS)};

    *plan = (ts_bearing_plan){.choices    = TS_TAKE(arena, ts_bearing_choice, seats),
                              .life_asked = asks_for_life(drive, lines)};
    if (s.told == NULL || s.seats == NULL || s.pairs == NULL || s.room == NULL ||
        plan->choices == NULL)
        return TS_NO_MEMORY;
    for (uint32_t l = 0; l < lines->count; l++) {
        ts_bearing_choice *first = &plan->choices[plan->count];
        begin_line(&s, l);
        choose_line(&s, l, first);
    }
    add_up(plan);
    return TS_OK;
}
