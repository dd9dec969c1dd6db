# SPDX-License-Identifier: MPL-2.0
# Fails if folder/include holds a header that is not in the comma-separated list `declared`.
string(REPLACE "," ";" declared "${declared}")
file(GLOB_RECURSE present RELATIVE ${folder} ${folder}/include/*.h)
list(REMOVE_ITEM present ${declared})
if(present)
  message(FATAL_ERROR "not declared in ${folder}/CMakeLists.txt: ${present}")
endif()
