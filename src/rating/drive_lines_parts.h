/* rating/drive_lines_parts.h: the steps of ts_lines_solve, in their order.  For src/rating alone.
 */
#ifndef TS_RATING_DRIVE_LINES_PARTS_H
#define TS_RATING_DRIVE_LINES_PARTS_H

#include "rating/drive_lines.h"

/* What a unit force or a unit couple at one gear does at every gear, in one plane; the couple turns
 * x towards y. */
typedef struct ts_line_answer {
    double v[TS_LINE_GEARS_MOST], theta[TS_LINE_GEARS_MOST];
    double end[TS_LINE_GEARS_MOST][2];
    double dv[TS_LINE_GEARS_MOST]; /* rear end less front end */
} ts_line_answer;

typedef struct ts_line_bent {
    ts_line_answer force[TS_LINE_GEARS_MOST], couple[TS_LINE_GEARS_MOST];
} ts_line_bent;

/* Generic bearings of the catalogue, each computed when it is first asked for. */
typedef enum ts_line_make {
    TS_MAKE_DEEP_GROOVE,
    TS_MAKE_ANGULAR,
    TS_MAKE_ANGULAR_PAIR,
    TS_MAKE_ROLLER,
    TS_MAKES
} ts_line_make;
#define TS_LINE_ANGLE 0.43633231299858238 /* 25 deg, of angular contact bearings not told */

typedef struct ts_line_generic {
    bool               tried, sound;
    const char        *series;
    ts_bearing         bearing;
    ts_bearing_ability ability;
} ts_line_generic;

struct ts_lines_catalog {
    ts_bearing_size *sizes;
    size_t           size_count;
    double          *bores; /* m, each once, ascending */
    size_t           bore_count;
    size_t          *at;      /* [bore * TS_LINE_SERIES + series]: its size, or size_count */
    size_t          *by_bulk; /* sizes, the lightest first                               */
    int             *series;  /* [size]: 0 .. 3 as model/drive.h has them; -1: none of those */
    ts_line_generic *generic; /* [size * TS_MAKES + make] */
};
/* m, the least bore that is at least d (up), the greatest that is at most d; NaN: there is none. */
double ts_lines_bore_near(const ts_lines_catalog *catalog, double d, bool up);
/* Index of a size, or size_count.  series: 0 .. 3 as model/drive.h has them. */
#define TS_LINE_SERIES 4
size_t ts_lines_size_of(const ts_lines_catalog *catalog, int series, double bore);
/* Those of all series of a bore; NULL: no series has it. */
const size_t          *ts_lines_sizes_at(const ts_lines_catalog *catalog, double bore);
const ts_line_generic *ts_lines_generic(ts_lines_catalog *catalog, size_t size, ts_line_make make);
static inline int      ts_line_rows_of(ts_line_make make)
{
    return make == TS_MAKE_ANGULAR_PAIR ? 2 : 1;
}

typedef struct ts_lines_case {
    const ts_drive *drive;
    const ts_train *train;
    ts_lines       *lines;
    ts_workings    *workings;
} ts_lines_case;

/* How many lines has a drive, and how many addresses do they need? */
uint32_t ts_lines_count(const ts_drive *drive, const ts_train *train);
#define TS_LINE_NODES_MOST 36
/* Kind, gears, seats, names of all. */
ts_status ts_lines_list(const ts_drive *drive, ts_source *source, ts_arena *arena, ts_lines *lines);

/* How thick the oil is in every condition, and how clean: before any bearing. */
void ts_lines_solve_oil(const ts_lines_case *c);
/* Frames of all lines; forces and torques of every gear and end in every condition. */
void ts_lines_load(const ts_lines_case *c);
/* First diameters, places of gears and bearings; false, with a fault or what is missing, without.
 */
bool ts_line_place(const ts_lines_case *c, uint32_t line);
#define TS_LINE_GAP  4e-3  /* m  between gears, and between gear and bearing          */
#define TS_LINE_WALL 12e-3 /* m  from a pad face to what stands behind it: wall, seal */
/* How much room a shaft of a box takes along its axis, once it is settled: line_room.c. */
void ts_line_take_room(const ts_lines_case *c, uint32_t line);
/* The sections round the bearings that were chosen; false, with a fault. */
bool ts_line_outline(const ts_lines_case *c, uint32_t line);
/* Reactions of two bearings by statics alone, then bearings that hold them: line_reaction.c,
 * line_duty.c, line_choice.c, and line_bearing.c, which calls them in turn. */
void ts_line_bear(const ts_lines_case *c, uint32_t line);
/* Lives, stiffness and slip of the bearings that it has then. */
void ts_line_rate(const ts_lines_case *c, uint32_t line);
/* Both in turn, until the line is laid out with the widths of the bearings that it chose; false,
 * with a fault or what is missing, where it has no place. */
bool ts_line_settle(const ts_lines_case *c, uint32_t line);
/* m3, round what a bearing fills with all its rows: by this lighter ones stand before heavier. */
static inline double ts_line_bulk(double d, double D, double width)
{
    return (D * D - d * d) * width;
}

/* Does anything push along the shaft? */
bool ts_line_has_axial(const ts_lines_case *c, const ts_line *line);
void ts_line_choose_locating(const ts_lines_case *c, ts_line *line);
void ts_line_react(const ts_line *line, ts_line_case *one);

/* What every condition asks of bearing k; returns how many conditions. */
int            ts_line_list_duties(const ts_lines_case *c, uint32_t line, int k,
                                   ts_bearing_duty duties[TS_CONDITIONS_MOST]);
ts_duty_rating ts_line_rate_duty(const ts_bearing *bearing, const ts_bearing_ability *ability,
                                 const ts_bearing_duty *duty, const ts_bearing_want *want,
                                 ts_workings *workings);
/* All conditions, by the sum of their harm. */
ts_bearing_rating ts_line_add_up(const ts_bearing_duty *duties, const ts_duty_rating *ratings,
                                 int count);

/* A bore, and so many of the next larger ones, are tried. */
#define TS_LINE_BORES_MOST 7
/* Is it of the form and rows that the file tells, or else that the place asks for? */
bool ts_line_fits_form(const ts_line_bearing *b, bool axial, ts_line_make make);
/* Into the question of the memo: what is asked of every bearing. */
void ts_line_ask_want(const ts_lines_case *c);
/* The lightest generic bearing that holds, else the one that bears most; false: there is none. */
bool ts_line_choose_bearing(const ts_lines_case *c, uint32_t line, int k,
                            const ts_bearing_duty *duties, int count);
/* Does the file tell the inside or the capacities?  They then stand over those of the choice, or
 * over an empty one. */
bool ts_line_is_own(const ts_bearing_seat *seat);
void ts_line_begin_own(ts_line_bearing *b);
void ts_line_overlay_own(ts_line_bearing *b);

void ts_line_judge_slip(const ts_lines_case *c, uint32_t line, int k);
/* Unit answers, then deflections in all conditions. */
void ts_line_bend(const ts_lines_case *c, uint32_t line);

/* By how much all meshes lie out of parallel, once every line is bent: line_askew.c. */
void ts_lines_lay_askew(const ts_lines_case *c);

/* Adds what a mesh does to its gear g (0 driver, 1 driven), which sits on a line: the torque is
 * that of power/, which knows the losses; the force is that of the side that power enters. */
void ts_line_press(const ts_lines *lines, uint32_t mesh, int g, const ts_mesh_load *load,
                   ts_line_gear_load *out);
/* From the axis of gear g (0 driver, 1 driven) of a mesh to where its teeth touch, in the frame. */
void ts_line_arm(const ts_lines *lines, uint32_t mesh, int g, const ts_line *line, double r[3]);
#define TS_LINE_UNBALANCE 6.3e-3 /* m/s  ISO 21940-11, grade G 6.3 (from memory) */
double ts_line_tube_mass(const ts_line *line);

/* How all of it came about; with workings alone. */
void ts_line_note(const ts_lines_case *c, uint32_t line);
void ts_line_note_bent(const ts_lines_case *c, uint32_t line, const ts_line_bent *bent);
/* One duty of a bearing with its steps. */
void ts_line_rate_again(const ts_lines_case *c, const ts_line_bearing *b, uint32_t condition,
                        double n, const ts_line_reaction *load);

/* What a section of a line carries in one condition. */
typedef struct ts_line_cut {
    double M[2], M_b, T, N;
} ts_line_cut;
ts_line_cut   ts_line_cut_at(const ts_line *line, const ts_line_case *one, double x);
ts_din_stress ts_line_stress_of(const ts_din_section *s, double M, double T, double N,
                                ts_workings *workings);
/* Least safety of all sections for as long as the conditions last, behind ts_line_hold. */
void ts_line_last(const ts_lines_case *c, uint32_t line);
/* The working of a section by itself, as ts_line_hold notes the weakest. */
void ts_line_note_notch(const ts_lines_case *c, uint32_t line, int notch);

/* Safety of the outline at every change of it, all conditions. */
void ts_line_hold(const ts_lines_case *c, uint32_t line);

/* N, load with which the elements follow the box's acceleration limits. */
double ts_line_load_to_follow(const ts_lines_case *c, const ts_line *line, const ts_line_bearing *b,
                              ts_workings *workings);

static inline ts_line_case *ts_line_case_at(const ts_lines_case *c, uint32_t line,
                                            uint32_t condition)
{
    return &c->lines->cases[(size_t)condition * c->lines->count + line];
}

#endif
