//! Rules that run in a circle, and which of them gives way.

use crate::job::rules::Rule;

/// The rules without those that close a circle: of each circle the one that holds least firmly gives way.
pub(crate) fn without_cycles(count: usize, rules: &[Rule]) -> (Vec<Rule>, Vec<Rule>) {
    let mut kept = rules.to_vec();
    let mut dropped = Vec::new();
    while let Some(circle) = circle(count, &kept) {
        let Some(weakest) = circle.into_iter().min_by_key(|rule| (kept[*rule].why.firmness(), *rule)) else { break };
        dropped.push(kept.remove(weakest));
    }
    (kept, dropped)
}

/// The numbers of rules that run in a circle; none where there is no circle.
pub(crate) fn circle(count: usize, rules: &[Rule]) -> Option<Vec<usize>> {
    let mut from = vec![Vec::new(); count];
    let mut waits = vec![0usize; count];
    for (number, rule) in rules.iter().enumerate() {
        from[rule.before].push(number);
        waits[rule.after] += 1;
    }
    let mut free: Vec<usize> = (0..count).filter(|task| waits[*task] == 0).collect();
    let mut done = 0;
    while let Some(task) = free.pop() {
        done += 1;
        for rule in &from[task] {
            let next = rules[*rule].after;
            waits[next] -= 1;
            if waits[next] == 0 {
                free.push(next);
            }
        }
    }
    if done == count {
        return None;
    }
    // Every task that is left waits for another one of them: going back from any of them ends in a circle.
    let mut into = vec![None; count];
    for (number, rule) in rules.iter().enumerate() {
        if waits[rule.before] > 0 && waits[rule.after] > 0 {
            into[rule.after] = Some(number);
        }
    }
    let mut met = vec![false; count];
    let mut at = (0..count).find(|task| waits[*task] > 0)?;
    while !met[at] {
        met[at] = true;
        at = rules[into[at]?].before;
    }
    let start = at;
    let mut circle = Vec::new();
    loop {
        let rule = into[at]?;
        circle.push(rule);
        at = rules[rule].before;
        if at == start {
            return Some(circle);
        }
    }
}
