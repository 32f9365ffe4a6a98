#pragma once

#include "ui/desk/desk.h"
#include "ui/running_order/frame_pictures.h"
#include "ui/running_order/order_layout.h"

#include <QFont>
#include <QStringList>

/// What the strip of the running order says and where, ready to be painted and to be asked.
namespace throwline::ui {

/// Lettering beside a shot's picture.
struct ShotWords {
    QString id;
    /// Size, lens, camera; what of that is known.
    QStringList lines;
    /// The same as a sentence, for tool tips and to be spoken.
    QString sentence;
};

/// The worst finding about a shot, a beat or a walk, and how many more there are.
struct FindingSpot {
    OrderPlace place;
    /// Its place in the list of findings, and the number that it has on every sheet.
    int finding = -1;
    int number = 0;
    int more = 0;
    checks::Severity severity = checks::Severity::note;
    QPointF centre;
    QRectF box;
    QString sentences;
};

struct OrderView {
    std::vector<edit::HungBeat> order;
    std::vector<QString> names;
    /// "3.2 m, 2.5 s" over each walk; empty where nobody walks.
    std::vector<QString> walks;
    std::vector<std::vector<ShotWords>> words;
    std::vector<FindingSpot> spots;
    OrderLayout layout;

    /// The place of a beat or shot of the plan; none when it does not hang here.
    OrderPlace place_of(const edit::Now& now) const;
    edit::Now now_of(const OrderPlace& place) const;
    /// All beats and shots as they follow each other.
    std::vector<OrderPlace> places() const;
    /// What is spoken of a place.
    QString sentence(const OrderPlace& place) const;
    const FindingSpot* spot_at(const QPointF& point) const;
};

/// `known` are the findings of the plan, null for none.
OrderView view_of(const Desk& desk, const FramePictures& pictures, const checks::Analysis* known,
                  const QFont& font, double height);

/// The smaller font in which shots are lettered.
QFont lettering_font(const QFont& font);

} // namespace throwline::ui
