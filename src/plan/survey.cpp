#include "plan/survey.h"

namespace throwline::plan {

std::optional<int> wall_between(const Survey& survey, const std::string& from,
                                const std::string& to) {
    const std::size_t count = survey.corners.size();
    for (std::size_t i = 0; i < count; ++i) {
        const std::string& start = survey.corners[i];
        const std::string& end = survey.corners[(i + 1) % count];
        if ((start == from && end == to) || (start == to && end == from)) {
            return static_cast<int>(i);
        }
    }
    return std::nullopt;
}

} // namespace throwline::plan
