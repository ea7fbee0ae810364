#!/bin/sh
# Installs what is missing on Debian 12: what building and running winchbook needs, and with
# "tests" also what the tests need. Does nothing when everything is there.
#
#   sh demo/install.sh [tests]
set -eu

# packages that count as present only when dpkg says so
libraries="
  libfmt-dev libcli11-dev libicu-dev libxml2-dev libpugixml-dev libhowardhinnant-date-dev
  nlohmann-json3-dev libharfbuzz-dev libhpdf-dev libjpeg-dev libpng-dev zlib1g-dev libdeflate-dev
  libqrencode-dev libqpdf-dev nettle-dev libeigen3-dev libboost-math-dev
  libheif-dev libwebp-dev libtiff-dev liblcms2-dev libstb-dev libseccomp-dev
  fonts-vollkorn fonts-lato fonts-sil-gentiumplus fonts-noto-core fonts-ipaexfont-mincho
  icc-profiles-free"

# command:package
commands="g++:g++ cmake:cmake ninja:ninja-build pkg-config:pkg-config"

if [ "${1:-}" = tests ]; then
  libraries="$libraries doctest-dev libjaxb-java libclang-14-dev python3-jsonschema python3-pil imagemagick
    tesseract-ocr-eng"
  commands="$commands git:git ccache:ccache python3:python3 clang-format:clang-format
    clang-tidy:clang-tidy xmllint:libxml2-utils jing:jing
    qpdf:qpdf fc-list:fontconfig pdftotext:poppler-utils pdftoppm:poppler-utils pdffonts:poppler-utils
    javac:openjdk-17-jdk-headless npm:npm tesseract:tesseract-ocr
    heif-enc:libheif-examples transicc:liblcms2-utils exiftool:libimage-exiftool-perl"
fi

missing=""
for package in $libraries; do
  state=$(dpkg-query -W -f '${Status}' "$package" 2>/dev/null || true)
  [ "$state" = "install ok installed" ] || missing="$missing $package"
done
for pair in $commands; do
  command -v "${pair%%:*}" >/dev/null 2>&1 || missing="$missing ${pair##*:}"
done
[ -n "$missing" ] || exit 0

if ! command -v apt-get >/dev/null 2>&1; then
  echo "install.sh: these are missing and apt-get is not here to install them:$missing" >&2
  exit 3
fi
as_root=""
if [ "$(id -u)" -ne 0 ]; then
  if ! command -v sudo >/dev/null 2>&1; then
    echo "install.sh: run this as root, or install by hand:$missing" >&2
    exit 3
  fi
  as_root="sudo"
fi
echo "installing:$missing"
$as_root apt-get update -qq
# shellcheck disable=SC2086  # the list is meant to be split
$as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing >/dev/null
