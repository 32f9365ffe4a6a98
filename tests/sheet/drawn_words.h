#pragma once

#include "sheet/sheet_kinds.h"

#include <string>
#include <vector>

/// What is lettered on drawings, for tests that look for it.
namespace throwline::test {

/// Every text, in the order in which it is painted.
std::vector<sheet::Text> texts_of(const sheet::Drawing& drawing);
/// How many texts say exactly this.
std::size_t count_of(const sheet::Drawing& drawing, const std::string& words);
/// All texts one after the other, a blank between, so that sentences are found across lines.
std::string all_words(const sheet::Drawing& drawing);

/// The drawing with its pictures blank: what rays meet at an edge may differ from one processor to
/// another, which golden texts must not hang on.
sheet::Drawing with_blank_pictures(sheet::Drawing drawing);

/// Draws every page of one kind of sheet; each has the name of its job.
std::vector<sheet::Drawing> pages_of(const sheet::SheetInput& input,
                                     const sheet::SheetOptions& options, const std::string& kind);

} // namespace throwline::test
