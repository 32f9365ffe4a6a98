#include "plan/salvage.h"

#include "plan/read_plan.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <vector>

namespace throwline::plan {

namespace {

/// Rounds of leaving out; each leaves out something, so this bounds the time of hopeless files.
constexpr int kMostRounds = 60;
constexpr std::size_t kDeepest = 64;

/// The parts of a JSON text that is cut off somewhere: what closes it at a place.
struct Cut {
    std::size_t end = 0;
    std::string closing;
};

/// Every place after which a text could end when its brackets are closed: after each whole value.
/// The last of them comes last.
std::vector<Cut> cuts_of(std::string_view text) {
    std::vector<Cut> cuts;
    std::string open;
    bool in_string = false;
    bool escaped = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (in_string) {
            in_string = escaped || c != '"';
            escaped = !escaped && c == '\\';
            continue;
        }
        if (c == '"') {
            in_string = true;
        } else if (c == '{' || c == '[') {
            open.push_back(c == '{' ? '}' : ']');
            if (open.size() > kDeepest) {
                break;
            }
        } else if ((c == '}' || c == ']') && (open.empty() || open.back() != c)) {
            break;
        } else if (c == '}' || c == ']') {
            open.pop_back();
        }
        if ((c == '}' || c == ']' || c == ',') && !open.empty()) {
            cuts.push_back({c == ',' ? i : i + 1, {open.rbegin(), open.rend()}});
        }
    }
    return cuts;
}

/// Keys that stand twice: the first counts.
nlohmann::ordered_json parsed(std::string_view text) {
    return nlohmann::ordered_json::parse(text, nullptr, false);
}

/// The largest beginning of a text that can be read as JSON once it is closed. Tried from the end
/// in growing steps, since nearly always the last or one of the last will do.
nlohmann::ordered_json mended(std::string_view text) {
    constexpr std::size_t kClosely = 40;
    const std::vector<Cut> cuts = cuts_of(text);
    std::size_t step = 1;
    for (std::size_t tried = 0, back = 1; back <= cuts.size(); ++tried, back += step) {
        const Cut& cut = cuts[cuts.size() - back];
        auto tree = parsed(std::string{text.substr(0, cut.end)} + cut.closing);
        if (tree.is_object()) {
            return tree;
        }
        if (tried > kClosely) {
            step *= 2;
        }
    }
    return nlohmann::ordered_json::object();
}

/// Bytes that are no text are left out, so that what remains can be told apart.
std::string clean(std::string_view text) {
    std::string cleaned;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte >= 0x20 || c == '\n' || c == '\t' || c == '\r') {
            cleaned.push_back(c);
        }
    }
    return cleaned;
}

/// Takes out what a pointer points at, or the entry of a list or the part of the plan that it lies
/// in when `coarse`. Returns whether anything went.
bool take_out(nlohmann::ordered_json& tree, const std::string& pointer, bool coarse) {
    try {
        nlohmann::ordered_json::json_pointer at{pointer};
        if (at.empty()) {
            return false;
        }
        if (coarse) {
            // "/lamps/3/aim" becomes "/lamps/3", "/lamps/3" becomes "/lamps".
            const auto parts = static_cast<int>(std::count(pointer.begin(), pointer.end(), '/'));
            for (int i = parts; i > (parts > 2 ? 2 : 1); --i) {
                at.pop_back();
            }
        }
        if (!tree.contains(at)) {
            if (at.parent_pointer().empty()) {
                return false;
            }
            at.pop_back();
            if (!tree.contains(at)) {
                return false;
            }
        }
        auto& parent = tree.at(at.parent_pointer());
        if (parent.is_array()) {
            parent.erase(static_cast<std::size_t>(std::stoul(at.back())));
        } else {
            parent.erase(at.back());
        }
        return true;
    } catch (const nlohmann::json::exception&) {
        return false;
    }
}

/// Later entries of a list go first, so that the places of the earlier ones still hold.
void sort_for_taking(std::vector<std::string>& pointers) {
    std::sort(pointers.begin(), pointers.end(), [](const std::string& a, const std::string& b) {
        return std::pair{a.size(), a} > std::pair{b.size(), b};
    });
    pointers.erase(std::unique(pointers.begin(), pointers.end()), pointers.end());
}

/// One round of leaving out what the errors point at. Returns whether anything went.
bool leave_out(nlohmann::ordered_json& tree, const Errors& errors, bool coarse) {
    std::vector<std::string> pointers;
    for (const Error& error : errors) {
        pointers.push_back(error.place.pointer);
    }
    sort_for_taking(pointers);
    bool any = false;
    for (const std::string& pointer : pointers) {
        // Finely one at a time: taking one out of a list moves the others.
        if (take_out(tree, pointer, coarse)) {
            any = true;
            if (!coarse) {
                continue;
            }
            break;
        }
    }
    return any;
}

void need_title(nlohmann::ordered_json& tree) {
    if (!tree.contains("format") || !tree["format"].is_number_integer()) {
        tree["format"] = Plan::kFormat;
    }
    if (!tree.contains("title") || !tree["title"].is_string()) {
        tree["title"] = "What could be read";
    }
}

Plan bare(const std::string& title) {
    Plan plan;
    plan.title = title;
    return plan;
}

/// Reads a tree, leaving out what is wrong with it.
Plan read_leaving_out(nlohmann::ordered_json tree, const catalogue::Catalogue& catalogue,
                      const std::string& file, Errors& errors) {
    need_title(tree);
    const std::string title = tree["title"].get<std::string>();
    for (int round = 0; round < kMostRounds; ++round) {
        const std::string text = tree.dump(2, ' ', false, nlohmann::json::error_handler_t::replace);
        Checked<Plan> read = read_plan(text, catalogue, file);
        if (read) {
            return std::move(*read);
        }
        if (round == 0 && errors.empty()) {
            errors = read.error();
        }
        if (!leave_out(tree, read.error(), round >= kMostRounds / 2)) {
            break;
        }
        need_title(tree);
    }
    return bare(title);
}

} // namespace

Salvaged salvaged(std::string_view json, const catalogue::Catalogue& catalogue,
                  const std::string& file) {
    Checked<Plan> whole = read_plan(json, catalogue, file);
    if (whole) {
        return {std::move(*whole), {}};
    }
    Salvaged rest;
    rest.errors = whole.error();
    if (json.size() > kLargestPlanBytes) {
        rest.plan = bare("What could be read");
        return rest;
    }
    auto tree = parsed(json);
    if (!tree.is_object()) {
        const std::string text = clean(json);
        tree = parsed(text);
        if (!tree.is_object()) {
            tree = mended(text);
        }
    }
    rest.plan = read_leaving_out(std::move(tree), catalogue, file, rest.errors);
    // Text that is not UTF-8 may have come through the cleaning; then only the title is left.
    if (!read_plan(written(rest.plan), catalogue)) {
        rest.plan = bare("What could be read");
    }
    return rest;
}

} // namespace throwline::plan
