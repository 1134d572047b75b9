# Keeps a header in step with its layout.
#
#     include(panelproof.cmake)
#     panelproof_header(TARGET LAYOUT HEADER)
#
# makes HEADER anew before TARGET is built, whenever the layout, one of its fonts or pictures, or Panelproof itself is newer,
# and stops the build where the layout has a fault. With PANELPROOF_VERIFY (on where the environment sets CI to true) nothing
# is written; the build stops if the HEADER on disk is not what the layout gives now.

find_program(PANELPROOF panelproof REQUIRED)

if("$ENV{CI}" STREQUAL "true")
  option(PANELPROOF_VERIFY "Compare headers with their layouts, and write none" ON)
else()
  option(PANELPROOF_VERIFY "Compare headers with their layouts, and write none" OFF)
endif()

function(panelproof_header target layout header)
  get_filename_component(layout "${layout}" ABSOLUTE)
  get_filename_component(header "${header}" ABSOLUTE)
  get_filename_component(name "${header}" NAME_WE)
  if(PANELPROOF_VERIFY)
    add_custom_target(${target}_${name}_in_step
      COMMAND "${PANELPROOF}" export "${layout}" --verify "${header}"
      VERBATIM)
  else()
    set(rule "${CMAKE_CURRENT_BINARY_DIR}/${name}.d")
    add_custom_command(
      OUTPUT "${header}"
      COMMAND "${PANELPROOF}" export "${layout}" -o "${header}" --depends "${rule}"
      DEPENDS "${layout}" "${PANELPROOF}"
      DEPFILE "${rule}"
      VERBATIM)
    add_custom_target(${target}_${name}_in_step DEPENDS "${header}")
  endif()
  add_dependencies(${target} ${target}_${name}_in_step)
endfunction()
