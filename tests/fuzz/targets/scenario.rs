#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| lightgap_tests::trials::scenario(bytes));
