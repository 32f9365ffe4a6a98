#include "fuzz/property.h"
#include "fuzz/targets.h"
#include "survey/recce_text.h"

namespace throwline::fuzz {

void recce_input(std::string_view bytes) {
    const Checked<survey::RecceText> recce = survey::read_recce(bytes, "input");
    if (!recce) {
        require_readable(recce.error());
        return;
    }
    const std::string text = survey::recce_text(recce->survey);
    const Checked<survey::RecceText> again = survey::read_recce(text, "written");
    require(again.has_value(), "what was written reads back: "
                                   + (again ? std::string{} : text_of(again.error().front())));
    require(again->survey == recce->survey, "what was written reads back equal");
    require(survey::recce_text(again->survey) == text, "what was read back writes the same text");
}

} // namespace throwline::fuzz
