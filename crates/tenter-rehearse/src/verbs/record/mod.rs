//! What changes nothing about the goods.

pub(super) mod accept;
pub(super) mod check;
pub(super) mod note;
pub(super) mod repeat;
pub(super) mod wear;
