# SPDX-License-Identifier: MPL-2.0
# cmake -D output=FILE.cpp -D files=A;B -P embed_files.cmake: the texts of files as a C++ source.
set(out "// Written by embed_files.cmake.\n#include \"embedded_files.h\"\n\nnamespace plate::validation\n{\n\n")
set(rows "")
foreach(file IN LISTS files)
  cmake_path(GET file FILENAME name)
  file(READ ${file} text)
  string(APPEND rows "    {\"${name}\", R\"embedded(${text})embedded\"},\n")
endforeach()
string(APPEND out "std::span<const EmbeddedFile> embedded_files()\n{\n  static constexpr EmbeddedFile files[] = {\n${rows}  };\n  return files;\n}\n\n} // namespace plate::validation\n")
file(WRITE ${output} "${out}")
