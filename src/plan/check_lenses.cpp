#include "plan/check_names.h"
#include "plan/check_plan.h"

#include "base/length_text.h"
#include "base/utf8.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::plan {

namespace {

/// Focal lengths and stops that differ by less are the same on any scale.
constexpr double kSameShare = 1e-6;

std::string mm_words(Length length) {
    return fixed(length.mm(), 1) + " mm";
}

void check_focal(Reading& reading, const Value& value, Length focal, const catalogue::Lens& lens,
                 double factor) {
    const Length longest = lens.focal_max * factor;
    if (focal < lens.focal_min * (1.0 - kSameShare) || focal > longest * (1.0 + kSameShare)) {
        const std::string range = lens.focal_min == longest
                                      ? mm_words(longest)
                                      : mm_words(lens.focal_min) + " to " + mm_words(longest);
        reading.wrong(value, fmt::format("{} is outside the lens {}, {}", mm_words(focal),
                                         in_quotes(lens.name), range));
    }
}

void check_stop(Reading& reading, const Value& value, double stop, const catalogue::Lens& lens,
                double factor) {
    const double widest = std::min(lens.stop_wide, lens.stop_long) * factor;
    if (stop < widest * (1.0 - kSameShare)) {
        reading.wrong(value, fmt::format("T{} is wider than the lens {}, which opens to T{}",
                                         shortest(stop), in_quotes(lens.name), fixed(widest, 2)));
    }
}

void check_shot(Reading& reading, const Value& value, const Shot& shot,
                const catalogue::Lens& lens) {
    if (shot.extender && lens.extender == 1.0) {
        reading.wrong(value.at("extender"),
                      fmt::format("the lens {} has no extender", in_quotes(lens.name)));
    }
    const double factor = shot.extender ? lens.extender : 1.0;
    if (shot.focal) {
        check_focal(reading, value.at("focal"), *shot.focal, lens, factor);
    }
    if (shot.stop) {
        check_stop(reading, value.at("stop"), *shot.stop, lens, factor);
    }
}

} // namespace

void check_lenses(Reading& reading, const Value& root, const Plan& plan) {
    each(root, "shots", plan.shots, [&](const Value& value, const Shot& shot) {
        const Camera* camera = find(plan, shot.camera);
        const catalogue::Lens* lens =
            camera == nullptr ? nullptr : reading.catalogue().lens(camera->lens);
        if (lens != nullptr) {
            check_shot(reading, value, shot, *lens);
        }
    });
}

} // namespace throwline::plan
