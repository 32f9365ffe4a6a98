#pragma once

#include <QWidget>

class QLineEdit;

namespace throwline::ui {

/// What is said above the line, and a mark over the character that it is about.
class SaidAnswer : public QWidget {
    Q_OBJECT

  public:
    SaidAnswer(QLineEdit& line, QWidget* parent);

    /// `at`, from 0, is the character marked; -1 for none.
    void show_refusal(const QString& words, int at);
    void show_done(const QString& words);
    void clear();
    const QString& words() const { return words_; }
    int marked() const { return marked_; }

    QSize sizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    void show_words(const QString& words, int at, bool is_refusal);
    QRectF room(int width) const;
    double mark_x() const;

    QLineEdit& line_;
    QString words_;
    int marked_ = -1;
    bool is_refusal_ = false;
};

} // namespace throwline::ui
