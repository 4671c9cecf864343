//! What is asked of a picture.

use super::view::View;
use glam::DVec2;

/// What is asked of a picture.
#[derive(Clone, Copy, Debug)]
pub struct Seen {
    /// Moment of the ride, s.
    pub time: f64,
    /// Width and height of the sheet, px.
    pub size: DVec2,
    /// How much of the line.
    pub view: View,
    /// The feature that is being edited.
    pub chosen: Option<usize>,
    /// Whether it can be taken hold of.
    pub grips: bool,
    /// What the view that follows keeps in sight instead of the rider, m.
    pub held: Option<DVec2>,
    /// How much nearer than usual the view that follows is.
    pub zoom: f64,
    /// Whether it moves on in steps and stands still between them.
    pub still: bool,
}
