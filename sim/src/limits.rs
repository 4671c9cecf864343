#![doc = include_str!("limits.md")]

/// This page as text, in Markdown (CommonMark with tables).
pub const TEXT: &str = include_str!("limits.md");
