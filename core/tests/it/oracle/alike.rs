//! Whether two labels are one to the eye: by hand, for the letters that the players write.

/// Without regard to case, blanks, width and look-alike letters.
pub fn alike(one: &str, other: &str) -> bool {
    bare(one) == bare(other)
}

/// At least a word of letters.
pub fn says_something(reason: &str) -> bool {
    let mut row = 0;
    reason.chars().any(|c| {
        row = if c.is_alphabetic() { row + 1 } else { 0 };
        row >= 2
    })
}

fn bare(label: &str) -> String {
    let plain =
        label.chars().filter(|c| !c.is_whitespace() && !matches!(c, '\u{200b}' | '\u{200d}' | '\u{2060}' | '\u{feff}'));
    plain.map(|c| letter(wide(c))).collect()
}

/// Full-width forms are the ASCII ones, 0xFEE0 further on.
fn wide(c: char) -> char {
    match u32::from(c) {
        n @ 0xff01..=0xff5e => char::from_u32(n - 0xfee0).unwrap_or(c),
        _ => c,
    }
}

fn letter(c: char) -> char {
    match c {
        'А' | 'а' | 'Α' | 'α' => 'a',
        'В' | 'Β' => 'b',
        'С' | 'с' => 'c',
        'Е' | 'е' | 'Ε' => 'e',
        'Н' | 'Η' => 'h',
        'К' | 'Κ' => 'k',
        'М' | 'Μ' => 'm',
        'О' | 'о' | 'Ο' | 'ο' => 'o',
        'Р' | 'р' | 'Ρ' => 'p',
        'Т' | 'Τ' => 't',
        'Х' | 'х' | 'Χ' => 'x',
        _ => c.to_lowercase().next().unwrap_or(c),
    }
}
