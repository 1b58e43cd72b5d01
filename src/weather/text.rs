//! From the bytes of a file to its text.

use std::io::Read;

use flate2::read::MultiGzDecoder;

use super::error::Problem;

/// Largest file that is read, packed or not: a year of hourly weather has about 1.5 MB.
pub const MAX_BYTES: usize = 50 * 1024 * 1024;
const TOO_LARGE: Problem = Problem::TooLarge { limit_mb: MAX_BYTES / (1024 * 1024) };
const GZIP_MAGIC: &[u8] = &[0x1f, 0x8b];
const ZIP_MAGIC: &[u8] = b"PK\x03\x04";
const BYTE_ORDER_MARK: &[u8] = &[0xef, 0xbb, 0xbf];

/// Unpacks if need be and decodes: UTF-8 with or without byte-order mark, else Latin-1. Line ends come out as `\n`.
pub(super) fn text_of(bytes: &[u8]) -> Result<String, Problem> {
    if bytes.len() > MAX_BYTES {
        return Err(TOO_LARGE);
    }
    if bytes.starts_with(ZIP_MAGIC) {
        return Err(Problem::Zip);
    }
    if bytes.starts_with(GZIP_MAGIC) { decode(&unpack(bytes)?) } else { decode(bytes) }
}

fn unpack(bytes: &[u8]) -> Result<Vec<u8>, Problem> {
    let mut unpacked = Vec::new();
    MultiGzDecoder::new(bytes)
        .take(MAX_BYTES as u64 + 1)
        .read_to_end(&mut unpacked)
        .map_err(|e| Problem::BadGzip { reason: e.to_string() })?;
    if unpacked.len() > MAX_BYTES { Err(TOO_LARGE) } else { Ok(unpacked) }
}

fn decode(bytes: &[u8]) -> Result<String, Problem> {
    let bytes = bytes.strip_prefix(BYTE_ORDER_MARK).unwrap_or(bytes);
    if let Some(at) = bytes.iter().position(|b| *b == 0) {
        let line = 1 + bytes.iter().take(at).filter(|b| **b == b'\n').count();
        return Err(Problem::NotText { line });
    }
    let text = match std::str::from_utf8(bytes) {
        Ok(text) => text.to_owned(),
        // Latin-1: each byte is the code point of its character.
        Err(_) => bytes.iter().map(|b| char::from(*b)).collect(),
    };
    let text = text.replace("\r\n", "\n").replace('\r', "\n");
    if text.trim().is_empty() { Err(Problem::Empty) } else { Ok(text) }
}
