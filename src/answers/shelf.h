#pragma once

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "answers/telling.h"
#include "base/result.h"
#include "forms/job.h"
#include "library/library.h"
#include "recordfile/glance.h"

namespace winchbook::answers {

/// Which reels are looked for; what is empty leaves all. Words match the beginnings of words,
/// whatever their case, in this order.
struct ShelfRequest {
  std::filesystem::path folder = ".";
  std::string maker;
  std::string model;
  std::string owner;   ///< who has it, or brought it last: full or short name
  std::string since;   ///< EDTF: the last visit may have begun or ended on that day or later
  std::string fitted;  ///< a part the bench put in, by its name, its place or the place's kind
  bool unfinished = false;
  bool json = false;
};

using ShelfFitting = recordfile::GlancedFitting;
using ShelfReel = recordfile::Glance;

struct Shelf {
  std::size_t looked = 0;        ///< records that were looked at, broken ones too
  std::vector<ShelfReel> reels;  ///< those that were looked for, by their folders
  base::Diagnostics warnings;    ///< records that could not be read; folders not looked into
};

/// Looks through every record below the folder, on all processors. Nothing is validated: a record
/// need only be well-formed, and a broken one is a warning. A folder that is linked twice is looked
/// into once; folders more than 32 deep, hidden ones, and those beside a record are not. Errors:
/// the folder is not there; a date that is none.
[[nodiscard]] base::Result<Shelf> look_through_shelf(library::Library& library,
                                                     const ShelfRequest& request);

/// The list, with what was fitted where that was asked for, and how many there are.
[[nodiscard]] Blocks shelf_told(const Shelf& shelf, bool with_fitted,
                                const words::Catalogue& words);
/// The same as JSON that keeps schemas/shelf.schema.json.
[[nodiscard]] std::string shelf_as_json(const Shelf& shelf);

[[nodiscard]] forms::Job shelf_job();

}  // namespace winchbook::answers
