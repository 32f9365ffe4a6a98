#pragma once

#include "catalogue/catalogue.h"
#include "plan/plan.h"

/// What the crew has, an item on each line: "3 tripod"; read with semicolons between as well.
namespace throwline::card {

/// Names of every table that a kit may name.
std::vector<std::string> kit_names(const catalogue::Catalogue& catalogue);

std::string kit_text(const std::vector<plan::KitItem>& kit);
std::optional<std::vector<plan::KitItem>>
read_kit(const std::string& text, const std::vector<std::string>& known, std::string& fault);

} // namespace throwline::card
