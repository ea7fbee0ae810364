#pragma once

#include <cstdint>
#include <filesystem>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "daybook/entry.h"

namespace winchbook::daybook {

/// A camera's folder, and the reel whose pictures it gets.
struct PhotoWatchRequest : Entry {
  std::filesystem::path folder;  ///< the camera's
  bool once = false;  ///< take also the pictures that are there at the beginning, and end
};

/// A camera's folder while it is watched. Each picture goes into the step of taking apart that was
/// entered last when the picture was complete; before there is any, it shows the reel as found.
class Watch {
 public:
  /// `command` is kept in the history. Errors: the record cannot be read, or the camera's folder is
  /// not there.
  [[nodiscard]] static base::Result<Watch> begin(library::Library& library,
                                                 const PhotoWatchRequest& request,
                                                 const std::string& command);

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
  Watch(library::Library& library, PhotoWatchRequest request, std::string command);
  [[nodiscard]] std::optional<base::Result<Edited>> try_to_take(const std::string& name,
                                                                std::uintmax_t size);
  [[nodiscard]] base::Result<Edited> take(const std::filesystem::path& file);
  [[nodiscard]] bool has_steps() const;

  library::Library* library_;
  PhotoWatchRequest request_;
  std::string command_;
  std::string before_any_step_;                 ///< what pictures show that come before any step
  std::map<std::string, std::uintmax_t> seen_;  ///< lengths at the last look
  std::map<std::string, std::uintmax_t> done_;  ///< names that need no more looking at this length
  std::map<std::string, std::string> told_;     ///< what stood in the way of a name
  std::set<std::string> passed_over_;
  bool waiting_ = false;
  int left_alone_ = 0;
  int taken_ = 0;
};

/// Watches until it is asked to stop by a signal, and tells each look.
[[nodiscard]] forms::Job photo_watch_job();

}  // namespace winchbook::daybook
