//! Putting a list in order in few bytes: the standard library's sorts are an eighth of a kernel that
//! a page has to download before it shows anything.

/// Puts items in order by a heap: n log n comparisons whatever the order before, no memory. Items that
/// are neither before the other may come out either way round.
pub fn put_in_order<T>(items: &mut [T], before: &mut dyn FnMut(&T, &T) -> bool) {
    for root in (0..items.len() / 2).rev() {
        sink(items, root, before);
    }
    for end in (1..items.len()).rev() {
        items.swap(0, end);
        sink(&mut items[..end], 0, before);
    }
}

/// Lets an item sink below all that come after it.
fn sink<T>(heap: &mut [T], mut root: usize, before: &mut dyn FnMut(&T, &T) -> bool) {
    loop {
        let mut child = 2 * root + 1;
        if child >= heap.len() {
            return;
        }
        if child + 1 < heap.len() && before(&heap[child], &heap[child + 1]) {
            child += 1;
        }
        if !before(&heap[root], &heap[child]) {
            return;
        }
        heap.swap(root, child);
        root = child;
    }
}

#[cfg(test)]
mod tests {
    use super::put_in_order;

    #[test]
    fn any_order_becomes_the_one_asked_for() {
        let mut state: u32 = 1;
        for length in 0..200 {
            let mut items: Vec<u32> = (0..length)
                .map(|_| {
                    state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                    state >> 24
                })
                .collect();
            let mut expected = items.clone();
            expected.sort_unstable();
            put_in_order(&mut items, &mut |a, b| a < b);
            assert_eq!(items, expected);
        }
    }
}
