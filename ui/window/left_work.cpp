#include "ui/window/left_work.h"

#include "base/text_file.h"
#include "plan/differences.h"
#include "plan/read_plan.h"

#include <QDateTime>
#include <QLocale>
#include <QObject>

namespace throwline::ui {

LeftWork left_work_of(const Recovery& recovery, const catalogue::Catalogue& catalogue) {
    const QString when =
        QLocale{}.toString(QDateTime::fromSecsSinceEpoch(recovery.kept_at_s), QLocale::ShortFormat);
    const Checked<plan::Plan> work = plan::read_plan(recovery.plan_text, catalogue);
    LeftWork left;
    left.title = !recovery.original.empty()
                     ? QString::fromStdString(recovery.original.filename().string())
                 : work ? QString::fromStdString(work->title)
                        : QObject::tr("Untitled");
    const auto text = recovery.original.empty()
                          ? Result<std::string>{failure("")}
                          : read_text_file(recovery.original, plan::kLargestPlanBytes);
    const Checked<plan::Plan> file =
        text ? plan::read_plan(*text, catalogue) : Checked<plan::Plan>{tl::unexpected<Errors>{{}}};
    if (work && file) {
        const auto changes = plan::differences(*file, *work);
        left.summary = QObject::tr("kept %1, %n change(s) not in the file", nullptr,
                                   static_cast<int>(changes.size()))
                           .arg(when);
        if (!changes.empty()) {
            left.summary += QStringLiteral(": ") + QString::fromStdString(changes.front().sentence);
        }
    } else {
        left.summary = QObject::tr("kept %1, never saved").arg(when);
    }
    if (!recovery.readings.empty()) {
        left.summary += QObject::tr("; readings that are not in the plan");
    }
    return left;
}

std::filesystem::path demo_path(int which) {
    if (which < 0 || static_cast<std::size_t>(which) >= demo_names().size()) {
        return {};
    }
    const char* file = demo_names()[static_cast<std::size_t>(which)].file;
    const std::filesystem::path tables = catalogue::shipped_folder();
    // In the source tree beside lensdata/, installed in share/throwline/ beside it.
    const std::filesystem::path path = tables.parent_path() / "demo" / file;
    std::error_code fault;
    return std::filesystem::is_regular_file(path, fault) ? path : std::filesystem::path{};
}

} // namespace throwline::ui
