#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "xml/document.h"

namespace winchbook::recordfile {

/// A part that a bench put into a reel.
struct GlancedFitting {
  std::string piece;
  std::string place;
  std::string on;     ///< EDTF; empty: not known
  std::string donor;  ///< its name, or the supplier of new material; empty: none
  std::string bore;   ///< of the seat, mm; empty: not measured
  std::string outside;
};

/// A reel in a few words, as its record tells it without being looked over. What is not known is
/// empty.
struct Glance {
  std::filesystem::path folder;
  std::string name;
  std::string maker;
  std::string model;
  std::string kind;
  std::string owner;                   ///< a withheld name is told by its stand-in
  std::string taken_in;                ///< of the last visit
  std::string handed_back;             ///< of the last visit; empty: it is at the bench
  std::vector<std::string> open;       ///< what is not finished, a few words each
  std::vector<GlancedFitting> fitted;  ///< what the bench put in
};

/// What a record's tree tells of its reel. It need only be well-formed.
[[nodiscard]] Glance glance(const xml::Document& record);

}  // namespace winchbook::recordfile
