#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "knowledge/knowledge.h"
#include "record/record.h"

/// How the reel comes apart and goes together again: what comes off in which order, which springs
/// fly, what goes back in the place of what.
namespace winchbook::assess::strip {

/// A part as it comes off or goes in.
struct Part {
  record::PieceId piece;
  std::string name;
  int count = 1;
  knowledge::Lubricant lubricant = knowledge::Lubricant::none;  ///< of its place
};

/// A spring under load that comes free in a step. A step says what comes off, not what that lets
/// fly: the parts list says which place holds a spring down and in how many pieces it comes out.
struct Spring {
  enum class Frees {
    comes_off,      ///< the step takes it off
    loses_its_hold  ///< the step takes away what holds it down
  };
  std::string name;  ///< of the piece, or of the place where no piece is known
  Frees frees = Frees::comes_off;
  std::string held_by = {};  ///< the name of what held it
  int loose_pieces = 1;
};

/// One step of taking apart, read backwards one of putting together.
struct Step {
  std::size_t at = 0;  ///< position in the visit's steps
  std::vector<Part> off;
  std::vector<Part>
      back;  ///< what goes in instead where a part was replaced; less where one was not
  std::vector<Spring> springs;
};

/// A place where the record has no steps yet: a row to fill in.
struct PlaceToStrip {
  std::string assembly;
  std::string name;
  int count = 1;
  bool captive_spring = false;
  std::string held_by = {};  ///< the name of the place whose piece holds the spring down; or empty
  int loose_pieces = 1;
};

/// The answer for one stay at the bench.
struct Finding {
  std::vector<Step> steps;
  std::vector<Part> put_in;          ///< fitted in this visit where nothing came off
  std::vector<Part> not_apart;       ///< in the reel, and no step took it off
  std::vector<Spring> left_loaded;   ///< springs among them
  std::vector<PlaceToStrip> places;  ///< only when there are no steps
  std::vector<Part> lubricated;  ///< in the reel as it leaves, in places that want oil or grease
  bool free_spool = false;       ///< the spool can be let off its gears: the side plate goes on so
};

/// Springs that fly or are captive, each counted once by its name: one loses its hold in one step
/// and comes off in another.
[[nodiscard]] std::size_t springs_named(const Finding& finding);

/// Pieces that come off in all the steps together.
[[nodiscard]] int pieces_off(const Finding& finding);

/// What comes off in a step and does not go back: it lies in a bag, or went elsewhere.
[[nodiscard]] std::vector<Part> stays_out(const Step& step);

/// Springs are known by the record's own places and by the parts list of its kind: captive where
/// either says so, flying where the list's "freed-by" names the place of a part that the step takes
/// off, unless an earlier step took the spring off.
[[nodiscard]] Finding strip(const record::Record& record, const record::Visit& visit,
                            const knowledge::PartsList* list);

}  // namespace winchbook::assess::strip
