#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "daybook/entries/agree.h"
#include "daybook/entries/person.h"
#include "record/ranking.h"
#include "record/reel.h"

namespace winchbook::daybook {

/// A reel that is taken in; its path is the folder to be made.
struct IntakeRequest : Entry {
  std::string language = "en-GB";

  std::filesystem::path like;      ///< an earlier reel of the same model
  std::filesystem::path bench_of;  ///< a reel whose bench and restorers are taken over
  std::string bench;               ///< or the bench by its name
  std::string bench_place;
  std::string bench_address;
  std::string bench_contact;
  std::string restorer;

  std::optional<record::ReelKind> kind;
  std::optional<record::Brake> brake;  ///< empty: that of the earlier reel
  std::string maker;
  std::string maker_place;
  std::string model;
  std::string name;         ///< what the documents call it; empty: model, maker or kind
  bool all_places = false;  ///< every place of the parts list; else the eight that weigh most
  bool no_places = false;   ///< none of them: they are entered one by one

  PersonRequest owner;
  std::string brought_by;  ///< as named; somebody who is not in the record yet is added
  std::string by;          ///< who works on it in this stay, as named
  std::string arrived;
  std::vector<std::string> with_it;  ///< what came with it, or "none"
  std::vector<std::string> loose;    ///< parts that lay loose in it, or "none"
  std::string box;                   ///< its box and papers, or "none"
  record::Use use = record::Use::not_determined;
  std::string wish;
  record::Ranking ranking;  ///< empty: not asked
  std::optional<base::EdtfDate> promised_by;
  std::string number;   ///< the bench's own number of the job
  AgreeRequest agreed;  ///< limits and estimate; may be empty

  bool again = false;  ///< a further visit of a reel that has its record
};

/// Makes the reel's folder with its first record. The places come from the parts list of the kind,
/// as a list to tick: nothing is said of any of them yet. With `like`, they are those of an earlier
/// reel of the model, with its steps of taking apart and their orientation, and in a bench's note
/// in each place what was fitted there before; never its people or photographs. The bench and its
/// restorers come from `like` too. Errors: there is a record already; a kind without a parts list.
/// `command` is told to whoever waits for the folder.
[[nodiscard]] base::Result<Edited> intake(library::Library& library, const IntakeRequest& request,
                                          const std::string& command);

/// Begins a further visit of a reel that was handed back.
[[nodiscard]] base::Result<Said> intake_again(const IntakeRequest& request, Draft& draft);

[[nodiscard]] forms::Job intake_job();

}  // namespace winchbook::daybook
