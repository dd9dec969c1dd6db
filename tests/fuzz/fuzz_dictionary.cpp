// SPDX-License-Identifier: MPL-2.0
// Prints the words of design files and match problems in libFuzzer's dictionary format: keys, their last parts,
// choices, materials.
#include <plate/design/keys.h>
#include <plate/materials/library.h>

#include <iostream>
#include <set>
#include <string>

namespace
{

void add_words(const plate::Key& key, std::set<std::string>& words)
{
  const std::string name(key.name);
  words.insert(name);
  words.insert(name.substr(name.rfind('.') + 1));
  words.insert(name.substr(0, name.find_first_of(".[")));
  for (const std::string_view choice : key.choices)
    words.insert(std::string(choice));
}

} // namespace

int main()
{
  std::set<std::string> words = {"[", "]", "[[", "]]", "{", "}", "true", "false", "nan", "inf", "1e300", "-1", "0.001"};
  for (const plate::Key& key : plate::design_keys())
    add_words(key, words);
  for (const plate::Key& key : plate::match_keys())
    add_words(key, words);
  for (const auto& material : plate::material_library())
    words.insert(material.material.name);
  for (const std::string& word : words)
    std::cout << '"' << word << "\"\n";
}
