//! A workbook's number, written out. A workbook stores the nearest binary fraction with up to seventeen digits, of
//! which the last are noise: 0.3 may stand there as 0.30000000000000004. Digits are rounded, never the binary number.

/// The digits that count: twelve, which are as many as a quantity may have, and up to fifteen of a whole number, which
/// are as many as a spreadsheet shows.
fn digits_that_count(point: i32) -> usize {
    usize::try_from(point).unwrap_or(0).clamp(12, 15)
}

/// A stored number written out in decimals, multiplied by ten to the power of `shift`; none when it isn't a number
/// or is larger or smaller than any that a schedule has.
pub(super) fn written(stored: &str, shift: i32) -> Option<String> {
    let (negative, unsigned) = match stored.strip_prefix('-') {
        Some(rest) => (true, rest),
        None => (false, stored),
    };
    let (mantissa, exponent) = match unsigned.split_once(['e', 'E']) {
        Some((mantissa, exponent)) => (mantissa, exponent.parse::<i32>().ok()?),
        None => (unsigned, 0),
    };
    let (whole, decimals) = mantissa.split_once('.').unwrap_or((mantissa, ""));
    let digits: Vec<u8> = whole.bytes().chain(decimals.bytes()).collect();
    if digits.is_empty() || !digits.iter().all(u8::is_ascii_digit) {
        return None;
    }
    // How many digits stand before the point.
    let point = i32::try_from(whole.len())
        .ok()?
        .checked_add(exponent)?
        .checked_add(shift)?;
    let leading = digits.iter().take_while(|digit| **digit == b'0').count();
    let significant: Vec<u8> = digits.into_iter().skip(leading).collect();
    let point = point.checked_sub(i32::try_from(leading).ok()?)?;
    let (rounded, point) = rounded(significant, point)?;
    let text = placed(&rounded, point)?;
    Some(if negative && text != "0" {
        format!("-{text}")
    } else {
        text
    })
}

/// The first digits, the last of them rounded half up, with trailing zeros left off.
fn rounded(mut digits: Vec<u8>, mut point: i32) -> Option<(Vec<u8>, i32)> {
    let count = digits_that_count(point);
    let up = digits.get(count).is_some_and(|digit| *digit >= b'5');
    digits.truncate(count);
    if up {
        while digits.last() == Some(&b'9') {
            digits.pop();
        }
        if let Some(digit) = digits.last_mut() {
            *digit += 1;
        } else {
            digits.push(b'1');
            point = point.checked_add(1)?;
        }
    }
    while digits.last() == Some(&b'0') {
        digits.pop();
    }
    Some((digits, point))
}

/// Digits with the decimal point after the first `point` of them.
fn placed(digits: &[u8], point: i32) -> Option<String> {
    let digits = core::str::from_utf8(digits).ok()?;
    if digits.is_empty() {
        return Some("0".to_owned());
    }
    if !(-15..=15).contains(&point) {
        return None;
    }
    let Ok(before) = usize::try_from(point) else {
        return Some(format!(
            "0.{}{digits}",
            "0".repeat(usize::try_from(-point).ok()?)
        ));
    };
    Some(match digits.split_at_checked(before) {
        Some(("", decimals)) => format!("0.{decimals}"),
        Some((whole, "")) => whole.to_owned(),
        Some((whole, decimals)) => format!("{whole}.{decimals}"),
        None => format!("{digits}{}", "0".repeat(before.checked_sub(digits.len())?)),
    })
}

#[cfg(test)]
mod tests {
    use super::written;

    #[test]
    fn numbers_as_workbooks_store_them() {
        for (stored, shift, expected) in [
            ("2.5", 0, "2.5"),
            ("0", 0, "0"),
            ("-0", 0, "0"),
            ("12", 0, "12"),
            ("1200", 0, "1200"),
            ("0.33", 2, "33"),
            ("0.30000000000000004", 0, "0.3"),
            ("0.57999999999999996", 2, "58"),
            ("0.41666666666666669", 2, "41.6666666667"),
            ("9.9999999999999995E-2", 0, "0.1"),
            ("1E3", 0, "1000"),
            ("1.5625E-2", 0, "0.015625"),
            ("-4", 0, "-4"),
            ("0.999999999999999", 0, "1"),
            ("0.005", 2, "0.5"),
            ("20260314001234", 0, "20260314001234"),
        ] {
            assert_eq!(
                written(stored, shift).as_deref(),
                Some(expected),
                "{stored}"
            );
        }
        for stored in [
            "",
            "-",
            ".",
            "1e",
            "NaN",
            "1e400",
            "1e99999999999",
            "+1",
            "1.2.3",
            "1E2147483647",
        ] {
            assert_eq!(written(stored, 2), None, "{stored}");
        }
    }
}
