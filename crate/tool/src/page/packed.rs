//! Files of the site compressed once, as well as can be, and kept: a server that did it at every
//! request would have to do it badly.

use crate::place;
use crate::trouble::Trouble;
use brotli::enc::BrotliEncoderParams;
use brotli::enc::backward_references::BrotliEncoderMode::{BROTLI_MODE_FONT, BROTLI_MODE_GENERIC};
use sha2::Digest;
use std::io::Write;
use std::path::PathBuf;

/// Files shorter than this, bytes, gain nothing.
const WORTH: usize = 200;
/// Brotli's best quality.
const QUALITY: i32 = 11;
/// Brotli's largest window, as a power of two.
const WINDOW: i32 = 24;
/// How much is read at a time, bytes.
const BUFFER: usize = 1 << 16;

/// The bytes by brotli (RFC 7932), kept under their hash from one run to the next; none where they are
/// too few.
pub fn packed(bytes: &[u8]) -> Result<Option<Vec<u8>>, Trouble> {
    if bytes.len() < WORTH {
        return Ok(None);
    }
    let file = shelf().join(digest(bytes));
    if let Ok(kept) = std::fs::read(&file) {
        return Ok(Some(kept));
    }
    let packed = squeeze(bytes).map_err(Trouble::file(&file))?;
    std::fs::create_dir_all(shelf()).map_err(Trouble::file(&file))?;
    // Written aside first: another run may look for it meanwhile.
    let aside = file.with_extension(std::process::id().to_string());
    std::fs::write(&aside, &packed).map_err(Trouble::file(&aside))?;
    std::fs::rename(&aside, &file).map_err(Trouble::file(&file))?;
    Ok(Some(packed))
}

fn shelf() -> PathBuf {
    place::target().join("packed")
}

/// The SHA-256 of some bytes (FIPS 180-4), in hexadecimal.
pub fn digest(bytes: &[u8]) -> String {
    sha2::Sha256::digest(bytes).iter().fold(String::new(), |text, byte| format!("{text}{byte:02x}"))
}

/// The shortest of what brotli makes of it as anything and as a font, whose distances a program shares.
fn squeeze(bytes: &[u8]) -> std::io::Result<Vec<u8>> {
    let mut shortest: Option<Vec<u8>> = None;
    for mode in [BROTLI_MODE_GENERIC, BROTLI_MODE_FONT] {
        let params = BrotliEncoderParams {
            quality: QUALITY,
            lgwin: WINDOW,
            size_hint: bytes.len(),
            mode,
            ..BrotliEncoderParams::default()
        };
        let mut packer = brotli::CompressorWriter::with_params(Vec::new(), BUFFER, &params);
        packer.write_all(bytes)?;
        packer.flush()?;
        let packed = packer.into_inner();
        if shortest.as_ref().is_none_or(|shortest| packed.len() < shortest.len()) {
            shortest = Some(packed);
        }
    }
    Ok(shortest.unwrap_or_default())
}

#[cfg(test)]
mod tests {
    use super::{packed, squeeze};
    use std::io::Read;

    #[test]
    fn what_is_packed_comes_out_whole_and_smaller() {
        let text = "the pin stops it inside its bush; ".repeat(300);
        let small = squeeze(text.as_bytes()).expect("it packs");
        assert!(small.len() < text.len() / 20);
        let mut out = String::new();
        brotli::Decompressor::new(&small[..], 4096).read_to_string(&mut out).expect("it unpacks");
        assert_eq!(out, text);
    }

    #[test]
    fn a_few_bytes_are_left_as_they_are() {
        assert_eq!(packed(b"{}").expect("nothing to do"), None);
    }
}
