//! Beside the code: the edges. Made-up rides are in `tests/fit`.

use super::*;
use crate::plan;
