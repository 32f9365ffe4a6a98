#include "catalogue/shipped.h"
#include "catalogue/temporary_folder.h"

#include <cstdlib>

using namespace throwline;
using namespace throwline::catalogue;

namespace {

constexpr std::string_view kOwnItems = R"({
  "lenses": [
    { "name": "PRIME 35  t1.5", "focal_min_mm": 35.8, "focal_max_mm": 35.8, "stop_wide": 1.5,
      "stop_long": 1.6, "close_focus_m": 0.4, "image_circle_mm": 46, "length_mm": 100,
      "front_diameter_mm": 80, "hood_length_mm": 40, "source": "measured on the bench" }
  ],
  "stock": [
    { "name": "grandmother's dresser", "use": "storage", "shape": "box", "width_m": 1.3,
      "depth_m": 0.5, "height_m": 1.9, "mass_kg": 90 }
  ]
})";

/// Sets an environment variable for one scope.
class Environment {
  public:
    Environment(const char* name, const std::string& value) : name_{name} {
        setenv(name_, value.c_str(), 1);
    }
    ~Environment() { unsetenv(name_); }
    Environment(const Environment&) = delete;
    Environment& operator=(const Environment&) = delete;

  private:
    const char* name_;
};

/// The message of the only error; all of them when there are more.
std::string message_of(const Checked<Catalogue>& result) {
    return result ? "accepted" : lines_of(result.error());
}

} // namespace

TEST(OwnItems, ReplaceRowsOfTheSameNameAndAddTheOthers) {
    const TemporaryFolder folder;
    const Catalogue shipped = shipped_catalogue();
    const Checked<Catalogue> own = with_own_items(shipped, folder.write("own.json", kOwnItems));
    ASSERT_TRUE(own) << message_of(own);
    EXPECT_EQ(own->lenses.size(), shipped.lenses.size());
    EXPECT_DOUBLE_EQ(own->lens("prime 35 T1.5")->focal_min.mm(), 35.8);
    EXPECT_EQ(own->lens("prime 35 T1.5")->source, "measured on the bench");
    ASSERT_EQ(own->stock.size(), shipped.stock.size() + 1);
    EXPECT_EQ(own->stock.back().name, "grandmother's dresser");
    EXPECT_EQ(own->stock.back().source, "own item, no source given");
    EXPECT_EQ(own->sensors.size(), shipped.sensors.size());
}

TEST(OwnItems, ExtendATableMadeByHand) {
    const TemporaryFolder folder;
    Catalogue small;
    small.finishes.push_back({"slate", 0.08, "test"});
    const Checked<Catalogue> own = with_own_items(
        small, folder.write("own.json", R"({"finishes": [{"name": "moss", "reflectance": 0.1}]})"));
    ASSERT_TRUE(own) << message_of(own);
    EXPECT_DOUBLE_EQ(own->finish("slate")->reflectance, 0.08);
    EXPECT_DOUBLE_EQ(own->finish("moss")->reflectance, 0.1);
}

TEST(OwnItems, ReportEveryFaultOfTheFileInItsLine) {
    const TemporaryFolder folder;
    const std::filesystem::path file = folder.write("own.json", R"({
  "finishes": [
    { "name": "moss", "reflectance": 1.5 },
    { "name": "ivy", "reflektance": 0.1 },
    7
  ],
  "lences": []
})");
    const Checked<Catalogue> own = with_own_items({}, file);
    ASSERT_FALSE(own);
    const std::string name = file.string();
    EXPECT_EQ(lines_of(own.error()),
              name + ":3:38: /finishes/0/reflectance: 1.5 is out of range: at least 0, at most 1\n"
                  + name + ":4:5: /finishes/1: the key \"reflectance\" is missing\n" + name
                  + ":4:22: /finishes/1/reflektance: the key \"reflektance\" is not known; "
                    "did you mean \"reflectance\"?\n"
                  + name + ":5:5: /finishes/2: expected an object, found a number\n" + name
                  + ":7:3: /lences: there is no table \"lences\"; did you mean \"lenses\"?\n");
}

TEST(OwnItems, AMissingFileIsAnErrorThatNamesIt) {
    const Checked<Catalogue> own = with_own_items({}, "/nowhere/own.json");
    ASSERT_FALSE(own);
    ASSERT_EQ(own.error().size(), 1U);
    EXPECT_NE(text_of(own.error().front()).find("/nowhere/own.json"), std::string::npos);
}

TEST(ShippedFolder, IsWhatTheEnvironmentNames) {
    const Environment variable{"THROWLINE_LENSDATA", source_tables().string()};
    EXPECT_EQ(shipped_folder(), source_tables());
    EXPECT_TRUE(load_catalogue(shipped_folder()));
}

TEST(ShippedFolder, IsNotReplacedByAnotherWhenTheNamedOneHasNoTables) {
    const TemporaryFolder empty;
    const Environment variable{"THROWLINE_LENSDATA", empty.path().string()};
    const Checked<Catalogue> loaded = load_catalogue(shipped_folder());
    ASSERT_FALSE(loaded);
    EXPECT_EQ(loaded.error().size(), 10U);
}

TEST(ShippedFolder, IsFoundFromBuiltAndInstalledPrograms) {
    const TemporaryFolder tree;
    const auto found = [&](const char* program, const char* tables) {
        const std::filesystem::path folder = tree.path() / program / tables;
        std::filesystem::create_directories(folder);
        std::ofstream{folder / "sensors.json"} << "{}";
        return tables_beside(tree.path() / program / "throwline/program") == folder;
    };
    EXPECT_TRUE(found("built", "lensdata"));
    EXPECT_TRUE(found("beside", "throwline/lensdata"));
    EXPECT_TRUE(found("installed", "share/throwline/lensdata"));
    EXPECT_TRUE(tables_beside(tree.path() / "elsewhere/bin/program").empty());
    EXPECT_EQ(tables_beside(tree.path() / "built/build/tests/test_x"),
              tree.path() / "built/lensdata");
}
