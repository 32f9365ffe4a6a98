#pragma once

#include <QFrame>

class QLabel;

namespace throwline::ui {

class UnderlayReader;

/// A strip over the floor that says why the scanned plan is not to be seen, with what can be done
/// about it. Hidden while nothing is wrong.
class UnderlayNotice : public QFrame {
    Q_OBJECT

  public:
    explicit UnderlayNotice(UnderlayReader& reader, QWidget* parent = nullptr);

    QString words() const;

  Q_SIGNALS:
    void another_wanted();
    void removal_wanted();

  private:
    void look();

    UnderlayReader& reader_;
    QLabel* words_;
};

} // namespace throwline::ui
