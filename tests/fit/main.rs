//! What a made-up test ride teaches is what it was made with; and what cannot be is named.

mod contradictions;
mod lines;
mod made_up;
mod recovered;
