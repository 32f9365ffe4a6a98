#include "sheet/findings_sheet.h"
#include "sheet/index_sheet.h"
#include "sheet/sheet_kinds.h"
#include "sheet/unknown_name.h"

#include <algorithm>

namespace throwline::sheet {

namespace {

constexpr std::string_view kAll = "all";
constexpr std::string_view kFindings = "findings";
constexpr std::string_view kIndex = "index";

const SheetKind* kind_named(std::string_view name) {
    const auto kinds = all_sheets();
    const auto found = std::find_if(kinds.begin(), kinds.end(),
                                    [&](const SheetKind& kind) { return kind.name == name; });
    return found == kinds.end() ? nullptr : &*found;
}

tl::unexpected<Error> unknown(std::string_view name) {
    std::vector<std::string> names =
        names_of(all_sheets(), [](const SheetKind& kind) { return kind.name; });
    names.emplace_back(kAll);
    return no_such("kind of sheet", name, names);
}

/// A page of the set: of one kind of sheet, or the place of the index.
struct Wanted {
    std::optional<SheetJob> job;
};
using WantedPages = std::vector<Wanted>;

Result<void> add_pages(WantedPages& pages, const SheetKind& kind, const SheetInput& input,
                       const SheetOptions& options) {
    if (kind.name == kIndex) {
        pages.push_back({});
        return {};
    }
    auto made = kind.jobs(input, options);
    if (!made) {
        return tl::unexpected{made.error()};
    }
    for (SheetJob& job : *made) {
        pages.push_back({std::move(job)});
    }
    return {};
}

Result<void> add_full_set(WantedPages& pages, const SheetInput& input,
                          const SheetOptions& options) {
    for (const SheetKind& kind : all_sheets()) {
        if (!kind.in_full_set) {
            continue;
        }
        if (const auto added = add_pages(pages, kind, input, options); !added) {
            return added;
        }
    }
    return {};
}

Result<WantedPages> pages_wanted(const SheetInput& input, const SheetOptions& options,
                                 std::span<const std::string> names) {
    WantedPages pages;
    for (const std::string& name : names) {
        const SheetKind* kind = name == kAll ? nullptr : kind_named(name);
        if (name != kAll && kind == nullptr) {
            return unknown(name);
        }
        const std::size_t before = pages.size();
        const auto added = kind == nullptr ? add_full_set(pages, input, options)
                                           : add_pages(pages, *kind, input, options);
        if (!added) {
            return tl::unexpected{added.error()};
        }
        if (pages.size() == before && !options.leaves_out_empty) {
            return failure(fmt::format("the plan has nothing to show on the sheet \"{}\"", name));
        }
    }
    return pages;
}

/// The set while it is drawn: the index last, because it tells the scales of the others.
class SetOfSheets {
  public:
    SetOfSheets(const SheetInput& input, const SheetOptions& options, WantedPages wanted)
        : input_{input}, options_{options}, wanted_{std::move(wanted)} {}

    /// Some pages only once stopped.
    Result<std::vector<Drawing>> drawn(const std::stop_token& stop, const PagesDrawn& went_on) {
        if (const auto counted = count_index(); !counted) {
            return tl::unexpected{counted.error()};
        }
        number();
        for (std::size_t i = 0; i < wanted_.size(); ++i) {
            if (stop.stop_requested()) {
                return std::move(pages_);
            }
            if (wanted_[i].job) {
                auto drawing = draw(*wanted_[i].job, numbers_[i]);
                if (!drawing) {
                    return tl::unexpected{drawing.error()};
                }
                enter(entries_, *wanted_[i].job,
                      {numbers_[i], numbers_[i], {}, drawing->scale, drawing->paper});
                pages_[static_cast<std::size_t>(numbers_[i]) - 1] = *std::move(drawing);
            }
            went_on(static_cast<double>(i + 1) / static_cast<double>(wanted_.size()));
        }
        if (const auto added = draw_index(); !added) {
            return tl::unexpected{added.error()};
        }
        return std::move(pages_);
    }

  private:
    std::string name_of(const SheetJob& job) const {
        return options_.sheet_name.empty() ? job.name : options_.sheet_name;
    }
    /// Pages that belong together are one entry.
    void enter(std::vector<IndexEntry>& entries, const SheetJob& job, IndexEntry entry) const {
        const bool grouped = options_.sheet_name.empty() && !job.whole.empty();
        entry.name = grouped ? job.whole : name_of(job);
        if (grouped && !entries.empty() && entries.back().name == entry.name) {
            entries.back().last = entry.last;
            return;
        }
        entries.push_back(std::move(entry));
    }
    bool has_index() const {
        return std::any_of(wanted_.begin(), wanted_.end(),
                           [](const Wanted& wanted) { return !wanted.job; });
    }
    /// How many pages the index takes, from the names of the others.
    Result<void> count_index() {
        if (!has_index()) {
            return {};
        }
        std::vector<IndexEntry> names;
        for (const Wanted& wanted : wanted_) {
            if (wanted.job) {
                enter(names, *wanted.job, {});
            }
        }
        if (names.empty()) {
            return failure("an index lists other sheets; ask for some of them, or for all");
        }
        const auto jobs = index_jobs(input_, options_, names);
        if (!jobs) {
            return tl::unexpected{jobs.error()};
        }
        index_pages_ = static_cast<int>(jobs->size());
        return {};
    }
    void number() {
        int next = 1;
        for (const Wanted& wanted : wanted_) {
            numbers_.push_back(next);
            next += wanted.job ? 1 : index_pages_;
        }
        pages_.resize(static_cast<std::size_t>(next) - 1);
    }
    Result<Drawing> draw(const SheetJob& job, int number) const {
        SheetOptions numbered = options_;
        numbered.sheet_name = name_of(job);
        numbered.sheet_number = number;
        numbered.sheet_count = static_cast<int>(pages_.size());
        return job.draw(numbered);
    }
    Result<void> draw_index() {
        for (std::size_t i = 0; i < wanted_.size(); ++i) {
            if (wanted_[i].job) {
                continue;
            }
            const auto jobs = index_jobs(input_, options_, entries_);
            if (!jobs) {
                return tl::unexpected{jobs.error()};
            }
            int number = numbers_[i];
            for (const SheetJob& job : *jobs) {
                auto drawing = draw(job, number);
                if (!drawing) {
                    return tl::unexpected{drawing.error()};
                }
                pages_.at(static_cast<std::size_t>(number++) - 1) = *std::move(drawing);
            }
        }
        return {};
    }

    const SheetInput& input_;
    const SheetOptions& options_;
    WantedPages wanted_;
    /// Of each wanted page, the first one of the index.
    std::vector<int> numbers_;
    int index_pages_ = 0;
    std::vector<IndexEntry> entries_;
    std::vector<Drawing> pages_;
};

bool lost_errors(const std::vector<Drawing>& drawings) {
    return std::any_of(drawings.begin(), drawings.end(),
                       [](const Drawing& drawing) { return drawing.errors_left_out > 0; });
}

/// Whether the sheet of findings was asked for.
bool has_findings(std::span<const std::string> names) {
    return std::any_of(names.begin(), names.end(),
                       [](const std::string& name) { return name == kFindings || name == kAll; });
}

} // namespace

std::optional<Result<std::vector<Drawing>>>
sheet_set(const SheetInput& input, const SheetOptions& options, std::span<const std::string> names,
          const std::stop_token& stop, const PagesDrawn& went_on) {
    Result<WantedPages> wanted = pages_wanted(input, options, names);
    if (!wanted) {
        return tl::unexpected{wanted.error()};
    }
    auto drawings = SetOfSheets{input, options, *wanted}.drawn(stop, went_on);
    if (stop.stop_requested()) {
        return std::nullopt;
    }
    if (drawings && options.goes_on && lost_errors(*drawings) && !has_findings(names)) {
        auto jobs = error_jobs(input, options);
        if (!jobs) {
            return tl::unexpected{jobs.error()};
        }
        for (SheetJob& job : *jobs) {
            wanted->push_back({std::move(job)});
        }
        drawings = SetOfSheets{input, options, *std::move(wanted)}.drawn(stop, went_on);
    }
    return stop.stop_requested() ? std::nullopt : std::optional{std::move(drawings)};
}

Result<std::vector<Drawing>> sheet_set(const SheetInput& input, const SheetOptions& options,
                                       std::span<const std::string> names) {
    return sheet_set(input, options, names, {}, [](double /*share*/) {}).value();
}

} // namespace throwline::sheet
