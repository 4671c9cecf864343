//! The last word of a program that should not have stopped.

use std::sync::Once;

static HOOK: Once = Once::new();

/// From now on a panic is written to the browser's console, with its place. Asking again does
/// nothing.
pub fn tell_console() {
    HOOK.call_once(|| {
        std::panic::set_hook(Box::new(|info| {
            web_sys::console::error_1(&format!("Carryline stopped: {info}").into());
        }));
    });
}
