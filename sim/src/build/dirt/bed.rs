//! The raised bed under a feature.

use crate::num;
use crate::profile::Under;
use crate::profile::{Profile, Span};

/// Height of the bed over the yard where a feature begins, m. A start ramp has none.
pub(super) fn under(profile: &Profile, span: &Span) -> f64 {
    let before = profile
        .spans
        .iter()
        .take_while(|s| s.feature < span.feature);
    let last = before
        .last()
        .map_or(0.0, |s| s.to.y - Under(&profile.yard).height(s.to.x));
    num::max(last, 0.0)
}
