//! Decimal figures for pictures.
//!
//! A picture shows the same figures on every machine and in every language, so it has its own
//! formatter: the exact value of the double, rounded once, half away from zero (what a browser's
//! `Intl.NumberFormat` does), with the decimal separator as an argument.

/// The most decimals a picture may ask for.
pub const MOST_DECIMALS: u32 = 9;

/// Bits of the fraction of a double.
const FRACTION_BITS: u32 = 52;
/// The bits of a double's exponent field.
const EXPONENT_MASK: u64 = 0x7ff;
/// A double is `mantissa * 2^(field - EXPONENT_BIAS)` with its mantissa a whole number.
const EXPONENT_BIAS: u32 = 1075;
/// Past this whole part the exponent would no longer be negative; no picture of a chain has any.
const LARGEST: f64 = 1e15;
/// The minus sign of print, as wide as a plus.
const MINUS: char = '\u{2212}';

/// Writes `value` to `out` with exactly `decimals` decimals and `separator` before them.
///
/// No figure is negative zero: what rounds to nothing is written without a sign. A value that is
/// not finite, or has a whole part past 1e15, is written as `?`: it is a fault of the caller, and
/// a picture must not stop for it.
///
/// ```
/// let mut out = String::new();
/// lightgap::decimal::write(&mut out, -0.125, 2, ',');
/// assert_eq!(out, "\u{2212}0,13");
/// ```
pub fn write(out: &mut String, value: f64, decimals: u32, separator: char) {
    write_signed(out, value, decimals, separator, MINUS);
}

fn write_signed(out: &mut String, value: f64, decimals: u32, separator: char, minus: char) {
    let decimals = decimals.min(MOST_DECIMALS);
    if !value.is_finite() || value.abs() >= LARGEST {
        out.push('?');
        return;
    }
    // Below LARGEST both the whole part and what it leaves are exact.
    let whole = value.abs() as u64;
    let unit = 10u64.pow(decimals);
    let part = rounded(value.abs() - whole as f64, decimals);
    let (whole, part) = if part < unit { (whole, part) } else { (whole + 1, part - unit) };
    if (whole > 0 || part > 0) && value < 0.0 {
        out.push(minus);
    }
    push_whole(out, whole, 1);
    if decimals > 0 {
        out.push(separator);
        push_whole(out, part, decimals);
    }
}

/// The figures of [`write()`] as a text of their own.
pub fn text(value: f64, decimals: u32, separator: char) -> String {
    let mut out = String::new();
    write(&mut out, value, decimals, separator);
    out
}

/// Writes `value` with at most `decimals` decimals and no idle zeros, a point between them: the
/// form of a coordinate in a file.
pub fn write_short(out: &mut String, value: f64, decimals: u32) {
    let start = out.len();
    write_signed(out, value, decimals, '.', '-');
    let written = out.get(start..).unwrap_or_default();
    if written.contains('.') {
        let kept = written.trim_end_matches('0').trim_end_matches('.').len();
        out.truncate(start + kept);
    }
}

/// The form of [`write_short`] as a text of its own.
pub fn short(value: f64, decimals: u32) -> String {
    let mut out = String::new();
    write_short(&mut out, value, decimals);
    out
}

/// `value * 10^decimals` of a value below 1 to the nearest whole number, halves up, with no rounding
/// before it.
fn rounded(value: f64, decimals: u32) -> u64 {
    let bits = value.to_bits();
    let field = (bits >> FRACTION_BITS) & EXPONENT_MASK;
    let fraction = bits & ((1 << FRACTION_BITS) - 1);
    let (mantissa, shift) = match field {
        0 => (fraction, EXPONENT_BIAS - 1),
        _ => (fraction | (1 << FRACTION_BITS), EXPONENT_BIAS - field as u32),
    };
    let scaled = u128::from(mantissa) * u128::from(10u64.pow(decimals));
    if shift >= u128::BITS { 0 } else { ((scaled + (1 << (shift - 1))) >> shift) as u64 }
}

/// Writes a whole number with at least `width` figures.
fn push_whole(out: &mut String, mut number: u64, width: u32) {
    let mut figures = [b'0'; 20];
    let mut start = figures.len();
    while number > 0 || figures.len() - start < width as usize {
        start -= 1;
        figures[start] = b'0' + (number % 10) as u8;
        number /= 10;
    }
    out.extend(figures[start..].iter().map(|&figure| char::from(figure)));
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A fixed spread of doubles over many sizes: a multiplicative congruence, no clock.
    fn spread() -> impl Iterator<Item = f64> {
        let mut state = 0x9e37_79b9_7f4a_7c15_u64;
        (0..20_000).map(move |turn| {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            let unit = (state >> 11) as f64 / (1u64 << 53) as f64 - 0.5;
            unit * [1e-7, 1e-3, 1.0, 40.0, 1e4, 1e8][turn % 6]
        })
    }

    #[test]
    fn figures_are_the_standard_librarys_away_from_ties() {
        for value in spread() {
            for decimals in 0..=MOST_DECIMALS {
                let expected = format!("{value:.*}", decimals as usize).replace('-', "\u{2212}");
                let unsigned = expected.trim_start_matches(MINUS);
                let zero = unsigned.bytes().all(|byte| byte == b'0' || byte == b'.');
                assert_eq!(text(value, decimals, '.'), if zero { unsigned } else { &expected });
            }
        }
    }

    /// ECMA-402, NumberFormat, rounding mode "halfExpand", the default (from memory).
    #[test]
    fn a_tie_goes_away_from_zero() {
        assert_eq!(text(0.5, 0, '.'), "1");
        assert_eq!(text(2.5, 0, '.'), "3");
        assert_eq!(text(-0.125, 2, '.'), "\u{2212}0.13");
    }

    #[test]
    fn the_exact_value_is_rounded_not_a_product() {
        assert_eq!(text(1.005, 2, '.'), "1.00"); // the double lies under 1.005
        assert_eq!(text(8.345, 2, '.'), "8.35"); // the double lies over 8.345
        assert_eq!(text(0.3 - 0.1, 17, '.'), "0.200000000");
    }

    #[test]
    fn nothing_has_no_sign_and_no_number_no_figures() {
        assert_eq!(text(-0.0, 2, ','), "0,00");
        assert_eq!(text(-0.001, 2, ','), "0,00");
        assert_eq!(text(5e-324, 3, '.'), "0.000");
        assert_eq!(text(f64::NAN, 2, '.'), "?");
        assert_eq!(text(f64::NEG_INFINITY, 2, '.'), "?");
        assert_eq!(text(1e15, 2, '.'), "?");
    }

    #[test]
    fn a_coordinate_drops_idle_zeros_only() {
        let short = |value| {
            let mut out = String::from("M");
            write_short(&mut out, value, 3);
            out
        };
        assert_eq!(short(100.0), "M100");
        assert_eq!(short(12.5), "M12.5");
        assert_eq!(short(-0.0004), "M0");
        assert_eq!(short(-2.0), "M-2");
        assert_eq!(short(0.05), "M0.05");
    }
}
