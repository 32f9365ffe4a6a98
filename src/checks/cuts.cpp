#include "checks/cuts.h"

#include "checks/wording.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::checks {

namespace {

template <class Item>
bool has(const std::vector<Item>& items, const Item& wanted) {
    return std::find(items.begin(), items.end(), wanted) != items.end();
}

template <class Item>
const Item* first_shared(const std::vector<Item>& a, const std::vector<Item>& b) {
    const auto shared = std::find_if(a.begin(), a.end(), [&](const Item& i) { return has(b, i); });
    return shared != a.end() ? &*shared : nullptr;
}

const ShotScene* scene_of(const CheckInput& input, const plan::Shot& shot,
                          const plan::Id<plan::Beat>& beat) {
    for (const ShotScene& scene : input.shots) {
        if (scene.shot == &shot && scene.beat->id == beat) {
            return &scene;
        }
    }
    return nullptr;
}

void add_cut(std::vector<Cut>& cuts, const CheckInput& input, const plan::Shot& before,
             const plan::Shot& after) {
    if (before.beats.empty() || after.beats.empty()) {
        return;
    }
    const plan::Id<plan::Beat>* shared = first_shared(before.beats, after.beats);
    const Cut cut{scene_of(input, before, shared != nullptr ? *shared : before.beats.back()),
                  scene_of(input, after, shared != nullptr ? *shared : after.beats.front())};
    if (cut.before != nullptr && cut.after != nullptr) {
        cuts.push_back(cut);
    }
}

} // namespace

Vec2 Cut::camera_before() const {
    const plan::Shot& shot = *before->shot;
    return shot.moves.empty() ? shot.at : shot.moves.back();
}

Vec2 Cut::camera_after() const {
    return after->shot->at;
}

std::vector<Cut> cuts_of(const CheckInput& input) {
    std::vector<Cut> cuts;
    const std::vector<plan::Shot>& shots = input.plan.shots;
    for (std::size_t i = 0; i < shots.size(); ++i) {
        for (const plan::Id<plan::Shot>& next : shots[i].cuts_to) {
            if (const plan::Shot* after = plan::find(input.plan, next)) {
                add_cut(cuts, input, shots[i], *after);
            }
        }
        const bool has_next = shots[i].cuts_to.empty() && i + 1 < shots.size();
        if (has_next
            && (first_shared(shots[i].beats, shots[i + 1].beats) != nullptr
                || first_shared(shots[i].subjects, shots[i + 1].subjects) != nullptr)) {
            add_cut(cuts, input, shots[i], shots[i + 1]);
        }
    }
    return cuts;
}

std::vector<plan::Id<plan::Person>> shared_subjects(const Cut& cut) {
    std::vector<plan::Id<plan::Person>> shared;
    for (const plan::Id<plan::Person>& person : cut.before->shot->subjects) {
        if (has(cut.after->shot->subjects, person) && cut.before->stage.figure(person) != nullptr
            && cut.after->stage.figure(person) != nullptr) {
            shared.push_back(person);
        }
    }
    return shared;
}

std::string said(const Cut& cut) {
    return fmt::format("from {} to {}", said(cut.before->shot->id), said(cut.after->shot->id));
}

} // namespace throwline::checks
