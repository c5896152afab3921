/* draw/figure.h: pictures of a solved drive, the same bytes from run to run.
 *
 * One sheet, drawn with one set of pens; every colour, pen and size comes from data/look.json.  A
 * length of 1 px is one unit of an SVG, one pixel of a PNG at scale 1, and 420/width mm of a PDF,
 * whose sheet is A3 wide.  Text is laid out here and drawn as shapes; it is safe whatever the names
 * in the file hold, and it is never mirrored.
 *
 * Cairo, Pango and GLib draw.  They take their memory from the C library and GLib ends the program
 * when there is none; everything this folder keeps itself comes from `allocator`.
 */
#ifndef TS_DRAW_FIGURE_H
#define TS_DRAW_FIGURE_H

#include "base/arena.h"
#include "base/memo.h"
#include "check/outcome.h"
#include "draw/candidates.h"
#include "draw/drawn_seizure.h"
#include "effect/effect.h"
#include "mass/mass.h"
#include "model/source.h"
#include "oil/drive_heat.h"
#include "oil/warming.h"
#include "power/power.h"
#include "quantity/quantity.h"
#include "rating/drive_float.h"
#include "rating/seizure_peak.h"
#include "rating/selectivity.h"
#include "rating/whirl_course.h"
#include "response/drive_forced.h"
#include "response/drive_start.h"
#include "response/drive_torsion.h"
#include "sample/sample_answer.h"
#include "search/tooth_width.h"
#include "towershaft/status.h"

typedef enum ts_figure {
    TS_FIGURE_BEHIND,      /* the face view, seen from behind, looking forward                   */
    TS_FIGURE_FRONT,       /* the face view, seen from the front, looking rearward               */
    TS_FIGURE_PADS,        /* the faces that bear pads, each as who faces it sees it             */
    TS_FIGURE_UNROLLED,    /* the arc laid flat: face widths, bodies on both faces, gaps         */
    TS_FIGURE_POWER,       /* who drives whom: ribbons over the face view seen from behind       */
    TS_FIGURE_SPEEDS,      /* pad speed bands against the travel of the spools                   */
    TS_FIGURE_TEETH,       /* one mesh, tooth in space: path of contact, working flanks          */
    TS_FIGURE_ROOT,        /* the critical section of both roots of one mesh                     */
    TS_FIGURE_MARGINS,     /* every reserve in every condition                                   */
    TS_FIGURE_MASS,        /* what weighs how much                                               */
    TS_FIGURE_SELECTIVITY, /* does the right neck break first?  Torque against duration */
    TS_FIGURE_WIDTHS,      /* face widths before and after sizing, and what sets each            */
    TS_FIGURE_MODES,       /* how it swings in torsion                                           */
    TS_FIGURE_START,       /* how the engine comes to idle                                       */
    TS_FIGURE_FLOAT,       /* the take-offs in section, with the travel of their spools           */
    TS_FIGURE_HEAT,        /* where power becomes heat, over the face view seen from behind       */
    TS_FIGURE_NECKS,    /* chances of designed necks over their diameters                        */
    TS_FIGURE_CAMPBELL, /* whirl speeds of the radial shaft that is nearest to whirling     */
    TS_FIGURE_REACH,    /* how long and thick that shaft may be                             */
    TS_FIGURE_STOPS,    /* the drive as a tree, greyed to what still turns after a failure  */
    TS_FIGURE_SEIZURE,  /* torques in time when an accessory seizes                           */
    TS_FIGURE_JOLT,     /* the same of a load that comes suddenly and must be borne           */
    TS_FIGURE_SWING,    /* one mode of torsion on the face view                               */
    TS_FIGURE_INTERFERENCE, /* natural frequencies of torsion against what excites them         */
    TS_FIGURE_PLAY, /* what play is left between teeth as it grows hot                      */
    TS_FIGURE_COUNT,
    TS_FIGURE_PLAIN, /* the face with names and ribbons and no number, to learn from            */
    TS_FIGURE_CANDIDATES, /* arrangements side by side; needs those, where the others need a drive
                           */
    TS_FIGURE_SAMPLES     /* what samples of a drive tell; needs those */
} ts_figure;

typedef enum ts_picture_format {
    TS_PICTURE_SVG,
    TS_PICTURE_PDF,
    TS_PICTURE_PNG,
    TS_PICTURE_DXF,    /* shapes in true size, of the figures that have one */
    TS_PICTURE_STROKES /* kept in memory to be set on a larger page; gives no bytes */
} ts_picture_format;

typedef enum ts_ground {
    TS_GROUND_LIGHT,
    TS_GROUND_DARK,
    TS_GROUND_CONTRAST,
    TS_GROUND_PRINT,
    TS_GROUND_COUNT
} ts_ground;

/* A drive that was followed as it grew hot, every leg with so many moments. */
typedef struct ts_drawn_warmth {
    const ts_warm_course *course;
    const ts_warm_leg    *legs;
    size_t                leg_count, samples;
} ts_drawn_warmth;

/* What is drawn.  The first four must be solved and stay as they are during the call. */
typedef struct ts_drawing_subject {
    const ts_drive       *drive;
    ts_memo              *memo; /* of outlines; NULL: each is traced                              */
    const ts_train       *train;
    const ts_motion      *motion;
    const ts_power       *power;
    const ts_select      *select; /* NULL: necks were not looked at                               */
    const ts_floats      *floats; /* NULL: not looked at                                          */
    const ts_mass        *mass;   /* NULL: not weighed                                            */
    const ts_heat        *heat;   /* NULL: losses were not computed                               */
    const ts_drive_twist *twists; /* torsion of its trees; may be NULL                         */
    const ts_drive_forced *forced; /* [twist] how far they swing; may be NULL                  */
    size_t                 twist_count;
    const ts_whirls *whirls; /* critical speeds; NULL: not computed                            */
    const ts_whirl_course  *courses; /* [item of whirls], for its figures; may be NULL            */
    const ts_drive_start   *start; /* with its trace, for TS_FIGURE_START; NULL: not run         */
    const ts_seizure_peak  *peaks; /* [guard of select], for TS_FIGURE_SELECTIVITY; NULL: unasked */
    const char             *start_to; /* condition to which it went on from idle; NULL: none */
    const ts_drawn_seizure *seizure;  /* for TS_FIGURE_SEIZURE and _JOLT; NULL: not run */
    size_t                  mode;     /* for TS_FIGURE_SWING, 0: the slowest that is no turning */
    const ts_drawn_warmth  *warm;     /* for TS_FIGURE_PLAY; NULL: not followed */
    const ts_source *source; /* places of findings; NULL: only exact matches get a mark       */
    const ts_finding
          *findings; /* in the order in which they are numbered #1, #2, ...; may be NULL */
    size_t finding_count;
    const ts_judgement  *judgements; /* all that was judged, rule by rule; may be NULL          */
    size_t               judgement_count;
    const ts_width_plan *widths;  /* read by TS_FIGURE_WIDTHS; NULL: none were sought           */
    const ts_teeth      *teeth;   /* ... as they are rated with those widths                    */
    double            width_step; /* ... which were sought in these steps, m                    */
    const ts_effects *effects;    /* read by TS_FIGURE_STOPS, with its outcomes; NULL: none    */
    uint32_t    failure; /* ... which of them                                                */
    const char *failed;  /* ... in words                                                     */
    bool        chosen;  /* ... by the program: of all that seize it stops most              */
    const ts_candidates    *candidates; /* read by TS_FIGURE_CANDIDATES */
    const ts_sample_answer *samples;    /* read by TS_FIGURE_SAMPLES    */
    const char *title;    /* NULL: the drive's own                                         */
    const char *revision; /* NULL: the drive's own                                         */
    const char *file;     /* name of the drive file; may be NULL                           */
    const char *hash;     /* of the drive file; may be NULL                                */
    const char *version;  /* of this program; may be NULL                                  */
    const char *verdict;  /* one sentence; NULL: said from the findings                    */
} ts_drawing_subject;

typedef struct ts_draw_options {
    ts_figure           figure;
    ts_picture_format   format;
    ts_ground           ground;
    int32_t             condition; /* index; negative: the one in which most power is taken */
    ts_node             mesh;      /* of a cylindrical mesh; 0: the most loaded one            */
    double              width;     /* px, of the sheet; 0: the width of the look            */
    double              scale;     /* PNG: pixels a px; 0: 2                                */
    ts_units            units;
    const char         *caution;   /* the sentence at the foot; NULL: none                  */
    const ts_allocator *allocator; /* NULL: the standard one                              */
} ts_draw_options;

/* Draws one figure and sends it whole.  TS_NOT_UNDERSTOOD when an option is out of its range
 * (condition, width 900..8000, scale 0.1..8). */
ts_status ts_draw(const ts_drawing_subject *subject, const ts_draw_options *options,
                  const ts_sink *sink);

/* Whether a figure has a true size, and so may be written as DXF. */
bool ts_figure_has_size(ts_figure figure);

/* The index of the condition in which the spools give most power, pads that drive included. */
int32_t ts_draw_condition(const ts_drawing_subject *subject);

#endif
