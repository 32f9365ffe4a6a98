/// How a window was left, given to the next.

#include "ui/window/kept_look.h"

#include "ui/floor/floor.h"
#include "ui/stores/stores_panel.h"
#include "ui/viewfinder/frame_view.h"
#include "ui/viewfinder/viewfinder.h"
#include "ui/window/window_action.h"
#include "ui/window/window_case.h"

#include <QSettings>

namespace throwline::ui {
namespace {

class KeptLook : public WindowCase {
  protected:
    /// Another window, that begins as `look` says.
    std::unique_ptr<Window> next(const QVariantMap& look, Placed placed = Placed::where_left) {
        auto made = std::make_unique<Window>(support::shared_catalogue(), Questions{},
                                             RecoveryStore{folder / "recovery"}, 1);
        made->setAttribute(Qt::WA_DeleteOnClose, false);
        give_look(*made, look, placed);
        made->show_floor();
        made->show();
        return made;
    }
    /// Through a file of settings and back.
    QVariantMap through_a_file(const QVariantMap& look) const {
        const QString file = path("kept.conf");
        {
            QSettings settings{file, QSettings::IniFormat};
            keep_look(settings, look);
        }
        const QSettings settings{file, QSettings::IniFormat};
        return kept_look(settings);
    }
};

TEST_F(KeptLook, ComesBackThroughAFile) {
    window->show_floor();
    for (const char* id : {"show.beams", "show.pools", "show.findings_list", "show.lit"}) {
        ASSERT_TRUE(window->do_action(QString::fromLatin1(id)));
    }
    window->viewfinder().frame_view().set_guides({false, true, true, false});
    window->resize(1340, 760);
    const auto again = next(through_a_file(look_of(*window)));
    EXPECT_EQ(again->desk().overlays(), window->desk().overlays());
    EXPECT_TRUE(again->is_open(Part::findings));
    EXPECT_EQ(again->viewfinder().frame_view().shading(), Shading::lit);
    EXPECT_EQ(again->viewfinder().frame_view().guides(),
              window->viewfinder().frame_view().guides());
    EXPECT_EQ(again->size(), QSize(1340, 760));
}

TEST_F(KeptLook, EverySwitchComesBackOtherThanItBegan) {
    window->show_floor();
    const QVariantMap began = look_of(*window);
    int switches = 0;
    for (const WindowAction& row : show_actions()) {
        const QString id = QString::fromLatin1(row.id);
        if (!began.contains(id)) {
            continue;
        }
        QVariantMap other = began;
        other[id] = !began[id].toBool();
        EXPECT_EQ(row.is_on(*next(other)), other[id].toBool()) << row.id;
        ++switches;
    }
    EXPECT_GT(switches, 15);
}

TEST_F(KeptLook, APartThatWasShutOpensAsWideAsBefore) {
    window->show_floor();
    window->set_open(Part::stores, false);
    const auto again = next(through_a_file(look_of(*window)));
    EXPECT_FALSE(again->is_open(Part::stores));
    again->set_open(Part::stores, true);
    QCoreApplication::processEvents();
    EXPECT_GT(again->stores().width(), 200);
    EXPECT_GT(again->floor().width(), 400);
}

TEST_F(KeptLook, NoThemeAndNoFullScreenIsAskedFor) {
    window->show_floor();
    bool asked = false;
    const QVariantMap look = look_of(*window);
    EXPECT_FALSE(look.contains(QStringLiteral("show.dark")));
    EXPECT_FALSE(look.contains(QStringLiteral("show.full_screen")));
    QVariantMap forged = look;
    forged[QStringLiteral("show.dark")] = true;
    QObject::connect(window, &Window::theme_wanted, [&] { asked = true; });
    give_look(*window, forged, Placed::by_desktop);
    EXPECT_FALSE(asked);
}

TEST_F(KeptLook, NothingOrNonsenseLeavesAWindowAsItBegins) {
    window->show_floor();
    const QVariantMap began = look_of(*next({}));
    QVariantMap nonsense;
    for (const QString& key : began.keys()) {
        if (!key.startsWith(QStringLiteral("show.")) && !key.startsWith(QStringLiteral("guide."))) {
            nonsense[key] = QStringLiteral("nonsense");
        }
    }
    EXPECT_EQ(look_of(*next(nonsense)), began);
}

TEST_F(KeptLook, TheNextWindowIsAsLargeAndSomewhereElse) {
    window->resize(1100, 700);
    const auto again = next(look_of(*window), Placed::by_desktop);
    EXPECT_EQ(again->size(), QSize(1100, 700));
}

TEST_F(KeptLook, IsToldOnClosing) {
    QVariantMap left;
    QObject::connect(window, &Window::leaving, [&] { left = look_of(*window); });
    window->show_floor();
    window->do_action(QStringLiteral("show.circuits"));
    unsaved = UnsavedAnswer::cancel;
    window->desk().toggle_units();
    window->close();
    EXPECT_TRUE(left.isEmpty()) << "it stays";
    unsaved = UnsavedAnswer::discard;
    window->close();
    EXPECT_TRUE(left.value(QStringLiteral("show.circuits")).toBool());
}

} // namespace
} // namespace throwline::ui
