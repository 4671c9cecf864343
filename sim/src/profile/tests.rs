use super::*;
use crate::plan;

#[test]
fn the_demonstration_line_is_one_chain() {
    let profile = Profile::build(&plan::demo()).expect("valid");
    for pair in profile.pieces.windows(2) {
        assert!(pair[0].end.distance(pair[1].start) < 1e-12);
    }
    assert_eq!(profile.lips.len(), 1);
    assert_eq!(profile.spans.len(), 7);
}
