// Faults that clang-tidy must find, for check_lint.py: compiled into nothing.
#include <memory.h>
#include <stdlib.h>

#include <algorithm>
#include <functional>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "spoiled.h"

using std::set;

namespace Wrong_Case {
class lower_class {
 public:
  int Field = 0;
};
}  // namespace Wrong_Case

namespace std {
template <> struct hash<Wrong_Case::lower_class> {
  size_t operator()(const Wrong_Case::lower_class& Value) const { return (size_t)Value.Field; }
};
}  // namespace std

namespace {

typedef int number;

struct Base {
  Base() {}
  virtual ~Base() = default;
  virtual void run(int count);
};

struct Derived : Base {
  virtual void run(int count);
};

struct Owner {
  Owner(const Owner&);
  int* held;
};

struct Unset {
  Unset() {}
  int left;
};

template <typename T> T twice(T Value) {
  int unset;
  if (Value == Value) unset = 2;
  return Value * unset;
}

int moved_twice(std::string text) {
  std::vector<std::string> all;
  all.push_back(std::string(text.c_str()));
  std::vector<std::string> other = std::move(all);
  all.clear();
  std::string taken = std::move(text);
  return static_cast<int>(text.size() + other.size() + taken.size());
}

bool is_empty(const std::vector<int>& all) {
  if (all.size() == 0) return true;
  return false;
}

void loops(const std::vector<std::string>& all, std::vector<int> copied) {
  for (const auto one : all)
    std::string_view view = std::string(one);
  int i = 0;
  int end = 3;
  while (i < end) {
    end = end;
  }
  std::remove(copied.begin(), copied.end(), 3);
  std::unique_ptr<int> owned(new int(3));
  owned = std::unique_ptr<int>(new int(4));
  auto bound = std::bind(is_empty, copied);
  if (owned.get() == nullptr) return;
  int* pointer = (int*)malloc(sizeof(owned));
  if (pointer) delete pointer;
  short narrowed = copied[0];
  narrowed += 1.5;
  std::string_view none = nullptr;
  if (none.compare("a") == 0) return;
  memset(pointer, 0, 0);
  return;
}

int sliced(Derived derived) {
  Base base = derived;
  try {
    throw new int(3);
  } catch (std::string fault) {
    return 0;
  }
  return twice(3) + (int)twice(3.5);
}

}  // namespace

int kGlobal = kElsewhere + 1;
int _Reserved = 3;

typedef int global_number;

namespace elsewhere {
class Misplaced {
  int held_ = 0;
};
}  // namespace elsewhere

class Misplaced;

namespace elsewhere {
class _xmlNothing;
struct lconv;
struct Found;
}  // namespace elsewhere

struct Found {
  int Field;
};

namespace alias = elsewhere;

enum { first = 1, second = first * (sizeof(int*) / sizeof(int)) };

std::optional<int> kMaybe = std::optional<int>{second};

int compared(const char* one, const char* other) {
  unsigned char small = 3;
  const int division = 3 / 2;
  double whole = division + 3 / 2;
  if (strcmp(one, other)) return int(whole + 0.5);
  for (unsigned char at = 0; at < 1000; ++at)
    small += at;
  if (one == other)
    ;
  return 3;
  return small;
}
