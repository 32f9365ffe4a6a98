#include "sheet/sheet_kinds.h"
#include "sheet/unknown_name.h"

#include <algorithm>

namespace throwline::sheet {

namespace {

constexpr std::string_view kAll = "all";

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

Result<void> add_jobs(std::vector<SheetJob>& jobs, const SheetKind& kind, const SheetInput& input,
                      const SheetOptions& options) {
    auto made = kind.jobs(input, options);
    if (!made) {
        return tl::unexpected{made.error()};
    }
    std::move(made->begin(), made->end(), std::back_inserter(jobs));
    return {};
}

Result<std::vector<SheetJob>> jobs_of_all(const SheetInput& input, const SheetOptions& options) {
    std::vector<SheetJob> jobs;
    for (const SheetKind& kind : all_sheets()) {
        if (kind.in_full_set) {
            if (const auto added = add_jobs(jobs, kind, input, options); !added) {
                return tl::unexpected{added.error()};
            }
        }
    }
    return jobs;
}

Result<std::vector<SheetJob>> jobs_of(const SheetInput& input, const SheetOptions& options,
                                      std::span<const std::string> names) {
    std::vector<SheetJob> jobs;
    for (const std::string& name : names) {
        if (name == kAll) {
            auto all = jobs_of_all(input, options);
            if (!all) {
                return all;
            }
            std::move(all->begin(), all->end(), std::back_inserter(jobs));
            continue;
        }
        const SheetKind* kind = kind_named(name);
        if (kind == nullptr) {
            return unknown(name);
        }
        const std::size_t before = jobs.size();
        if (const auto added = add_jobs(jobs, *kind, input, options); !added) {
            return tl::unexpected{added.error()};
        }
        if (jobs.size() == before) {
            return failure(fmt::format("the plan has nothing to show on the sheet \"{}\"", name));
        }
    }
    return jobs;
}

} // namespace

Result<std::vector<Drawing>> sheet_set(const SheetInput& input, const SheetOptions& options,
                                       std::span<const std::string> names) {
    const Result<std::vector<SheetJob>> jobs = jobs_of(input, options, names);
    if (!jobs) {
        return tl::unexpected{jobs.error()};
    }
    std::vector<Drawing> drawings;
    SheetOptions numbered = options;
    numbered.sheet_count = static_cast<int>(jobs->size());
    for (const SheetJob& job : *jobs) {
        numbered.sheet_name = options.sheet_name.empty() ? job.name : options.sheet_name;
        numbered.sheet_number = static_cast<int>(drawings.size()) + 1;
        auto drawing = job.draw(numbered);
        if (!drawing) {
            return tl::unexpected{drawing.error()};
        }
        drawings.push_back(std::move(*drawing));
    }
    return drawings;
}

} // namespace throwline::sheet
