#include "survey/placing.h"

#include "base/polygon.h"
#include "survey/loci.h"

#include <algorithm>
#include <cmath>

namespace throwline::survey {
namespace {

// Misfit of a placed point that counts as none: errors of reading, made larger by bad angles.
constexpr double kFit_m = 0.03;
// Places for one point nearer than this are one.
constexpr double kSamePlace_m = 0.04;
constexpr std::size_t kMostPlaces = 6;
// Shapes carried along. Without checks every point doubles them.
constexpr std::size_t kMostShapes = 600;
// A shape this much worse than the best is dropped: four readings wrong by half a metre.
constexpr double kHopeless = 24.0;
// Curves whose meetings are tried for one point; the rest only judge.
constexpr std::size_t kMostLoci = 8;
// Places tried for a point that only one reading holds.
constexpr int kSpread = 36;
// For an edge of the outline that crosses another: as bad as two readings wrong by a metre.
constexpr double kCrossing = 14.0;

struct Place {
    Vec2 at;
    double misfit;
};

/// Sum of log(1 + (distance / fit)²), Cauchy's loss, over all curves.
double misfit_of(const std::vector<Locus>& loci, const Vec2& at) {
    double product = 1.0;
    double sum = 0.0;
    for (const Locus& locus : loci) {
        const double ratio = distance_from(locus, at) / kFit_m;
        product *= 1.0 + ratio * ratio;
        // One logarithm for many curves, before the product outgrows a double.
        if (product > 1e200) {
            sum += std::log(product);
            product = 1.0;
        }
    }
    return sum + std::log(product);
}

struct Search {
    const Network& network;
    std::vector<Observation> readings;
    /// Numbers of the readings that name a point.
    std::vector<std::vector<std::size_t>> of_point;
    std::vector<char> placed;
    /// Mirror images of the whole are the same as long as no offset tells left from right.
    bool mirrors_differ = false;
};

template <class Function>
void for_each_point(const Sight& sight, Function function) {
    if (const auto* tape = std::get_if<Distance>(&sight)) {
        function(tape->from);
        function(tape->to);
    } else if (const auto* corner = std::get_if<Corner>(&sight)) {
        function(corner->before);
        function(corner->corner);
        function(corner->after);
    } else if (const auto* along = std::get_if<Along>(&sight)) {
        function(along->point);
        function(along->from);
        function(along->to);
    } else if (const auto* offset = std::get_if<Offset>(&sight)) {
        function(offset->point);
        function(offset->from);
        function(offset->to);
    }
}

Search search_over(const Network& network) {
    Search search{network, network.observations, {}, {}, false};
    for (const Observation& implied : implied_distances(network)) {
        search.readings.push_back(implied);
    }
    search.of_point.resize(static_cast<std::size_t>(network.points));
    search.placed.resize(static_cast<std::size_t>(network.points), 0);
    for (std::size_t i = 0; i < search.readings.size(); ++i) {
        const Observation& reading = search.readings[i];
        for_each_point(reading.sight, [&search, i](int point) {
            search.of_point[static_cast<std::size_t>(point)].push_back(i);
        });
        search.mirrors_differ |=
            std::holds_alternative<Offset>(reading.sight) && std::abs(reading.value) > kFit_m;
    }
    return search;
}

std::vector<Locus> loci_of(const Search& search, int point, std::span<const Vec2> points) {
    std::vector<Locus> loci;
    for (const std::size_t i : search.of_point[static_cast<std::size_t>(point)]) {
        if (const auto locus = locus_of(search.readings[i], point, points, search.placed)) {
            loci.push_back(*locus);
        }
    }
    return loci;
}

bool is_placed(const Search& search, int point) {
    return search.placed[static_cast<std::size_t>(point)] != 0;
}

/// Whether the edges of the outline at `point` cross others that are placed.
bool crosses_outline(const Search& search, int point, std::span<const Vec2> points) {
    const int corners = search.network.outline;
    if (point >= corners) {
        return false;
    }
    const auto at = [points](int index) { return points[static_cast<std::size_t>(index)]; };
    for (const int step : {1, corners - 1}) {
        const int other = (point + step) % corners;
        for (int from = 0; is_placed(search, other) && from < corners; ++from) {
            const int to = (from + 1) % corners;
            const bool apart = from != point && to != point && from != other && to != other;
            if (apart && is_placed(search, from) && is_placed(search, to)
                && crossing_share(at(point), at(other), at(from), at(to)) >= 0.0) {
                return true;
            }
        }
    }
    return false;
}

/// The point with most readings to those that are placed.
int next_point(const Search& search, std::span<const Vec2> points) {
    int best = -1;
    std::size_t most = 0;
    for (int point = 0; point < search.network.points; ++point) {
        if (!is_placed(search, point)) {
            const std::size_t count = loci_of(search, point, points).size();
            if (best < 0 || count > most) {
                best = point;
                most = count;
            }
        }
    }
    return best;
}

std::vector<Vec2> meetings_of(const std::vector<Locus>& loci, const Vec2& fallback) {
    std::vector<Vec2> places;
    const std::size_t tried = std::min(loci.size(), kMostLoci);
    for (std::size_t a = 0; a < tried; ++a) {
        for (std::size_t b = a + 1; b < tried; ++b) {
            const std::vector<Vec2> both = meetings(loci[a], loci[b]);
            places.insert(places.end(), both.begin(), both.end());
        }
    }
    if (places.empty() && !loci.empty()) {
        places = spread_over(loci.front(), kSpread);
    }
    if (places.empty()) {
        places.push_back(fallback);
    }
    return places;
}

/// Where the point may be, best first, without repetition.
std::vector<Place> places_for(const std::vector<Locus>& loci, const Vec2& fallback) {
    std::vector<Place> all;
    for (const Vec2& at : meetings_of(loci, fallback)) {
        all.push_back({at, misfit_of(loci, at)});
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const Place& a, const Place& b) { return a.misfit < b.misfit; });
    const bool free = loci.size() < 2;
    std::vector<Place> distinct;
    for (const Place& place : all) {
        const bool known = std::any_of(distinct.begin(), distinct.end(), [&](const Place& other) {
            return (place.at - other.at).norm() < kSamePlace_m;
        });
        if (!known && (free || distinct.size() < kMostPlaces)) {
            distinct.push_back(place);
        }
    }
    return distinct;
}

/// Before anything is off the line between the first two points, the left side stands for both.
bool is_still_a_line(const Search& search, const std::vector<Vec2>& points) {
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (search.placed[i] != 0 && points[i].y() != 0.0) {
            return false;
        }
    }
    return !search.mirrors_differ;
}

std::vector<Place> left_side(const std::vector<Place>& places) {
    std::vector<Place> left;
    for (const Place& place : places) {
        const Vec2 at(place.at.x(), std::abs(place.at.y()));
        const bool known = std::any_of(left.begin(), left.end(), [&at](const Place& other) {
            return (at - other.at).norm() < kSamePlace_m;
        });
        if (!known) {
            left.push_back({at, place.misfit});
        }
    }
    return left;
}

void keep_best(std::vector<PlacedShape>& shapes) {
    std::stable_sort(shapes.begin(), shapes.end(), [](const PlacedShape& a, const PlacedShape& b) {
        return a.misfit < b.misfit;
    });
    std::size_t kept = 0;
    while (kept < std::min(shapes.size(), kMostShapes)
           && shapes[kept].misfit <= shapes.front().misfit + kHopeless) {
        ++kept;
    }
    shapes.resize(kept);
}

std::vector<PlacedShape> with_point(const Search& search, const std::vector<PlacedShape>& shapes,
                                    int point) {
    std::vector<PlacedShape> grown;
    for (const PlacedShape& shape : shapes) {
        // Somewhere off every line, for a point that no reading holds.
        const Vec2 fallback(0.37 * point, 1.0 + 0.11 * point);
        std::vector<Place> places = places_for(loci_of(search, point, shape.points), fallback);
        if (is_still_a_line(search, shape.points)) {
            places = left_side(places);
        }
        for (const Place& place : places) {
            PlacedShape next = shape;
            next.points[static_cast<std::size_t>(point)] = place.at;
            next.misfit += place.misfit;
            if (crosses_outline(search, point, next.points)) {
                next.misfit += kCrossing;
            }
            grown.push_back(std::move(next));
        }
    }
    return grown;
}

} // namespace

std::vector<PlacedShape> placed_shapes(const Network& network, const Placing& beginning) {
    Search search = search_over(network);
    PlacedShape start;
    start.points.assign(static_cast<std::size_t>(network.points), Vec2::Zero());
    start.points[static_cast<std::size_t>(beginning.second)] = {beginning.apart_m, 0.0};
    search.placed[static_cast<std::size_t>(beginning.first)] = 1;
    search.placed[static_cast<std::size_t>(beginning.second)] = 1;
    std::vector<PlacedShape> shapes{start};
    for (int count = 2; count < network.points; ++count) {
        const int point = next_point(search, shapes.front().points);
        shapes = with_point(search, shapes, point);
        search.placed[static_cast<std::size_t>(point)] = 1;
        keep_best(shapes);
    }
    return shapes;
}

std::vector<Placing> beginnings(const Network& network) {
    const Search search = search_over(network);
    struct Ranked {
        Placing placing;
        std::size_t readings;
    };
    std::vector<Ranked> ranked;
    for (const Observation& reading : search.readings) {
        const auto* tape = std::get_if<Distance>(&reading.sight);
        if (tape == nullptr || tape->from == tape->to) {
            continue;
        }
        const std::size_t readings = search.of_point[static_cast<std::size_t>(tape->from)].size()
                                     + search.of_point[static_cast<std::size_t>(tape->to)].size();
        ranked.push_back({{tape->from, tape->to, reading.value}, readings});
    }
    std::stable_sort(ranked.begin(), ranked.end(),
                     [](const Ranked& a, const Ranked& b) { return a.readings > b.readings; });
    std::vector<Placing> result;
    std::vector<Placing> rest;
    std::vector<char> used(static_cast<std::size_t>(network.points), 0);
    // First those that share no point with one before, so that one wrong reading spoils few.
    for (const Ranked& candidate : ranked) {
        char& first = used[static_cast<std::size_t>(candidate.placing.first)];
        char& second = used[static_cast<std::size_t>(candidate.placing.second)];
        (first == 0 && second == 0 ? result : rest).push_back(candidate.placing);
        first = second = 1;
    }
    result.insert(result.end(), rest.begin(), rest.end());
    if (result.empty()) {
        result.push_back({});
    }
    return result;
}

} // namespace throwline::survey
