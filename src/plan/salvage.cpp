#include "plan/salvage.h"

#include "base/utf8.h"
#include "plan/file_keys.h"
#include "plan/json_text.h"
#include "plan/mended_json.h"
#include "plan/read_plan.h"

#include <algorithm>
#include <charconv>
#include <fmt/format.h>
#include <optional>

namespace throwline::plan {

namespace {

using catalogue::JsonKind;
using catalogue::JsonMember;
using catalogue::JsonNode;

constexpr const char* kBareTitle = "What could be read";
/// Rounds of leaving out exactly what is wrong. After those whole parts of the plan go, of which
/// there are few, so that a hopeless file takes no longer than this many readings.
constexpr int kFineRounds = 30;

Plan bare(const std::string& title) {
    Plan plan;
    plan.title = title;
    return plan;
}

/// A tree as text with one value a line, and the value that stands in each line: so an error in
/// that text is one at a place of the text that the tree was read from.
class Lines {
  public:
    explicit Lines(const JsonNode& tree) {
        places_.push_back({tree.line, tree.column});
        holder(tree);
        text_ += '\n';
    }

    const std::string& text() const { return text_; }
    /// An error of the text as one of the original; the pointer would count what is no longer
    /// there.
    Error original(const Error& error) const {
        Error told = error;
        told.place.pointer.clear();
        const auto line = static_cast<std::size_t>(std::max(error.place.line, 1)) - 1;
        const auto& [at_line, at_column] = places_.at(std::min(line, places_.size() - 1));
        told.place.line = at_line;
        told.place.column = at_column;
        return told;
    }

  private:
    struct LineAndColumn {
        int line;
        int column;
    };

    void begin_line(std::string_view before, int line, int column) {
        text_ += before;
        text_ += '\n';
        places_.push_back({line, column});
    }
    void value(const JsonNode& node) {
        if (node.is(JsonKind::object) || node.is(JsonKind::array)) {
            holder(node);
        } else {
            text_ += json_text(node);
        }
    }
    void holder(const JsonNode& node) {
        std::string_view comma;
        const bool is_object = node.is(JsonKind::object);
        text_ += is_object ? '{' : '[';
        for (const JsonMember& member : node.members) {
            begin_line(comma, member.line, member.column);
            text_ += json_string(member.key) + ": ";
            value(member.value);
            comma = ",";
        }
        for (const JsonNode& item : node.items) {
            begin_line(comma, item.line, item.column);
            value(item);
            comma = ",";
        }
        text_ += is_object ? '}' : ']';
    }

    std::string text_;
    std::vector<LineAndColumn> places_;
};

/// The steps of an RFC 6901 pointer.
std::vector<std::string> steps_of(const std::string& pointer) {
    std::vector<std::string> steps;
    for (std::size_t i = 0; i < pointer.size(); ++i) {
        const char c = pointer[i];
        if (c == '/') {
            steps.emplace_back();
        } else if (c == '~' && i + 1 < pointer.size()) {
            steps.back().push_back(pointer[++i] == '1' ? '/' : '~');
        } else {
            steps.back().push_back(c);
        }
    }
    return steps;
}

std::optional<std::size_t> index_of(const JsonNode& holder, const std::string& step) {
    std::size_t index = 0;
    if (holder.is(JsonKind::array)) {
        const auto [end, fault] = std::from_chars(step.data(), step.data() + step.size(), index);
        const bool is_there =
            fault == std::errc{} && end == step.data() + step.size() && index < holder.items.size();
        return is_there ? std::optional{index} : std::nullopt;
    }
    for (; index < holder.members.size(); ++index) {
        if (holder.members[index].key == step) {
            return index;
        }
    }
    return std::nullopt;
}

template <class Node>
Node& child(Node& holder, std::size_t index) {
    return holder.is(JsonKind::array) ? holder.items[index] : holder.members[index].value;
}

/// What people call a member or an item: its key, its name in quotes, or its number.
std::string words_for(const JsonNode& holder, std::size_t index) {
    if (holder.is(JsonKind::object)) {
        return on_one_line(holder.members[index].key);
    }
    for (const std::string_view key : {"id", "item", "name"}) {
        const JsonNode* name = holder.items[index].find(key);
        if (name != nullptr && name->is(JsonKind::string)) {
            return in_quotes(name->text);
        }
    }
    return fmt::format("{}", index + 1);
}

/// A plan's tree from which what is wrong is left out bit by bit.
class Rest {
  public:
    explicit Rest(JsonNode tree) : tree_{std::move(tree)} { need_heading(); }

    const JsonNode& tree() const { return tree_; }

    /// Leaves out what the pointers of errors lead to, or, if not `finely`, the parts of the plan
    /// that lies in. Returns whether anything went.
    bool leave_out(const Errors& errors, bool finely) {
        std::vector<std::vector<std::string>> paths;
        for (const Error& error : errors) {
            std::vector<std::string> path = existing(steps_of(error.place.pointer));
            if (!path.empty()) {
                path.resize(finely ? path.size() : 1);
                paths.push_back(std::move(path));
            }
        }
        // Later items of a list go first, so that the places of the earlier ones still hold.
        std::sort(paths.begin(), paths.end(), goes_before);
        paths.erase(std::unique(paths.begin(), paths.end()), paths.end());
        for (const std::vector<std::string>& path : paths) {
            take_out(path);
        }
        need_heading();
        return !paths.empty();
    }

    /// Outermost things only, in the order of their words.
    std::vector<std::string> left_out() const {
        std::vector<std::string> words = left_out_;
        std::sort(words.begin(), words.end());
        std::vector<std::string> outermost;
        for (std::string& each : words) {
            if (outermost.empty()
                || (each != outermost.back() && each.rfind(outermost.back() + ' ', 0) != 0)) {
                outermost.push_back(std::move(each));
            }
        }
        return outermost;
    }

  private:
    /// By length of step first, which puts numbers in their order; from the back.
    static bool goes_before(const std::vector<std::string>& a, const std::vector<std::string>& b) {
        for (std::size_t i = 0; i < std::min(a.size(), b.size()); ++i) {
            if (a[i] != b[i]) {
                return std::pair{a[i].size(), a[i]} > std::pair{b[i].size(), b[i]};
            }
        }
        return a.size() > b.size();
    }

    /// As much of a path as is there: where a key is missing, what it should have been in.
    std::vector<std::string> existing(std::vector<std::string> path) const {
        const JsonNode* node = &tree_;
        for (std::size_t i = 0; i < path.size(); ++i) {
            const std::optional<std::size_t> index = index_of(*node, path[i]);
            if (!index) {
                path.resize(i);
                break;
            }
            node = &child(*node, *index);
        }
        return path;
    }

    void take_out(const std::vector<std::string>& path) {
        JsonNode* holder = &tree_;
        std::size_t index = *index_of(*holder, path.front());
        std::string words = words_for(*holder, index);
        for (std::size_t i = 1; i < path.size(); ++i) {
            holder = &child(*holder, index);
            index = *index_of(*holder, path[i]);
            words += ' ' + words_for(*holder, index);
        }
        if (is_lost_part(*holder, index, path.size())) {
            put_back(*holder, index);
            return;
        }
        left_out_.push_back(std::move(words));
        if (holder->is(JsonKind::array)) {
            holder->items.erase(holder->items.begin() + static_cast<std::ptrdiff_t>(index));
        } else {
            holder->members.erase(holder->members.begin() + static_cast<std::ptrdiff_t>(index));
        }
    }

    /// Whether a member is a part of the plan that a lost bracket has put into another.
    bool is_lost_part(const JsonNode& holder, std::size_t index, std::size_t depth) const {
        if (depth < 2 || !holder.is(JsonKind::object)) {
            return false;
        }
        const std::string& key = holder.members[index].key;
        return std::any_of(kPlanKeys.keys.begin(), kPlanKeys.keys.end(),
                           [&](const FileKey& known) { return known.name == key; })
               && tree_.find(key) == nullptr;
    }
    void put_back(JsonNode& holder, std::size_t index) {
        JsonMember part = std::move(holder.members[index]);
        holder.members.erase(holder.members.begin() + static_cast<std::ptrdiff_t>(index));
        tree_.members.push_back(std::move(part));
    }

    /// Nothing is read without these two.
    void need_heading() {
        const JsonNode* format = tree_.find("format");
        if (format == nullptr) {
            JsonMember member{"format", {}, tree_.line, tree_.column};
            member.value.kind = JsonKind::number;
            member.value.text = fmt::format("{}", Plan::kFormat);
            tree_.members.insert(tree_.members.begin(), std::move(member));
        }
        const JsonNode* title = tree_.find("title");
        if (title == nullptr || !title->is(JsonKind::string)) {
            std::erase_if(tree_.members,
                          [](const JsonMember& each) { return each.key == "title"; });
            JsonMember member{"title", {}, tree_.line, tree_.column};
            member.value.kind = JsonKind::string;
            member.value.text = kBareTitle;
            tree_.members.push_back(std::move(member));
        }
    }

    JsonNode tree_;
    std::vector<std::string> left_out_;
};

void add(Errors& errors, const Error& error) {
    if (errors.size() < kMostSalvageErrors
        && std::find(errors.begin(), errors.end(), error) == errors.end()) {
        errors.push_back(error);
    }
}

/// Reads a tree, leaving out what is wrong with it.
Plan read_leaving_out(Rest& rest, const catalogue::Catalogue& catalogue, const std::string& file,
                      Errors& errors) {
    for (int round = 0;; ++round) {
        const Lines lines{rest.tree()};
        Checked<Plan> read = read_plan(lines.text(), catalogue, file);
        if (read) {
            return *std::move(read);
        }
        for (const Error& error : read.error()) {
            add(errors, lines.original(error));
        }
        if (!rest.leave_out(read.error(), round < kFineRounds)) {
            return bare(kBareTitle);
        }
    }
}

} // namespace

Salvaged salvaged(std::string_view json, const catalogue::Catalogue& catalogue,
                  const std::string& file) {
    Checked<Plan> whole = read_plan(json, catalogue, file);
    if (whole) {
        return {*std::move(whole), {}, {}};
    }
    if (json.size() > kLargestPlanBytes) {
        return {bare(kBareTitle), whole.error(), {}};
    }
    MendedJson mended = mended_json(json, file);
    Salvaged salvaged;
    salvaged.errors = std::move(mended.errors);
    Rest rest{std::move(mended.tree)};
    salvaged.plan = read_leaving_out(rest, catalogue, file, salvaged.errors);
    salvaged.left_out = rest.left_out();
    if (salvaged.errors.empty()) {
        salvaged.errors = whole.error();
    }
    return salvaged;
}

} // namespace throwline::plan
