//! `firstheat export`: the piece and its flat outlines for other programs.

use crate::cli::ExportArgs;
use crate::failure::Failure;
use crate::{input, output};
use fh_core::balance::balance;
use fh_piece::files::{FileKind, export};
use std::process::ExitCode;

/// Writes a plan's piece or flat outlines.
pub(crate) fn run(args: &ExportArgs) -> Result<ExitCode, Failure> {
    let ending = args.output.extension().and_then(|ending| ending.to_str()).unwrap_or("");
    let Some(kind) = FileKind::of_ending(ending) else {
        let path = args.output.display();
        return Err(Failure::new(format!(
            "a piece is written as .stl or .obj, its outlines as .dxf or .svg, not as {path}"
        )));
    };
    let plan = input::read(&args.plan)?;
    let bytes = export(&plan, &balance(&plan), kind).map_err(Failure::new)?;
    output::write_file(&args.output, &bytes, args.force)?;
    output::print(&format!("wrote {}, in mm: {}\n", args.output.display(), kind.name()))?;
    Ok(ExitCode::SUCCESS)
}
