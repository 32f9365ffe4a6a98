# How every target of the project is compiled, so that no folder repeats it.

find_program(THROWLINE_CCACHE ccache)
if(THROWLINE_CCACHE)
  # Parsed headers (see ThrowlineHeaders.cmake) are compared by what is in them.
  set(CMAKE_CXX_COMPILER_LAUNCHER ${CMAKE_COMMAND} -E env
    CCACHE_SLOPPINESS=pch_defines,time_macros ${THROWLINE_CCACHE})
endif()

# Of the window's targets.
set(THROWLINE_QT_WORDS QT_NO_KEYWORDS QT_NO_CAST_FROM_ASCII QT_NO_CAST_TO_ASCII QT_NO_FOREACH
  QT_NO_URL_CAST_FROM_STRING)

add_library(throwline_options INTERFACE)
target_compile_options(throwline_options INTERFACE
  -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Wold-style-cast -Wnon-virtual-dtor
  -Woverloaded-virtual -Wswitch-enum -Werror
  # Fused multiply-add would make the last bits depend on the machine the program was built for.
  -ffp-contract=off)
# GCC 12 warns of its own strings without a reason (its bugs 105329, 105651), and no longer knows
# that they are not ours when they come from parsed headers (see ThrowlineHeaders.cmake).
target_compile_options(throwline_options INTERFACE
  $<$<CXX_COMPILER_ID:GNU>:-Wno-array-bounds -Wno-restrict -Wno-stringop-overflow -Wno-stringop-overread>)
target_include_directories(throwline_options INTERFACE ${PROJECT_SOURCE_DIR}/src)
if(THROWLINE_SANITIZE)
  target_compile_options(throwline_options INTERFACE
    -fsanitize=${THROWLINE_SANITIZE} -fno-sanitize-recover=all -fno-omit-frame-pointer)
  target_link_options(throwline_options INTERFACE -fsanitize=${THROWLINE_SANITIZE})
endif()

# Of tests' own code: it calls what is tested, and needs no more than that to be fast.
set(THROWLINE_TEST_OPTIONS $<$<CONFIG:Release>:-O1>)

# One library a folder of src/, made of all its .cpp files: throwline_room(optics throwline_base)
function(throwline_room name)
  file(GLOB sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/*.cpp)
  add_library(throwline_${name} STATIC ${sources})
  target_link_libraries(throwline_${name} PUBLIC throwline_options ${ARGN})
  target_precompile_headers(throwline_${name} REUSE_FROM throwline_engine_headers)
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
  target_compile_options(test_${folder} PRIVATE ${THROWLINE_TEST_OPTIONS})
  # Qt has code compiled in another way.
  if(folder IN_LIST THROWLINE_TESTS_WITH_QT)
    target_precompile_headers(test_${folder} REUSE_FROM throwline_qt_test_headers)
  else()
    target_precompile_headers(test_${folder} REUSE_FROM throwline_test_headers)
  endif()
  target_compile_definitions(test_${folder} PRIVATE
    THROWLINE_SOURCE_DIR="${PROJECT_SOURCE_DIR}" THROWLINE_PROGRAM="$<TARGET_FILE:throwline>")
  gtest_discover_tests(test_${folder} TEST_PREFIX ${folder}/ DISCOVERY_TIMEOUT 60
    PROPERTIES ENVIRONMENT
      "QT_QPA_PLATFORM=offscreen;LC_ALL=C.UTF-8;THROWLINE_LENSDATA=${PROJECT_SOURCE_DIR}/lensdata")
endfunction()
