/* Where on the sheet does a point of the mesh stand? */
#include "draw/teeth_view.h"

#include <math.h>

ts_point ts_teeth_point(const ts_teeth_view *view, ts_outline_point point)
{
    return (ts_point){view->pitch.x + point.x * view->px, view->pitch.y - point.y * view->px};
}

bool ts_teeth_backward(const ts_teeth_view *view)
{
    return view->load->flow == TS_FLOW_INWARD;
}
