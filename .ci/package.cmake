# The Debian package: cmake --preset package && cmake --build --preset package --target package.
# The same sources give the same bytes, wherever they lie.

# What Debian asks of a program, and no path of where it was built.
add_compile_options(-ffile-prefix-map=${PROJECT_SOURCE_DIR}=. -ffile-prefix-map=${PROJECT_BINARY_DIR}=.
  -fstack-protector-strong -D_FORTIFY_SOURCE=2)
add_link_options(-Wl,-z,relro -Wl,-z,now)

# as_field(TEXT OUT): as Debian's control files continue a field, a space before each line.
function(furnish_as_field text out)
  string(REPLACE "\r" "" text "${text}")
  string(STRIP "${text}" text)
  string(REPLACE "\n" "\n " text " ${text}")
  # Spaces at the end of a line go; an empty line is a full stop.
  string(REGEX REPLACE " +\n" "\n" text "${text}\n")
  string(REGEX REPLACE "\n\n" "\n .\n" text "${text}")
  string(REGEX REPLACE "\n\n" "\n .\n" text "${text}")
  string(STRIP "${text}" text)
  set(${out} " ${text}" PARENT_SCOPE)
endfunction()

execute_process(COMMAND date -u -R -d ${FURNISH_RELEASED} OUTPUT_VARIABLE released
  OUTPUT_STRIP_TRAILING_WHITESPACE COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND date -u +%s -d ${FURNISH_RELEASED} OUTPUT_VARIABLE released_seconds
  OUTPUT_STRIP_TRAILING_WHITESPACE COMMAND_ERROR_IS_FATAL ANY)

# The licences as they stand beside what they are of.
function(furnish_holder file out)
  file(STRINGS ${PROJECT_SOURCE_DIR}/${file} lines REGEX "^Copyright" LIMIT_COUNT 1)
  string(REGEX REPLACE "^Copyright( \\(c\\))? " "" holder "${lines}")
  set(${out} "${holder}" PARENT_SCOPE)
endfunction()
furnish_holder(fonts/OFL.txt source_sans)
furnish_holder(fonts/OFL-Vazirmatn.txt vazirmatn)
file(READ ${PROJECT_SOURCE_DIR}/LICENSE text)
string(REGEX REPLACE "^.*(Permission is hereby granted, free)" "\\1" text "${text}")
furnish_as_field("${text}" expat)
file(READ ${PROJECT_SOURCE_DIR}/fonts/OFL.txt text)
string(REGEX REPLACE "^.*(SIL OPEN FONT LICENSE Version)" "\\1" text "${text}")
furnish_as_field("${text}" ofl)

set(debian ${PROJECT_BINARY_DIR}/debian)
configure_file(${PROJECT_SOURCE_DIR}/.ci/debian/copyright.in ${debian}/copyright @ONLY)
configure_file(${PROJECT_SOURCE_DIR}/.ci/debian/changelog.in ${debian}/changelog @ONLY)
add_custom_command(OUTPUT ${debian}/changelog.gz
  COMMAND gzip -9nk -f ${debian}/changelog DEPENDS ${debian}/changelog VERBATIM)
add_custom_target(furnish_changelog ALL DEPENDS ${debian}/changelog.gz)
install(FILES ${debian}/copyright ${debian}/changelog.gz DESTINATION ${CMAKE_INSTALL_DOCDIR})

set(CPACK_GENERATOR DEB)
set(CPACK_STRIP_FILES ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS OWNER_READ OWNER_WRITE OWNER_EXECUTE
  GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
set(CPACK_PACKAGE_NAME furnish)
set(CPACK_PACKAGE_VENDOR "The furnish makers")
set(CPACK_PACKAGE_CONTACT "The furnish makers <furnish@example.invalid>")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION misc)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
# Scripts that the bundled families lack are set in what the system has.
set(CPACK_DEBIAN_PACKAGE_RECOMMENDS fonts-dejavu-core)
set(CPACK_DEBIAN_PACKAGE_SUGGESTS "cups-client, bash-completion")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "sheets a grooming salon runs on, from plain text files")
set(CPACK_DEBIAN_PACKAGE_DESCRIPTION
"furnish reads a plain TOML file for each dog of a grooming salon, works out
what follows from it, and sets kennel cards, style sheets, notes of visits,
care sheets for owners and pages for the wall, as PDF, PNG or SVG.")
# Where nobody names another, all files carry the day of the release.
file(WRITE ${PROJECT_BINARY_DIR}/package_time.cmake
  "if(NOT DEFINED ENV{SOURCE_DATE_EPOCH})\n  set(ENV{SOURCE_DATE_EPOCH} ${released_seconds})\nendif()\n")
set(CPACK_PROJECT_CONFIG_FILE ${PROJECT_BINARY_DIR}/package_time.cmake)
include(CPack)
