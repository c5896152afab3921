// read_bodies.cpp: what does the JSON say, and is it whole?
#include "read_bodies.hpp"

#include <cmath>
#include <iterator>
#include <jansson.h>
#include <memory>

namespace
{

constexpr std::size_t bytes_most = 256u << 20;

json_t *member(json_t *object, const char *key)
{
    json_t *value = json_object_get(object, key);
    if (value == nullptr)
        throw NotUnderstood(std::string("expected the key ") + key);
    return value;
}

double number(json_t *value, const char *what)
{
    if (!json_is_number(value) || !std::isfinite(json_number_value(value)))
        throw NotUnderstood(std::string("expected a number for ") + what);
    return json_number_value(value);
}

// With typographic apostrophes: a doubled one, which is how a STEP file has the straight one, is
// read wrongly by some readers where a bracket follows.
std::string text(json_t *object, const char *key)
{
    json_t     *value = member(object, key);
    std::string out;
    for (const char *at = json_is_string(value) ? json_string_value(value) : ""; *at != 0; at++)
        if (*at == '\'')
            out += "\xE2\x80\x99";
        else
            out += *at;
    return out;
}

template <std::size_t N> std::array<double, N> numbers(json_t *value, const char *what)
{
    std::array<double, N> out{};
    if (!json_is_array(value) || json_array_size(value) != N)
        throw NotUnderstood("expected " + std::to_string(N) + " numbers for " + what);
    for (std::size_t i = 0; i < N; i++)
        out[i] = number(json_array_get(value, i), what);
    return out;
}

Piece piece(json_t *value)
{
    Piece out;
    out.a = numbers<2>(member(value, "a"), "a");
    out.b = numbers<2>(member(value, "b"), "b");
    if (json_object_get(value, "radius") != nullptr) {
        out.centre = numbers<2>(member(value, "centre"), "centre");
        out.radius = number(member(value, "radius"), "radius");
        out.start  = number(member(value, "start"), "start");
        out.turn   = number(member(value, "turn"), "turn");
    }
    return out;
}

std::vector<Loop> loops(json_t *value)
{
    std::vector<Loop> out;
    std::size_t       i = 0, k = 0;
    json_t           *loop = nullptr, *one = nullptr;
    json_array_foreach(value, i, loop)
    {
        out.emplace_back();
        json_array_foreach(loop, k, one) out.back().push_back(piece(one));
    }
    return out;
}

Body body(json_t *value)
{
    Body out;
    out.kind          = text(value, "kind");
    out.name          = text(value, "name");
    out.origin        = numbers<3>(member(value, "origin"), "origin");
    out.axis          = numbers<3>(member(value, "axis"), "axis");
    out.right         = numbers<3>(member(value, "right"), "right");
    std::size_t i     = 0;
    json_t     *point = nullptr;
    json_array_foreach(json_object_get(value, "section"), i, point)
        out.section.push_back(numbers<2>(point, "a point of a section"));
    if (json_t *casing = json_object_get(value, "casing"); casing != nullptr) {
        out.from    = number(member(casing, "from"), "from");
        out.to      = number(member(casing, "to"), "to");
        out.floor   = number(member(casing, "floor"), "floor");
        out.outside = loops(member(casing, "outside"));
        out.inside  = loops(member(casing, "inside"));
    }
    if (out.section.size() < 3 && out.outside.empty())
        throw NotUnderstood("expected a section or a casing for " + out.name);
    return out;
}

} // namespace

Bodies read_bodies(std::istream &from)
{
    const std::string bytes{std::istreambuf_iterator<char>(from), std::istreambuf_iterator<char>()};
    if (bytes.size() > bytes_most)
        throw NotUnderstood("more than 256 MB");
    json_error_t                                      where;
    const std::unique_ptr<json_t, void (*)(json_t *)> root(
        json_loadb(bytes.data(), bytes.size(), 0, &where), json_decref);
    if (!root)
        throw NotUnderstood("line " + std::to_string(where.line) + ": " + where.text);
    Bodies out;
    out.version     = text(root.get(), "version");
    out.title       = text(root.get(), "title");
    out.revision    = text(root.get(), "revision");
    std::size_t i   = 0;
    json_t     *one = nullptr;
    json_array_foreach(member(root.get(), "parts"), i, one) out.parts.push_back(body(one));
    return out;
}
