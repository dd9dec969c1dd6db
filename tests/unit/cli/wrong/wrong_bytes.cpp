// SPDX-License-Identifier: MPL-2.0
#include "wrong_files.h"

#include <cstddef>

namespace plate::test
{
namespace
{

/// ASCII as UTF-16 in the order of most machines, with its mark in front.
std::string utf16(const std::string& text)
{
  std::string out = "\xFF\xFE";
  for (const char c : text)
    out += std::string{c, '\0'};
  return out;
}

std::string repeated(const std::string& text, std::size_t count)
{
  std::string out;
  for (std::size_t i = 0; i < count; ++i)
    out += text;
  return out;
}

} // namespace

std::vector<WrongFile> wrong_bytes()
{
  const std::string plate = solid_plate();
  const std::string names = "a name has letters, digits, _ and - only";
  return {
      {"nothing", "", {"outline", "missing"}},
      {"blank lines only", "\n\n   \n", {"outline", "missing"}},
      {"NUL byte", plate + std::string("size\0 = 3\n", 10), {":11: NUL byte", "UTF-8"}},
      {"NUL bytes only", std::string(1000, '\0'), {":1: NUL byte"}},
      {"UTF-16", utf16(plate), {":1: NUL byte", "UTF-8"}},
      {"Latin-1", "title = \"Fl\xFCgel\"\n" + plate, {":1: not valid TOML", "utf-8"}},
      {"an overlong character", "title = \"\xC0\xAF\"\n" + plate, {":1: not valid TOML"}},
      {"half a surrogate pair", "title = \"\xED\xA0\x80\"\n" + plate, {":1:"}},
      {"a mark in front and a fault", "\xEF\xBB\xBFtitel = \"x\"\n" + plate, {":1: titel", "nearest: title"}},
      {"carriage returns only", "[outline]\rkind = \"ellipse\"\r", {":1: not valid TOML"}},
      {"an escape sequence in the title",
       "title = \"a\\u001b[31m\"\n" + plate,
       {":1: title", "without control characters"}},
      {"a NUL escape in the title", "title = \"a\\u0000b\"\n" + plate, {":1: title", "without control characters"}},
      {"a title of two lines", "title = \"a\\nb\"\n" + plate, {":1: title", "on one line"}},
      {"a title of 900 000 letters",
       "title = \"" + std::string(900000, 'x') + "\"\n" + plate,
       {":1: title", "at most 4000 bytes"}},
      {"a title of 300 letters", "title = \"" + std::string(300, 'x') + "\"\n" + plate, {":1: title", "at most 200"}},
      {"a key of 900 000 letters", std::string(900000, 'x') + " = 1\n" + plate, {":1: \"xxx", names}},
      {"a file of 2 MB", plate + "# " + std::string(std::size_t{2} << 20U, 'x'), {"is longer than 1048576 bytes"}},
      {"eighty thousand keys",
       repeated("k = {}\n", 1) + repeated("# x\n", 80000) + "k2 = 1\n",
       {":1: k", "unknown key"}},
      {"lists in lists", "x = " + std::string(100000, '[') + "\n", {":1: not valid TOML"}},
      {"tables in tables",
       "x = " + repeated("{ a = ", 200) + "1" + repeated("}", 200) + "\n",
       {":1:", "nested too deeply"}},
      {"a dotted key without end", "a" + repeated(".a", 200000) + " = 1\n", {":1: a dotted key has more than 12 dots"}},
      {"a dotted key with quotes, without end",
       "a" + repeated(".\"=\"", 200000) + " = 1\n",
       {":1: a dotted key has more than 12 dots"}},
      {"a dotted table without end",
       plate + "[a" + repeated(" . 'b'", 100000) + "]\n",
       {":11: a dotted key has more than 12 dots"}},
      {"a dot inside a quoted key", plate + "\"a.b\" = 1\n", {":11: mesh.\"a.b\"", names, "keys of [mesh]: size"}},
      {"a dot inside a quoted material", plate + "[material.\"x.y\"]\nE1 = 1\n", {":11: material.\"x.y\"", names}},
      {"a key that imitates a path", "\"outline.length\" = 1\n" + plate, {":1: \"outline.length\"", names}},
      {"a key with a line break", "\"a\\nb\" = 1\n" + plate, {":1: \"a b\"", names}},
      {"a key with an escape sequence", "\"a\\u001b[2J\" = 1\n" + plate, {":1: \"a [2J\"", names}},
      {"an empty key", "\"\" = 1\n" + plate, {":1: \"\"", names}},
      {"a string that does not end", "title = \"x\n" + plate, {":1: not valid TOML"}},
      {"a long string that does not end", "title = \"\"\"x\n" + plate, {"not valid TOML"}},
  };
}

} // namespace plate::test
