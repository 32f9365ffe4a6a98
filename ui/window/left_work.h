#pragma once

#include "checks/check.h"
#include "edit/thing.h"
#include "sheet/level_picture.h"
#include "ui/keeping/recovery_store.h"
#include "ui/window/start_page.h"

#include <filesystem>
#include <memory>

namespace throwline::ui {

/// A recovery as the start page tells of it: what it is called, when it was kept, how it differs
/// from its file.
LeftWork left_work_of(const Recovery& recovery, const catalogue::Catalogue& catalogue);

/// The file of a demo production; empty when it is not there.
std::filesystem::path demo_path(int which);

/// The level map of the floor at a moment.
std::shared_ptr<const sheet::LevelPicture> levels_now(const checks::Analysis& analysis,
                                                      const edit::Now& now);

} // namespace throwline::ui
