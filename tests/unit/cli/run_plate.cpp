// SPDX-License-Identifier: MPL-2.0
#include "run_plate.h"

#include <chrono>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <thread>

#include <csignal>
#include <fcntl.h>
#include <stdlib.h> // mkdtemp is POSIX
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

namespace plate::test
{

Workshop::Workshop()
{
  std::string pattern = (std::filesystem::temp_directory_path() / "plate-cli-XXXXXX").string();
  if (mkdtemp(pattern.data()) == nullptr)
    throw std::runtime_error("cannot make a temporary folder");
  folder_ = pattern;
}

Workshop::~Workshop()
{
  std::error_code ignored;
  std::filesystem::remove_all(folder_, ignored);
}

std::string Workshop::write(const std::string& name, const std::string& text) const
{
  std::ofstream(folder_ / name, std::ios::binary) << text;
  return path(name);
}

std::set<std::string> Workshop::content(const std::string& folder) const
{
  std::set<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(folder_ / folder))
    names.insert(entry.path().filename().string());
  return names;
}

namespace
{

void redirect(int descriptor, const std::string& file)
{
  const int opened = ::open(file.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
  if (opened < 0 || ::dup2(opened, descriptor) < 0)
    ::_exit(99);
}

[[noreturn]] void become_plate(std::vector<std::string> arguments, const std::string& out, const std::string& err)
{
  redirect(STDOUT_FILENO, out);
  redirect(STDERR_FILENO, err);
  arguments.insert(arguments.begin(), PLATE_EXECUTABLE);
  std::vector<char*> argv;
  for (std::string& argument : arguments)
    argv.push_back(argument.data());
  argv.push_back(nullptr);
  ::execv(PLATE_EXECUTABLE, argv.data());
  ::_exit(99);
}

double seconds(const timeval& time)
{
  return static_cast<double>(time.tv_sec) + 1e-6 * static_cast<double>(time.tv_usec);
}

} // namespace

Run run_plate(const std::vector<std::string>& arguments, double interrupt_after)
{
  const Workshop streams;
  const pid_t child = ::fork();
  if (child < 0)
    throw std::runtime_error("cannot start a process");
  if (child == 0)
    become_plate(arguments, streams.path("out"), streams.path("err"));
  if (interrupt_after >= 0.0)
  {
    std::this_thread::sleep_for(std::chrono::duration<double>(interrupt_after));
    ::kill(child, SIGINT);
  }
  int status = 0;
  struct rusage usage = {};
  if (::wait4(child, &status, 0, &usage) != child)
    throw std::runtime_error("the process was lost");
  return {.status = WIFEXITED(status) ? WEXITSTATUS(status) : 1000 + WTERMSIG(status),
          .out = bytes_of(streams.path("out")),
          .err = bytes_of(streams.path("err")),
          .seconds = seconds(usage.ru_utime) + seconds(usage.ru_stime)};
}

std::string bytes_of(const std::string& path)
{
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

std::string quick_design()
{
  return "title = \"Flat spruce\"\n[outline]\nkind = \"rectangle\"\nlength = 350\nwidth = 200\n"
         "[thickness]\nvalue = 2.5\n[layup]\nsolid = \"spruce\"\n[mesh]\nsize = 30\n"
         "[material.spruce]\nE1 = 11.0\nE2 = 0.858\nE3 = 0.473\nG12 = 0.704\nG13 = 0.671\nG23 = 0.033\n"
         "nu12 = 0.372\nnu13 = 0.467\nnu23 = 0.435\ndensity = 400\n";
}

} // namespace plate::test
