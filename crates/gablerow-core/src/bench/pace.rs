//! How the time that set-ups took compares with what was planned.

use alloc::vec::Vec;

use crate::job::Took;

/// The fewest set-ups from which something is learned.
const LEAST: usize = 5;
/// The most that are looked at: hands change, and so do routers.
const LATEST: usize = 100;

/// What set-ups take, in percent of what is planned: the middle one of the latest. 100 until there are enough of them.
///
/// The middle one, so that a coffee or a telephone call in between teaches nothing.
#[must_use]
pub fn pace(took: &[Took]) -> u32 {
    let latest = took.iter().rev().take(LATEST).filter(|it| it.planned > 0);
    let percent = |it: &Took| u64::from(it.seconds) * 100 / u64::from(it.planned);
    let mut percents: Vec<u64> = latest.map(percent).collect();
    if percents.len() < LEAST {
        return 100;
    }
    percents.sort_unstable();
    u32::try_from(percents[percents.len() / 2]).unwrap_or(u32::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn took(seconds: &[u32]) -> Vec<Took> {
        let of = |seconds: &u32| Took {
            planned: 60,
            seconds: *seconds,
        };
        seconds.iter().map(of).collect()
    }

    #[test]
    fn a_few_set_ups_teach_nothing_and_a_break_teaches_nothing() {
        assert_eq!(pace(&[]), 100);
        assert_eq!(pace(&took(&[90, 90, 90, 90])), 100);
        assert_eq!(pace(&took(&[90, 90, 3_600, 90, 90])), 150);
    }

    #[test]
    fn what_is_long_past_is_forgotten() {
        let all = [vec![600; 200], vec![30; 100]].concat();
        assert_eq!(pace(&took(&all)), 50);
    }

    #[test]
    fn what_was_not_planned_is_no_measure() {
        let mut all = took(&[30; 5]);
        all.push(Took {
            planned: 0,
            seconds: 5,
        });
        assert_eq!(pace(&all), 50);
    }
}
