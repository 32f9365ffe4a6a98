#include "command/plan_input.h"

#include "base/file_mark.h"
#include "base/text_file.h"
#include "command/catalogue_input.h"

#include <array>
#include <fmt/format.h>
#include <istream>

namespace throwline::command {

namespace {

Result<std::string> all_of(std::istream& in, std::uintmax_t most_bytes) {
    std::string text;
    std::array<char, 65536> block{};
    while (in.read(block.data(), block.size()) || in.gcount() > 0) {
        text.append(block.data(), static_cast<std::size_t>(in.gcount()));
        if (text.size() > most_bytes) {
            return failure(fmt::format("standard input is longer than {} bytes", most_bytes));
        }
    }
    if (in.bad()) {
        return failure("standard input cannot be read");
    }
    return text;
}

} // namespace

Result<std::string> text_input(const std::string& name, std::istream& in,
                               std::uintmax_t most_bytes) {
    return name == "-" ? all_of(in, most_bytes) : read_text_file(name, most_bytes);
}

std::string file_label(const std::string& name) {
    return name == "-" ? "standard input" : name;
}

Checked<NamedPlan> named_plan(const std::string& name, const catalogue::Catalogue& catalogue,
                              std::istream& in) {
    const Result<std::string> text = text_input(name, in, plan::kLargestPlanBytes);
    if (!text) {
        return tl::unexpected{Errors{text.error()}};
    }
    auto plan = plan::read_plan(*text, catalogue, file_label(name));
    if (!plan) {
        return tl::unexpected{plan.error()};
    }
    return NamedPlan{.plan = std::make_shared<const plan::Plan>(std::move(*plan)),
                     .mark = file_mark(*text)};
}

Checked<PlanInput> plan_input(const Arguments& arguments, std::istream& in) {
    auto catalogue = catalogue_for(arguments);
    if (!catalogue) {
        return tl::unexpected{catalogue.error()};
    }
    auto read = named_plan(arguments.operands().front(), *catalogue, in);
    if (!read) {
        return tl::unexpected{read.error()};
    }
    return PlanInput{.catalogue = std::move(*catalogue),
                     .plan = std::move(read->plan),
                     .mark = std::move(read->mark)};
}

} // namespace throwline::command
