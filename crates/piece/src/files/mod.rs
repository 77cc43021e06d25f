//! The piece and its flat outlines as files for other programs. All of them are in mm.

mod dxf_file;
mod obj;
mod stl;
mod svg;

use crate::{Quality, flats, hung};
use fh_core::balance::Balance;
use fh_core::plan::Plan;

/// A kind of file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FileKind {
    /// The piece as triangles, binary STL.
    Stl,
    /// The piece as triangles, Wavefront OBJ, one group for each segment.
    Obj,
    /// The flat outlines, DXF.
    Dxf,
    /// The flat outlines, SVG.
    Svg,
}

impl FileKind {
    /// Every kind, in the order they are offered.
    pub const ALL: [Self; 4] = [Self::Stl, Self::Obj, Self::Dxf, Self::Svg];

    /// The ending of its files.
    pub fn ending(self) -> &'static str {
        match self {
            Self::Stl => "stl",
            Self::Obj => "obj",
            Self::Dxf => "dxf",
            Self::Svg => "svg",
        }
    }

    /// What is in it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Stl => "the piece, STL",
            Self::Obj => "the piece, OBJ",
            Self::Dxf => "flat outlines, DXF",
            Self::Svg => "flat outlines, SVG",
        }
    }

    /// The kind of a file by its ending.
    pub fn of_ending(ending: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.ending().eq_ignore_ascii_case(ending))
    }
}

/// Why a file could not be made.
#[derive(Debug, thiserror::Error)]
pub enum ExportError {
    /// No segment is settled, or nothing of the plan is in the finished piece.
    #[error("there is no metal in the finished piece yet")]
    EmptyPiece,
    /// No leaf, plate or boss.
    #[error("the plan has no flat outline: no flag, and no boss with a hole")]
    NoOutline,
    /// A library could not write it.
    #[error("the file could not be made: {0}")]
    CannotWrite(String),
}

/// The contents of a file of this kind; the same plan gives the same bytes.
///
/// # Errors
/// Where the plan has nothing that belongs into such a file.
pub fn export(plan: &Plan, balance: &Balance, kind: FileKind) -> Result<Vec<u8>, ExportError> {
    match kind {
        FileKind::Stl | FileKind::Obj => {
            let piece = hung(plan, balance, Quality::Print);
            if piece.solids.is_empty() {
                return Err(ExportError::EmptyPiece);
            }
            if kind == FileKind::Stl { stl::write(&piece) } else { Ok(obj::write(plan, &piece).into_bytes()) }
        }
        FileKind::Dxf | FileKind::Svg => {
            let flats = crate::flat::side_by_side(&flats(plan, balance), GAP_MM);
            if flats.is_empty() {
                return Err(ExportError::NoOutline);
            }
            let text = if kind == FileKind::Dxf { dxf_file::write(&flats) } else { svg::write(&flats) };
            Ok(text.into_bytes())
        }
    }
}

/// How far flat outlines lie from each other in a file, in mm.
const GAP_MM: f64 = 10.0;
