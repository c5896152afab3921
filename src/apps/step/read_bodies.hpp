// read_bodies.hpp: the bodies of a drive as towershaft tells them (docs/schema/solids.schema.json).
#ifndef TS_APPS_STEP_READ_BODIES_H
#define TS_APPS_STEP_READ_BODIES_H

#include <array>
#include <istream>
#include <stdexcept>
#include <string>
#include <vector>

struct NotUnderstood : std::runtime_error {
    using std::runtime_error::runtime_error;
};

using Pair   = std::array<double, 2>;
using Triple = std::array<double, 3>;

struct Piece { // a line from a to b, or where `radius` is above 0 an arc about `centre`
    Pair   a, b, centre{};
    double radius = 0.0, start = 0.0, turn = 0.0;
};
using Loop = std::vector<Piece>;

struct Body {
    std::string       kind, name;
    Triple            origin, axis, right;
    std::vector<Pair> section; // (z, r), m; empty: a casing
    std::vector<Loop> outside, inside;
    double            from = 0.0, to = 0.0, floor = 0.0;
};

struct Bodies {
    std::string       version, title, revision;
    std::vector<Body> parts;
};

// Throws NotUnderstood.
Bodies read_bodies(std::istream &from);

#endif
