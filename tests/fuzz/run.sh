#!/bin/sh
# One fuzzer for so many seconds, with the stable compiler: run.sh TARGET SECONDS
set -eu
here=$(cd "$(dirname "$0")" && pwd)
target=${1:?a target} seconds=${2:-60}
flags="-Cpasses=sancov-module -Cllvm-args=-sanitizer-coverage-level=4 \
-Cllvm-args=-sanitizer-coverage-inline-8bit-counters -Cllvm-args=-sanitizer-coverage-pc-table \
-Cllvm-args=-sanitizer-coverage-trace-compares --cfg fuzzing -Cforce-frame-pointers"
triple=$(rustc -vV | sed -n 's/host: //p')
cd "$here"
RUSTFLAGS="$flags" cargo build --release --bin "$target" --target "$triple"
mkdir -p artifacts "${CARGO_TARGET_DIR:-target}/corpus/$target"
seeds="corpus/$target"
case $target in
  scenario) seeds="$seeds ../../scenarios" ;;
  lesson) seeds="$seeds ../../scenarios/lessons" ;;
esac
mkdir -p "corpus/$target"
# shellcheck disable=SC2086
exec "${CARGO_TARGET_DIR:-target}/$triple/release/$target" "${CARGO_TARGET_DIR:-target}/corpus/$target" $seeds \
  -max_total_time="$seconds" -timeout=30 -max_len=8192 -artifact_prefix=artifacts/
