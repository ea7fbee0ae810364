#include "archive/texts_of.h"

#include <qpdf/qpdf-c.h>
#include <utility>

#include <cstdlib>
#include <memory>
#include <optional>
#include <set>

namespace winchbook::archive {
namespace {

/// The objects of a file, by qpdf's C interface: its C++ headers need what clang does not compile.
class Objects {
 public:
  Objects(std::string_view pdf, const std::string& name) : name_(name) {
    qpdf_silence_errors(file_.get());
    qpdf_set_suppress_warnings(file_.get(), QPDF_TRUE);
    qpdf_read_memory(file_.get(), name.c_str(), pdf.data(), pdf.size(), nullptr);
  }

  base::Result<std::vector<Text>> texts() {
    if (auto fault = broken()) return *fault;
    const qpdf_oh size = qpdf_oh_get_key(file_.get(), qpdf_get_trailer(file_.get()), "/Size");
    const int count = qpdf_oh_get_int_value_as_int(file_.get(), size);
    for (int id = 1; id < count; ++id) {
      const qpdf_oh object = qpdf_get_object_by_id(file_.get(), id, 0);
      if (qpdf_oh_is_stream(file_.get(), object) != 0) {
        add_stream(object);
      } else {
        add_strings(object);
      }
      if (auto fault = broken()) return *fault;
      qpdf_oh_release_all(file_.get());
    }
    for (const std::string& one : strings_)
      texts_.push_back({"a bookmark, a title or an alternative of the finished file", one});
    return std::move(texts_);
  }

 private:
  struct Close {
    void operator()(_qpdf_data* file) const { qpdf_cleanup(&file); }
  };

  [[nodiscard]] std::optional<base::Diagnostic> broken() const {
    if (qpdf_has_error(file_.get()) == 0) return std::nullopt;
    const std::string why = qpdf_get_error_full_text(file_.get(), qpdf_get_error(file_.get()));
    return base::of_machine(base::error_at({name_, 0, 0},
                                           "the finished file cannot be read back: " + why,
                                           "nothing was written; report this", "file-pdf"));
  }

  [[nodiscard]] std::vector<std::string> keys_of(qpdf_oh dictionary) const {
    std::vector<std::string> keys;
    qpdf_oh_begin_dict_key_iter(file_.get(), dictionary);
    while (qpdf_oh_dict_more_keys(file_.get()) != 0)
      keys.emplace_back(qpdf_oh_dict_next_key(file_.get()));
    return keys;
  }

  /// The strings of an object and of what it holds; what it only refers to comes by itself.
  void add_strings(qpdf_oh object) {
    if (qpdf_oh_is_string(file_.get(), object) != 0) {
      std::size_t length = 0;
      const char* bytes = nullptr;
      if (qpdf_oh_get_value_as_utf8(file_.get(), object, &bytes, &length) != 0)
        strings_.insert(std::string(bytes, length));
    } else if (qpdf_oh_is_array(file_.get(), object) != 0) {
      const int count = qpdf_oh_get_array_n_items(file_.get(), object);
      for (int i = 0; i < count; ++i)
        add_held(qpdf_oh_get_array_item(file_.get(), object, i));
    } else if (qpdf_oh_is_dictionary(file_.get(), object) != 0) {
      for (const std::string& key : keys_of(object))
        add_held(qpdf_oh_get_key(file_.get(), object, key.c_str()));
    }
  }

  void add_held(qpdf_oh object) {
    if (qpdf_oh_is_indirect(file_.get(), object) == 0) add_strings(object);
  }

  void add_stream(qpdf_oh stream) {
    const qpdf_oh dictionary = qpdf_oh_get_dict(file_.get(), stream);
    add_strings(dictionary);
    const qpdf_oh type = qpdf_oh_get_key(file_.get(), dictionary, "/Type");
    if (qpdf_oh_is_name(file_.get(), type) == 0) return;
    const std::string name = qpdf_oh_get_name(file_.get(), type);
    const bool attached = name == "/EmbeddedFile";
    if (!attached && name != "/Metadata") return;
    unsigned char* bytes = nullptr;
    std::size_t length = 0;
    qpdf_oh_get_stream_data(file_.get(), stream, qpdf_dl_generalized, nullptr, &bytes, &length);
    if (bytes == nullptr) return;
    const std::unique_ptr<unsigned char, decltype(&std::free)> held(bytes, &std::free);
    texts_.push_back({attached ? "an attachment" : "the metadata of the finished file",
                      {reinterpret_cast<const char*>(bytes), length},
                      attached});
  }

  std::string name_;
  std::unique_ptr<_qpdf_data, Close> file_{qpdf_init()};
  std::set<std::string> strings_;
  std::vector<Text> texts_;
};

}  // namespace

base::Result<std::vector<Text>> texts_of(std::string_view pdf, const std::string& name) {
  return Objects(pdf, name).texts();
}

}  // namespace winchbook::archive
