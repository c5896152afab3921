/* element/dulong_petit.h: how much heat does a metal hold?
 *
 * Law       3 R for every mole of atoms (Dulong and Petit, 1819): within 8 % for iron, nickel,
 *           aluminium, magnesium and titanium from 0 to 150 degC; not for alloys of copper.
 * Units     kg/m3, J/(kg.K).
 */
#ifndef TS_ELEMENT_DULONG_PETIT_H
#define TS_ELEMENT_DULONG_PETIT_H

/* Of the engineering metal with that density, by its main metal: magnesium below 2100, aluminium
 * below 3500, titanium below 5500, iron above.  NaN: `rho` is not positive. */
double ts_heat_capacity_of_metal(double rho);

#endif
