// compare_pictures GOLDEN.png ACTUAL.png
//
// Two pages look alike when they have the same size and at most 0.1 % of their pixels differ by
// more than 24 of 255 levels in any of red, green and blue. Prints the share of pixels off in per
// cent. Exit code 0: alike; 1: not; 3: a file cannot be read.

#include <png.h>

#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

namespace {

constexpr int kLevels = 24;
constexpr double kShare = 0.001;

struct Picture {
  unsigned width = 0;
  unsigned height = 0;
  std::vector<png_byte> rgb;
};

bool read(const char* path, Picture& picture) {
  png_image image{};
  image.version = PNG_IMAGE_VERSION;
  if (png_image_begin_read_from_file(&image, path) == 0) {
    std::fprintf(stderr, "%s: %s\n", path, image.message);
    return false;
  }
  image.format = PNG_FORMAT_RGB;
  picture.width = image.width;
  picture.height = image.height;
  picture.rgb.resize(PNG_IMAGE_SIZE(image));
  if (png_image_finish_read(&image, nullptr, picture.rgb.data(), 0, nullptr) == 0) {
    std::fprintf(stderr, "%s: %s\n", path, image.message);
    return false;
  }
  return true;
}

std::size_t pixels_off(const Picture& golden, const Picture& actual) {
  std::size_t off = 0;
  for (std::size_t i = 0; i + 2 < golden.rgb.size(); i += 3) {
    bool differs = false;
    for (std::size_t channel = i; channel < i + 3; ++channel) {
      differs |= std::abs(int{golden.rgb[channel]} - int{actual.rgb[channel]}) > kLevels;
    }
    off += differs ? 1U : 0U;
  }
  return off;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) {
    std::fputs("usage: compare_pictures GOLDEN.png ACTUAL.png\n", stderr);
    return 2;
  }
  Picture golden;
  Picture actual;
  if (!read(argv[1], golden) || !read(argv[2], actual)) {
    return 3;
  }
  if (golden.width != actual.width || golden.height != actual.height) {
    std::printf("%ux%u instead of %ux%u\n", actual.width, actual.height, golden.width,
                golden.height);
    return 1;
  }
  const double share = static_cast<double>(pixels_off(golden, actual)) /
                       (static_cast<double>(golden.width) * golden.height);
  std::printf("%.4f %% of the pixels differ\n", share * 100);
  return share <= kShare ? 0 : 1;
}
