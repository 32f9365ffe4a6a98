#include "ui/window/handed_files.h"

#include "ui/desk_case.h"

#include <QDir>
#include <QLocalSocket>
#include <atomic>
#include <gtest/gtest.h>
#include <sys/socket.h>
#include <sys/un.h>
#include <thread>
#include <unistd.h>

namespace throwline::ui {
namespace {

using support::came_to;

struct Listening {
    QString name = QStringLiteral("throwline-test-%1").arg(getpid());
    HandedFiles files{name};
    QList<QStringList> handed;

    Listening() {
        QObject::connect(&files, &HandedFiles::handed, &files,
                         [this](const QStringList& paths) { handed << paths; });
    }
    /// As another program would, that waits for the answer.
    bool hand_over(const QStringList& paths) const {
        std::atomic<int> answer{-1};
        std::thread other{[&] { answer = hand_over_files(name, paths) ? 1 : 0; }};
        came_to([&] { return answer >= 0; });
        other.join();
        return answer == 1;
    }
};

TEST(HandedFiles, AreTakenWhateverTheyAreCalled) {
    Listening listening;
    const QStringList paths{QStringLiteral("/a plan/in two\nlines.json"),
                            QStringLiteral("/\u00e9t\u00e9/\U0001F3AC.json")};
    EXPECT_TRUE(listening.hand_over(paths));
    ASSERT_TRUE(came_to([&] { return !listening.handed.isEmpty(); }));
    EXPECT_EQ(listening.handed.first(), paths);
}

TEST(HandedFiles, AreAbsolute) {
    Listening listening;
    EXPECT_TRUE(listening.hand_over({QStringLiteral("plan.json")}));
    ASSERT_TRUE(came_to([&] { return !listening.handed.isEmpty(); }));
    EXPECT_EQ(listening.handed.first(),
              QStringList{QDir::current().filePath(QStringLiteral("plan.json"))});
}

TEST(HandedFiles, NoneAreAnEmptyWindow) {
    Listening listening;
    EXPECT_TRUE(listening.hand_over({}));
    EXPECT_TRUE(came_to([&] { return listening.handed == QList<QStringList>{{}}; }));
}

TEST(HandedFiles, NobodyListensToAnotherName) {
    EXPECT_FALSE(hand_over_files(QStringLiteral("throwline-test-nobody"), {}));
}

/// A dialog that asks about a file has events of its own, in which whoever handed it over goes.
TEST(HandedFiles, OpeningMayAskForALongTime) {
    Listening listening;
    bool is_asking = false;
    QObject::connect(&listening.files, &HandedFiles::handed, &listening.files, [&] {
        is_asking = true;
        QTest::qWait(200);
        is_asking = false;
    });
    EXPECT_TRUE(listening.hand_over({QStringLiteral("/a.json")}));
    EXPECT_TRUE(came_to([&] { return !listening.handed.isEmpty() && !is_asking; }));
    EXPECT_TRUE(listening.hand_over({QStringLiteral("/b.json")}));
    EXPECT_TRUE(came_to([&] { return listening.handed.size() == 2 && !is_asking; }));
}

TEST(HandedFiles, ASecondListenerTakesNothingFromTheFirst) {
    Listening first;
    const HandedFiles second{first.name};
    EXPECT_TRUE(first.hand_over({QStringLiteral("/a.json")}));
    EXPECT_TRUE(came_to([&] { return first.handed.size() == 1; }));
}

/// What a killed program leaves: a socket in the folder that nobody listens to.
TEST(HandedFiles, TheNameOfAKilledProgramIsTaken) {
    const QString name = QStringLiteral("throwline-test-%1").arg(getpid());
    const std::string path = QDir::temp().filePath(name).toStdString();
    sockaddr_un address{};
    address.sun_family = AF_UNIX;
    ASSERT_LT(path.size(), sizeof address.sun_path);
    path.copy(address.sun_path, path.size());
    const int socket = ::socket(AF_UNIX, SOCK_STREAM, 0);
    ASSERT_EQ(::bind(socket, reinterpret_cast<const sockaddr*>(&address), sizeof address), 0);
    ::close(socket);
    Listening listening;
    EXPECT_TRUE(listening.hand_over({QStringLiteral("/a.json")}));
}

TEST(HandedFiles, NonsenseIsNothing) {
    Listening listening;
    for (const char* nonsense : {"plan.json\n", "no end of a line", "-3\nabc", "99999999999\nabc",
                                 "12\nhalf of it", "\n", "1e2\n"}) {
        QLocalSocket socket;
        socket.connectToServer(listening.name);
        socket.write(nonsense);
        socket.flush();
        QTest::qWait(20);
        socket.disconnectFromServer();
        QTest::qWait(20);
        EXPECT_TRUE(listening.handed.isEmpty()) << nonsense;
    }
    EXPECT_TRUE(listening.hand_over({})) << "and the next is heard";
}

TEST(HandedFiles, MayComeInPieces) {
    Listening listening;
    QLocalSocket socket;
    socket.connectToServer(listening.name);
    for (const char* piece : {"1", "2\n", "/a/pl", "an.", "json"}) {
        EXPECT_TRUE(listening.handed.isEmpty());
        socket.write(piece);
        socket.flush();
        QTest::qWait(20);
    }
    ASSERT_EQ(listening.handed.size(), 1);
    EXPECT_EQ(listening.handed.first(), QStringList{QStringLiteral("/a/plan.json")});
}

} // namespace
} // namespace throwline::ui
