//! Which of two lists' entries belong together: as many as there can be without changing their order.

/// A thing of the first list and one of the second, by their places.
pub(super) type Pair = [Option<usize>; 2];

/// More entries than this are paired by their places alone, so that it never takes long.
const MOST: usize = 1500;

/// The pairs, in the order of both lists; what only one of them has stands alone. Between two pairs, what stands alone on both
/// sides is paired in order, as one thing that became another.
pub(super) fn align<T>(first: &[T], second: &[T], same: impl Fn(&T, &T) -> bool) -> Vec<Pair> {
    let kept = if first.len().max(second.len()) > MOST { Vec::new() } else { longest(first, second, same) };
    let (mut pairs, mut a, mut b) = (Vec::new(), 0, 0);
    for (to_a, to_b) in kept.into_iter().chain([(first.len(), second.len())]) {
        while a < to_a && b < to_b {
            pairs.push([Some(a), Some(b)]);
            (a, b) = (a + 1, b + 1);
        }
        pairs.extend((a..to_a).map(|a| [Some(a), None]));
        pairs.extend((b..to_b).map(|b| [None, Some(b)]));
        if to_a < first.len() {
            pairs.push([Some(to_a), Some(to_b)]);
        }
        (a, b) = (to_a + 1, to_b + 1);
    }
    pairs
}

/// The longest run of entries that both have in one order.
fn longest<T>(first: &[T], second: &[T], same: impl Fn(&T, &T) -> bool) -> Vec<(usize, usize)> {
    let wide = second.len() + 1;
    let mut best = vec![0_usize; (first.len() + 1) * wide];
    let at = |a: usize, b: usize| a * wide + b;
    for (a, one) in first.iter().enumerate().rev() {
        for (b, other) in second.iter().enumerate().rev() {
            best[at(a, b)] = match same(one, other) {
                true => best[at(a + 1, b + 1)] + 1,
                false => best[at(a + 1, b)].max(best[at(a, b + 1)]),
            };
        }
    }
    let (mut a, mut b, mut found) = (0, 0, Vec::new());
    while a < first.len() && b < second.len() {
        if same(&first[a], &second[b]) {
            found.push((a, b));
            (a, b) = (a + 1, b + 1);
        } else if best[at(a + 1, b)] >= best[at(a, b + 1)] {
            a += 1;
        } else {
            b += 1;
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pairs(first: &str, second: &str) -> String {
        let [first, second] = [first, second].map(|text| text.chars().collect::<Vec<_>>());
        let letter = |of: &[char], at: Option<usize>| at.map_or('-', |at| of[at]);
        let all = align(&first, &second, |a, b| a == b);
        let words = all.iter().map(|[a, b]| format!("{}{}", letter(&first, *a), letter(&second, *b)));
        words.collect::<Vec<_>>().join(" ")
    }

    #[test]
    fn what_both_have_stands_together_and_what_one_has_alone() {
        assert_eq!(pairs("abc", "abc"), "aa bb cc");
        assert_eq!(pairs("abc", "axbc"), "aa -x bb cc");
        assert_eq!(pairs("abc", "ac"), "aa b- cc");
        assert_eq!(pairs("abc", "ayc"), "aa by cc", "one became another");
        assert_eq!(pairs("", "ab"), "-a -b");
        assert_eq!(pairs("ab", ""), "a- b-");
    }
}
