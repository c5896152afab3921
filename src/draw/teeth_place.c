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

double ts_teeth_root_form(const ts_teeth_view *view, int gear)
{
    return view->shape[gear].count > 0 ? 2.0 * view->shape[gear].r_form : (double)NAN;
}

double ts_teeth_involute_left(const ts_teeth_view *view, int gear)
{
    const ts_cylindrical_pair *pair = &view->pose.pair;
    const double               form = 0.5 * ts_teeth_root_form(view, gear);
    const double               base = view->pose.curve[gear].r_b;
    const double rho = gear == 0 ? pair->rho_A1 : pair->rho_T - pair->rho_E1; /* of the contact */
    return isnan(form) ? form : rho - sqrt(fmax(0.0, form * form - base * base));
}
