#include "edit/valid.h"

#include "plan/read_plan.h"

namespace throwline::edit {

Checked<ValidPlan> valid(const plan::Plan& plan, const catalogue::Catalogue& catalogue) {
    std::string text = plan::written(plan);
    Checked<plan::Plan> read = plan::read_plan(text, catalogue);
    if (!read) {
        return tl::unexpected<Errors>{std::move(read.error())};
    }
    return ValidPlan{std::make_shared<const plan::Plan>(std::move(*read)), std::move(text)};
}

} // namespace throwline::edit
