/* rating/sample_mesh.h: meshes to rate: one plain example, and any number drawn at random. */
#ifndef TS_TESTS_RATING_SAMPLE_MESH_H
#define TS_TESTS_RATING_SAMPLE_MESH_H

#include "rating/iso6336/iso6336.h"

#include <stdint.h>

/* Deterministic numbers in [low, high): a 64-bit linear congruence (Knuth's constants). */
double drawn(uint64_t *seed, double low, double high);

/* A helical pair of carburised steel, 23/61 teeth, m_n 2.5 mm; invented. */
ts_cylindrical_pair_input sample_pair(void);
ts_iso6336_gear           sample_gear(void);
ts_iso6336_mesh           sample_mesh(void);
ts_iso6336_load           sample_load(void);

/* Pairs without undercut or pointed teeth; every third is a spur pair. */
ts_cylindrical_pair_input drawn_pair(uint64_t *seed);
ts_iso6336_mesh           drawn_mesh(uint64_t *seed);
ts_iso6336_load           drawn_load(uint64_t *seed);

ts_cylindrical_pair solved_pair(const ts_cylindrical_pair_input *in);

/* Solves, prepares and rates; fails the test when that cannot be done. */
ts_iso6336_rating rated(const ts_cylindrical_pair_input *in, const ts_iso6336_mesh *mesh,
                        const ts_iso6336_load *load);

/* The same mesh with the names 1 and 2 exchanged. */
ts_cylindrical_pair_input exchanged_pair(const ts_cylindrical_pair_input *in);
ts_iso6336_mesh           exchanged_mesh(const ts_iso6336_mesh *mesh);
ts_iso6336_load           exchanged_load(const ts_iso6336_load *load, double u);

#endif
