#define DOCTEST_CONFIG_IMPLEMENT
#include <doctest/doctest.h>

#include <filesystem>

int main(int count, char** arguments) {
  std::filesystem::current_path(WINCHBOOK_SOURCE_DIR);
  return doctest::Context(count, arguments).run();
}
