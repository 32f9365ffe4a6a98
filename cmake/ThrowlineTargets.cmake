# How every target of the project is compiled, so that no folder repeats it.

find_program(THROWLINE_CCACHE ccache)
if(THROWLINE_CCACHE)
  set(CMAKE_CXX_COMPILER_LAUNCHER ${THROWLINE_CCACHE})
endif()

add_library(throwline_options INTERFACE)
target_compile_options(throwline_options INTERFACE
  -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Wold-style-cast -Wnon-virtual-dtor
  -Woverloaded-virtual -Wswitch-enum -Werror
  # Fused multiply-add would make the last bits depend on the machine the program was built for.
  -ffp-contract=off)
target_include_directories(throwline_options INTERFACE ${PROJECT_SOURCE_DIR}/src)
if(THROWLINE_SANITIZE)
  target_compile_options(throwline_options INTERFACE
    -fsanitize=${THROWLINE_SANITIZE} -fno-sanitize-recover=all -fno-omit-frame-pointer)
  target_link_options(throwline_options INTERFACE -fsanitize=${THROWLINE_SANITIZE})
endif()

# One library a folder of src/, made of all its .cpp files: throwline_room(optics throwline_base)
function(throwline_room name)
  file(GLOB sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/*.cpp)
  add_library(throwline_${name} STATIC ${sources})
  target_link_libraries(throwline_${name} PUBLIC throwline_options ${ARGN})
endfunction()

# One test program a folder of tests/, made of all its *_test.cpp files; each case is a CTest test.
function(throwline_test folder)
  file(GLOB sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/${folder}/*.cpp)
  if(NOT sources)
    return()
  endif()
  add_executable(test_${folder} ${sources} ${PROJECT_SOURCE_DIR}/tests/support/environment_locale.cpp)
  target_link_libraries(test_${folder} PRIVATE throwline_options ${ARGN} GTest::gtest_main rapidcheck)
  target_include_directories(test_${folder} PRIVATE ${PROJECT_SOURCE_DIR}/tests)
  target_compile_definitions(test_${folder} PRIVATE
    THROWLINE_SOURCE_DIR="${PROJECT_SOURCE_DIR}" THROWLINE_PROGRAM="$<TARGET_FILE:throwline>")
  gtest_discover_tests(test_${folder} TEST_PREFIX ${folder}/ DISCOVERY_TIMEOUT 60
    PROPERTIES ENVIRONMENT
      "QT_QPA_PLATFORM=offscreen;LC_ALL=C.UTF-8;THROWLINE_LENSDATA=${PROJECT_SOURCE_DIR}/lensdata")
endfunction()
