// SPDX-License-Identifier: MPL-2.0
#include <plate/laminates/laminate_code.h>

#include <plate/core/error.h>

#include <algorithm>
#include <charconv>
#include <cstddef>
#include <optional>
#include <system_error>

namespace plate
{
namespace
{

constexpr std::size_t max_code_bytes = 4000;
constexpr int max_group_depth = 8; // deeper nesting is not written by people and would only eat the stack

constexpr bool is_digit(char c)
{
  return c >= '0' && c <= '9';
}
constexpr bool is_letter(char c)
{
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
constexpr bool is_name_character(char c)
{
  return is_letter(c) || is_digit(c) || c == '_' || c == '-';
}

/// Sign of an angle as written; the two double signs stand for two plies.
enum class Sign
{
  plus,
  minus,
  plus_minus,
  minus_plus
};

class CodeParser
{
public:
  explicit CodeParser(std::string_view code) : code_(code) {}

  std::vector<CodePly> parse()
  {
    if (code_.size() > max_code_bytes)
      throw InvalidInput(
          message("laminate code: ", code_.size(), " bytes long; at most ", max_code_bytes, " are read"));
    skip_blanks();
    if (!take("["))
      fail("a code begins with [");
    std::vector<CodePly> plies = parse_plies(']', 0);
    return close(std::move(plies));
  }

private:
  /// What follows the closing bracket: repeats, then `s` or `T`.
  std::vector<CodePly> close(std::vector<CodePly> plies)
  {
    const std::size_t suffix = position_;
    take("_");
    const std::optional<int> repeats = take_count();
    skip_blanks();
    const bool symmetric = take("s") || take("S");
    if (!symmetric && !take("T"))
      take("t");
    skip_blanks();
    if (position_ != code_.size())
      fail("after ] a repeat such as 2, then s (symmetric) or T (total) may follow and nothing else");
    if (overbar_ && (!symmetric || repeats))
      fail_at(*overbar_, "~ marks the middle ply of a symmetric code without repeats, [.../~ply]s");
    check_count(suffix, plies.size() * static_cast<std::size_t>(repeats.value_or(1)) * (symmetric ? 2U : 1U));
    plies = repeated(plies, repeats.value_or(1));
    if (symmetric)
      mirror(plies);
    return plies;
  }

  std::vector<CodePly> parse_plies(char end, int depth)
  {
    std::vector<CodePly> plies;
    while (true)
    {
      skip_blanks();
      const std::size_t start = position_;
      const std::vector<CodePly> part = parse_part(depth);
      plies.insert(plies.end(), part.begin(), part.end());
      check_count(start, plies.size());
      skip_blanks();
      if (take(std::string_view(&end, 1)))
        return plies;
      if (overbar_)
        fail_at(*overbar_, "~ is allowed before the last ply only");
      if (!take("/"))
        fail(end == ']' ? "/ and a further ply, or ], must follow a ply"
                        : "/ and a further ply, or ), must follow a ply");
    }
  }

  /// A group in parentheses, an angle or a name, each with its repeats.
  std::vector<CodePly> parse_part(int depth)
  {
    if (take("("))
    {
      if (depth == max_group_depth)
        fail(message("groups may be nested ", max_group_depth, " deep"));
      const std::vector<CodePly> group = parse_plies(')', depth + 1);
      const std::size_t suffix = position_;
      take("_");
      const int repeats = take_count().value_or(1);
      check_count(suffix, group.size() * static_cast<std::size_t>(repeats));
      return repeated(group, repeats);
    }
    if (depth == 0 && peek() == '~')
    {
      overbar_ = position_++;
      skip_blanks();
    }
    if (is_letter(peek()))
      return {CodePly{.angle = {}, .material = std::string(take_name())}};
    return parse_angle();
  }

  std::vector<CodePly> parse_angle()
  {
    const std::size_t start = position_;
    const Sign sign = take_sign();
    const double degrees = take_degrees();
    const bool two = sign == Sign::plus_minus || sign == Sign::minus_plus;
    if (two && overbar_)
      fail_at(start, "± stands for two plies; ~ marks one ply");
    if (peek() == '_')
    {
      const std::size_t subscript = position_++;
      if (two)
        fail_at(subscript, "a subscript after ± can be read in two ways; write (±45)2 or 45_2/-45_2");
      if (overbar_)
        fail_at(subscript, "~ marks one ply and takes no subscript");
      const std::optional<int> count = take_count();
      if (!count)
        fail("a number of plies must follow _");
      return std::vector<CodePly>(static_cast<std::size_t>(*count), ply_at(sign == Sign::minus ? -degrees : degrees));
    }
    switch (sign)
    {
    case Sign::plus_minus:
      return {ply_at(degrees), ply_at(-degrees)};
    case Sign::minus_plus:
      return {ply_at(-degrees), ply_at(degrees)};
    case Sign::minus:
      return {ply_at(-degrees)};
    case Sign::plus:
      break;
    }
    return {ply_at(degrees)};
  }

  Sign take_sign()
  {
    if (take("±") || take("+-") || take("+/-"))
      return Sign::plus_minus;
    if (take("∓") || take("-+") || take("-/+"))
      return Sign::minus_plus;
    if (take("-") || take("−"))
      return Sign::minus;
    take("+");
    return Sign::plus;
  }

  double take_degrees()
  {
    const std::size_t start = position_;
    while (is_digit(peek()) || peek() == '.')
      ++position_;
    const std::string_view digits = code_.substr(start, position_ - start);
    double value = 0.0;
    const auto [end, error] =
        std::from_chars(digits.data(), digits.data() + digits.size(), value, std::chars_format::fixed);
    if (error != std::errc() || end != digits.data() + digits.size())
      fail_at(start, "an angle in degrees, a material's name or a group ( ) is expected");
    if (value > 360.0)
      fail_at(start, message("an angle lies between -360 and 360 degrees; got ", value));
    return value;
  }

  /// A whole number from 1; nothing if there is no digit here.
  std::optional<int> take_count()
  {
    const std::size_t start = position_;
    while (is_digit(peek()))
      ++position_;
    if (position_ == start)
      return std::nullopt;
    int count = 0;
    const auto [end, error] = std::from_chars(code_.data() + start, code_.data() + position_, count);
    static_cast<void>(end);
    if (error != std::errc() || count < 1 || count > max_code_plies)
      fail_at(start, message("a repeat is a whole number from 1 to ", max_code_plies));
    return count;
  }

  std::string_view take_name()
  {
    const std::size_t start = position_;
    while (is_name_character(peek()))
      ++position_;
    return code_.substr(start, position_ - start);
  }

  static CodePly ply_at(double degrees)
  {
    // "-0" is written by the pairing ±0; it is no angle of its own.
    return {.angle = Angle::degrees(degrees == 0.0 ? 0.0 : degrees), .material = {}};
  }

  static std::vector<CodePly> repeated(const std::vector<CodePly>& plies, int times)
  {
    std::vector<CodePly> out;
    out.reserve(plies.size() * static_cast<std::size_t>(times));
    for (int i = 0; i < times; ++i)
      out.insert(out.end(), plies.begin(), plies.end());
    return out;
  }

  void mirror(std::vector<CodePly>& plies) const
  {
    const std::size_t num_mirrored = plies.size() - (overbar_ ? 1 : 0);
    for (std::size_t i = num_mirrored; i > 0; --i)
      plies.push_back(CodePly(plies[i - 1]));
  }

  void check_count(std::size_t where, std::size_t count) const
  {
    if (count > static_cast<std::size_t>(max_code_plies))
      fail_at(where, message("the code describes ", count, " plies or more; at most ", max_code_plies, " are allowed"));
  }

  char peek() const { return position_ < code_.size() ? code_[position_] : '\0'; }

  bool take(std::string_view token)
  {
    if (code_.substr(position_, token.size()) != token)
      return false;
    position_ += token.size();
    return true;
  }

  void skip_blanks()
  {
    while (peek() == ' ' || peek() == '\t')
      ++position_;
  }

  [[noreturn]] void fail(const std::string& what) const { fail_at(position_, what); }

  [[noreturn]] void fail_at(std::size_t where, const std::string& what) const
  {
    throw InvalidInput(message("laminate code \"", printable(code_), "\", column ", column(where), ": found ",
                               found(where), "; ", what));
  }

  /// A message is one line of text, whatever was typed.
  static std::string printable(std::string_view text)
  {
    std::string out(text);
    std::replace_if(
        out.begin(), out.end(), [](char c) { return (c >= 0 && c < ' ') || c == 127; }, '?');
    return out;
  }

  static constexpr bool continues_character(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

  /// Characters, not bytes, counted from 1: ± is two bytes long.
  std::size_t column(std::size_t where) const
  {
    std::size_t count = 1;
    for (const char c : code_.substr(0, where))
      count += continues_character(c) ? 0 : 1;
    return count;
  }

  std::string found(std::size_t where) const
  {
    if (where >= code_.size())
      return "the end";
    std::size_t size = 1;
    while (where + size < code_.size() && continues_character(code_[where + size]))
      ++size;
    return message('"', printable(code_.substr(where, size)), '"');
  }

  std::string_view code_;
  std::size_t position_ = 0;
  std::optional<std::size_t> overbar_; ///< where `~` stands, once met
};

} // namespace

std::vector<CodePly> parse_laminate_code(std::string_view code)
{
  return CodeParser(code).parse();
}

} // namespace plate
