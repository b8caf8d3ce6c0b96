//! The way in from outside: plain numbers, no generated glue.
//!
//! 1. `tenter_input(length)` makes room for a question and says where; the caller writes its bytes there.
//! 2. `tenter_call()` answers it and says where the answer begins.
//! 3. `tenter_output_length()` says how many bytes it has. It stands there until the next call.
//!
//! No pointer is ever read by this code: both buffers belong to it. The three attributes below are all the unsafe code
//! there is. They are needed because a function can only be called by its name from outside if that name is kept, and
//! the compiler cannot know that no other library uses the same name; these begin with `tenter_`.

#![allow(unsafe_code, reason = "names kept for the caller outside; see above")]

use std::cell::RefCell;

use crate::engine::Engine;

#[derive(Default)]
struct Desk {
    engine: Engine,
    input: Vec<u8>,
    output: Vec<u8>,
}

thread_local! {
    static DESK: RefCell<Desk> = RefCell::default();
}

/// No question is longer, in bytes.
pub const LONGEST: usize = 16 << 20;

/// Makes room for a question of so many bytes and gives its address; null when that is too long.
#[unsafe(no_mangle)]
pub extern "C" fn tenter_input(length: usize) -> *mut u8 {
    DESK.with_borrow_mut(|desk| {
        desk.input.clear();
        if length > LONGEST {
            return std::ptr::null_mut();
        }
        desk.input.resize(length, 0);
        desk.input.as_mut_ptr()
    })
}

/// Answers what stands in the room for the question and gives the address of the answer.
#[unsafe(no_mangle)]
pub extern "C" fn tenter_call() -> *const u8 {
    DESK.with_borrow_mut(|desk| {
        let answer = desk.engine.answer(&String::from_utf8_lossy(&desk.input));
        desk.output = answer.into_bytes();
        desk.output.as_ptr()
    })
}

/// How many bytes the answer has.
#[unsafe(no_mangle)]
pub extern "C" fn tenter_output_length() -> usize {
    DESK.with_borrow(|desk| desk.output.len())
}
