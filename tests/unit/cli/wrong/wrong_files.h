// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <map>
#include <string>
#include <vector>

namespace plate::test
{

/// A design file, or options beside a good one, that must be refused, and what the refusal must say.
struct WrongFile
{
  std::string name;              ///< what is wrong, in a few words
  std::string text;              ///< bytes of the file
  std::vector<std::string> says; ///< parts of the message: where (":LINE:" or "--set"), key and value, what is allowed
  std::vector<std::string> options = {}; ///< after `modes FILE` or another command
};

/// Parts of good files. Lines are counted on from line 1 of plate_start().
[[nodiscard]] std::string plate_start();    ///< flat rectangle 350 x 200 mm; lines 1 to 4
[[nodiscard]] std::string solid_plate();    ///< plate_start() in spruce, coarse mesh; lines 1 to 10
[[nodiscard]] std::string laminate_plate(); ///< plate_start() with an open [layup]; lines 1 to 5
[[nodiscard]] std::string viola_plate();    ///< bouts outline in spruce, no holes; lines 1 to 10

[[nodiscard]] std::vector<WrongFile> wrong_keys();      ///< unknown keys, missing tables, wrong types
[[nodiscard]] std::vector<WrongFile> wrong_numbers();   ///< out of range, not numbers, impossible materials, too much
[[nodiscard]] std::vector<WrongFile> wrong_shapes();    ///< holes and bars that do not fit
[[nodiscard]] std::vector<WrongFile> wrong_layups();    ///< contradictions, codes
[[nodiscard]] std::vector<WrongFile> wrong_bytes();     ///< encodings, nesting, lengths
[[nodiscard]] std::vector<WrongFile> wrong_overrides(); ///< --set

/// Lists for `compare FILE --measured list.csv`, beside solid_plate().
[[nodiscard]] std::vector<WrongFile> wrong_measured();

/// Options after `sensitivity FILE --out DIR`.
[[nodiscard]] std::vector<WrongFile> wrong_sensitivity();
/// Bodies for `load body.toml`, beside solid_plate() as plate.toml; a reference plate.toml stands for its path.
[[nodiscard]] std::vector<WrongFile> wrong_body_loads();
/// Problems for `match match.toml`, beside a good plate.toml.
[[nodiscard]] std::vector<WrongFile> wrong_matches();

/// Files for `body body.toml`, beside the good plates of wrong_body_plates(); ":LINE:" counts from body_start().
[[nodiscard]] std::vector<WrongFile> wrong_bodies();
[[nodiscard]] std::string body_start(); ///< [body] with top.toml and back.toml; lines 1 to 3
[[nodiscard]] std::map<std::string, std::string> wrong_body_plates(); ///< text by name

} // namespace plate::test
