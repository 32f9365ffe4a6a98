# The libraries the project stands on; all are Debian packages (see packages.txt beside this file).

find_package(Eigen3 3.4 REQUIRED NO_MODULE)
find_package(tl-expected REQUIRED)
find_package(fmt REQUIRED)
find_package(nlohmann_json 3.11 REQUIRED)
find_package(CLI11 REQUIRED)
find_package(Threads REQUIRED)
find_package(Qt6 6.4 REQUIRED COMPONENTS Core Gui Widgets Network PrintSupport Svg)

find_package(embree 4 QUIET)
if(NOT embree_FOUND)
  find_package(embree 3.13 REQUIRED)
endif()

find_library(GEOS_C_LIBRARY geos_c REQUIRED)
find_path(GEOS_C_INCLUDE geos_c.h REQUIRED)
add_library(throwline_geos INTERFACE)
target_link_libraries(throwline_geos INTERFACE ${GEOS_C_LIBRARY})
target_include_directories(throwline_geos SYSTEM INTERFACE ${GEOS_C_INCLUDE})
