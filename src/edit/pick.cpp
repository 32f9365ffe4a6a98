#include "edit/pick.h"

#include "plan/places.h"
#include "stage/moment.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <set>

namespace throwline::edit {

namespace {

/// Of an opening, so that it can be taken hold of in a thin wall.
constexpr double kLeastOpeningDepth_m = 0.15;
/// Of a pipe or pole: thicker than it is, for the same reason.
constexpr double kPipeWidth_m = 0.1;
constexpr double kOutletSize_m = 0.2;
constexpr double kLeastLampSize_m = 0.25;
constexpr double kUsualSupport_m = 0.4;
constexpr int kPersonSides = 16;

Polygon band(const Vec2& from, const Vec2& to, double left_m, double right_m) {
    if (from == to) {
        return rectangle(from, left_m + right_m, left_m + right_m, 0.0);
    }
    const Vec2 left = turned_left((to - from).normalized());
    return {from - left * right_m, to - left * right_m, to + left * left_m, from + left * left_m};
}

std::pair<Vec2, Vec2> wall_ends(const plan::Room& room, std::size_t wall) {
    return {room.outline[wall], room.outline[(wall + 1) % room.outline.size()]};
}

/// A strip along a wall, as thick as that on the outside.
Polygon wall_strip(const plan::Room& room, std::size_t wall, const Vec2& from, const Vec2& to,
                   double least_m) {
    const double thickness_m =
        std::max(least_m, wall < room.walls.size() ? room.walls[wall].thickness.m() : 0.0);
    const bool inside_left = signed_area(room.outline) > 0.0;
    return inside_left ? band(from, to, 0.0, thickness_m) : band(from, to, thickness_m, 0.0);
}

Polygon opening_outline(const plan::Room& room, const plan::Opening& opening) {
    const auto wall = static_cast<std::size_t>(opening.wall);
    if (wall >= room.outline.size()) {
        return {};
    }
    const auto [from, to] = wall_ends(room, wall);
    const Vec2 along = (to - from).normalized();
    const Vec2 begin = from + along * opening.from_start.m();
    return wall_strip(room, wall, begin, begin + along * opening.width.m(), kLeastOpeningDepth_m);
}

Polygon person_outline(const Context& context, const plan::Person& person) {
    const plan::Plan& plan = context.plan;
    const auto marks = plan::marks_at(plan, context.now.beat);
    const auto at = marks.find(person.id);
    if (at == marks.end()) {
        return {};
    }
    const stage::Moment moment{plan, context.catalogue, context.now.beat, context.now.shot};
    const double facing_rad = stage::facing_of(moment, at->second).rad();
    const double stature_m = person.stature.m();
    const double half_breadth_m = stature_m * context.catalogue.landmark("shoulder_breadth") / 2.0;
    const double half_depth_m = stature_m * context.catalogue.landmark("chest_depth") / 2.0;
    Polygon outline;
    for (int i = 0; i < kPersonSides; ++i) {
        const double turn_rad = 2.0 * std::numbers::pi * i / kPersonSides;
        outline.push_back(at->second.at
                          + rotated({half_depth_m * std::cos(turn_rad) * 1.2,
                                     half_breadth_m * std::sin(turn_rad)},
                                    facing_rad));
    }
    return outline;
}

Polygon camera_outline(const Context& context, const plan::Camera& camera) {
    const auto place = plan::camera_place(context.plan, camera, context.now.beat, context.now.shot);
    if (!place) {
        return {};
    }
    const catalogue::Support* support = context.catalogue.support(camera.support);
    const double radius_m = support == nullptr ? kUsualSupport_m : support->footprint_radius.m();
    return circle(place->at, std::max(radius_m, kUsualSupport_m / 2.0), kPersonSides);
}

Polygon lamp_outline(const Context& context, const plan::Lamp& lamp) {
    const std::optional<Vec3> point = plan::lamp_point(context.plan, lamp);
    if (!point) {
        return {};
    }
    const catalogue::Instrument* instrument = context.catalogue.instrument(lamp.instrument);
    double size_m = kLeastLampSize_m;
    if (instrument != nullptr) {
        size_m = std::max({size_m, instrument->body_width.m(), instrument->body_depth.m()});
    }
    return circle(floor_of(*point), size_m / 2.0, kPersonSides);
}

Polygon outlet_outline(const plan::Plan& plan, const Thing& thing) {
    const plan::Circuit* circuit = plan::find(plan, plan::Id<plan::Circuit>{thing.name});
    const auto index = static_cast<std::size_t>(thing.index);
    if (circuit == nullptr || index >= circuit->outlets.size()) {
        return {};
    }
    return rectangle(circuit->outlets[index], kOutletSize_m, kOutletSize_m, 0.0);
}

const plan::Opening* find_opening(const plan::Plan& plan, const std::string& name) {
    for (const plan::Opening& opening : plan.room.openings) {
        if (opening.id.name == name) {
            return &opening;
        }
    }
    return nullptr;
}

} // namespace

Polygon outline_of(const Context& context, const Thing& thing) {
    const plan::Plan& plan = context.plan;
    switch (thing.kind) {
    case Kind::wall: {
        const auto wall = static_cast<std::size_t>(thing.index);
        if (thing.index < 0 || wall >= plan.room.outline.size()) {
            return {};
        }
        const auto [from, to] = wall_ends(plan.room, wall);
        return wall_strip(plan.room, wall, from, to, kPipeWidth_m);
    }
    case Kind::opening: {
        const plan::Opening* opening = find_opening(plan, thing.name);
        return opening == nullptr ? Polygon{} : opening_outline(plan.room, *opening);
    }
    case Kind::pipe: {
        const plan::Pipe* pipe = plan::find(plan, plan::Id<plan::Pipe>{thing.name});
        return pipe == nullptr ? Polygon{}
                               : band(pipe->from, pipe->to, kPipeWidth_m / 2.0, kPipeWidth_m / 2.0);
    }
    case Kind::scenery: {
        const plan::Scenery* piece = plan::find(plan, plan::Id<plan::Scenery>{thing.name});
        return piece == nullptr ? Polygon{} : plan::footprint(*piece, context.catalogue);
    }
    case Kind::person: {
        const plan::Person* person = plan::find(plan, plan::Id<plan::Person>{thing.name});
        return person == nullptr ? Polygon{} : person_outline(context, *person);
    }
    case Kind::camera: {
        const plan::Camera* camera = plan::find(plan, plan::Id<plan::Camera>{thing.name});
        return camera == nullptr ? Polygon{} : camera_outline(context, *camera);
    }
    case Kind::lamp: {
        const plan::Lamp* lamp = plan::find(plan, plan::Id<plan::Lamp>{thing.name});
        return lamp == nullptr ? Polygon{} : lamp_outline(context, *lamp);
    }
    case Kind::boom: {
        const plan::Boom* boom = plan::find(plan, plan::Id<plan::Boom>{thing.name});
        return boom == nullptr || !stage::is_on_floor(*boom, context.now.beat)
                   ? Polygon{}
                   : band(boom->operator_at, boom->microphone, kPipeWidth_m, kPipeWidth_m);
    }
    case Kind::outlet:
        return outlet_outline(plan, thing);
    }
    return {};
}

std::optional<Vec2> place_of(const Context& context, const Thing& thing) {
    const plan::Plan& plan = context.plan;
    if (thing.kind == Kind::person) {
        const auto marks = plan::marks_at(plan, context.now.beat);
        const auto at = marks.find(plan::Id<plan::Person>{thing.name});
        return at == marks.end() ? std::nullopt : std::optional{at->second.at};
    }
    if (thing.kind == Kind::boom) {
        const plan::Boom* boom = plan::find(plan, plan::Id<plan::Boom>{thing.name});
        return boom == nullptr || !stage::is_on_floor(*boom, context.now.beat)
                   ? std::nullopt
                   : std::optional{boom->microphone};
    }
    if (thing.kind == Kind::wall && exists(plan, thing)) {
        const auto [from, to] = wall_ends(plan.room, static_cast<std::size_t>(thing.index));
        return (from + to) / 2.0;
    }
    const Polygon outline = outline_of(context, thing);
    return outline.empty() ? std::nullopt : std::optional{centroid(outline)};
}

// The field of cells.

namespace {

struct Entry {
    Thing thing;
    Polygon outline;
    Vec2 low = Vec2::Zero();
    Vec2 high = Vec2::Zero();
    double area_m2 = 0.0;
    bool hidden = false;
    bool locked = false;
};

constexpr double kCell_m = 1.0;
/// Things that reach over more cells than this are looked at every time.
constexpr std::int64_t kMostCells = 400;

using Cell = std::pair<std::int64_t, std::int64_t>;

std::int64_t cell_of(double at_m) {
    return static_cast<std::int64_t>(std::floor(std::clamp(at_m, -1e9, 1e9) / kCell_m));
}

/// What stands or hangs is meant before what it stands on, the room last.
int rank(Kind kind) {
    switch (kind) {
    case Kind::person:
    case Kind::camera:
    case Kind::lamp:
    case Kind::boom:
    case Kind::outlet:
        return 0;
    case Kind::scenery:
    case Kind::pipe:
    case Kind::opening:
        return 1;
    case Kind::wall:
        return 2;
    }
    return 2;
}

double distance_to(std::span<const Vec2> outline, const Vec2& point) {
    if (contains(outline, point)) {
        return 0.0;
    }
    double least_m = std::numeric_limits<double>::max();
    for (std::size_t i = 0; i < outline.size(); ++i) {
        least_m = std::min(
            least_m, distance_to_segment(point, outline[i], outline[(i + 1) % outline.size()]));
    }
    return least_m;
}

} // namespace

class PickField::Impl {
  public:
    explicit Impl(const Context& context);

    std::vector<Thing> at(const Vec2& point, double reach_m) const;
    std::vector<Thing> inside(const Vec2& low, const Vec2& high, bool touched) const;
    const Polygon& outline(const Thing& thing) const;

  private:
    void index(std::size_t entry);
    std::set<std::size_t> near(const Vec2& low, const Vec2& high) const;

    std::vector<Entry> entries_;
    std::map<Thing, std::size_t> by_thing_;
    std::map<Cell, std::vector<std::size_t>> cells_;
    std::vector<std::size_t> everywhere_;
    Polygon none_;
};

PickField::Impl::Impl(const Context& context) {
    const plan::Arrangement& held = context.plan.arrangement;
    const std::set<std::string> hidden{held.hidden.begin(), held.hidden.end()};
    const std::set<std::string> locked{held.locked.begin(), held.locked.end()};
    for (const Thing& thing : things_on_floor(context)) {
        Entry entry;
        entry.thing = thing;
        entry.outline = outline_of(context, thing);
        if (entry.outline.empty()) {
            continue;
        }
        entry.low = entry.high = entry.outline.front();
        for (const Vec2& corner : entry.outline) {
            entry.low = entry.low.cwiseMin(corner);
            entry.high = entry.high.cwiseMax(corner);
        }
        entry.area_m2 = area(entry.outline);
        entry.hidden = hidden.contains(name_of(thing));
        entry.locked = locked.contains(name_of(thing));
        by_thing_.emplace(thing, entries_.size());
        entries_.push_back(std::move(entry));
        index(entries_.size() - 1);
    }
}

void PickField::Impl::index(std::size_t entry) {
    const Entry& what = entries_[entry];
    const Cell low{cell_of(what.low.x()), cell_of(what.low.y())};
    const Cell high{cell_of(what.high.x()), cell_of(what.high.y())};
    if ((high.first - low.first + 1) * (high.second - low.second + 1) > kMostCells) {
        everywhere_.push_back(entry);
        return;
    }
    for (std::int64_t x = low.first; x <= high.first; ++x) {
        for (std::int64_t y = low.second; y <= high.second; ++y) {
            cells_[{x, y}].push_back(entry);
        }
    }
}

std::set<std::size_t> PickField::Impl::near(const Vec2& low, const Vec2& high) const {
    std::set<std::size_t> found{everywhere_.begin(), everywhere_.end()};
    const std::int64_t first = cell_of(low.x());
    const std::int64_t last = cell_of(high.x());
    for (auto cell = cells_.lower_bound({first, cell_of(low.y())});
         cell != cells_.end() && cell->first.first <= last; ++cell) {
        if (cell->first.second >= cell_of(low.y()) && cell->first.second <= cell_of(high.y())) {
            found.insert(cell->second.begin(), cell->second.end());
        }
    }
    return found;
}

std::vector<Thing> PickField::Impl::at(const Vec2& point, double reach_m) const {
    struct Candidate {
        const Entry* entry;
        double distance_m;
    };
    const Vec2 reach = Vec2::Constant(reach_m);
    std::vector<Candidate> found;
    for (const std::size_t i : near(point - reach, point + reach)) {
        const Entry& entry = entries_[i];
        const double distance_m = distance_to(entry.outline, point);
        if (!entry.hidden && distance_m <= reach_m) {
            found.push_back({&entry, distance_m});
        }
    }
    std::stable_sort(found.begin(), found.end(), [](const Candidate& a, const Candidate& b) {
        const auto key = [](const Candidate& c) {
            return std::tuple{rank(c.entry->thing.kind), c.distance_m > 0.0, c.entry->area_m2,
                              c.entry->thing};
        };
        return key(a) < key(b);
    });
    std::vector<Thing> things;
    for (const Candidate& candidate : found) {
        things.push_back(candidate.entry->thing);
    }
    return things;
}

std::vector<Thing> PickField::Impl::inside(const Vec2& low, const Vec2& high, bool touched) const {
    const Polygon frame{low, {high.x(), low.y()}, high, {low.x(), high.y()}};
    std::vector<Thing> things;
    for (const std::size_t i : near(low, high)) {
        const Entry& entry = entries_[i];
        if (entry.hidden || entry.locked) {
            continue;
        }
        const bool whole =
            (entry.low.array() >= low.array()).all() && (entry.high.array() <= high.array()).all();
        if (whole
            || (touched && entry.thing.kind != Kind::wall
                && distance_between(frame, entry.outline) == 0.0)) {
            things.push_back(entry.thing);
        }
    }
    return things;
}

const Polygon& PickField::Impl::outline(const Thing& thing) const {
    const auto found = by_thing_.find(thing);
    return found == by_thing_.end() ? none_ : entries_[found->second].outline;
}

PickField::PickField(const Context& context) : impl_{std::make_unique<Impl>(context)} {}
PickField::~PickField() = default;
PickField::PickField(PickField&&) noexcept = default;
PickField& PickField::operator=(PickField&&) noexcept = default;

std::vector<Thing> PickField::at(const Vec2& point, double reach_m) const {
    return impl_->at(point, reach_m);
}

std::vector<Thing> PickField::inside(const Vec2& corner, const Vec2& opposite, bool touched) const {
    return impl_->inside(corner.cwiseMin(opposite), corner.cwiseMax(opposite), touched);
}

const Polygon& PickField::outline(const Thing& thing) const {
    return impl_->outline(thing);
}

} // namespace throwline::edit
