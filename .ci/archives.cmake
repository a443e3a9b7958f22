# Linking what Debian has as archives into the program, with FURNISH_ARCHIVES. Opening some sixty
# libraries took a third of a card's time; a third of them come in for what furnish never asks of
# them (TLS, key rings). Pango and Cairo have no archives there, and stay as they are.

# furnish_archive(TARGET ARCHIVE... [BEHIND WHAT...]): links an imported target's archives in place of
# the library, and what they need BEHIND them. Where one is not there it stays as it was.
function(furnish_archive target)
  cmake_parse_arguments(LINK "" "" "BEHIND" ${ARGN})
  set(found)
  foreach(name IN LISTS LINK_UNPARSED_ARGUMENTS)
    find_library(FURNISH_ARCHIVE_${name} NAMES ${name})
    if(NOT FURNISH_ARCHIVE_${name})
      message(STATUS "furnish: there is no ${name}; ${target} stays a shared library")
      return()
    endif()
    list(APPEND found ${FURNISH_ARCHIVE_${name}})
  endforeach()
  list(POP_FRONT found first)
  get_target_property(kind ${target} TYPE)
  if(kind STREQUAL INTERFACE_LIBRARY)
    set_target_properties(${target} PROPERTIES INTERFACE_LINK_LIBRARIES "${first};${LINK_BEHIND};${found}")
  else()  # a library that may be of several configurations
    set_target_properties(${target} PROPERTIES IMPORTED_CONFIGURATIONS "" IMPORTED_LOCATION ${first}
      INTERFACE_LINK_LIBRARIES "${found};${LINK_BEHIND}")
  endif()
endfunction()

# furnish_order_libraries(TARGET): names first what most libraries look for their symbols in. The
# loader asks all libraries in the order they are named, for each of thousands of symbols.
function(furnish_order_libraries target)
  find_library(FURNISH_LIBC NAMES libc.so.6)
  if(FURNISH_LIBC AND CMAKE_CXX_COMPILER_ID STREQUAL GNU)
    target_link_options(${target} PRIVATE LINKER:--push-state,--no-as-needed -lstdc++ ${FURNISH_LIBC}
      -lglib-2.0 -lgobject-2.0 LINKER:--pop-state)
  endif()
endfunction()
