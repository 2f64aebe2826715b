//! Voltages and currents in figures: as people type them, as files give them, and as they are shown. A figure is never rounded towards zero.

/// The highest figure that can be saved, in whole volts or amperes: no reading is refused for its height, only for not fitting here.
pub const MAX: u32 = u32::MAX / 1000;

/// What a figure is typed in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unit {
    /// Volts.
    Volts,
    /// Amperes.
    Amps,
    /// Thousandths of an ampere, as small currents are shown on a clamp.
    Milliamps,
}

impl Unit {
    /// Its sign.
    pub fn sign(self) -> &'static str {
        match self {
            Unit::Volts => "V",
            Unit::Amps => "A",
            Unit::Milliamps => "mA",
        }
    }
}

impl std::fmt::Display for Unit {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.sign())
    }
}

/// Why a typed figure is not one.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ReadingError {
    /// No digits, or something beside them.
    #[error("\"{0}\" is not a voltage: write volts as digits, such as 0.4 or 231")]
    NotVolts(String),
    /// The same of a current.
    #[error("\"{0}\" is not a current: write amperes as digits, such as 0.4 or 12")]
    NotAmps(String),
    /// A mark before exactly three digits, which is the decimal mark in one country and parts thousands in another.
    #[error("\"{typed}\": {one} {unit}, or {thousand} {unit}? Write {write_one} or {thousand}")]
    OneOrThousand {
        /// What was typed.
        typed: String,
        /// What it says if the mark is the decimal mark.
        one: String,
        /// The same as it can be typed without a doubt.
        write_one: String,
        /// What it says if the mark parts thousands.
        thousand: String,
        /// In what.
        unit: Unit,
    },
    /// The same where both ways say nothing else than this.
    #[error("\"{typed}\": write {value}, without three digits after the mark")]
    EitherWay {
        /// What was typed.
        typed: String,
        /// What it says.
        value: String,
    },
    /// More than one mark, or blanks between digits.
    #[error("\"{0}\": write one mark for the decimals and nothing between thousands, such as 1000.5")]
    Grouped(String),
    /// More than can be saved.
    #[error("\"{0}\" is more than {MAX} {1}, the most that can be saved: correct it")]
    TooHigh(String, Unit),
}

/// Reads volts as a person types them, as millivolts. Comma and point are both the decimal mark; before exactly three digits neither is
/// guessed. Decimals beyond the third are rounded up, so that nothing becomes nothing that was something.
///
/// ```
/// use stillbar_values::parse_volts;
/// assert_eq!(parse_volts("0,4 V"), Ok(400));
/// assert_eq!(parse_volts("0.0004"), Ok(1));
/// assert_eq!(parse_volts("1,000").unwrap_err().to_string(), "\"1,000\": 1 V, or 1000 V? Write 1 or 1000");
/// ```
pub fn parse_volts(text: &str) -> Result<u32, ReadingError> {
    thousandths(text, text.trim().trim_end_matches(['V', 'v']).trim(), Unit::Volts)
}

/// Reads a current as a person types it, as milliamperes: amperes, or thousandths of them where "mA" stands behind the figure. The same
/// rules as for volts.
///
/// ```
/// use stillbar_values::figures::parse_amps;
/// assert_eq!((parse_amps("0,3 A"), parse_amps("12"), parse_amps("40 mA")), (Ok(300), Ok(12_000), Ok(40)));
/// assert_eq!((parse_amps("0.0001"), parse_amps("0.2 mA")), (Ok(1), Ok(1)));
/// assert_eq!(parse_amps("1,000").unwrap_err().to_string(), "\"1,000\": 1 A, or 1000 A? Write 1 or 1000");
/// ```
pub fn parse_amps(text: &str) -> Result<u32, ReadingError> {
    let typed = text.trim();
    match typed.strip_suffix("mA") {
        // Never less than was typed.
        Some(clean) => thousandths(text, clean.trim(), Unit::Milliamps).map(|micro| micro.div_ceil(1000)),
        None => thousandths(text, typed.trim_end_matches(['A', 'a']).trim(), Unit::Amps),
    }
}

/// Thousandths of the unit, of a figure without its sign.
fn thousandths(text: &str, clean: &str, unit: Unit) -> Result<u32, ReadingError> {
    let shown = || text.trim().chars().take(24).collect::<String>();
    let none = |typed| if unit == Unit::Volts { ReadingError::NotVolts(typed) } else { ReadingError::NotAmps(typed) };
    let parts: Vec<&str> = clean.split([',', '.']).collect();
    let digits = |s: &str| s.bytes().all(|b| b.is_ascii_digit());
    let (whole, part) = match parts[..] {
        [whole] => (whole, ""),
        [whole, part] => (whole, part),
        _ if parts.iter().all(|p| !p.is_empty() && digits(p)) => return Err(ReadingError::Grouped(shown())),
        _ => return Err(none(shown())),
    };
    if whole.is_empty() || !digits(whole) || !digits(part) {
        let grouped = |c: char| c.is_ascii_digit() || c.is_whitespace() || matches!(c, '\'' | '’' | '_' | ',' | '.');
        let ends = clean.starts_with(|c: char| c.is_ascii_digit()) && clean.ends_with(|c: char| c.is_ascii_digit());
        let is_grouped = ends && clean.chars().all(grouped);
        return Err(if is_grouped { ReadingError::Grouped(shown()) } else { none(shown()) });
    }
    let too_high = || ReadingError::TooHigh(shown(), unit);
    let (milli, rest) = in_thousandths(whole, part).ok_or_else(too_high)?;
    if part.len() == 3 {
        return Err(three_digits(shown(), (whole, part), milli, unit));
    }
    milli.checked_add(u32::from(rest)).ok_or_else(too_high)
}

fn three_digits(typed: String, (whole, part): (&str, &str), milli: u32, unit: Unit) -> ReadingError {
    let one = volts(milli);
    let thousand = format!("{whole}{part}");
    let thousand = thousand.trim_start_matches('0');
    if thousand.is_empty() {
        return ReadingError::EitherWay { typed, value: one };
    }
    // Three decimals that all count get a fourth: that is no way to part thousands.
    let write_one = if part.ends_with('0') { one.clone() } else { format!("{one}0") };
    ReadingError::OneOrThousand { typed, one, write_one, thousand: thousand.to_owned(), unit }
}

/// Whole units and decimals, both digits only, as thousandths, and whether anything finer is left over. `None`: more than can be saved.
fn in_thousandths(whole: &str, part: &str) -> Option<(u32, bool)> {
    let whole = whole.trim_start_matches('0');
    let units: u32 = if whole.is_empty() { 0 } else { whole.parse().ok().filter(|v| *v <= MAX)? };
    let (fine, rest) = part.split_at(part.len().min(3));
    let milli: u32 = format!("{fine:0<3}").parse().ok()?;
    Some((units.checked_mul(1000)?.checked_add(milli)?, rest.bytes().any(|b| b != b'0')))
}

/// A number of volts from a file as millivolts, and whether anything finer is left over. `None`: below zero, or more than can be saved.
pub fn of_number(volts: f64) -> Option<(u32, bool)> {
    if !(0.0..=f64::from(u32::MAX)).contains(&volts) {
        return None;
    }
    // The shortest decimals that are this number are those of the file: no noise of binary fractions gets in.
    let text = format!("{}", volts.abs());
    let (whole, part) = text.split_once('.').unwrap_or((&text, ""));
    in_thousandths(whole, part)
}

/// Voltages between lines that go by a rounder name than the star voltage times the square root of three, in volts: IEC 60038 (400, 690),
/// ANSI C84.1 and CSA C235 (208, 480, 600), the latter from memory.
const NAMED: [u32; 5] = [208, 400, 480, 600, 690];

/// What a voltage is called: 398.4 V are 400 V. Within half a percent of a published name it is that name, and else itself.
pub fn named(mv: u32) -> u32 {
    let near = |name: &u32| mv.abs_diff(*name) <= name / 200;
    NAMED.map(|volts| volts * 1000).into_iter().find(near).unwrap_or(mv)
}

/// Millivolts as volts, and milliamperes as amperes, without trailing zeros.
pub fn volts(mv: u32) -> String {
    let text = format!("{}.{:03}", mv / 1000, mv % 1000);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
