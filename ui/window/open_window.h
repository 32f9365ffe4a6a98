#pragma once

#include "catalogue/catalogue.h"

#include <memory>
#include <string>
#include <vector>

/// The desktop program, for callers that know nothing of Qt.
namespace throwline::ui {

/// Opens a window for each plan file, or one with the start page, and returns when the last is
/// closed; at once when a program of this user that runs already takes the files over. Returns
/// whether it went well: false where there is no screen to open a window on.
bool open_windows(std::shared_ptr<const catalogue::Catalogue> catalogue,
                  const std::vector<std::string>& paths);

} // namespace throwline::ui
