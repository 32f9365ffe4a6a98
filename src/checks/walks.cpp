#include "checks/walks.h"

#include "plan/places.h"

namespace throwline::checks {

double length_m(const Walk& walk) {
    double sum_m = 0.0;
    for (std::size_t i = 1; i < walk.points.size(); ++i) {
        sum_m += (walk.points[i] - walk.points[i - 1]).norm();
    }
    return sum_m;
}

std::vector<Walk> walks_into(const plan::Plan& plan, std::size_t beat) {
    std::vector<Walk> walks;
    const auto before = beat == 0 ? std::map<plan::Id<plan::Person>, plan::Mark>{}
                                  : plan::marks_at(plan, plan.beats[beat - 1].id);
    for (const auto& [person_id, what] : plan.beats[beat].marks) {
        const auto* mark = std::get_if<plan::Mark>(&what);
        const auto start = before.find(person_id);
        const plan::Person* person = plan::find(plan, person_id);
        if (mark == nullptr || person == nullptr) {
            continue;
        }
        Walk walk{person_id, {}, person->stature.m()};
        if (start != before.end()) {
            walk.points.push_back(start->second.at);
        }
        walk.points.insert(walk.points.end(), mark->path.begin(), mark->path.end());
        walk.points.push_back(mark->at);
        walks.push_back(std::move(walk));
    }
    return walks;
}

} // namespace throwline::checks
