// bare_libharu PLAN OUTPUT.pdf
//
// The yardstick: draws the text and the JPEG pictures of PLAN at fixed places with libharu's own
// text, font and picture calls, and nothing else: no shaping, layout, tags, attachment or seal.
//
// PLAN has one item per line, fields separated by tabs, points from the lower left of the page:
//   font   NAME  FILE.ttf
//   page   WIDTH HEIGHT
//   text   FONT  SIZE  X  Y  RED  GREEN  BLUE  WORDS
//   image  FILE.jpg  X  Y  WIDTH  HEIGHT

#include <hpdf.h>

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <map>
#include <string>
#include <vector>

namespace {

[[noreturn]] void give_up(HPDF_STATUS code, HPDF_STATUS detail, void* /*nothing*/) {
  std::fprintf(stderr, "libharu: error 0x%04lx, detail %lu\n", code, detail);
  std::exit(1);
}

std::vector<std::string> fields_of(const std::string& line) {
  std::vector<std::string> fields;
  std::size_t start = 0;
  for (std::size_t tab = line.find('\t'); tab != std::string::npos; tab = line.find('\t', start)) {
    fields.push_back(line.substr(start, tab - start));
    start = tab + 1;
  }
  fields.push_back(line.substr(start));
  return fields;
}

float number(const std::string& field) {
  return std::strtof(field.c_str(), nullptr);
}

class Drawing {
 public:
  Drawing() : document_(HPDF_New(give_up, nullptr)) {
    HPDF_SetCompressionMode(document_, HPDF_COMP_ALL);
    HPDF_UseUTFEncodings(document_);
  }
  Drawing(const Drawing&) = delete;
  Drawing& operator=(const Drawing&) = delete;
  ~Drawing() { HPDF_Free(document_); }

  void draw(const std::vector<std::string>& item) {
    if (item[0] == "font") {
      const char* name = HPDF_LoadTTFontFromFile(document_, item[2].c_str(), HPDF_TRUE);
      fonts_[item[1]] = HPDF_GetFont(document_, name, "UTF-8");
    } else if (item[0] == "page") {
      page_ = HPDF_AddPage(document_);
      HPDF_Page_SetWidth(page_, number(item[1]));
      HPDF_Page_SetHeight(page_, number(item[2]));
    } else if (item[0] == "text") {
      HPDF_Page_SetRGBFill(page_, number(item[5]), number(item[6]), number(item[7]));
      HPDF_Page_BeginText(page_);
      HPDF_Page_SetFontAndSize(page_, fonts_.at(item[1]), number(item[2]));
      HPDF_Page_TextOut(page_, number(item[3]), number(item[4]), item[8].c_str());
      HPDF_Page_EndText(page_);
    } else if (item[0] == "image") {
      HPDF_Image& image = images_[item[1]];
      if (image == nullptr) {
        image = HPDF_LoadJpegImageFromFile(document_, item[1].c_str());
      }
      HPDF_Page_DrawImage(page_, image, number(item[2]), number(item[3]), number(item[4]),
                          number(item[5]));
    }
  }

  void save(const char* path) { HPDF_SaveToFile(document_, path); }

 private:
  HPDF_Doc document_;
  HPDF_Page page_ = nullptr;
  std::map<std::string, HPDF_Font> fonts_;
  std::map<std::string, HPDF_Image> images_;
};

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) {
    std::fputs("usage: bare_libharu PLAN OUTPUT.pdf\n", stderr);
    return 2;
  }
  Drawing drawing;
  std::ifstream plan(argv[1]);
  for (std::string line; std::getline(plan, line);) {
    drawing.draw(fields_of(line));
  }
  drawing.save(argv[2]);
  return 0;
}
