/* draw/obstacles.h: where can a label stand so that it covers nothing that matters? */
#ifndef TS_DRAW_OBSTACLES_H
#define TS_DRAW_OBSTACLES_H

#include "draw/places.h"

typedef enum ts_obstacle_kind {
    TS_OBSTACLE_DISC, /* a filled circle            */
    TS_OBSTACLE_RING, /* a circle's line            */
    TS_OBSTACLE_LINE,
    TS_OBSTACLE_AREA
} ts_obstacle_kind;

typedef struct ts_obstacle {
    ts_obstacle_kind kind;
    double           weight; /* what it costs to stand on it: 1 a gear, 1000 never */
    ts_point         a, b;   /* centre; or ends of the line                        */
    double           r;
    ts_area          area;
    /* the area itself, or in what the other kinds lie */ /* an area itself; of the others what
                                                             they lie in */
} ts_obstacle;

typedef struct ts_obstacles {
    ts_arena    *arena;
    ts_area      within; /* outside of this nothing may stand */
    ts_obstacle *items;
    size_t       count, room;
} ts_obstacles;

void ts_avoid_disc(ts_obstacles *obstacles, ts_point at, double r, double weight);
void ts_avoid_ring(ts_obstacles *obstacles, ts_point at, double r, double weight);
void ts_avoid_line(ts_obstacles *obstacles, ts_point a, ts_point b, double weight);
void ts_avoid_area(ts_obstacles *obstacles, ts_area area, double weight);
/* Everything noted so far: texts, numbers and tags, which nothing may cover, and leaders. */
void ts_avoid_places(ts_obstacles *obstacles, const ts_places *places);

double ts_obstacle_cost(const ts_obstacles *obstacles, ts_area area);
/* What a straight leader from a to b would run over. */
double ts_leader_cost(const ts_obstacles *obstacles, ts_point a, ts_point b);

/* The best area of w by h about `anchor`, its middle between away[0] and away[1] px off; a leader
 * from the anchor to it counts too.  *cost becomes what it costs; NULL: nobody asks. */
ts_area ts_place_near(const ts_obstacles *obstacles, ts_point anchor, ts_point size,
                      const double away[2], double *cost);
/* The best area of w by h anywhere, as near to `wish` as may be. */
ts_area ts_place_anywhere(const ts_obstacles *obstacles, ts_point wish, ts_point size);

#endif
