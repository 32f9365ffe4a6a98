#include "edit/pick.h"

#include "edit/outlines.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace throwline::edit {

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
    template <class Entity>
    void add_all(Kind kind, const std::vector<Entity>& entities, const Outlines& outlines);
    void add(Thing thing, Polygon outline);
    void mark_held(const plan::Arrangement& held);
    void index(std::size_t entry);
    std::set<std::size_t> near(const Vec2& low, const Vec2& high) const;

    std::vector<Entry> entries_;
    std::map<Thing, std::size_t> by_thing_;
    std::map<Cell, std::vector<std::size_t>> cells_;
    std::vector<std::size_t> everywhere_;
    Polygon none_;
};

PickField::Impl::Impl(const Context& context) {
    const plan::Plan& plan = context.plan;
    const Outlines outlines{context};
    for (std::size_t i = 0; i < plan.room.outline.size(); ++i) {
        add({Kind::wall, {}, static_cast<int>(i)}, outlines.of_wall(i));
    }
    add_all(Kind::opening, plan.room.openings, outlines);
    for (const plan::Circuit& circuit : plan.circuits) {
        for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {
            add({Kind::outlet, circuit.id.name, static_cast<int>(i)},
                outlines.of_outlet(circuit.outlets[i]));
        }
    }
    add_all(Kind::pipe, plan.pipes, outlines);
    add_all(Kind::scenery, plan.scenery, outlines);
    add_all(Kind::person, plan.people, outlines);
    add_all(Kind::camera, plan.cameras, outlines);
    add_all(Kind::boom, plan.booms, outlines);
    add_all(Kind::lamp, plan.lamps, outlines);
    mark_held(plan.arrangement);
}

template <class Entity>
void PickField::Impl::add_all(Kind kind, const std::vector<Entity>& entities,
                              const Outlines& outlines) {
    for (const Entity& entity : entities) {
        add({kind, entity.id.name, 0}, outlines.of(entity));
    }
}

void PickField::Impl::add(Thing thing, Polygon outline) {
    if (outline.empty()) {
        return;
    }
    Entry entry;
    entry.low = entry.high = outline.front();
    for (const Vec2& corner : outline) {
        entry.low = entry.low.cwiseMin(corner);
        entry.high = entry.high.cwiseMax(corner);
    }
    entry.area_m2 = area(outline);
    entry.outline = std::move(outline);
    by_thing_.emplace(thing, entries_.size());
    entry.thing = std::move(thing);
    entries_.push_back(std::move(entry));
    index(entries_.size() - 1);
}

void PickField::Impl::mark_held(const plan::Arrangement& held) {
    if (held.hidden.empty() && held.locked.empty()) {
        return;
    }
    const std::set<std::string> hidden{held.hidden.begin(), held.hidden.end()};
    const std::set<std::string> locked{held.locked.begin(), held.locked.end()};
    for (Entry& entry : entries_) {
        const std::string name = name_of(entry.thing);
        entry.hidden = hidden.contains(name);
        entry.locked = locked.contains(name);
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
