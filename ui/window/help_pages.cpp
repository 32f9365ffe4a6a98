#include "ui/window/help_pages.h"

#include "edit/say.h"
#include "ui/window/window_action.h"

#include <QKeySequence>
#include <QObject>

namespace throwline::ui {

namespace {

QString bare(const char* words) {
    return QObject::tr(words).remove(QLatin1Char{'&'});
}

QString keys_markdown() {
    QString text = QObject::tr("# Keys of the menus\n\n");
    for (int menu = 0; menu < kMenus; ++menu) {
        text += QStringLiteral("## %1\n\n").arg(bare(words_of(static_cast<Menu>(menu))));
        for (const WindowAction* action : all_actions()) {
            if (static_cast<int>(action->menu) != menu || action->keys == nullptr) {
                continue;
            }
            QStringList keys;
            for (const QKeySequence& key :
                 QKeySequence::listFromString(QString::fromLatin1(action->keys))) {
                keys << key.toString(QKeySequence::NativeText);
            }
            const QString under =
                action->under == nullptr ? QString{} : bare(action->under) + QStringLiteral(": ");
            text += QStringLiteral("- **%1** %2%3\n")
                        .arg(keys.join(QObject::tr(" or ")), under, bare(action->words));
        }
        text += QLatin1Char{'\n'};
    }
    return text;
}

QString sayings_markdown() {
    QString text =
        QObject::tr("# What can be typed\n\nIn the line at the foot of the window "
                    "(Ctrl+K). Everything in the menus can be typed too, by its words.\n\n");
    for (const edit::Saying& saying : edit::sayings()) {
        const auto of = [](std::string_view words) {
            return QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
        };
        text += QStringLiteral("- `%1`: %2. For example: *%3*\n")
                    .arg(of(saying.form), of(saying.meaning), of(saying.example));
    }
    return text;
}

QString about_markdown() {
    return QObject::tr(
        "# About Throwline\n\nPlans where cameras, people and lamps stand on a set, and finds what "
        "will not work.\n\nIt checks geometry and figures and shows the working of each. It never "
        "says that anything is safe: loads overhead, mains power, hot lamps, ladders, cables and "
        "ways out are for local codes, the venue's rules and licensed people to decide.\n");
}

} // namespace

std::vector<HelpPage> help_pages() {
    std::vector<HelpPage> pages = carried_help();
    pages.push_back({QStringLiteral("keys"), QObject::tr("Keys of the menus"), keys_markdown()});
    pages.push_back(
        {QStringLiteral("sayings"), QObject::tr("What can be typed"), sayings_markdown()});
    pages.push_back({QStringLiteral("about"), QObject::tr("About Throwline"), about_markdown()});
    return pages;
}

} // namespace throwline::ui
