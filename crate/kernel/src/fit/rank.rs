//! Parts in the order of their sizes.

/// Parts for each bucket.
const A_BUCKET: usize = 4;

/// The indices of values in rising order; of two as large the earlier comes first. Values are dealt
/// into buckets of equal width and each bucket is sorted, which takes time in proportion to their
/// number when they are spread as a law spreads them.
pub fn ranked(values: &[f64]) -> Vec<u32> {
    let (low, high) = ends(values);
    let buckets = (values.len() / A_BUCKET).max(1);
    let per = if high > low { buckets as f64 / (high - low) } else { 0.0 };
    let bucket_of = |value: f64| (((value - low) * per) as usize).min(buckets - 1);
    let mut start = vec![0_u32; buckets + 1];
    for value in values {
        start[bucket_of(*value) + 1] += 1;
    }
    for i in 0..buckets {
        start[i + 1] += start[i];
    }
    let mut next = start.clone();
    let mut order = vec![(0.0, 0_u32); values.len()];
    for (i, value) in values.iter().enumerate() {
        let place = &mut next[bucket_of(*value)];
        order[*place as usize] = (*value, i as u32);
        *place += 1;
    }
    for bucket in start.windows(2) {
        let bucket = &mut order[bucket[0] as usize..bucket[1] as usize];
        bucket.sort_unstable_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    }
    order.into_iter().map(|(_, i)| i).collect()
}

/// The least and the largest of some values.
pub fn ends(values: &[f64]) -> (f64, f64) {
    let wider = |(low, high): (f64, f64), value: &f64| {
        let low = if *value < low { *value } else { low };
        (low, if *value > high { *value } else { high })
    };
    values.iter().fold((f64::MAX, f64::MIN), wider)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::{Stream, Ziggurat};

    #[test]
    fn parts_come_in_the_order_of_a_plain_sort() {
        let (layers, mut stream) = (Ziggurat::default(), Stream::of(1, 2, 3));
        for count in [0, 1, 2, 5, 1000] {
            for steps in [1e9, 8.0] {
                let mut draw = || (layers.draw(&mut stream) * steps).round() / steps;
                let values: Vec<_> = std::iter::repeat_with(&mut draw).take(count).collect();
                let mut plain: Vec<_> = (0..count as u32).collect();
                plain.sort_by(|a, b| {
                    values[*a as usize].total_cmp(&values[*b as usize]).then(a.cmp(b))
                });
                assert_eq!(ranked(&values), plain);
            }
        }
        assert_eq!(ranked(&[2.0, 2.0, 2.0]), [0, 1, 2]);
    }
}
