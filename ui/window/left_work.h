#pragma once

#include "catalogue/catalogue.h"
#include "ui/keeping/recovery_store.h"
#include "ui/window/start_page.h"

#include <filesystem>

namespace throwline::ui {

/// A recovery as the start page tells of it: what it is called, when it was kept, how it differs
/// from its file.
LeftWork left_work_of(const Recovery& recovery, const catalogue::Catalogue& catalogue);

/// The file of a demo production; empty when it is not there.
std::filesystem::path demo_path(int which);

} // namespace throwline::ui
