//! Letters for the joins of a drawing that runs over several sheets.

/// The letters of join or part `index`, counted from 0: A to Z, then AA and on.
pub(super) fn letters(index: usize) -> String {
    let mut letters = String::new();
    let mut rest = index + 1;
    while rest > 0 {
        let letter = char::from(b'A' + ((rest - 1) % 26) as u8);
        letters.insert(0, letter);
        rest = (rest - 1) / 26;
    }
    letters
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_run_on_after_z() {
        assert_eq!([0, 1, 25, 26, 27].map(letters), ["A", "B", "Z", "AA", "AB"]);
    }
}
