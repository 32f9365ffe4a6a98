#include "fuzz/property.h"
#include "fuzz/targets.h"
#include "plan/read_plan.h"

namespace throwline::fuzz {

namespace {

const catalogue::Catalogue& shipped() {
    static const catalogue::Catalogue kShipped =
        catalogue::load_catalogue(THROWLINE_SOURCE_DIR "/lensdata").value();
    return kShipped;
}

} // namespace

void plan_input(std::string_view bytes) {
    const Checked<plan::Plan> plan = plan::read_plan(bytes, shipped(), "input");
    if (!plan) {
        require_readable(plan.error());
        return;
    }
    const plan::Plan& same = *plan;
    require(same == *plan, "no number of a plan is NaN");
    const std::string text = plan::written(*plan);
    const Checked<plan::Plan> again = plan::read_plan(text, shipped(), "written");
    require(again.has_value(), "what was written reads back: "
                                   + (again ? std::string{} : text_of(again.error().front())));
    require(*again == *plan, "what was written reads back equal");
    require(plan::written(*again) == text, "what was read back writes the same text");
}

} // namespace throwline::fuzz
