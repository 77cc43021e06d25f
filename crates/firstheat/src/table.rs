//! A table of text whose columns line up.

/// On which side the words of a column line up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Side {
    /// Words.
    Left,
    /// Figures.
    Right,
}

/// Lines the columns up, two spaces between them, no spaces at the ends of lines.
pub(crate) fn lined_up(columns: &[Side], rows: &[Vec<String>]) -> String {
    let width = |column: usize| rows.iter().filter_map(|row| row.get(column)).map(|cell| cell.chars().count()).max();
    let widths: Vec<usize> = (0..columns.len()).map(|column| width(column).unwrap_or(0)).collect();
    let mut text = String::new();
    for row in rows {
        let cells = row.iter().zip(columns).zip(&widths).map(|((cell, side), &width)| match side {
            Side::Left => format!("{cell:<width$}"),
            Side::Right => format!("{cell:>width$}"),
        });
        text.push_str(cells.collect::<Vec<_>>().join("  ").trim_end());
        text.push('\n');
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_line_up_on_their_side() {
        let row = |cells: [&str; 3]| cells.map(str::to_owned).to_vec();
        let rows = [row(["1", "Ø", "7.0"]), row(["10", "leaf", ""])];
        let text = lined_up(&[Side::Right, Side::Left, Side::Right], &rows);
        assert_eq!(text, " 1  Ø     7.0\n10  leaf\n");
    }
}
