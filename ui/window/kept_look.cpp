#include "ui/window/kept_look.h"

#include "ui/viewfinder/frame_view.h"
#include "ui/viewfinder/viewfinder.h"
#include "ui/window/window.h"
#include "ui/window/window_action.h"

#include <QLatin1String>
#include <QSettings>
#include <QSplitter>
#include <algorithm>

namespace throwline::ui {

namespace {

/// Kept elsewhere: full screen with the place, the theme for all windows.
constexpr const char* kNoSwitches[]{"show.full_screen", "show.as_desktop", "show.light",
                                    "show.dark"};
constexpr QLatin1String kGroup{"look"};
constexpr QLatin1String kGeometry{"geometry"};
constexpr QLatin1String kSize{"size"};

QString parts_key(const QSplitter& splitter) {
    return QStringLiteral("parts.%1").arg(splitter.objectName());
}

bool is_kept_switch(const WindowAction& row) {
    return row.is_on != nullptr
           && std::none_of(std::begin(kNoSwitches), std::end(kNoSwitches), [&](const char* id) {
                  return QLatin1String{id} == QLatin1String{row.id};
              });
}

QString guide_key(const GuideChoice& choice) {
    return QStringLiteral("guide.%1").arg(QLatin1String{choice.name});
}

QList<QSplitter*> splitters_of(const Window& window) {
    QList<QSplitter*> named;
    for (QSplitter* splitter : window.findChildren<QSplitter*>()) {
        if (!splitter->objectName().isEmpty()) {
            named.append(splitter);
        }
    }
    return named;
}

} // namespace

QVariantMap look_of(const Window& window) {
    QVariantMap look;
    look[kGeometry] = window.saveGeometry();
    look[kSize] = window.size();
    for (const QSplitter* splitter : splitters_of(window)) {
        look[parts_key(*splitter)] = splitter->saveState();
    }
    for (const WindowAction& row : show_actions()) {
        if (is_kept_switch(row)) {
            look[QLatin1String{row.id}] = row.is_on(window);
        }
    }
    const FrameGuides& guides = window.viewfinder().frame_view().guides();
    for (const GuideChoice& choice : guide_choices()) {
        look[guide_key(choice)] = guides.*choice.shown;
    }
    return look;
}

void give_look(Window& window, const QVariantMap& look, Placed placed) {
    if (placed == Placed::where_left) {
        window.restoreGeometry(look.value(kGeometry).toByteArray());
    } else if (const QSize size = look.value(kSize).toSize(); size.isValid()) {
        window.resize(size);
    }
    for (const WindowAction& row : show_actions()) {
        const QVariant is_on = look.value(QLatin1String{row.id});
        if (is_kept_switch(row) && is_on.isValid() && is_on.toBool() != row.is_on(window)) {
            row.run(window);
        }
    }
    // After the switches, which fold parts away.
    for (QSplitter* splitter : splitters_of(window)) {
        splitter->restoreState(look.value(parts_key(*splitter)).toByteArray());
    }
    FrameView& view = window.viewfinder().frame_view();
    FrameGuides guides = view.guides();
    for (const GuideChoice& choice : guide_choices()) {
        guides.*choice.shown = look.value(guide_key(choice), guides.*choice.shown).toBool();
    }
    view.set_guides(guides);
}

void keep_look(QSettings& settings, const QVariantMap& look) {
    settings.beginGroup(kGroup);
    for (auto value = look.begin(); value != look.end(); ++value) {
        settings.setValue(value.key(), value.value());
    }
    settings.endGroup();
}

QVariantMap kept_look(const QSettings& settings) {
    const QString group = kGroup + QLatin1Char{'/'};
    QVariantMap look;
    for (const QString& key : settings.allKeys()) {
        if (key.startsWith(group)) {
            look[key.mid(group.size())] = settings.value(key);
        }
    }
    return look;
}

} // namespace throwline::ui
