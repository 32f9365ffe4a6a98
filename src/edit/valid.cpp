#include "edit/valid.h"

#include "catalogue/json_document.h"
#include "plan/read_changes.h"
#include "plan/read_plan.h"

#include <algorithm>

namespace throwline::edit {

namespace {

/// A shorter file is never too long for the reader, nor has it too many values: each takes up two
/// bytes at least, itself and what stands between it and the next.
constexpr std::size_t kNeverTooLong =
    std::min<std::size_t>(plan::kLargestPlanBytes, 2 * catalogue::kMostJsonValues);

} // namespace

Checked<ValidPlan> valid(const plan::Plan& plan, const catalogue::Catalogue& catalogue) {
    const std::string text = plan::written(plan);
    Checked<plan::Plan> read = plan::read_plan(text, catalogue);
    if (!read) {
        return tl::unexpected<Errors>{std::move(read.error())};
    }
    return ValidPlan{std::make_shared<const plan::Plan>(std::move(*read)), text.size()};
}

Checked<ValidPlan> valid_after(const ValidPlan& before, const plan::Plan& plan,
                               const catalogue::Catalogue& catalogue) {
    auto read = plan::read_changes(*before.plan, plan, catalogue);
    const std::size_t most_bytes = before.most_bytes + (read ? read->most_bytes : 0);
    if (!read || most_bytes > kNeverTooLong) {
        return valid(plan, catalogue);
    }
    return ValidPlan{std::make_shared<const plan::Plan>(std::move(read->plan)), most_bytes};
}

} // namespace throwline::edit
