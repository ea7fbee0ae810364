#pragma once

#include <cstdint>
#include <filesystem>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "daybook/entries/photo_add.h"

namespace winchbook::daybook {

/// A camera's folder, and where its new pictures go.
struct WatchRequest {
  EditRequest edit;
  std::filesystem::path program;  ///< winchbook-picture
  std::filesystem::path folder;   ///< the camera's
  base::Day on;
  std::string before_any_step;  ///< the caption of pictures taken before a step was entered
  bool take_old = false;        ///< also the pictures that are there at the beginning
};

/// A camera's folder while it is watched. Each picture goes into the step of taking apart that was
/// entered last when the picture was complete; before there is any, it shows the reel as found.
class Watch {
 public:
  /// Error: the camera's folder is not there.
  [[nodiscard]] static base::Result<Watch> begin(const library::World& world, WatchRequest request);

  /// Looks once, and takes every picture whose length has not changed since the look before; one
  /// result for each that was tried, by name. A picture that is in the record already is passed
  /// over; one that is cut short is tried again when it has grown, and one that could not be
  /// written at the next look.
  [[nodiscard]] std::vector<base::Result<Edited>> look();
  /// Some file was still growing, or seen for the first time, at the last look.
  [[nodiscard]] bool is_waiting() const { return waiting_; }
  /// Pictures that were there at the beginning and are left alone.
  [[nodiscard]] int left_alone() const { return left_alone_; }
  [[nodiscard]] int taken() const { return taken_; }

 private:
  Watch(const library::World& world, WatchRequest request);
  [[nodiscard]] std::optional<base::Result<Edited>> try_to_take(const std::string& name,
                                                                std::uintmax_t size);
  [[nodiscard]] base::Result<Edited> take(const std::filesystem::path& file);
  [[nodiscard]] std::string current_step() const;

  const library::World* world_;
  WatchRequest request_;
  std::map<std::string, std::uintmax_t> seen_;  ///< lengths at the last look
  std::map<std::string, std::uintmax_t> done_;  ///< names that need no more looking at this length
  std::map<std::string, std::string> told_;     ///< what stood in the way of a name
  std::set<std::string> passed_over_;
  bool waiting_ = false;
  int left_alone_ = 0;
  int taken_ = 0;
};

}  // namespace winchbook::daybook
