#pragma once

#include "support/demo_plan.h"
#include "ui/desk/desk.h"

#include <QElapsedTimer>
#include <QTest>
#include <functional>

/// A desk with a demo on it, for tests of panels.
namespace throwline::support {

inline ui::CataloguePtr shared_catalogue() {
    return std::make_shared<const catalogue::Catalogue>(shipped_catalogue());
}

inline std::unique_ptr<ui::Desk> desk_with(plan::Plan plan) {
    auto desk = std::make_unique<ui::Desk>(shared_catalogue());
    desk->lay_out(std::make_shared<const plan::Plan>(std::move(plan)), true);
    return desk;
}

/// Lets events pass until something holds; whether it came to hold.
inline bool came_to(const std::function<bool()>& holds) {
    constexpr int kLongest_ms = 60000;
    QElapsedTimer since;
    since.start();
    while (!holds() && since.elapsed() < kLongest_ms) {
        QTest::qWait(5);
    }
    return holds();
}

} // namespace throwline::support
