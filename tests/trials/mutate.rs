//! Bytes changed a little by a seed, as a fuzzer would, the same ones in every run.

/// What often breaks a reader: put in the place of a few bytes.
const TOKENS: [&[u8]; 20] = [
    b"NaN",
    b"1e999",
    b"-0",
    b"-1",
    b"0",
    b"1e-320",
    b"1e308",
    b"0.1",
    b"null",
    b"true",
    b"[]",
    b"{}",
    b"\"\"",
    b",",
    b":",
    b"\xff",
    b"\xe2\x80\xae",
    b"&",
    b"=",
    b"chain",
];

/// A source of changed bytes.
#[derive(Debug)]
pub struct Changer(u64);

impl Changer {
    /// The source of a seed.
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ 0x2545_f491_4f6c_dd1d)
    }

    /// A whole number below another (xorshift, Marsaglia 2003; the multiplier by Vigna 2016).
    pub fn below(&mut self, end: usize) -> usize {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        (self.0.wrapping_mul(0x2545_f491_4f6c_dd1d) >> 33) as usize % end.max(1)
    }

    /// So many bytes of chance.
    pub fn bytes(&mut self, count: usize) -> Vec<u8> {
        (0..count).map(|_| self.below(256) as u8).collect()
    }

    /// The bytes with one to four changes.
    pub fn changed(&mut self, seed: &[u8]) -> Vec<u8> {
        let mut bytes = seed.to_vec();
        for _ in 0..=self.below(4) {
            self.change(&mut bytes);
        }
        bytes
    }

    fn change(&mut self, bytes: &mut Vec<u8>) {
        let at = self.below(bytes.len() + 1);
        let end = (at + self.below(12)).min(bytes.len());
        match self.below(5) {
            0 if at < bytes.len() => bytes[at] = self.below(256) as u8,
            1 => drop(bytes.splice(at..end, TOKENS[self.below(TOKENS.len())].iter().copied())),
            2 => drop(bytes.drain(at..end)),
            3 => {
                let copied = bytes[at..end].to_vec();
                let to = self.below(bytes.len() + 1);
                drop(bytes.splice(to..to, copied));
            }
            _ => self.digit(bytes, at),
        }
    }

    /// Another figure in the next number.
    fn digit(&mut self, bytes: &mut [u8], from: usize) {
        if let Some(figure) = bytes.iter_mut().skip(from).find(|byte| byte.is_ascii_digit()) {
            *figure = b'0' + self.below(10) as u8;
        }
    }
}
