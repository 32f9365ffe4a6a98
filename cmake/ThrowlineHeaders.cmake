# What nearly every file includes, parsed once for all of them: a build from nothing takes about half
# the time. Files include what they use all the same; cmake/tidy compiles each without this.

set(THROWLINE_COMMON_HEADERS <Eigen/Core> <algorithm> <array> <cmath> <filesystem> <fmt/format.h>
  <functional> <map> <memory> <numbers> <optional> <set> <span> <string> <string_view>
  <tl/expected.hpp> <variant> <vector>)
set(THROWLINE_QT_HEADERS <QApplication> <QComboBox> <QImage> <QLabel> <QLineEdit> <QMenu>
  <QMouseEvent> <QPainter> <QPushButton> <QTimer> <QVBoxLayout>)

# A target that keeps parsed headers for others: throwline_headers(name libraries...). Compilers take
# them only where they are set up alike, so libraries and programs have their own.
function(throwline_headers name)
  target_link_libraries(${name} PRIVATE throwline_options Eigen3::Eigen tl::expected fmt::fmt ${ARGN})
endfunction()

add_library(throwline_engine_headers OBJECT cmake/nothing.cpp)
throwline_headers(throwline_engine_headers)
target_precompile_headers(throwline_engine_headers PRIVATE ${THROWLINE_COMMON_HEADERS})

add_library(throwline_panel_headers OBJECT cmake/nothing.cpp)
throwline_headers(throwline_panel_headers Qt6::Widgets)
target_compile_definitions(throwline_panel_headers PRIVATE ${THROWLINE_QT_WORDS})
target_precompile_headers(throwline_panel_headers PRIVATE
  ${THROWLINE_COMMON_HEADERS} ${THROWLINE_QT_HEADERS})
