#pragma once

#include "sheet/composition.h"

#include <functional>
#include <optional>
#include <span>
#include <stop_token>
#include <string>
#include <string_view>
#include <vector>

/// Every kind of sheet that a production can be printed on, and sets of them.
namespace throwline::sheet {

/// One page that is still to be drawn. It refers to the input that it was made for.
struct SheetJob {
    /// Shown in the title block and in the index: "Shot 2A".
    std::string name;
    /// Draws it; the options carry its name, number and count.
    std::function<Result<Drawing>(const SheetOptions&)> draw;
    /// What pages that belong together have in common: "Shot list"; empty for one by itself.
    std::string whole{};
};

/// A kind of sheet is a value: adding one is a file and a line in the table.
struct SheetKind {
    /// As typed: "floor-plan".
    std::string_view name;
    std::string_view summary;
    /// The pages of a production: none when there is nothing to show. Errors: options that name
    /// what is not there.
    Result<std::vector<SheetJob>> (*jobs)(const SheetInput& input, const SheetOptions& options);
    /// Part of the set that is printed when all is asked for.
    bool in_full_set = true;
};

/// In the order in which a set is bound.
std::span<const SheetKind> all_sheets();

/// Sheets by the names of their kinds, in the order asked for, numbered, with the kind "index"
/// listing the others; "all" stands for the full set. Errors: an unknown name, or what a sheet
/// says. A kind asked for by name that has nothing to show is an error unless the options leave it
/// out, as the full set does.
Result<std::vector<Drawing>> sheet_set(const SheetInput& input, const SheetOptions& options,
                                       std::span<const std::string> names);

/// Told the share of the pages that are drawn, 0..1, after each; on the thread that draws.
using PagesDrawn = std::function<void(double share)>;

/// The same for somebody who may lose interest: nothing once stopped. A page that was begun is
/// drawn to its end.
std::optional<Result<std::vector<Drawing>>>
sheet_set(const SheetInput& input, const SheetOptions& options, std::span<const std::string> names,
          const std::stop_token& stop, const PagesDrawn& went_on);

} // namespace throwline::sheet
