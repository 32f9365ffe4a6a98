#include "sheet/paper_size.h"

#include "base/length_text.h"
#include "sheet/unknown_name.h"

#include <algorithm>
#include <optional>

namespace throwline::sheet {

namespace {

constexpr std::string_view kDigits = "0123456789";

std::string_view trimmed(std::string_view text) {
    const std::size_t from = text.find_first_not_of(' ');
    return from == std::string_view::npos
               ? std::string_view{}
               : text.substr(from, text.find_last_not_of(' ') - from + 1);
}

struct Sides {
    std::string_view first;
    std::string_view second;
};

/// What stands before and behind the cross of "500x700mm"; nothing when it is no size.
std::optional<Sides> sides_of(std::string_view typed) {
    for (const std::string_view cross : {"x", "X", "×"}) {
        const std::size_t at = typed.find(cross);
        if (at == std::string_view::npos) {
            continue;
        }
        const Sides sides{trimmed(typed.substr(0, at)), trimmed(typed.substr(at + cross.size()))};
        const auto begins_as_number = [](std::string_view side) {
            return !side.empty()
                   && std::string_view{"0123456789.,+-"}.find(side.front())
                          != std::string_view::npos;
        };
        if (begins_as_number(sides.first) && begins_as_number(sides.second)) {
            return sides;
        }
    }
    return std::nullopt;
}

std::string_view unit_of(std::string_view side) {
    return trimmed(side.substr(side.find_last_of(kDigits) + 1));
}

/// A side in its own unit, or in that of the other.
Result<Length> length_of(std::string_view side, std::string_view other) {
    return unit_of(side).empty() ? parse_length(fmt::format("{} {}", side, unit_of(other)))
                                 : parse_length(side);
}

bool is_in_inches(std::string_view side) {
    const std::string_view unit = unit_of(side);
    return unit.starts_with("in") || unit.starts_with("ft") || unit.starts_with('"')
           || unit.starts_with('\'');
}

Result<catalogue::Paper> own_paper(std::string_view typed, const Sides& sides) {
    const Result<Length> first = length_of(sides.first, sides.second);
    const Result<Length> second = length_of(sides.second, sides.first);
    for (const Result<Length>& side : {first, second}) {
        if (!side) {
            return failure(
                fmt::format("cannot read \"{}\" as a size of paper such as 500x700mm: {}", typed,
                            side.error().message));
        }
        if (!(side->m() > 0.0 && *side <= kLongestPaper)) {
            return failure(fmt::format("paper of \"{}\" cannot be had; a side is longer than "
                                       "nothing and at most {} mm",
                                       typed, shortest(kLongestPaper.mm())));
        }
    }
    catalogue::Paper paper;
    paper.name = fmt::format("{} x {}", sides.first, sides.second);
    paper.family = is_in_inches(sides.first) || is_in_inches(sides.second)
                       ? catalogue::PaperFamily::architectural
                       : catalogue::PaperFamily::iso;
    paper.width = std::min(*first, *second);
    paper.height = std::max(*first, *second);
    paper.source = "size asked for";
    return paper;
}

} // namespace

Result<catalogue::Paper> paper_named(std::string_view typed,
                                     const catalogue::Catalogue& catalogue) {
    if (const catalogue::Paper* paper = catalogue.paper(typed)) {
        return *paper;
    }
    if (const std::optional<Sides> sides = sides_of(typed)) {
        return own_paper(typed, *sides);
    }
    return no_such("paper", typed,
                   names_of(catalogue.papers, [](const auto& paper) { return paper.name; }));
}

} // namespace throwline::sheet
