//! Time is let go by.

pub(super) mod batch;
pub(super) mod rest;
pub(super) mod wait;
