# What is installed, and the Debian package made of it: cmake --install build; cpack in build/.
include(GNUInstallDirs)

install(TARGETS throwline RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
install(DIRECTORY lensdata DESTINATION ${CMAKE_INSTALL_DATADIR}/throwline
  FILES_MATCHING PATTERN "*.json")
install(DIRECTORY demo DESTINATION ${CMAKE_INSTALL_DATADIR}/throwline
  FILES_MATCHING PATTERN "*.json" PATTERN "*.txt")
install(FILES packaging/throwline.1 DESTINATION ${CMAKE_INSTALL_MANDIR}/man1)
install(FILES packaging/throwline.bash RENAME throwline
  DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions)
install(FILES packaging/org.throwline.Throwline.desktop
  DESTINATION ${CMAKE_INSTALL_DATADIR}/applications)
install(FILES packaging/org.throwline.Throwline.xml
  DESTINATION ${CMAKE_INSTALL_DATADIR}/mime/packages)
install(FILES packaging/org.throwline.Throwline.metainfo.xml
  DESTINATION ${CMAKE_INSTALL_DATADIR}/metainfo)
install(FILES packaging/copyright DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/throwline)
install(FILES ui/icons/throwline.svg RENAME org.throwline.Throwline.svg
  DESTINATION ${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable/apps)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME throwline)
set(CPACK_PACKAGE_CONTACT "the maintainers of Throwline <maintainers@example.org>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "Plan where cameras, people and lamps stand on a set")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION video)
set(CPACK_DEBIAN_PACKAGE_DEPENDS poppler-utils)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
include(CPack)
