#pragma once

#include <functional>
#include <string>
#include <vector>

#include "base/edtf_date.h"
#include "daybook/edit.h"
#include "daybook/entries/agree.h"
#include "daybook/entries/person.h"
#include "record/visit.h"

namespace winchbook::daybook {

/// A reel that is taken in.
struct IntakeRequest {
  std::filesystem::path folder;  ///< to be made
  base::Day on;
  std::string command;
  bool dry_run = false;
  std::string language = "en-GB";

  std::filesystem::path like;      ///< an earlier reel of the same model
  std::filesystem::path bench_of;  ///< a reel whose bench and restorers are taken over
  std::string bench;               ///< or the bench by its name
  std::string bench_place;
  std::string bench_address;
  std::string bench_contact;
  std::string restorer;

  std::string kind;
  std::string brake = "none";
  std::string maker;
  std::string maker_place;
  std::string model;
  std::string name;         ///< what the documents call it; empty: model, maker or kind
  bool all_places = false;  ///< every place of the parts list; else the eight that weigh most
  bool no_places = false;   ///< none of them: they are entered one by one

  PersonRequest owner;
  std::string arrived;
  std::string use = "not-determined";
  std::string wish;
  std::vector<record::Matter> ranking;  ///< the most important first; empty: not asked
  std::string promised_by;
  std::string number;   ///< the bench's own number of the job
  AgreeRequest agreed;  ///< limits and estimate; may be empty

  std::function<std::string()> draw_salt;  ///< 32 hexadecimal digits from a real source of chance
};

/// Makes the reel's folder with its first record. The places come from the parts list of the kind
/// (with the quantities that are usual), each with a piece of which nothing is said yet; or, with
/// `like`, from an earlier reel of the model: its places, its steps of taking apart with their
/// orientation, and in a bench's note in each place what was fitted there before; never its people
/// or photographs. The bench and its restorers come from `like` too. Errors: there is a record
/// already; a kind without a parts list.
[[nodiscard]] base::Result<Edited> intake(const library::World& world,
                                          const IntakeRequest& request);

/// Begins a further visit of a reel that was handed back.
[[nodiscard]] Change intake_again(IntakeRequest request);

}  // namespace winchbook::daybook
