/* draw/dxf_view.c: which view goes into a DXF file, and what stands under it? */
#include "draw/dxf_view.h"

#include <math.h>

#define REFERENCE 0.1 /* m */

/* A bar with its ends, 100 mm long whatever the unit of the file. */
static double reference(ts_dxf *dxf, double x, double y, double letters)
{
    const double half = 0.6 * letters;
    ts_dxf_line(dxf, TS_DXF_REFERENCE, (ts_point){x, y}, (ts_point){x + REFERENCE, y});
    for (int end = 0; end < 2; end++)
        ts_dxf_line(dxf, TS_DXF_REFERENCE, (ts_point){x + end * REFERENCE, y - half},
                    (ts_point){x + end * REFERENCE, y + half});
    ts_dxf_text(dxf, TS_DXF_REFERENCE, (ts_point){x + 0.5 * REFERENCE, y + 1.2 * letters}, letters,
                TS_DXF_MIDDLE, "100 mm");
    return y - 3.0 * letters;
}

static const char *or_nothing(const char *text, ts_word word)
{
    return text != NULL ? text : word.text != NULL ? word.text : "";
}

/* What the title block of the other pictures says, line below line. */
static void title(ts_scene *scene, ts_dxf *dxf, const char *view)
{
    const ts_drawing_subject *subject = scene->subject;
    const double              letters = ts_dxf_letters(dxf), x = dxf->left;
    double                    y = reference(dxf, x, dxf->low - 4.0 * letters, letters);
    for (int line = 0; line < 6; line++) {
        ts_buffer *text = ts_canvas_line(&scene->canvas);
        if (line == 0)
            ts_buffer_print(text, "%s, revision %s",
                            or_nothing(subject->title, scene->drive->title),
                            or_nothing(subject->revision, scene->drive->revision));
        else if (line == 1)
            ts_buffer_print(text, "%s, 1 : 1, %s", view,
                            scene->units == TS_UNITS_US ? "inches" : "millimetres");
        else if (line == 2 && subject->verdict != NULL)
            ts_buffer_add(text, subject->verdict);
        else if (line == 3)
            ts_buffer_print(text, "towershaft %s, %s", subject->version ? subject->version : "",
                            subject->file ? subject->file : "");
        else if (line == 4 && subject->hash != NULL)
            ts_buffer_print(text, "SHA-256 %s", subject->hash);
        else if (line == 5 && scene->options->caution != NULL)
            ts_buffer_add(text, scene->options->caution);
        if (text->length > 0)
            ts_dxf_text(dxf, TS_DXF_SHEET, (ts_point){x, y}, line == 0 ? 1.4 * letters : letters,
                        TS_DXF_LEFT, text->bytes);
        y -= 2.0 * letters;
    }
}

ts_status ts_draw_dxf(ts_scene *scene, ts_buffer *out)
{
    const ts_figure figure = scene->options->figure;
    ts_dxf          dxf;
    ts_status       status = TS_NOT_UNDERSTOOD;
    const char     *view   = figure == TS_FIGURE_BEHIND  ? "Seen from behind, looking forward"
                             : figure == TS_FIGURE_FRONT ? "Seen from the front, looking rearward"
                             : figure == TS_FIGURE_PADS
                                 ? "Rear pads seen from behind, front pads seen from the front"
                             : figure == TS_FIGURE_FLOAT
                                 ? "Take-offs, radial shafts and box inputs in section, rearward to "
                                   "the right"
                                 : "The arcs laid flat, front up";
    ts_dxf_begin(&dxf, scene->units, out);
    if (figure == TS_FIGURE_BEHIND || figure == TS_FIGURE_FRONT)
        status = ts_dxf_face(scene, figure == TS_FIGURE_FRONT, &dxf);
    else if (figure == TS_FIGURE_PADS)
        status = ts_dxf_pads(scene, &dxf);
    else if (figure == TS_FIGURE_UNROLLED)
        status = ts_dxf_strips(scene, &dxf);
    else if (figure == TS_FIGURE_FLOAT)
        status = ts_dxf_sections(scene, &dxf);
    if (status == TS_OK)
        title(scene, &dxf, view);
    ts_dxf_finish(&dxf);
    return status;
}
