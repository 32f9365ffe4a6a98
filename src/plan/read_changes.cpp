#include "plan/read_changes.h"

#include "plan/check_plan.h"
#include "plan/read_parts.h"
#include "plan/read_plan.h"

#include <algorithm>
#include <tuple>
#include <vector>

namespace throwline::plan {

namespace {

/// The lists of a plan, in which most stays as it is.
constexpr std::tuple kLists{&Plan::pipes, &Plan::circuits, &Plan::scenery, &Plan::people,
                            &Plan::beats, &Plan::cameras,  &Plan::shots,   &Plan::booms,
                            &Plan::lamps, &Plan::kit,      &Plan::accepted};

template <class Visit>
void each_list(const Visit& visit) {
    std::apply([&](auto... list) { (visit(list), ...); }, kLists);
}

/// What a plan has besides its lists. A new part of a plan does not compile until it is here or
/// among the lists.
Plan without_lists(const Plan& plan) {
    const auto& [title, units, site, room, survey, grid, pipes, circuits, scenery, people, beats,
                 cameras, shots, booms, lamps, underlay, kit, targets, accepted, arrangement,
                 extra] = plan;
    Plan bare;
    bare.title = title;
    bare.units = units;
    bare.site = site;
    bare.room = room;
    bare.survey = survey;
    bare.grid = grid;
    bare.underlay = underlay;
    bare.targets = targets;
    bare.arrangement = arrangement;
    bare.extra = extra;
    return bare;
}

/// Where a list differs from one before, which it has most of in the same order.
template <class Item>
class Changes {
  public:
    Changes(const std::vector<Item>& before, const std::vector<Item>& after)
        : before_{before}, after_{after} {
        const std::size_t shorter = std::min(before.size(), after.size());
        while (first_ < shorter && before[first_] == after[first_]) {
            ++first_;
        }
        while (first_ + same_behind_ < shorter
               && before.end()[-1 - offset()] == after.end()[-1 - offset()]) {
            ++same_behind_;
        }
    }

    /// Items of the later list that the one before does not have.
    std::vector<Item> items() const {
        std::vector<Item> changed;
        for (std::size_t i = first_; i < end(); ++i) {
            if (!is_same(i)) {
                changed.push_back(after_[i]);
            }
        }
        return changed;
    }
    /// The later list, with these as its changed items.
    std::vector<Item> with(std::vector<Item> changed) const {
        std::vector<Item> whole{before_.begin(), before_.begin() + signed_of(first_)};
        whole.reserve(after_.size());
        std::size_t next = 0;
        for (std::size_t i = first_; i < end(); ++i) {
            whole.push_back(is_same(i) ? before_[i] : std::move(changed[next++]));
        }
        whole.insert(whole.end(), before_.end() - offset(), before_.end());
        return whole;
    }

  private:
    static std::ptrdiff_t signed_of(std::size_t count) {
        return static_cast<std::ptrdiff_t>(count);
    }
    std::ptrdiff_t offset() const { return signed_of(same_behind_); }
    std::size_t end() const { return after_.size() - same_behind_; }
    bool is_same(std::size_t i) const {
        return before_.size() == after_.size() && before_[i] == after_[i];
    }

    const std::vector<Item>& before_;
    const std::vector<Item>& after_;
    /// How many are the same at the front, and at the back.
    std::size_t first_ = 0;
    std::size_t same_behind_ = 0;
};

bool has_too_long_a_list(const Plan& plan) {
    bool is_long = false;
    each_list([&](auto list) { is_long = is_long || (plan.*list).size() > kMostItems; });
    return is_long;
}

} // namespace

std::optional<ReadBack> read_changes(const Plan& before, const Plan& after,
                                     const catalogue::Catalogue& catalogue) {
    if (has_too_long_a_list(after)) {
        return std::nullopt;
    }
    Plan part = without_lists(after);
    each_list([&](auto list) { part.*list = Changes{before.*list, after.*list}.items(); });
    const std::string text = written(part);
    const Checked<catalogue::JsonNode> tree = catalogue::parse_json(text);
    if (!tree) {
        return std::nullopt;
    }
    Reading reading{catalogue, {}};
    const Value root{&*tree, {}};
    Plan read;
    read_value(reading, root, read);
    if (reading.any_wrong()) {
        return std::nullopt;
    }
    each_list([&](auto list) {
        read.*list = Changes{before.*list, after.*list}.with(std::move(read.*list));
    });
    check_whole(reading, root, read);
    if (reading.any_wrong()) {
        return std::nullopt;
    }
    return ReadBack{std::move(read), text.size()};
}

} // namespace throwline::plan
