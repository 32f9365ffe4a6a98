#include "card/kit_text.h"

#include "base/utf8.h"
#include "card/read_values.h"

#include <algorithm>
#include <fmt/format.h>

namespace throwline::card {

std::vector<std::string> kit_names(const catalogue::Catalogue& catalogue) {
    std::vector<std::string> names;
    const auto add = [&](const auto& rows) {
        for (const auto& row : rows) {
            names.push_back(row.name);
        }
    };
    add(catalogue.sensors);
    add(catalogue.lenses);
    add(catalogue.instruments);
    add(catalogue.filters);
    add(catalogue.stock);
    add(catalogue.supports);
    return names;
}

std::string kit_text(const std::vector<plan::KitItem>& kit) {
    std::vector<std::string> items;
    for (const plan::KitItem& item : kit) {
        items.push_back(fmt::format("{} {}", item.count, item.item));
    }
    return joined(items, "\n");
}

std::optional<std::vector<plan::KitItem>>
read_kit(const std::string& text, const std::vector<std::string>& known, std::string& fault) {
    std::vector<plan::KitItem> kit;
    // On lines of their own, or said in one.
    std::string lines = text;
    std::replace(lines.begin(), lines.end(), ';', '\n');
    for (const std::string& part : parts_between(lines, '\n')) {
        const std::size_t space = std::min(part.find(' '), part.size());
        const auto count = read_number(part.substr(0, space), 0, 100'000, fault);
        if (!count || *count != static_cast<int>(*count)) {
            fault = fmt::format("{} does not begin with a number; write it as 3 tripod",
                                in_quotes(part));
            return std::nullopt;
        }
        const auto name = read_choice(part.substr(space), known, fault);
        if (!name) {
            return std::nullopt;
        }
        kit.push_back({*name, static_cast<int>(*count)});
    }
    return kit;
}

} // namespace throwline::card
