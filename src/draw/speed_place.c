/* Where does a pad stand, and at which ratio to its spool? */
#include "draw/speed_chart.h"

#include <math.h>

void ts_speed_add_place(const ts_speed_section *section, const ts_speed_row *row, ts_buffer *line)
{
    const ts_scene   *scene = section->scene;
    const ts_pad     *pad   = &scene->train->pads[row->pad];
    const ts_rational ratio = scene->motion->shafts[pad->shaft].ratio;
    ts_buffer_add(line, pad->face == TS_REAR ? "rear, " : "front, ");
    if (ts_rational_valid(ratio))
        ts_buffer_significant(line, fabs(ts_rational_value(ratio)), 5);
    else
        ts_buffer_add(line, "?");
    ts_buffer_print(line, " of %s", scene->train->shafts[section->shaft].name);
}
