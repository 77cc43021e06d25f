//! The piece drawn as a picture without a graphics card: orthographic, with a depth and a solid for each pixel.
//!
//! [`Drawn`] makes meshes ready once, [`Sight`] says from where they are seen, [`Picture`] holds what is seen and gives it
//! its colors. Data in, data out: nothing here knows of a window.

mod color;
mod drawn;
mod edges;
mod fill;
mod picture;
mod sight;

pub use color::Tone;
pub use drawn::Drawn;
pub use picture::Picture;
pub use sight::Sight;
