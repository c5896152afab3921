// write_step.hpp: bodies as ISO 10303-21.
#ifndef TS_APPS_STEP_WRITE_STEP_H
#define TS_APPS_STEP_WRITE_STEP_H

#include "read_bodies.hpp"

#include <ostream>

// The same bytes from run to run.  False, or an exception, when a body cannot be made.
bool write_step(const Bodies &bodies, std::ostream &to);

#endif
