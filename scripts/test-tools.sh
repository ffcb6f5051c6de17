#!/usr/bin/env bash
# The tests read our files back with other people's programs. Installs (as root, on Debian) those that are missing.
set -euo pipefail
missing=()
command -v qpdf >/dev/null || missing+=(qpdf)
command -v mutool >/dev/null || missing+=(mupdf-tools)
command -v pdftotext >/dev/null || missing+=(poppler-utils)
command -v chromium >/dev/null || missing+=(chromium)
[ -f /usr/share/unicode/BidiCharacterTest.txt ] || missing+=(unicode-data)
command -v java >/dev/null || missing+=(openjdk-17-jre-headless)
/usr/bin/python3 -c "import icalendar" 2>/dev/null || missing+=(python3-icalendar)
[ ${#missing[@]} -eq 0 ] && exit 0
if [ "$(id -u)" != 0 ]; then
  echo "The tests need: sudo apt-get install ${missing[*]}" >&2
  exit 1
fi
export DEBIAN_FRONTEND=noninteractive
apt-get update -qq
apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
