#pragma once

#include "ui/floor/bench.h"

#include <QCursor>
#include <QKeyEvent>
#include <QString>

class QPainter;

namespace throwline::ui {

/// What the pointer does. One is made when it is chosen and lives until another is.
class Hand {
  public:
    explicit Hand(Bench& bench) : bench_{bench} {}
    virtual ~Hand() = default;
    Hand(const Hand&) = delete;
    Hand& operator=(const Hand&) = delete;

    virtual void press(const Pointer&) {}
    virtual void move(const Pointer&) {}
    virtual void release(const Pointer&) {}
    /// Returns whether it meant something.
    virtual bool double_press(const Pointer&) { return false; }
    /// A key; returns whether it meant something.
    virtual bool key(const QKeyEvent&) { return false; }

    /// Whether a key means something to it now, whatever the window has it for.
    virtual bool wants(const QKeyEvent&) const { return false; }
    /// Whether a number typed now sets something.
    virtual bool takes_typing() const { return false; }
    /// Shows what a text would set, or sets it when it is `final`. Returns why not.
    virtual QString typed(const QString&, bool /*final*/) { return {}; }

    /// Ends what was begun; returns whether there was something.
    virtual bool end() { return false; }
    /// What the plan says is another.
    virtual void look_again() {}

    /// Over the floor and what is chosen.
    virtual void paint(QPainter&) const {}
    virtual Qt::CursorShape cursor() const { return Qt::CrossCursor; }
    /// What to do next, in a few words, for the foot of the floor.
    virtual QString hint() const { return {}; }

  protected:
    Bench& bench() const { return bench_; }
    Desk& desk() const { return bench_.desk(); }

  private:
    Bench& bench_;
};

} // namespace throwline::ui
