#pragma once
#include <string>

extern int kElsewhere;

inline bool same_text(const std::string& one, const std::string& other) {
  if (one.compare(other) == 0) {
    return true;
  } else {
    return false;
  }
}

int defined_here() {
  return 3;
}

typedef int global_in_header;

struct Copied {
  Copied(const Copied& other) : held(other.held) {}
  int held = 0;
};
